package reading

import (
	"ogive/geometry/hand"
	"ogive/geometry/scale"
)

// Plane is the best map of the photograph read last, by which marks beside the
// webs can be brought onto the same plane. There is none where no web of it had
// a traced border.
func (r *Reader) Plane() (m scale.Map, ok bool) {
	for _, w := range hand.Webs {
		if last, ok := r.last[w]; ok {
			return last.best, true
		}
	}
	return scale.Map{}, false
}
