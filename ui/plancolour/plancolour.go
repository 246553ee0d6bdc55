// Package plancolour is the panel on the colour of skin: round patches placed on
// photographs, balanced on white or grey, what they measure, how far they lie
// apart, and which flap that speaks for. The choice stays with the surgeon.
//
//	p := plancolour.New(win)
//	p.OnChange, p.OnRedraw = room.Change, room.Redraw
//	room.Add(plan.Panel{Object: p.Object(), Lines: p.Lines, Handles: p.Handles, OnPlace: p.Place,
//		Wants: p.Wants, OnDragHandle: p.DragHandle, OnDropHandle: p.DropHandle, ...})
//	p.Use(table, open, plancolour.Other{Name: "palm.jpg", Title: "Palm, at operation"})
//	p.Show(file, plan, web) // after every change
//
// Photographs are read and sampled beside Fyne's goroutine; all methods belong to
// it, and so does what open is called for: open itself is called beside it.
package plancolour

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/skincolour"
	"ogive/imaging/photo"
	"ogive/imaging/planfile"
	"ogive/imaging/planning"
	"ogive/ui/column"
)

// Other is another photograph on which patches can be placed: Name is what a
// patch in a plan file calls it, Title what the user does.
type Other struct{ Name, Title string }

// Panel is the panel. Its functions may be nil.
type Panel struct {
	// OnChange makes one named step that can be undone, and shows what follows.
	OnChange func(name string, by func(*planfile.File))
	// OnPlace tells which patch a click on the plan's photograph is wanted for, by
	// its name in a plan file; "" when none is wanted any longer.
	OnPlace func(name string)
	// OnRedraw asks for Lines and Handles to be drawn anew.
	OnRedraw func()

	win    fyne.Window
	table  norms.Table
	source *source
	others []Other

	file    planfile.File
	plan    planning.Plan
	asking  string // the name of the patch that a click is wanted for
	held    *held  // a patch that is being dragged or sized
	sampled []planfile.Patch
	fresh   bool // sampled is what was sampled
	asked   int  // counts samplings, so that what comes late is dropped

	page    *column.Page
	list    *column.Block
	rows    map[rowKey]*row
	results *results

	apart func(work func()) // does work that would hold up the window
	do    func(work func()) // comes back to Fyne's goroutine
}

// New is the panel without a plan.
func New(win fyne.Window) *Panel {
	p := &Panel{win: win, page: column.NewPage(), list: column.NewList(), rows: map[rowKey]*row{},
		results: newResults(), apart: func(work func()) { go work() }, do: fyne.Do, source: newSource(nil)}
	p.page.Add(
		column.Heading(lang.L("Patches of skin")),
		column.Remark(lang.L("Place them where the skin lies level and does not shine. A white or grey patch in the same photograph takes the colour of the light out.")),
		p.list)
	p.page.Add(p.results.objects()...)
	p.showRows()
	p.results.clear(lang.L("Nothing is sampled yet: place a patch."))
	return p
}

// Object is the panel, which scrolls by itself.
func (p *Panel) Object() fyne.CanvasObject { return p.page.Object() }

// Use says by which limits colours are judged, how photographs are opened and
// which there are beside the plan's own. Open is given the name of a patch's
// photograph, "" for the plan's own.
func (p *Panel) Use(table norms.Table, open func(name string) (*photo.Photograph, error), others ...Other) {
	p.table, p.source, p.others, p.fresh = table, newSource(open), others, false
}

// Show shows the patches of the plan; they belong to the whole hand, so that the
// web makes no difference.
func (p *Panel) Show(f planfile.File, plan planning.Plan, _ hand.Web) {
	p.file, p.plan, p.held = f, plan, nil
	p.showRows()
	p.sample()
	p.page.Arrange()
	p.redraw()
}

// Patches are the patches of the plan.
func (p *Panel) Patches() []planfile.Patch { return slices.Clone(p.file.Patches) }

// Finish gives up a click that was wanted, and lets go of the photographs.
func (p *Panel) Finish() {
	p.Stop()
	p.source.forget()
}

func (p *Panel) change(name string, by func(*planfile.File)) {
	if p.OnChange != nil {
		p.OnChange(name, by)
	}
}

func (p *Panel) redraw() {
	if p.OnRedraw != nil {
		p.OnRedraw()
	}
}

func (p *Panel) limits() (skincolour.Limits, error) { return skincolour.LimitsOf(p.table) }

// title is what the user calls a photograph.
func (p *Panel) title(photograph string) string {
	if photograph == "" {
		return lang.L("this photograph")
	}
	for _, o := range p.others {
		if o.Name == photograph {
			return o.Title
		}
	}
	return photograph
}
