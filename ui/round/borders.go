package round

import (
	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/ui/marking"
)

// borders are the borders that are traced between the marks of a web. They are
// marks too: they are drawn and can be pulled. Of what else is read of the marks
// nothing is kept.
type borders struct {
	edges   map[hand.Web][]plane.PixelPoint
	pulled  map[hand.Web][]plane.PixelPoint // as they were when a pull began
	tracing bool
	again   bool // the marks have changed since the tracing began
}

// trace follows the skin's edge beside the window. While one tracing is under way
// all later wishes become one.
func (b *blind) trace() {
	if b.dragging || !traceable(b.work().State()) {
		b.borders.edges = nil
		return
	}
	if b.borders.tracing {
		b.borders.again = true
		return
	}
	b.borders.tracing = true
	work, state := b.work(), b.work().State()
	b.room.beside(func() func() {
		edges := work.Measure(state).Edges
		return func() { b.traced(work, edges) }
	})
}

func (b *blind) traced(work *marking.Work, edges map[hand.Web][]plane.PixelPoint) {
	if b.room.page != placing || b.work() != work {
		return
	}
	b.borders.tracing, b.borders.edges = false, edges
	if !b.dragging {
		b.draw()
	}
	if b.borders.again {
		b.borders.again = false
		b.trace()
	}
}

func traceable(s marking.State) bool {
	for _, w := range hand.Webs {
		if _, seeded := s.Seeds(w); seeded || len(s.Edges[w]) > 0 {
			return true
		}
	}
	return false
}

func (b *blind) dragEdge(web hand.Web, from, to plane.PixelPoint) {
	if !b.inHand() {
		return
	}
	edge, begun := b.borders.pulled[web]
	if !begun {
		if edge = b.borders.edges[web]; len(edge) == 0 {
			return
		}
		b.borders.pulled = map[hand.Web][]plane.PixelPoint{web: edge}
	}
	b.dragging = true
	b.work().DragEdge(web, edge, from, to)
	b.borders.edges[web] = b.work().State().Edges[web]
	b.draw()
}

func (b *blind) dropEdge(web hand.Web) {
	if b.inHand() && b.dragging {
		b.dragging, b.borders.pulled = false, nil
		b.finished(b.work().DropEdge(web))
	}
}
