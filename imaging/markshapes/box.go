package markshapes

import "math"

// Box is a rectangle on a picture, in pixels.
type Box struct{ Left, Top, Right, Bottom float64 }

// BoxOf is the box between those sides.
func BoxOf(left, top, right, bottom float64) Box { return Box{left, top, right, bottom} }

// BoxAt is the box of width w and height h whose upper left corner is at (x, y).
func BoxAt(x, y, w, h float64) Box { return Box{x, y, x + w, y + h} }

// Width is that of the box.
func (b Box) Width() float64 { return b.Right - b.Left }

// Height is that of the box.
func (b Box) Height() float64 { return b.Bottom - b.Top }

// Centre is the middle of the box.
func (b Box) Centre() Spot { return Spot{(b.Left + b.Right) / 2, (b.Top + b.Bottom) / 2} }

// Grown is the box with each side moved outwards by d.
func (b Box) Grown(d float64) Box { return Box{b.Left - d, b.Top - d, b.Right + d, b.Bottom + d} }

// Nearest is the place in the box that is nearest to q.
func (b Box) Nearest(q Spot) Spot {
	return Spot{min(max(q.X, b.Left), b.Right), min(max(q.Y, b.Top), b.Bottom)}
}

// Distance is how far q lies from the box, zero inside.
func (b Box) Distance(q Spot) float64 { return q.Sub(b.Nearest(q)).Length() }

// Meets reports whether the boxes overlap.
func (b Box) Meets(c Box) bool {
	return b.Left < c.Right && c.Left < b.Right && b.Top < c.Bottom && c.Top < b.Bottom
}

// Shared is the area that both boxes cover.
func (b Box) Shared(c Box) float64 {
	w := math.Min(b.Right, c.Right) - math.Max(b.Left, c.Left)
	h := math.Min(b.Bottom, c.Bottom) - math.Max(b.Top, c.Top)
	return math.Max(w, 0) * math.Max(h, 0)
}

// Within reports whether b lies inside c.
func (b Box) Within(c Box) bool {
	return b.Left >= c.Left && b.Top >= c.Top && b.Right <= c.Right && b.Bottom <= c.Bottom
}

// Holds reports whether q lies in the box or on its rim.
func (b Box) Holds(q Spot) bool {
	return q.X >= b.Left && q.X <= b.Right && q.Y >= b.Top && q.Y <= b.Bottom
}
