package plan

import (
	"strings"

	"fyne.io/fyne/v2/lang"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/plan"
	"ogive/geometry/plane"
	"ogive/imaging/planfile"
	"ogive/imaging/planning"
	"ogive/imaging/wording"
)

// otherHand is the surest origin of a proposal.
const otherHand = plan.OtherHand

// proposeAll finds out, beside the window, what can be proposed for each web.
func (r *Room) proposeAll() {
	for _, w := range r.file.Webs {
		r.proposeFor(w.Web)
	}
}

func (r *Room) proposeFor(w hand.Web) {
	number, here, other := r.shows, r.model.Here, r.model.Other
	r.apart(func() {
		p := proposalFor(w, here, other)
		r.do(func() {
			if number == r.shows {
				r.proposals[w] = p
				if w == r.web {
					r.refresh()
				}
			}
		})
	})
}

func proposalFor(w hand.Web, here planning.Hand, other *planning.Hand) proposal {
	p, err := here.Propose(w, other)
	if err != nil {
		return proposal{why: wording.Sentence(strings.TrimRight(err.Error(), ".")) + "."}
	}
	a := planfile.Alternative{Name: planning.ProposedName, Arch: planfile.ArchOn(p.Arch, here.Ground.Fit.Best)}
	of := planning.Of(planfile.File{Webs: []planfile.Web{{Web: w, Alternatives: []planfile.Alternative{a}}}}, here, nil)
	return proposal{Proposal: p, curve: of.Webs[0].Alternatives[0].Arch.Pixels}
}

// planWeb takes another web into the plan, with what can be proposed for it.
func (r *Room) planWeb(w hand.Web) {
	b, err := planning.Begin(r.model.Here, r.model.Other, w)
	added := planfile.Web{Web: w}
	switch {
	case err != nil:
		r.notes[w] = wording.Sentence(err.Error()) + "."
	default:
		r.notes[w] = sentences(b.Notes)
		if got := b.File.Web(w); got != nil {
			added = *got
		}
	}
	r.Change(lang.L("plan the {{.Web}}", map[string]any{"Web": wording.Web(w)}), func(f *planfile.File) {
		if f.Web(w) == nil {
			f.Webs = append(f.Webs, added)
		}
	})
	r.take(w)
	r.proposeFor(w)
}

// dropWeb takes the web in hand off the plan.
func (r *Room) dropWeb() {
	w := r.web
	r.Change(lang.L("take the {{.Web}} off the plan", map[string]any{"Web": wording.Web(w)}), func(f *planfile.File) {
		for i := range f.Webs {
			if f.Webs[i].Web == w {
				f.Webs = append(f.Webs[:i], f.Webs[i+1:]...)
				return
			}
		}
	})
}

// proposeAnew adds an alternative as it can be proposed.
func (r *Room) proposeAnew() {
	w := r.web
	b, err := planning.Begin(r.model.Here, r.model.Other, w)
	if err != nil || len(b.Proposals) == 0 {
		r.notes[w] = sentences(b.Notes)
		if err != nil {
			r.notes[w] = wording.Sentence(err.Error()) + "."
		}
		r.refresh()
		return
	}
	r.proposeFor(w)
	begun := b.File.Web(w)
	r.addAlternative(lang.L("propose anew"), begun.Alternatives[0], begun.Join)
}

// usualSpan and usualTurn are the form of an arch that is begun by hand: the
// equilateral arch, as wide as a child's web.
const usualSpan plane.Millimetre = 8

var usualTurn = plane.Degrees(60)

// handDrawn is an arch to be dragged to its place.
func (r *Room) handDrawn() *planfile.Arch {
	m := r.model.Here.Ground.Fit.Best
	form := plan.Form{Shape: arch.Gothic, Span: usualSpan, Turn: usualTurn}
	return planfile.ArchOn(form.Placed(m.Position(r.middle(r.web)), plane.Vector[plane.Millimetre]{}), m)
}

// drawByHand adds an alternative with an arch to be dragged to its place.
func (r *Room) drawByHand() {
	r.addAlternative(lang.L("draw by hand"), planfile.Alternative{Name: lang.L("by hand"), Arch: r.handDrawn()}, nil)
}

// addAlternative adds one to the web in hand and takes it in hand; join is that
// of the web where it has none yet.
func (r *Room) addAlternative(step string, a planfile.Alternative, join *[2]plane.PixelPoint) {
	r.drop()
	w := r.kept()
	if w == nil || len(w.Alternatives) >= mostAlternatives {
		return
	}
	r.alternative = len(w.Alternatives)
	r.Change(step, func(f *planfile.File) {
		w := f.Web(r.web)
		a.Name = unused(w.Alternatives, a.Name)
		w.Alternatives = append(w.Alternatives, a)
		if w.Chosen == "" && len(w.Alternatives) == 1 {
			w.Chosen = a.Name
		}
		if w.Join == nil {
			w.Join = join
		}
	})
	r.keyboard.take()
}
