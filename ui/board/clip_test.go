package board

import (
	"image"
	"testing"

	"pgregory.net/rapid"

	"ogive/imaging/display"
)

func TestALineIsCutToTheFrameAndItsRim(t *testing.T) {
	p := newPen(image.NewRGBA(image.Rect(0, 0, 300, 200)), display.View{}, 1)
	rapid.Check(t, func(t *rapid.T) {
		var path []spot
		for range rapid.IntRange(2, 6).Draw(t, "points") {
			path = append(path, spot{rapid.Float64Range(-2000, 2000).Draw(t, "x"), rapid.Float64Range(-2000, 2000).Draw(t, "y")})
		}
		for _, run := range p.clipped(path) {
			for _, q := range run {
				if q.x < -rim-1e-6 || q.y < -rim-1e-6 || q.x > 300+rim+1e-6 || q.y > 200+rim+1e-6 {
					t.Fatalf("%v of %v lies outside", q, path)
				}
			}
		}
		inside := rapid.Float64Range(0, 1).Draw(t, "t")
		q := path[0].to(path[1], inside)
		if q.x < 0 || q.y < 0 || q.x > 300 || q.y > 200 {
			return
		}
		for _, run := range p.clipped(path) {
			for i := 1; i < len(run); i++ {
				if _, d := alongSegment(display.Place{X: q.x, Y: q.y}, display.Place{X: run[i-1].x, Y: run[i-1].y}, display.Place{X: run[i].x, Y: run[i].y}); d < 1 {
					return
				}
			}
		}
		t.Fatalf("%v, inside the frame, was cut away", q)
	})
}
