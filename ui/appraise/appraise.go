// Package appraise is the form in which a surgeon writes down what is found at
// one sitting: how webs look and feel, scars, digits, the donor site. What the
// program has measured stands beside each finding.
//
//	form := appraise.New()
//	form.OnSave = func(a appraisal.Appraisal) error { return book.SaveAppraisal(sitting.ID, a) }
//	form.Show(about, a, figures)
//	page := form.Object()
//	form.Finish() // before the casebook is closed
//
// There is no button to save with: every change is kept at once. OnSave is called
// beside Fyne's goroutine; all methods are called on it.
package appraise

import (
	"sync"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/hand"
	"ogive/imaging/appraisal"
	"ogive/imaging/casebook"
	"ogive/ui/flow"
	"ogive/ui/look"
)

// Beside names a measured figure: what was measured, and where.
type Beside struct {
	Figure appraisal.Figure
	Place  appraisal.Place
}

// Form is the form.
type Form struct {
	// OnSave keeps the appraisal. Calls come one after the other, with the latest
	// state; one that fails is said in the form and tried again at the next change.
	OnSave func(a appraisal.Appraisal) error

	do       func(func())
	given    appraisal.Appraisal
	figures  map[Beside]string
	sections []*section
	total    *widget.Label
	remarks  *widget.Entry
	state    *widget.Label
	only     bool // reading only
	filling  bool // what changes now comes from Show, not from the user

	content *fyne.Container
	stack   *flow.Stack
	scroll  *container.Scroll
	root    *fyne.Container

	saving sync.WaitGroup
	lock   sync.Mutex
	next   *appraisal.Appraisal // the latest that is not kept yet
	busy   bool
}

// New is an empty form.
func New() *Form {
	f := &Form{do: fyne.Do, total: widget.NewLabel(""), state: widget.NewLabel("")}
	f.total.TextStyle.Bold = true
	f.state.Wrapping = fyne.TextWrapWord
	f.remarks = widget.NewMultiLineEntry()
	f.remarks.Wrapping = fyne.TextWrapWord
	f.remarks.SetMinRowsVisible(3)
	f.remarks.OnChanged = func(text string) {
		if !f.filling {
			f.given.Remarks = text
			f.changed()
		}
	}
	f.stack = &flow.Stack{}
	f.content = container.New(f.stack)
	f.scroll = container.NewVScroll(container.New(layout.NewCustomPaddedLayout(0, 0, 16, 10), f.content))
	f.stack.OnHeight = func() { f.content.Refresh(); f.scroll.Refresh() }
	f.root = container.NewBorder(nil, container.New(layout.NewCustomPaddedLayout(0, 4, 8, 8), f.state), nil, nil, f.scroll)
	return f
}

// Object is the form, to be shown under a heading that names case and sitting.
func (f *Form) Object() fyne.CanvasObject { return f.root }

// Show fills the form with what was found at one sitting of a case. Figures, which may be
// nil, are what was measured, in words with their intervals.
func (f *Form) Show(about casebook.Case, a appraisal.Appraisal, figures map[Beside]string) {
	f.filling = true
	defer func() { f.filling = false }()
	f.given, f.figures, f.sections = a, figures, nil
	f.content.RemoveAll()
	f.content.Add(flush(0, remark(lang.L("Leave open what you did not look at. An answer is taken back by choosing it again."))))
	f.addSections(about)
	f.remarks.SetText(a.Remarks)
	f.content.Add(flush(0, heading(lang.L("Remarks"))))
	f.content.Add(f.remarks)
	f.content.Add(flush(0, remark(lang.L("Wordings without a source beneath them are this program's own."))))
	f.enable()
	f.refill()
	f.say(lang.L("Every answer is kept at once."), false)
	f.scroll.ScrollToTop()
	f.stack.Arrange()
	f.content.Refresh()
}

// ReadOnly lets the form be looked at only.
func (f *Form) ReadOnly(only bool) {
	f.only = only
	f.enable()
}

func (f *Form) enable() {
	all := []fyne.Disableable{f.remarks}
	for _, s := range f.sections {
		for _, r := range s.rows {
			all = append(all, r.answers, r.note, r.pen)
		}
	}
	for _, d := range all {
		if f.only {
			d.Disable()
		} else {
			d.Enable()
		}
	}
}

func (f *Form) addSections(about casebook.Case) {
	webs := places(about)
	for _, s := range []struct {
		title string
		scope appraisal.Scope
		at    []appraisal.Place
	}{
		{lang.L("The web"), appraisal.OfWeb, webs},
		{lang.L("The digits beside it"), appraisal.OfDigit, digitsBeside(webs)},
		{lang.L("The hand"), appraisal.OfHand, handsOf(webs)},
		{lang.L("Elsewhere"), appraisal.OfPatient, []appraisal.Place{appraisal.Patient}},
	} {
		section := newSection(f, s.scope, s.at)
		f.sections = append(f.sections, section)
		section.addTo(f.content, s.title)
	}
}

// places are the webs a case is about: those that were joined, else all of the
// affected hands.
func places(about casebook.Case) []appraisal.Place {
	var out []appraisal.Place
	for _, j := range about.Joins {
		out = append(out, appraisal.Web(j.Hand, j.Web))
	}
	if len(out) > 0 {
		return out
	}
	for _, side := range []hand.Side{hand.Left, hand.Right} {
		if about.Hand == casebook.BothHands || string(about.Hand) == side.String() {
			for _, w := range hand.Webs {
				out = append(out, appraisal.Web(side, w))
			}
		}
	}
	return out
}

func digitsBeside(webs []appraisal.Place) []appraisal.Place {
	var out []appraisal.Place
	for _, side := range []hand.Side{hand.Left, hand.Right} {
		for _, d := range hand.Digits {
			for _, w := range webs {
				radial, ulnar := w.Web.Digits()
				if w.Hand == side && (d == radial || d == ulnar) {
					out = append(out, appraisal.Digit(side, d))
					break
				}
			}
		}
	}
	return out
}

func handsOf(webs []appraisal.Place) []appraisal.Place {
	var out []appraisal.Place
	for _, side := range []hand.Side{hand.Left, hand.Right} {
		for _, w := range webs {
			if w.Hand == side {
				out = append(out, appraisal.Hand(side))
				break
			}
		}
	}
	return out
}

// refill shows what is given at the places that are chosen.
func (f *Form) refill() {
	for _, s := range f.sections {
		s.fill()
	}
	f.sum()
	f.stack.Arrange()
}

// set takes an answer or a note of the user.
func (f *Form) set(g appraisal.Given) {
	f.given.Set(g)
	f.sum()
	f.changed()
}

func (f *Form) sum() {
	if len(f.sections) == 0 {
		return
	}
	web := f.sections[0].at[f.sections[0].now]
	given := 0
	for _, k := range appraisal.ScarScale {
		if _, ok := f.given.Score(k, web); ok {
			given++
		}
	}
	if total, all := f.given.Total(web); all {
		f.total.SetText(lang.L("Vancouver Scar Scale: {{.Total}} of {{.Worst}}", map[string]any{"Total": total, "Worst": appraisal.WorstScar}))
	} else {
		f.total.SetText(lang.L("Vancouver Scar Scale: no total yet, {{.Given}} of {{.All}} items given", map[string]any{"Given": given, "All": len(appraisal.ScarScale)}))
	}
}

func (f *Form) say(text string, bad bool) {
	f.state.Importance = widget.MediumImportance
	if bad {
		f.state.Importance = widget.DangerImportance
	}
	f.state.SetText(text)
	f.root.Refresh()
}

func heading(text string) *widget.Label {
	l := widget.NewLabelWithStyle(text, fyne.TextAlignLeading, fyne.TextStyle{Bold: true})
	l.SizeName = theme.SizeNameSubHeadingText
	return l
}

// flush brings the text of a label to the edge at which everything else begins.
func flush(top float32, l *widget.Label) fyne.CanvasObject {
	return container.New(layout.NewCustomPaddedLayout(top, 0, -look.Size(theme.SizeNameInnerPadding), 0), l)
}

func remark(text string) *widget.Label {
	l := widget.NewLabel(text)
	l.Wrapping, l.SizeName = fyne.TextWrapWord, theme.SizeNameCaptionText
	return l
}
