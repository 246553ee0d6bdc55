package plan

import (
	"fyne.io/fyne/v2"

	"ogive/geometry/plane"
)

// inSight is the place on the way from one to another that is as far along as the
// board shows, with room for a handle. Where the beginning itself is out of sight
// it is the end.
func (p *plate) inSight(from, to plane.PixelPoint) plane.PixelPoint {
	const rim, steps, least = 16, 20, 6
	size := p.Size()
	if p.zoom <= 0 || size.Width <= 2*rim || size.Height <= 2*rim {
		return to
	}
	sees := func(at fyne.Position) bool {
		return at.X >= rim && at.Y >= rim && at.X <= size.Width-rim && at.Y <= size.Height-rim
	}
	way := to.Sub(from)
	for i := steps; i >= least; i-- {
		at := from.Add(way.Scale(float64(i) / steps))
		if sees(p.PositionOf(at)) {
			return at
		}
	}
	return to
}
