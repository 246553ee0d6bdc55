package round

import (
	"maps"

	"ogive/geometry/plane"
	"ogive/imaging/rounds"
)

// heldAnswer is what was chosen on a picture by eye when its round was left. It is
// no answer yet, and so it is kept only while the program is open.
type heldAnswer struct {
	picture int
	answers map[rounds.Asked]string
	crown   *plane.PixelPoint
}

// hold keeps what is chosen on the picture in hand.
func (r *Room) hold() {
	if t := r.taking; t != nil && r.page == judging {
		r.held[t.round.ID] = heldAnswer{t.picture.Number, maps.Clone(t.answers), t.crown}
	}
}

// restore takes it up again, if the round is at the same picture.
func (r *Room) restore() {
	t := r.taking
	h, ok := r.held[t.round.ID]
	delete(r.held, t.round.ID)
	if ok && h.picture == t.picture.Number && h.answers != nil {
		t.answers, t.crown = h.answers, h.crown
	}
}
