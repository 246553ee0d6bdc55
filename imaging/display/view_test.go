package display

import (
	"image"
	"math"
	"testing"

	"pgregory.net/rapid"

	"ogive/geometry/plane"
)

// anyView is a view as zooming and panning may leave it.
func anyView(t *rapid.T) View {
	size := image.Pt(rapid.IntRange(1, 12000).Draw(t, "width"), rapid.IntRange(1, 12000).Draw(t, "height"))
	window := image.Pt(rapid.IntRange(40, 3000).Draw(t, "window width"), rapid.IntRange(40, 2000).Draw(t, "window height"))
	v := Fit(size, window)
	for range rapid.IntRange(0, 4).Draw(t, "gestures") {
		v = v.ZoomedBy(rapid.Float64Range(0.3, 5).Draw(t, "factor"), anyPlace(t, window))
		v = v.Panned(rapid.Float64Range(-900, 900).Draw(t, "right"), rapid.Float64Range(-900, 900).Draw(t, "down"))
	}
	return v
}

func anyPlace(t *rapid.T, window image.Point) Place {
	return Place{
		rapid.Float64Range(0, float64(window.X)).Draw(t, "x"),
		rapid.Float64Range(0, float64(window.Y)).Draw(t, "y"),
	}
}

func TestScreenAndPhotographAreConvertedBothWays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := anyView(t)
		q := anyPlace(t, v.Window)
		back := v.Screen(v.On(q))
		if math.Hypot(back.X-q.X, back.Y-q.Y) > 1e-6 {
			t.Fatalf("%v comes back as %v in %+v", q, back, v)
		}
	})
}

func TestThePhotographCannotBeLost(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := anyView(t)
		middle := v.On(v.middle())
		slack := plane.Pixel(0.51 / v.Zoom) // for whole pixels at one to one
		if middle.X < -slack || middle.Y < -slack || middle.X > plane.Pixel(v.Photograph.X)+slack || middle.Y > plane.Pixel(v.Photograph.Y)+slack {
			t.Fatalf("the middle of the frame shows %v, beside the photograph, in %+v", middle, v)
		}
		if v.Zoom > MostZoom || v.Zoom < min(v.fit(), 1)*(1-1e-12) {
			t.Fatalf("zoom %g is out of bounds", v.Zoom)
		}
	})
}

func TestZoomingInKeepsWhatIsUnderThePointer(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := anyView(t)
		q := anyPlace(t, v.Window)
		at := v.On(q)
		if !v.Holds(at) {
			return
		}
		next := v.ZoomedBy(rapid.Float64Range(1, 3).Draw(t, "closer"), q)
		tolerance := 1e-6
		if next.Zoom == 1 {
			tolerance = 0.71 // pixels meet pixels
		}
		if now := next.Screen(at); math.Hypot(now.X-q.X, now.Y-q.Y) > tolerance {
			t.Fatalf("what was at %v is at %v\nbefore %+v\nafter  %+v", q, now, v, next)
		}
	})
}

func TestZoomingOutEndsWithTheWholePhotograph(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := anyView(t)
		if v.Zoom < v.fit() {
			return
		}
		if out := v.ZoomedBy(1e-6, anyPlace(t, v.Window)); !out.Fitted() {
			t.Fatalf("zoomed out to %+v, which is not the whole photograph", out)
		}
	})
}

func TestEveryPlaceCanBeRevealed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := anyView(t)
		p := plane.Pt(
			plane.Pixel(rapid.Float64Range(0, float64(v.Photograph.X)).Draw(t, "px")),
			plane.Pixel(rapid.Float64Range(0, float64(v.Photograph.Y)).Draw(t, "py")),
		)
		q := v.Reveal(p).Screen(p)
		if q.X < -1 || q.Y < -1 || q.X > float64(v.Window.X)+1 || q.Y > float64(v.Window.Y)+1 {
			t.Fatalf("%v is at %v, outside the frame", p, q)
		}
	})
}

func TestAFittedPhotographStaysFittedInAnotherWindow(t *testing.T) {
	v := Fit(image.Pt(6000, 4000), image.Pt(1300, 800)).Resized(image.Pt(700, 900))
	if !v.Fitted() {
		t.Errorf("after resizing the view is %+v", v)
	}
	near := v.ZoomedTo(2, Place{100, 200})
	middle := near.On(near.middle())
	wide := near.Resized(image.Pt(1920, 1080))
	if d := wide.On(wide.middle()).Distance(middle); d > 1e-6 || wide.Zoom != 2 {
		t.Errorf("the middle moved by %v pixels and the zoom is %v", d, wide.Zoom)
	}
}
