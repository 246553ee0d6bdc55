package values

import (
	"errors"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/imaging/wording"
)

// form is the limits as they are being edited, above the rows they were read out
// of.
type form struct {
	own     norms.Table
	base    norms.Table // what is edited a copy of
	bands   []pair
	least   *widget.Entry // of the span's tolerance, mm
	percent *widget.Entry
	trouble *widget.Label
	content *fyne.Container
	reasons []*widget.Label // of the bands, then of the tolerance
	use     *widget.Button
	back    *widget.Button
	// placed is called when the trouble has come or gone.
	placed func()
}

// pair is the entries of one band.
type pair struct{ low, high *widget.Entry }

func newForm(current, own norms.Table) *form {
	f := &form{own: own, base: current}
	f.trouble = widget.NewLabel("")
	f.trouble.Wrapping = fyne.TextWrapWord
	f.trouble.Importance = widget.DangerImportance
	f.trouble.TextStyle.Bold = true
	f.trouble.Hide()
	f.content = container.NewVBox(
		remark(lang.L("Verdicts are drawn against these limits. The sources below differ; how a limit was read out of them is said beneath it. Your limits are a copy: the program's own stay as they are.")),
		heading(lang.L("Limits")))
	for _, b := range current.Bands {
		p := pair{f.entry(), f.entry()}
		f.bands = append(f.bands, p)
		f.content.Add(line(bandName(b), p.low, lang.L("to"), p.high, unit(b)))
		f.addReason()
	}
	f.least, f.percent = f.entry(), f.entry()
	f.content.Add(line(lang.L("Tolerance of the span"), f.least, lang.L("mm or"), f.percent, lang.L("per cent, whichever is larger")))
	f.addReason()
	f.content.Add(heading(lang.L("What the sources say")))
	f.content.Add(rows(current))
	f.fill(current)
	return f
}

func (f *form) addReason() {
	r := remark("")
	f.reasons = append(f.reasons, r)
	f.content.Add(r)
}

// entry is an entry for a number; every change is checked at once.
func (f *form) entry() *widget.Entry {
	e := widget.NewEntry()
	e.OnChanged = func(string) { f.check() }
	return e
}

func line(name string, low *widget.Entry, between string, high *widget.Entry, after string) fyne.CanvasObject {
	entry := func(e *widget.Entry) fyne.CanvasObject {
		return container.NewGridWrap(fyne.NewSize(84, e.MinSize().Height), e)
	}
	label := widget.NewLabelWithStyle(name, fyne.TextAlignLeading, fyne.TextStyle{Bold: true})
	return container.NewHBox(container.NewGridWrap(fyne.NewSize(200, label.MinSize().Height), label),
		entry(low), widget.NewLabel(between), entry(high), widget.NewLabel(after))
}

func bandName(b norms.Band) string {
	if b.Figure == indexFigure {
		return wording.Sentence(wording.IndexName(b.View))
	}
	return wording.Sentence(b.Figure)
}

// indexFigure is how package norms names the index.
const indexFigure = "index"

func unit(b norms.Band) string {
	if b.Figure == indexFigure {
		return lang.L("(0 MCP joints, 1 PIP joints)")
	}
	return lang.L("degrees to the long axis of the finger")
}

// largest is the largest limit that means anything.
func largest(b norms.Band) float64 {
	if b.Figure == indexFigure {
		return 1
	}
	return 90
}

// fill writes the limits of a table into the entries.
func (f *form) fill(t norms.Table) {
	for i, b := range t.Bands {
		if i < len(f.bands) {
			f.bands[i].low.SetText(number(b.Low))
			f.bands[i].high.SetText(number(b.High))
			f.reasons[i].SetText(b.Reason)
		}
	}
	f.reasons[len(f.bands)].SetText(t.Span.Reason)
	f.least.SetText(number(float64(t.Span.Least)))
	f.percent.SetText(number(math.Round(1e6*t.Span.Fraction) / 1e4))
}

// reset goes back to the program's own values.
func (f *form) reset() {
	f.base = f.own
	f.fill(f.own)
}

// check shows what is wrong, as soon as it is.
func (f *form) check() {
	if f.percent == nil || f.percent.Text == "" && f.least.Text == "" {
		return
	}
	_, err := f.read()
	f.say(err)
}

// say shows what is wrong, if anything is, and reports whether all is well.
func (f *form) say(err error) bool {
	if err != nil {
		f.trouble.SetText(err.Error())
		f.trouble.Show()
	} else {
		f.trouble.Hide()
	}
	if f.use != nil {
		if err != nil {
			f.use.Disable()
		} else {
			f.use.Enable()
		}
	}
	if f.placed != nil {
		f.placed()
	}
	return err == nil
}

// take is the edited table; it is false if something is wrong, which is said.
func (f *form) take() (norms.Table, bool) {
	t, err := f.read()
	return t, f.say(err)
}

// read is the table with the limits of the entries.
func (f *form) read() (norms.Table, error) {
	t := f.base
	t.Bands = append([]norms.Band{}, f.base.Bands...)
	for i, p := range f.bands {
		b := &t.Bands[i]
		low, err := limit(p.low.Text, bandName(*b), largest(*b))
		if err != nil {
			return t, err
		}
		high, err := limit(p.high.Text, bandName(*b), largest(*b))
		if err != nil {
			return t, err
		}
		if low >= high {
			return t, errors.New(lang.L("{{.Name}}: the lower limit must lie below the upper one.", map[string]any{"Name": bandName(*b)}))
		}
		f.edit(b, low, high)
	}
	least, err := limit(f.least.Text, lang.L("Tolerance of the span"), 50)
	if err != nil {
		return t, err
	}
	percent, err := limit(f.percent.Text, lang.L("Tolerance of the span"), 99)
	if err != nil {
		return t, err
	}
	f.editSpan(&t, plane.Millimetre(least), percent/100)
	return proven(t)
}
