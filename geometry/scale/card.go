package scale

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"

	"ogive/geometry/plane"
)

// Method is ByCard.
func (Card) Method() Method { return ByCard }

// Points are the four corners.
func (c Card) Points() []plane.PixelPoint { return c.Corners[:] }

// Fit is the homography through the four corners. The likely maps move every
// corner.
func (c Card) Fit(camera Camera, sd plane.Pixel) (Fit, error) {
	if err := c.check(camera, sd); err != nil {
		return Fit{}, err
	}
	best, ok := c.through(c.Corners)
	if !ok {
		return Fit{}, fmt.Errorf("scale.card: no view of a rectangle has these corners; %s", cardMend)
	}
	fit := newFit(ByCard, best, func(rng *rand.Rand) Map {
		for try := 0; try < 20; try++ {
			var moved [4]plane.PixelPoint
			for i, p := range c.Corners {
				moved[i] = placed(p, sd, rng)
			}
			if m, ok := c.through(moved); ok {
				return m
			}
		}
		return best
	})
	middle := c.middle()
	size := fit.PerPixel(middle)
	fit.warnOfPlacing(float64(size.U95 / size.Value))
	l := camera.lens()
	tilts := make([]float64, len(fit.Likely))
	for i, m := range fit.Likely {
		tilts[i] = float64(l.slantOf(m).angle())
	}
	slices.Sort(tilts)
	fit.warnOfTilt(plane.Angle(tilts[len(tilts)/6]), l.slantOf(best).angle(), "The card is")
	fit.warnOfSize(camera, middle, "scale.width_mm and scale.height_mm")
	return fit, nil
}

const cardMend = "place them on the card's four corners in order around"

func (c Card) check(camera Camera, sd plane.Pixel) error {
	if err := camera.check(sd); err != nil {
		return err
	}
	if err := checkSize("scale.width_mm", c.Width); err != nil {
		return err
	}
	if err := checkSize("scale.height_mm", c.Height); err != nil {
		return err
	}
	if err := checkPoints("scale.card", c.Points()); err != nil {
		return err
	}
	if err := c.checkApart(sd); err != nil {
		return err
	}
	if err := c.checkOrder(sd); err != nil {
		return err
	}
	return c.checkSides()
}

func (c Card) checkApart(sd plane.Pixel) error {
	for i, p := range c.Corners {
		for j := 0; j < i; j++ {
			if d := p.Distance(c.Corners[j]); d < max(1, 5*sd) {
				return fmt.Errorf("scale.card: corners %d and %d lie %.2g px apart, as good as in one place; %s", j+1, i+1, float64(d), cardMend)
			}
		}
	}
	return nil
}

// checkOrder looks at the turn at each corner: around a convex outline all turn
// the same way, around a crossed one two each way, at a dent one the other way.
func (c Card) checkOrder(sd plane.Pixel) error {
	left := 0
	for i, p := range c.Corners {
		before, after := c.Corners[(i+3)%4], c.Corners[(i+1)%4]
		chord := after.Sub(before)
		off := p.Sub(before).Cross(chord.Direction())
		if absolute(off) < max(2*sd, 0.02*chord.Norm()) {
			return fmt.Errorf("scale.card: corners %d, %d and %d lie on one line; %s", (i+3)%4+1, i+1, (i+1)%4+1, cardMend)
		}
		if off > 0 {
			left++
		}
	}
	switch left {
	case 0, 4:
		return nil
	case 2:
		return fmt.Errorf("scale.card: the sides cross; give the corners in order around, not across")
	default:
		return fmt.Errorf("scale.card: one corner lies inside the other three; %s", cardMend)
	}
}

// checkSides finds a card whose corners were begun at the wrong side: that
// would stretch every figure. A side looks shorter by the cosine of the tilt.
func (c Card) checkSides() error {
	p := c.Corners
	wide := p[0].Distance(p[1]) + p[2].Distance(p[3])
	high := p[1].Distance(p[2]) + p[3].Distance(p[0])
	seen, given := math.Log(float64(wide/high)), math.Log(float64(c.Width/c.Height))
	steep, slight := -math.Log(plane.Degrees(55).Cos()), -math.Log(plane.Degrees(40).Cos())
	if math.Abs(seen-given) > steep && math.Abs(seen+given) < slight {
		return fmt.Errorf("scale.card: the side from corner 1 to corner 2 should be %g mm and the next %g mm, but they look the other way round; begin at the other side, or exchange scale.width_mm and scale.height_mm",
			float64(c.Width), float64(c.Height))
	}
	return nil
}

func (c Card) middle() plane.PixelPoint {
	return c.Corners[0].Mid(c.Corners[1]).Mid(c.Corners[2].Mid(c.Corners[3]))
}

// through is the map that takes these corners to the card's: (0, 0), (W, 0),
// (W, H), (0, H), or with -H where they run anticlockwise on the screen, so that
// the map does not mirror. Four corners determine a homography's eight numbers,
// so that the exact map is the least-squares one.
func (c Card) through(q [4]plane.PixelPoint) (Map, bool) {
	square, ok := ontoSquare(q)
	h := float64(c.Height)
	if q[1].Sub(q[0]).Cross(q[3].Sub(q[0])) < 0 {
		h = -h
	}
	return square.then([9]float64{float64(c.Width), 0, 0, 0, h, 0, 0, 0, 1}), ok
}

// ontoSquare is the homography that takes a convex quadrilateral to the unit
// square: the inverse of the one from square to quadrilateral in closed form
// (Heckbert PS. Fundamentals of texture mapping and image warping. University of
// California, Berkeley, 1989, section 2.2.3: from memory).
func ontoSquare(q [4]plane.PixelPoint) (Map, bool) {
	// About their middle, the numbers keep their precision.
	mid := q[0].Mid(q[1]).Mid(q[2].Mid(q[3]))
	var x, y [4]float64
	for i, p := range q {
		x[i], y[i] = float64(p.X-mid.X), float64(p.Y-mid.Y)
	}
	dx1, dx2, sx := x[1]-x[2], x[3]-x[2], x[0]-x[1]+x[2]-x[3]
	dy1, dy2, sy := y[1]-y[2], y[3]-y[2], y[0]-y[1]+y[2]-y[3]
	det := dx1*dy2 - dx2*dy1
	g := (sx*dy2 - dx2*sy) / det
	h := (dx1*sy - sx*dy1) / det
	if det == 0 || 1+g <= 0 || 1+h <= 0 || 1+g+h <= 0 {
		return Map{}, false
	}
	inverse := Map{[9]float64{
		x[1] - x[0] + g*x[1], x[3] - x[0] + h*x[3], x[0],
		y[1] - y[0] + g*y[1], y[3] - y[0] + h*y[3], y[0],
		g, h, 1,
	}}.inverse()
	centred := Map{[9]float64{1, 0, -float64(mid.X), 0, 1, -float64(mid.Y), 0, 0, 1}}
	return centred.then(inverse), true
}

// slantOf is the tilt of the plane that m rectifies. Where m is exactly a view
// by l, its last row is the plane's normal seen through the lens; as that row
// says nothing of the scale it holds for any rectifying m.
func (l lens) slantOf(m Map) slant {
	a, b := m.H[6]*l.focal, m.H[7]*l.focal
	c := m.H[6]*float64(l.centre.X) + m.H[7]*float64(l.centre.Y) + m.H[8]
	return slant{a / c, b / c}
}

func absolute[U plane.Unit](u U) U { return U(math.Abs(float64(u))) }
