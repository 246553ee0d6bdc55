package cases

import (
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/casebook"
	"ogive/ui/flow"
	"ogive/ui/label"
	"ogive/ui/look"
	"ogive/ui/plate"
)

// errand is the panel of an import: how far it is, then what became of it. The
// room can be used meanwhile.
type errand struct {
	room    *Room
	object  *fyne.Container
	running bool
	stop    func()

	going *fyne.Container
	now   *widget.Label
	bar   *widget.ProgressBar
	halt  *widget.Button

	done    *fyne.Container
	words   *widget.Label
	scroll  *container.Scroll
	dating  *fyne.Container // asks for the day of photographs that tell none
	undated *widget.Label
	day     *widget.Entry
	dated   *widget.Button
	into    destination
	paths   []string
}

func newErrand(r *Room) *errand {
	e := &errand{room: r, now: widget.NewLabel(""), bar: widget.NewProgressBar(), words: label.Wrapped(""), undated: label.Wrapped(""), day: widget.NewEntry()}
	e.now.Truncation = fyne.TextTruncateEllipsis
	e.halt = widget.NewButton(lang.L("Stop"), func() { e.stop(); able(e.halt, false) })
	e.going = container.NewBorder(nil, nil, nil, e.halt, container.NewGridWithColumns(2, e.now, container.NewPadded(e.bar)))
	e.scroll = container.NewVScroll(e.words)
	e.day.SetPlaceHolder("2026-03-01")
	e.dated = widget.NewButton(lang.L("Bring them in"), e.bringDated)
	e.day.OnSubmitted = func(string) { e.bringDated() }
	e.dating = container.NewBorder(nil, nil, nil, container.NewHBox(container.NewGridWrap(fyne.NewSize(130, e.day.MinSize().Height), e.day), e.dated), e.undated)
	close := widget.NewButton(lang.L("Close"), func() { e.object.Hide(); r.arrange() })
	e.done = container.NewVBox(container.NewBorder(nil, nil, nil, container.NewVBox(close), e.scroll), e.dating)
	panel := plate.New(look.Card, look.Hairline, container.New(layout.NewCustomPaddedLayout(8, 8, 10, 10), container.NewStack(e.going, e.done)))
	e.object = container.NewPadded(panel)
	e.object.Hide()
	return e
}

func (e *errand) start(stop func()) {
	e.running, e.stop = true, stop
	able(e.halt, true)
	e.now.SetText(lang.L("Looking for photographs…"))
	e.bar.SetValue(0)
	e.done.Hide()
	e.going.Show()
	e.object.Show()
	e.room.arrange()
}

// leave forgets an import into a casebook that is left.
func (e *errand) leave() {
	if e.running {
		e.stop()
	}
	e.running = false
	e.object.Hide()
	e.room.arrange()
}

func (e *errand) progress(done, all int, name string) {
	if !e.running {
		return
	}
	e.now.SetText(lang.L("{{.Done}} of {{.All}}: {{.Name}}", map[string]any{"Done": done, "All": all, "Name": name}))
	e.bar.SetValue(float64(done) / float64(max(all, 1)))
}

// end tells what became of the import into a case.
func (e *errand) end(into destination, h harvest) {
	e.running = false
	lines := h.lines()
	if h.in == 0 && len(h.undated) > 0 && len(lines) == 1 {
		lines = nil
	}
	e.words.SetText(strings.Join(lines, "\n"))
	line := fyne.MeasureText("x", look.Size(theme.SizeNameText), fyne.TextStyle{}).Height + look.Size(theme.SizeNameLineSpacing)
	e.scroll.SetMinSize(fyne.NewSize(100, min(float32(max(len(lines), 1))*line+16, 160)))
	e.into, e.paths = into, h.undated
	flow.Visible(e.dating, len(h.undated) > 0)
	e.undated.SetText(undatedText(h.undated))
	e.going.Hide()
	e.done.Show()
	e.object.Show()
	e.room.arrange()
}

func undatedText(paths []string) string {
	var names []string
	for _, p := range paths[:min(len(paths), 3)] {
		names = append(names, filepath.Base(p))
	}
	if len(paths) > 3 {
		names = append(names, "…")
	}
	list := map[string]any{"Count": len(paths), "Names": strings.Join(names, ", ")}
	if len(paths) == 1 {
		return lang.L("{{.Names}} does not tell when it was taken. On which day?", list)
	}
	return lang.L("{{.Count}} photographs do not tell when they were taken ({{.Names}}). On which day?", list)
}

// bringDated imports the photographs without a date on the day that was typed.
func (e *errand) bringDated() {
	day, err := casebook.ParseDate(strings.TrimSpace(e.day.Text))
	switch {
	case e.running:
	case err != nil || day == "":
		e.undated.SetText(lang.L("Write the day as 2026-03-01: year, month, day."))
		e.room.win.Canvas().Focus(e.day)
	default:
		e.room.bringIn(e.into, e.paths, day)
	}
}
