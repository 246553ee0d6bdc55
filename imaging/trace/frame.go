package trace

import (
	"fmt"
	"math"

	"ogive/geometry/plane"
)

type (
	point  = plane.PixelPoint
	vector = plane.Vector[plane.Pixel]
)

// frame is what three clicks say about a web before any pixel has been looked
// at: where the arch lies, how wide the gap is, which side is drape.
type frame struct {
	seeds [3]point
	// axis points distally, across from the axis to the first border; both are
	// one pixel long.
	axis, across vector
	// level is how far distal of the crown each border click lies, side how
	// far across.
	level, side [2]float64
	gap         float64
	// slack is how far a click may lie from the border it means.
	slack float64
	// turn is +1 or -1: the normal towards the drape is turn times the
	// direction of travel turned a quarter from x to y.
	turn float64
}

// A click is expected within three standard deviations of 2 pixels. Nobody sees
// single pixels of a picture that is shrunk to the screen, so the deviation grows
// with the picture: 1 in 720 of its diagonal is about 2 pixels of a screen.
const (
	clickSD         = 2.0
	clicksAcross    = 720.0
	slackSDs        = 3.0
	slackOfGap      = 0.4
	narrowestGap    = 4.0
	leastOpening    = 3.0 // degrees at the crown
	greatestOpening = 165.0
)

func newFrame(seeds [3]point, w, h int) (frame, error) {
	for i, s := range seeds {
		if !s.Finite() || s.X < 0 || s.Y < 0 || float64(s.X) > float64(w) || float64(s.Y) > float64(h) {
			return frame{}, fmt.Errorf("click %d of 3 at (%.1f, %.1f) lies outside the photograph of %d x %d pixels; click inside it", i+1, s.X, s.Y, w, h)
		}
	}
	f := frame{seeds: seeds}
	a, b := seeds[0].Sub(seeds[1]), seeds[2].Sub(seeds[1])
	f.gap = float64(seeds[0].Distance(seeds[2]))
	if f.gap < narrowestGap || a.Norm() < narrowestGap || b.Norm() < narrowestGap {
		return frame{}, fmt.Errorf("the three clicks lie within %.0f pixels of each other; click the border of one finger, the crown and the border of the other finger, further apart", narrowestGap)
	}
	opening := a.AngleTo(b).Degrees()
	if opening < leastOpening || opening > greatestOpening {
		return frame{}, fmt.Errorf("the three clicks lie on one line; click in the order border of one finger, crown, border of the other finger")
	}
	f.axis = a.Direction().Add(b.Direction()).Direction()
	f.across = f.axis.Left()
	if f.across.Dot(a) < 0 {
		f.across = f.across.Scale(-1)
	}
	f.turn = math.Copysign(1, float64(seeds[1].Sub(seeds[0]).Cross(seeds[2].Sub(seeds[0]))))
	f.level = [2]float64{float64(a.Dot(f.axis)), float64(b.Dot(f.axis))}
	f.side = [2]float64{float64(a.Dot(f.across)), float64(b.Dot(f.across))}
	sd := max(clickSD, math.Hypot(float64(w), float64(h))/clicksAcross)
	f.slack = max(4, min(slackSDs*sd, slackOfGap*f.gap))
	return f, nil
}

// along and over are the coordinates of p in the frame.
func (f frame) at(p point) (along, over float64) {
	v := p.Sub(f.seeds[1])
	return float64(v.Dot(f.axis)), float64(v.Dot(f.across))
}

// pointAt is the inverse of at.
func (f frame) pointAt(along, over float64) point {
	return f.seeds[1].Add(f.axis.Scale(along)).Add(f.across.Scale(over))
}

// margin is how far around the clicks the photograph is looked at.
func (f frame) margin() float64 {
	reach := min(f.gap, max(f.level[0], f.level[1]))
	return max(0.3*reach, 0.15*f.gap) + f.slack + 2
}

// inside is how deep p lies inside the triangle of the clicks: 0 on its outline
// or outside, 1/3 at its centroid.
func (f frame) inside(p point) float64 {
	area := func(a, b point) float64 { return f.turn * float64(b.Sub(a).Cross(p.Sub(a))) }
	whole := f.turn * float64(f.seeds[1].Sub(f.seeds[0]).Cross(f.seeds[2].Sub(f.seeds[0])))
	least := min(area(f.seeds[0], f.seeds[1]), min(area(f.seeds[1], f.seeds[2]), area(f.seeds[2], f.seeds[0])))
	return max(0, least/whole)
}

// distal is how far p lies beyond the level of the click on its side.
func (f frame) distal(along, over float64) float64 {
	if over > 0 {
		return along - f.level[0]
	}
	return along - f.level[1]
}

// surelySkin reports whether a place is on the hand whatever the arch's shape:
// proximal of the crown, or beyond the border of a finger but not beyond the
// finger.
func (f frame) surelySkin(along, over float64) bool {
	m, clear := f.margin(), 0.7*f.slack
	if along < -clear {
		return along > -m && over < f.side[0] && over > f.side[1]
	}
	if f.distal(along, over) > 0 {
		return false
	}
	beyond := max(over-f.side[0], f.side[1]-over)
	return beyond > clear && beyond < clear+0.25*f.gap
}
