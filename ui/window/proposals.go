package window

import (
	"maps"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/imaging/propose"
	"ogive/ui/marking"
)

// seeds are the three seeds of each web.
type seeds = map[hand.Web][3]plane.PixelPoint

// proposals is what the program knows of borders found without clicks.
type proposals struct {
	// stage is what was known when borders were looked for last: 0 nothing yet,
	// 1 the scale, 2 the joints too.
	stage   int
	refused bool
	held    seeds // found while a point was dragged
}

// propose looks for the borders of webs beside the window, once when the scale
// is there and once more when the joints are.
func (w *Window) propose() {
	s := w.work.State()
	if s.Reference() == nil || s.Side == 0 || s.View == hand.WebView || w.refused || w.work.RedoName() != "" {
		return
	}
	stage := 1
	if done, of := s.Progress(marking.Joints); done == of {
		stage = 2
	}
	if w.stage >= stage || len(unbegun(s)) == 0 {
		return
	}
	w.stage = stage
	work, marks := w.work, s.Marks()
	w.background(func() func() {
		found := propose.Webs(work.Photograph, marks)
		return func() {
			if w.work == work {
				w.take(found)
			}
		}
	})
}

// unbegun are the webs on which nothing is marked.
func unbegun(s marking.State) []hand.Web {
	var webs []hand.Web
	for _, spot := range s.Order() {
		if spot.Kind != marking.SeedPoint || spot.N != 0 || len(s.Edges[spot.Web]) > 0 {
			continue
		}
		begun := false
		for n := range 3 {
			_, placed := s.Points[marking.Spot{Kind: marking.SeedPoint, Web: spot.Web, N: n}]
			begun = begun || placed
		}
		if !begun {
			webs = append(webs, spot.Web)
		}
	}
	return webs
}

func (w *Window) take(found seeds) {
	if w.dragging {
		w.held = found
		return
	}
	free := map[hand.Web]bool{}
	for _, web := range unbegun(w.work.State()) {
		free[web] = true
	}
	found = maps.Clone(found)
	maps.DeleteFunc(found, func(web hand.Web, _ [3]plane.PixelPoint) bool { return !free[web] })
	if len(found) == 0 || w.refused {
		return
	}
	w.done(w.work.Propose(found))
}

func (w *Window) takeHeld() {
	if held := w.held; held != nil {
		w.held = nil
		w.take(held)
	}
}

func (w *Window) proposed() bool { return w.ready() && len(w.work.State().Proposed) > 0 }

func (w *Window) accept() {
	if w.proposed() && !w.dragging {
		w.done(w.work.AcceptProposals())
	}
}

func (w *Window) refuse() {
	if w.proposed() && !w.dragging {
		w.refused, w.selected = true, nil
		w.done(w.work.RejectProposals())
	}
}
