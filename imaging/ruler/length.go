package ruler

import "ogive/geometry/plane"

// Length is the length between the two ends as the ticks tell it, and whether
// they tell it for certain: all were counted reliably, their pattern of long and
// short ones says how far apart they are, and no click may have meant the tick
// beside it. What the pattern says is common practice only, so a user is asked to
// confirm the length by the numbers on the ruler.
func (f Found) Length() (length plane.Millimetre, certain bool) {
	step := f.Graduation.step()
	certain = step > 0 && f.reliable() && len(f.counts()) == 1
	return plane.Millimetre(float64(f.Spaces()) * step), certain
}
