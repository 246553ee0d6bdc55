package board

import (
	"ogive/geometry/reading"
	"ogive/ui/marking"
)

// Where marks crowd on the screen, as on an infant's hand seen whole, they are
// drawn smaller, so that the skin between them can be seen.
const (
	roomOfMark  = 30   // how far apart marks are drawn in full, in units of Fyne's
	roomOfWeb   = 46   // how wide a web opens that is drawn in full
	leastMark   = 0.5  // the smallest a mark is drawn
	leastLabels = 0.75 // the smallest mark that is named
)

// rooms are the parts of its size at which each of the marks is drawn.
func (p *pen) rooms(placed []marking.Placed) map[marking.Spot]float64 {
	out := make(map[marking.Spot]float64, len(placed))
	for i, m := range placed {
		q, room := p.at(m.At), 1.0
		for j, other := range placed {
			if i != j {
				room = min(room, p.at(other.At).Sub(q).Length()/(roomOfMark*p.scale))
			}
		}
		out[m.Spot] = max(room, leastMark)
	}
	return out
}

// roomOf is the part of their size at which the marks of a fitted arch are drawn.
func (p *pen) roomOf(w reading.Web) float64 {
	if len(w.Curve) == 0 {
		return 1
	}
	mouth := p.at(w.Curve[0]).Sub(p.at(w.Curve[len(w.Curve)-1])).Length()
	span := p.at(w.Springing[0]).Sub(p.at(w.Springing[1])).Length()
	return min(max(mouth, span, leastMark*roomOfWeb*p.scale)/(roomOfWeb*p.scale), 1)
}
