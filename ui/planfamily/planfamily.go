// Package planfamily is the panel on what the family is told: findings to tick,
// the words on each, which the surgeon may change, and the page as it will read.
//
//	p := planfamily.New(win)
//	p.OnChange = room.Change
//	p.Show(file, plan, web) // after every change
//	p.Finish()              // before the plan is closed
package planfamily

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/hand"
	"ogive/imaging/family"
	"ogive/imaging/planfile"
	"ogive/imaging/planning"
	"ogive/ui/column"
	"ogive/ui/look"
)

// Panel is the panel.
type Panel struct {
	// OnChange makes one named step that can be undone, and shows what follows.
	OnChange func(name string, by func(*planfile.File))

	win  fyne.Window
	told planfile.Family

	page   *column.Page
	ticks  []*widget.Check
	state  *column.Text
	points []*point
	said   *column.Text // what was copied
}

// New is the panel without a plan.
func New(win fyne.Window) *Panel {
	p := &Panel{win: win, page: column.NewPage(), state: column.Body(""), said: column.Remark("")}
	p.page.Add(column.Heading(lang.L("Found on this hand")),
		column.Remark(lang.L("What is ticked is told to the family in plain words: what parting the fingers will not change, and what may need another operation.")))
	for _, f := range family.Findings() {
		tick := widget.NewCheck(f.Finding, nil)
		tick.OnChanged = func(on bool) { p.tick(f, on) }
		p.ticks = append(p.ticks, tick)
		p.page.Add(tick)
	}
	see := widget.NewButtonWithIcon(lang.L("See the page"), look.Icon(look.IconPicture), p.see)
	see.Importance = widget.HighImportance
	copied := widget.NewButtonWithIcon(lang.L("Copy the text"), look.Icon(look.IconCopy), p.copy)
	p.page.Add(column.Heading(lang.L("The family's page")), p.state, column.Line(see, copied), p.said,
		column.Remark(lang.L("The words are a draft to speak from. Change what you like; a text that is emptied is left out.")))
	for _, d := range family.All() {
		pt := newPoint(p, d)
		p.points = append(p.points, pt)
		p.page.Add(pt)
	}
	p.show()
	return p
}

// Object is the panel, which scrolls by itself.
func (p *Panel) Object() fyne.CanvasObject { return p.page.Object() }

// Show shows what the family is told by the plan; it belongs to the whole hand,
// so that the web makes no difference.
func (p *Panel) Show(f planfile.File, _ planning.Plan, _ hand.Web) {
	p.told = f.Family
	p.show()
}

// Finish takes what is still being written.
func (p *Panel) Finish() {
	for _, pt := range p.points {
		pt.field.Finish()
	}
}

func (p *Panel) show() {
	for i, f := range family.Findings() {
		p.ticks[i].SetChecked(slices.Contains(p.told.Findings, f.Key))
	}
	for _, pt := range p.points {
		pt.show()
	}
	p.state.Set("")
	if len(p.told.Findings)+len(p.told.Texts) == 0 {
		p.state.Set(lang.L("Nothing is ticked or written yet: the sheet has no page for the family."))
	}
	p.page.Arrange()
}

// tick takes a finding, or takes it back. A tick that only shows the plan is no
// step.
func (p *Panel) tick(f family.Point, on bool) {
	if slices.Contains(p.told.Findings, f.Key) == on || p.OnChange == nil {
		return
	}
	gaps := map[string]any{"Finding": f.Finding}
	step := lang.L("tick: {{.Finding}}", gaps)
	if !on {
		step = lang.L("untick: {{.Finding}}", gaps)
	}
	p.said.Set("")
	p.OnChange(step, func(file *planfile.File) {
		file.Family.Findings = slices.DeleteFunc(slices.Clone(file.Family.Findings), func(key string) bool { return key == f.Key })
		if on {
			file.Family.Findings = append(file.Family.Findings, f.Key)
		}
	})
}

// own is the surgeon's own text on a point, if there is one.
func (p *Panel) own(key string) (string, bool) {
	i := slices.IndexFunc(p.told.Texts, func(t planfile.Text) bool { return t.Key == key })
	if i < 0 {
		return "", false
	}
	return p.told.Texts[i].Text, true
}

// write takes a text on a point; the draft itself is no text of one's own.
func (p *Panel) write(d family.Point, text string, step string) {
	if p.OnChange == nil {
		return
	}
	p.said.Set("")
	p.OnChange(step, func(file *planfile.File) {
		texts := slices.Clone(file.Family.Texts)
		i := slices.IndexFunc(texts, func(t planfile.Text) bool { return t.Key == d.Key })
		switch draft := text == d.Text; {
		case draft && i >= 0:
			texts = slices.Delete(texts, i, i+1)
		case draft:
		case i >= 0:
			texts[i].Text = text
		default:
			texts = append(texts, planfile.Text{Key: d.Key, Text: text})
		}
		file.Family.Texts = texts
	})
}

// Points are what the page tells, in order.
func (p *Panel) Points() []family.Point {
	own := map[string]string{}
	for _, t := range p.told.Texts {
		own[t.Key] = t.Text
	}
	return family.Points(p.told.Findings, own)
}
