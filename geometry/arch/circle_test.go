package arch

import (
	"testing"

	"ogive/geometry/plane"
)

// Gander W, Golub GH, Strebel R. Least-squares fitting of circles and ellipses.
// BIT 1994;34:558-78: geometric fit of six points.
func TestGanderCircle(t *testing.T) {
	points := []plane.Position{{X: 1, Y: 7}, {X: 2, Y: 6}, {X: 5, Y: 8}, {X: 7, Y: 7}, {X: 9, Y: 5}, {X: 3, Y: 7}}
	c, err := FitCircle(points)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "centre x", float64(c.Centre.X), 4.7398, 5e-5)
	near(t, "centre y", float64(c.Centre.Y), 2.9835, 5e-5)
	near(t, "radius", float64(c.Radius), 4.7142, 5e-5)
}

func TestPointsOnALineHaveNoCircle(t *testing.T) {
	if _, err := FitCircle([]plane.Position{{X: 0}, {X: 1}, {X: 2}, {X: 3}}); err == nil {
		t.Error("four points on a line gave a circle")
	}
}
