// Package planskin is the panel on the skin that a plan needs: the girths of the
// two digits, what skin is short, what the flap brings, the graft that remains,
// and the surgeon's own list of donor sites.
//
//	p := planskin.New(win)
//	p.OnChange = room.Change
//	p.Show(file, plan, hand.ThirdWeb) // after every change
//	p.Finish()                        // before the plan is closed
package planskin

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"ogive/geometry/hand"
	"ogive/geometry/skinbudget"
	"ogive/imaging/planfile"
	"ogive/imaging/planning"
	"ogive/imaging/wording"
	"ogive/ui/column"
	"ogive/ui/flow"
)

// Panel is the panel.
type Panel struct {
	// OnChange makes one named step that can be undone, and shows what follows.
	OnChange func(name string, by func(*planfile.File))
	// InHand is the name of the alternative that is seen on the photograph, "" where
	// there is none. It may be nil.
	InHand func() string

	file  planfile.File
	plan  planning.Plan
	web   hand.Web
	shows int // counts calls of Show

	page    *column.Page
	nothing *column.Text // instead of all the rest
	budget  []fyne.CanvasObject
	girths  [2]*girth // radial, ulnar
	missing *column.Notice
	whose   *whose
	figures *figures
	graft   *graft
	donors  *donors
}

// New is the panel without a plan.
func New(_ fyne.Window) *Panel {
	p := &Panel{page: column.NewPage(), nothing: column.Body(lang.L("No web is planned yet: begin a plan, then skin can be reckoned.")),
		missing: column.NewNotice(""), figures: newFigures(), graft: newGraft()}
	p.girths = [2]*girth{newGirth(p, true), newGirth(p, false)}
	p.donors = newDonors(p)
	p.whose = newWhose(p)
	p.budget = []fyne.CanvasObject{
		column.Heading(lang.L("Girths")),
		column.Remark(lang.L("Tape each digit once around, at the middle of the join. A width from callipers will do where taping can't be done.")),
		p.girths[0], p.girths[1],
		column.Heading(lang.L("Skin that is short")), p.whose, p.missing,
	}
	p.budget = append(p.budget, p.figures.objects()...)
	p.budget = append(p.budget, p.graft.objects()...)
	p.page.Add(p.nothing)
	p.page.Add(p.budget...)
	p.page.Add(p.donors.objects()...)
	p.show()
	return p
}

// Object is the panel, which scrolls by itself.
func (p *Panel) Object() fyne.CanvasObject { return p.page.Object() }

// Show shows the skin of a web of the plan.
func (p *Panel) Show(f planfile.File, plan planning.Plan, web hand.Web) {
	p.shows++
	mine := p.shows
	if web != p.web {
		p.Finish()
		if mine != p.shows {
			// What was still being written has changed the plan, and it has been shown
			// anew; only the web is another one.
			f, plan = p.file, p.plan
		}
	}
	p.file, p.plan, p.web = f, plan, web
	p.show()
}

// Finish takes what is still being written.
func (p *Panel) Finish() {
	for _, g := range p.girths {
		g.field.Finish()
	}
	p.donors.finish()
}

func (p *Panel) change(name string, by func(*planfile.File)) {
	if p.OnChange != nil {
		p.OnChange(name, by)
	}
}

func (p *Panel) show() {
	kept, reckoned := p.file.Web(p.web), p.reckoned()
	planned := kept != nil
	flow.Visible(p.nothing, !planned)
	for _, o := range p.budget {
		flow.Visible(o, planned)
	}
	if planned {
		p.showGirths(kept.Girths)
		p.whose.show(*kept)
		p.missing.Set(missing(*kept, reckoned))
		p.figures.show(reckoned)
		p.graft.show(p.web, reckoned.Skin)
	}
	p.donors.show(p.file.Donors)
	p.page.Arrange()
}

// reckoned is what follows from the plan of the web.
func (p *Panel) reckoned() planning.Web {
	for _, w := range p.plan.Webs {
		if w.Web == p.web {
			return w
		}
	}
	return planning.Web{Web: p.web, Chosen: -1}
}

// missing is what is still to be done before skin can be reckoned.
func missing(kept planfile.Web, w planning.Web) string {
	if w.Skin != nil {
		return ""
	}
	switch g := kept.Girths; {
	case g == nil || (g.Radial == planfile.Girth{}) && (g.Ulnar == planfile.Girth{}):
		return lang.L("Nothing is reckoned yet: give the girths of both digits.")
	case (g.Radial == planfile.Girth{}) || (g.Ulnar == planfile.Girth{}):
		radial, ulnar := kept.Web.Digits()
		if g.Radial != (planfile.Girth{}) {
			radial = ulnar
		}
		return lang.L("Nothing is reckoned yet: the girth of the {{.Digit}} is missing.", map[string]any{"Digit": wording.Finger(radial)})
	case kept.Join == nil:
		return lang.L("Nothing is reckoned yet: mark both ends of the join on the photograph, where the zigzag is drawn.")
	case w.Chosen < 0:
		return lang.L("Nothing is reckoned yet: choose one of the alternatives, since each brings its own flap.")
	case len(w.Remarks) > 0:
		return w.Remarks[len(w.Remarks)-1]
	}
	return lang.L("Nothing could be reckoned: check the girths and the join.")
}

// fromWidth reports whether a girth is told from the width of a digit.
func fromWidth(g planfile.Girth) bool { return g.Taped == 0 && g.Width > 0 }

func (p *Panel) showGirths(kept *planfile.Girths) {
	var both planfile.Girths
	if kept != nil {
		both = *kept
	}
	p.girths[0].show(both.Radial)
	p.girths[1].show(both.Ulnar)
}

// remarks are those on the reckoning, without what stands at the girths.
func remarks(s *planning.Skin) []string {
	var out []string
	for _, r := range s.Remarks {
		if r != skinbudget.WidthWarning {
			out = append(out, r)
		}
	}
	return out
}
