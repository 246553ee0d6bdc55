package plan

import (
	"fmt"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/planfile"
	"ogive/ui/flow"
	"ogive/ui/label"
	"ogive/ui/look"
)

// Limits of alternatives and their names, as the plan file has them.
const mostAlternatives, longestName = 30, 100

// alternatives are the ways to make the web in hand: one is worked on, one is
// chosen and goes on the sheet.
type alternatives struct {
	widget.BaseWidget
	room    *Room
	heading *widget.Label
	rows    []*altRow
	holder  *fyne.Container
	buttons *line
}

var _ flow.Tall = (*alternatives)(nil)

func newAlternatives(r *Room) *alternatives {
	a := &alternatives{room: r, heading: label.Caption(""), holder: &fyne.Container{}}
	button := func(text string, icon fyne.Resource, do func()) *widget.Button {
		b := widget.NewButtonWithIcon(text, icon, do)
		b.Importance = widget.LowImportance
		return b
	}
	a.buttons = newLine(
		button(lang.L("Copy"), look.Icon(look.IconCopy), r.copyAlternative),
		button(lang.L("Rename…"), theme.DocumentCreateIcon(), r.askName),
		button(lang.L("Remove"), theme.DeleteIcon(), r.removeAlternative))
	a.ExtendBaseWidget(a)
	return a
}

// show brings the rows to the plan.
func (a *alternatives) show() {
	kept, p := a.room.kept(), a.room.planned()
	flow.Visible(a, kept != nil && len(kept.Alternatives) > 0)
	if kept == nil || p == nil {
		return
	}
	if len(a.rows) != len(kept.Alternatives) {
		a.rows, a.holder.Objects = nil, nil
		for i := range kept.Alternatives {
			row := newAltRow(func() { a.room.takeAlternative(i) }, func() { a.room.chooseAlternative(i) })
			a.rows = append(a.rows, row)
			a.holder.Objects = append(a.holder.Objects, row)
		}
	}
	write(a.heading, heading(len(a.rows)))
	for i, row := range a.rows {
		row.show(kept.Alternatives[i].Name, i == a.room.alternative, i == p.Chosen)
	}
	a.Refresh()
}

func heading(n int) string {
	if n < 2 {
		return lang.L("One way to make this web. Copy it to try another.")
	}
	return lang.L("{{.Number}} ways to make this web. The one whose ring is filled goes on the sheet.", map[string]any{"Number": n})
}

// HeightAt is called by flow.
func (a *alternatives) HeightAt(width float32) float32 {
	y := flow.HeightAt(a.heading, width)
	flow.Put(a.heading, 0, 0, width, y)
	top := y - 4
	y = 0
	for _, row := range a.rows {
		flow.Put(row, 0, y, width, rowHeight)
		y += rowHeight + 3
	}
	flow.Put(a.holder, 0, top, width, y)
	h := a.buttons.HeightAt(width)
	flow.Put(a.buttons, 0, top+y, width, h)
	return top + y + h
}

// CreateRenderer is called by Fyne.
func (a *alternatives) CreateRenderer() fyne.WidgetRenderer {
	return flow.NewRenderer(a.HeightAt, nil, a.heading, a.holder, a.buttons)
}

// takeAlternative takes one in hand.
func (r *Room) takeAlternative(i int) {
	r.drop()
	r.alternative, r.selected = i, ""
	if r.OnWeb != nil {
		r.OnWeb(r.web)
	}
	r.refresh()
	r.keyboard.take()
}

// chooseAlternative makes one the one that goes on the sheet.
func (r *Room) chooseAlternative(i int) {
	w := r.kept()
	if w == nil || i >= len(w.Alternatives) {
		return
	}
	name := w.Alternatives[i].Name
	r.alternative, r.selected = i, ""
	r.Change(lang.L("choose “{{.Name}}”", map[string]any{"Name": name}), func(f *planfile.File) { f.Web(r.web).Chosen = name })
	r.keyboard.take()
}

func (r *Room) copyAlternative() {
	w := r.kept()
	if w == nil || r.alternative >= len(w.Alternatives) {
		return
	}
	a := clonedAlternative(w.Alternatives[r.alternative])
	r.addAlternative(lang.L("copy “{{.Name}}”", map[string]any{"Name": a.Name}), a, nil)
}

func (r *Room) removeAlternative() {
	w := r.kept()
	if w == nil || r.alternative >= len(w.Alternatives) {
		return
	}
	i, name := r.alternative, w.Alternatives[r.alternative].Name
	r.Change(lang.L("remove “{{.Name}}”", map[string]any{"Name": name}), func(f *planfile.File) {
		w := f.Web(r.web)
		w.Alternatives = slices.Delete(w.Alternatives, i, i+1)
		if w.Chosen == name {
			w.Chosen = ""
		}
	})
	r.keyboard.take()
}

// askName asks for another name of the alternative in hand.
func (r *Room) askName() {
	w := r.kept()
	if w == nil || r.alternative >= len(w.Alternatives) {
		return
	}
	entry := widget.NewEntry()
	entry.SetText(w.Alternatives[r.alternative].Name)
	entry.Validator = func(name string) error { return r.refuseName(name) }
	d := dialog.NewForm(lang.L("Rename the alternative"), lang.L("Rename"), lang.L("Cancel"),
		[]*widget.FormItem{widget.NewFormItem(lang.L("Name"), entry)},
		func(agreed bool) {
			if agreed {
				r.rename(entry.Text)
			}
			r.keyboard.take()
		}, r.win)
	d.Resize(fyne.NewSize(440, 0))
	d.Show()
	r.win.Canvas().Focus(entry)
}

// refuseName says why the alternative in hand can't bear that name.
func (r *Room) refuseName(name string) error {
	switch w := r.kept(); {
	case w == nil || r.alternative >= len(w.Alternatives):
		return nil
	case name == "":
		return fmt.Errorf("%s", lang.L("Give it a name."))
	case len([]rune(name)) > longestName:
		return fmt.Errorf("%s", lang.L("The name is too long."))
	default:
		for i, a := range w.Alternatives {
			if i != r.alternative && a.Name == name {
				return fmt.Errorf("%s", lang.L("Another alternative has this name."))
			}
		}
	}
	return nil
}

func (r *Room) rename(name string) {
	if r.refuseName(name) != nil {
		return
	}
	r.alter(lang.L("rename to “{{.Name}}”", map[string]any{"Name": name}), func(w *planfile.Web, a *planfile.Alternative) {
		if w.Chosen == a.Name {
			w.Chosen = name
		}
		a.Name = name
	})
}

// unused is the name, with a number if it is taken.
func unused(among []planfile.Alternative, name string) string {
	taken := map[string]bool{}
	for _, a := range among {
		taken[a.Name] = true
	}
	if base := []rune(name); len(base) > longestName-4 {
		name = string(base[:longestName-4])
	}
	out := name
	for n := 2; taken[out]; n++ {
		out = fmt.Sprintf("%s %d", name, n)
	}
	return out
}
