// Package plansheet is the panel from which a plan is carried to theatre: what
// goes on the printed sheet, on which paper, saved as PDF, and the outlines for a
// cutter, saved as SVG.
//
//	p := plansheet.New(win)
//	p.Content = func(plan planning.Plan) (sheet.Content, error) { return sheet.Of(plan, here, photograph, words), nil }
//	p.Refused = func(path string) bool { ... } // the photograph itself
//	p.Propose(folder, "H-07")
//	p.Show(file, plan, web) // after every change
//
// Files are made and written beside Fyne's goroutine, and so Content is called; all
// methods belong to it.
package plansheet

import (
	"bytes"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/hand"
	"ogive/imaging/planfile"
	"ogive/imaging/planning"
	"ogive/imaging/sheet"
	"ogive/imaging/wording"
	"ogive/ui/choice"
	"ogive/ui/column"
	"ogive/ui/flow"
	"ogive/ui/look"
)

// Panel is the panel.
type Panel struct {
	// Content is the sheet of a plan, of which the webs that were left out are taken
	// away. It is called beside Fyne's goroutine.
	Content func(planning.Plan) (sheet.Content, error)
	// Refused, if not nil, reports that a file must not be written over, such as the
	// photograph or the plan itself.
	Refused func(path string) bool

	win          fyne.Window
	folder, name string // proposed to save under
	plan         planning.Plan
	left         map[hand.Web]bool // webs left out

	page    *column.Page
	paper   *choice.Choice
	which   *column.Text
	webs    *column.Block
	ticks   map[hand.Web]*widget.Check
	beside  *column.Text
	family  *widget.Check
	nothing *column.Notice
	list    *column.Block
	pdf     *widget.Button
	svg     *widget.Button
	state   *column.Text
	problem *column.Notice
	stale   *column.Notice
	saved   []byte // the plan as it was saved last

	apart func(work func()) // does work that would hold up the window
	do    func(work func()) // comes back to Fyne's goroutine
	busy  bool
}

// papers are the papers in the order in which they are offered.
var papers = []sheet.Paper{sheet.A4, sheet.Letter}

// New is the panel without a plan.
func New(win fyne.Window) *Panel {
	p := &Panel{win: win, folder: ".", page: column.NewPage(), left: map[hand.Web]bool{}, ticks: map[hand.Web]*widget.Check{},
		which: column.Title(lang.L("Webs")), webs: column.NewList(), nothing: column.NewNotice(""), list: column.NewList(),
		state: column.Body(""), problem: column.NewNotice(""), stale: column.NewNotice(""),
		apart: func(work func()) { go work() }, do: fyne.Do}
	p.paper = choice.New("A4", "Letter")
	p.paper.Set(0)
	p.paper.OnChosen = func(int) { p.refresh() }
	p.family = widget.NewCheck(lang.L("With a page for the family"), func(bool) { p.refresh() })
	p.family.Checked = true
	p.beside = column.Title(lang.L("Beside the plan"))
	p.pdf = widget.NewButtonWithIcon(lang.L("Save the sheet (PDF)…"), look.Icon(look.IconPicture), func() { p.ask(asPDF) })
	p.pdf.Importance = widget.HighImportance
	p.svg = widget.NewButtonWithIcon(lang.L("Save the outlines (SVG)…"), look.Icon(look.IconWebs), func() { p.ask(asSVG) })
	p.page.Add(column.Heading(lang.L("The sheet for theatre")), column.Title(lang.L("Paper")), p.paper, p.which, p.webs, p.beside, p.family, p.nothing,
		p.stale, column.Line(p.pdf), column.Line(p.svg), p.state, p.problem,
		column.NewNotice(lang.L("Print at 100 %, without scaling. Then measure both 50 mm bars, across and up: if one is off, don't cut by that page.")),
		column.Heading(lang.L("What is on it")), p.list,
		column.Remark(lang.L("The SVG holds the same outlines for a cutter, one unit being one millimetre.")+" "+wording.Term(wording.Caution)))
	p.refresh()
	return p
}

// Object is the panel, which scrolls by itself.
func (p *Panel) Object() fyne.CanvasObject { return p.page.Object() }

// Propose says where files are to be saved first, and the case's code or another
// word that their names begin with.
func (p *Panel) Propose(folder, name string) { p.folder, p.name = folder, name }

// Show shows the sheet of the plan; it holds all webs, so that the one in hand
// makes no difference.
func (p *Panel) Show(_ planfile.File, plan planning.Plan, _ hand.Web) {
	p.plan = plan
	p.refresh()
}

// Begin forgets what was saved of another plan, and which webs were left out.
func (p *Panel) Begin() {
	p.left, p.saved = map[hand.Web]bool{}, nil
	p.state.Set("")
	p.problem.Set("")
	p.refresh()
}

func (p *Panel) refresh() {
	p.showWebs()
	shown := p.shown()
	told := len(p.plan.File.Family.Findings)+len(p.plan.File.Family.Texts) > 0
	flow.Visible(p.beside, told)
	flow.Visible(p.family, told)
	p.nothing.Set(lacking(shown))
	p.list.Replace(pages(shown, papers[p.paper.Chosen], told && p.family.Checked)...)
	p.enable(printable(shown))
	p.stale.Set("")
	if now := encoded(p.plan.File); p.saved != nil && !bytes.Equal(now, p.saved) {
		p.stale.Set(lang.L("The plan has changed since it was saved here: save and print it anew."))
	}
	p.page.Arrange()
}

// encoded is the plan as it is kept; nil of one that can't be.
func encoded(f planfile.File) []byte {
	data, err := f.Encode()
	if err != nil {
		return nil
	}
	return data
}

// showWebs offers the webs, where there are several.
func (p *Panel) showWebs() {
	var objects []fyne.CanvasObject
	for _, w := range p.plan.Webs {
		tick := p.ticks[w.Web]
		if tick == nil {
			tick = widget.NewCheck(wording.WebName(w.Web), func(on bool) {
				p.left[w.Web] = !on
				p.refresh()
			})
			p.ticks[w.Web] = tick
		}
		if on := !p.left[w.Web]; tick.Checked != on {
			tick.Checked = on
			tick.Refresh()
		}
		objects = append(objects, tick)
	}
	several := len(objects) > 1
	flow.Visible(p.which, several)
	flow.Visible(p.webs, several)
	p.webs.Replace(objects...)
}

// shown is the plan without the webs that are left out.
func (p *Panel) shown() planning.Plan {
	out := p.plan
	out.Webs = slices.DeleteFunc(slices.Clone(out.Webs), func(w planning.Web) bool { return p.left[w.Web] })
	out.File.Webs = slices.DeleteFunc(slices.Clone(out.File.Webs), func(w planfile.Web) bool { return p.left[w.Web] })
	return out
}

func (p *Panel) enable(able bool) {
	for _, b := range []*widget.Button{p.pdf, p.svg} {
		switch able = able && !p.busy; {
		case able && b.Disabled():
			b.Enable()
		case !able && !b.Disabled():
			b.Disable()
		}
	}
}
