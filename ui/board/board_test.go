package board

import (
	"image"
	"image/color"
	"math"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/driver/software"
	"fyne.io/fyne/v2/test"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/imaging/photo"
	"ogive/ui/marking"
)

var ringPIP = marking.Spot{Kind: marking.JointPoint, Digit: hand.Ring, Joint: hand.PIP}

// newTestBoard is a board of 600 x 400 units with a photograph of 1200 x 900.
func newTestBoard(t *testing.T, scale float32) (*Board, fyne.Window) {
	t.Helper()
	test.NewTempApp(t)
	b := New()
	b.apart = func(work func()) { work() }
	w := test.NewTempWindow(t, b)
	w.SetPadded(false)
	w.Canvas().(software.WindowlessCanvas).SetScale(scale)
	w.Resize(fyne.NewSize(600, 400))
	b.ShowPhotograph(photo.From(ramp(image.Pt(1200, 900))))
	w.Canvas().Capture()
	return b, w
}

// ramp is a photograph whose colours tell where a pixel lies.
func ramp(size image.Point) *image.RGBA {
	m := image.NewRGBA(image.Rectangle{Max: size})
	for y := range size.Y {
		for x := range size.X {
			m.SetRGBA(x, y, color.RGBA{uint8(x * 255 / size.X), uint8(y * 255 / size.Y), 90, 255})
		}
	}
	return m
}

// on is where a place on the photograph lies on the board.
func (b *Board) on(x, y plane.Pixel) fyne.Position { return b.position(b.view.Screen(plane.Pt(x, y))) }

// later lets time pass between two events, as it does for a hand.
func (b *Board) later() {
	now := b.clock().Add(20 * time.Millisecond)
	b.clock = func() time.Time { return now }
}

func press(b *Board, at fyne.Position) {
	b.MouseDown(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: at}, Button: desktop.MouseButtonPrimary})
	b.later()
}

func release(b *Board, at fyne.Position) {
	b.MouseUp(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: at}, Button: desktop.MouseButtonPrimary})
}

// click is what Fyne reports of one.
func click(b *Board, at fyne.Position) {
	press(b, at)
	release(b, at)
	b.Tapped(&fyne.PointEvent{Position: at})
}

// drag is what Fyne reports of one, in two moves.
func drag(b *Board, from fyne.Position, dx, dy float32) {
	press(b, from)
	half := fyne.NewDelta(dx/2, dy/2)
	for _, way := range []float32{0.5, 1} {
		b.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: from.AddXY(way*dx, way*dy)}, Dragged: half})
	}
	release(b, from.AddXY(dx, dy))
	b.DragEnd()
}

func near(p, q plane.PixelPoint, by plane.Pixel) bool { return p.Distance(q) <= by }

func TestAClickPlacesAtThePixelUnderThePointerAtEveryZoom(t *testing.T) {
	for _, scale := range []float32{1, 1.5, 2} {
		b, _ := newTestBoard(t, scale)
		b.Draw(Scene{Wanted: &ringPIP})
		var placed plane.PixelPoint
		b.OnPlace = func(at plane.PixelPoint) { placed = at }
		want := plane.Pt[plane.Pixel](700.5, 420.5)
		for _, zoom := range []float64{0, 0.7, 1, 1.9, 3.3, 8} {
			if zoom > 0 {
				b.see(b.view.ZoomedTo(zoom, b.view.Screen(want)))
			}
			click(b, b.on(want.X, want.Y))
			if !near(placed, want, 0.01) {
				t.Errorf("scale %g, zoom %g: placed at %v, clicked at %v", scale, b.view.Zoom, placed, want)
			}
		}
	}
}

// What is seen under the pointer and what is placed are the same pixel.
func TestTheScreenShowsUnderThePointerWhatIsPlaced(t *testing.T) {
	for _, scale := range []float32{1, 2} {
		b, w := newTestBoard(t, scale)
		b.Draw(Scene{Wanted: &ringPIP})
		var placed plane.PixelPoint
		b.OnPlace = func(at plane.PixelPoint) { placed = at }
		for _, zoom := range []float64{0.5, 1, 3} {
			b.see(b.view.ZoomedTo(zoom, b.view.Screen(plane.Pt[plane.Pixel](300, 600))))
			b.MouseOut()
			seen := w.Canvas().Capture()
			for _, at := range []fyne.Position{{X: 200, Y: 100}, {X: 333, Y: 217}, {X: 401, Y: 320}} {
				click(b, at)
				r, g, _, _ := seen.At(int(at.X*scale), int(at.Y*scale)).RGBA()
				x, y := float64(r>>8)/255*1200, float64(g>>8)/255*900
				if math.Abs(x-float64(placed.X)) > 8 || math.Abs(y-float64(placed.Y)) > 8 { // a colour stands for 5 pixels
					t.Errorf("scale %g, zoom %g: the screen shows about (%.0f, %.0f) at %v, placed was %v", scale, zoom, x, y, at, placed)
				}
			}
		}
	}
}

func TestAClickBesideThePhotographPlacesNothing(t *testing.T) {
	b, _ := newTestBoard(t, 1)
	b.Draw(Scene{Wanted: &ringPIP})
	b.OnPlace = func(at plane.PixelPoint) { t.Errorf("placed at %v", at) }
	click(b, fyne.NewPos(5, 200)) // the photograph is 533 of 600 wide
}

func TestDraggingAMarkMovesItByTheWayOfThePointer(t *testing.T) {
	for _, scale := range []float32{1, 2} {
		b, _ := newTestBoard(t, scale)
		at := plane.Pt[plane.Pixel](500, 400)
		b.Draw(Scene{Placed: []marking.Placed{{Spot: ringPIP, At: at}}, Wanted: &marking.Spot{Kind: marking.ScalePoint}})
		b.see(b.view.ZoomedTo(2, b.view.Screen(at)))
		var selected, dropped int
		var to plane.PixelPoint
		b.OnSelect = func(s marking.Spot) { selected++ }
		b.OnDrag = func(s marking.Spot, p plane.PixelPoint) { to = p }
		b.OnDrop = func(s marking.Spot) { dropped++ }
		b.OnPlace = func(plane.PixelPoint) { t.Error("a drag placed a point") }
		before := b.view
		drag(b, b.on(at.X, at.Y).AddXY(7, -4), 40, 30)
		want := at.Add(plane.Vec(plane.Pixel(40*scale/2), plane.Pixel(30*scale/2)))
		if !near(to, want, 0.01) || selected != 1 || dropped != 1 {
			t.Errorf("scale %g: dragged to %v, not %v; selected %d times, dropped %d times", scale, to, want, selected, dropped)
		}
		if b.view != before {
			t.Error("the photograph moved with the mark")
		}
	}
}

func TestAMarkCannotBeDraggedOffThePhotograph(t *testing.T) {
	b, _ := newTestBoard(t, 1)
	at := plane.Pt[plane.Pixel](5, 400)
	b.Draw(Scene{Placed: []marking.Placed{{Spot: ringPIP, At: at}}})
	var to plane.PixelPoint
	b.OnDrag = func(_ marking.Spot, p plane.PixelPoint) { to = p }
	drag(b, b.on(at.X, at.Y), -200, 0)
	if to.X != 0 {
		t.Errorf("dragged to %v", to)
	}
}

func TestTheNearestOfTwoMarksIsTaken(t *testing.T) {
	b, _ := newTestBoard(t, 1)
	other := marking.Spot{Kind: marking.SeedPoint, Web: hand.ThirdWeb, N: 1}
	b.Draw(Scene{Placed: []marking.Placed{
		{Spot: ringPIP, At: plane.Pt[plane.Pixel](500, 400)}, {Spot: other, At: plane.Pt[plane.Pixel](520, 400)},
	}})
	var got marking.Spot
	b.OnSelect = func(s marking.Spot) { got = s }
	click(b, b.on(512, 400))
	if got != other {
		t.Errorf("selected %v", got)
	}
}

func TestBesideAMarkTheNextPointCanBePlaced(t *testing.T) {
	b, _ := newTestBoard(t, 1)
	at := plane.Pt[plane.Pixel](500, 400)
	b.Draw(Scene{Placed: []marking.Placed{{Spot: ringPIP, At: at}}, Wanted: &marking.Spot{Kind: marking.ScalePoint}})
	placed, selected := 0, 0
	b.OnPlace = func(plane.PixelPoint) { placed++ }
	b.OnSelect = func(marking.Spot) { selected++ }
	click(b, b.on(at.X, at.Y).AddXY(9, 0))
	if placed != 1 || selected != 0 {
		t.Errorf("nine units off: placed %d, selected %d", placed, selected)
	}
	click(b, b.on(at.X, at.Y).AddXY(3, 0))
	if placed != 1 || selected != 1 {
		t.Errorf("three units off: placed %d, selected %d", placed, selected)
	}
}

func TestDraggingTheGroundPans(t *testing.T) {
	b, _ := newTestBoard(t, 1)
	b.see(b.view.ZoomedTo(2, b.view.Screen(plane.Pt[plane.Pixel](600, 450))))
	at := b.view.On(b.place(fyne.NewPos(300, 200)))
	drag(b, fyne.NewPos(300, 200), 50, -30)
	if now := b.view.On(b.place(fyne.NewPos(350, 170))); !near(now, at, 0.01) {
		t.Errorf("under the pointer is %v, was %v", now, at)
	}
}

func TestAPressOnABorderDragsIt(t *testing.T) {
	b, _ := newTestBoard(t, 1)
	edge := []plane.PixelPoint{plane.Pt[plane.Pixel](400, 300), plane.Pt[plane.Pixel](450, 500), plane.Pt[plane.Pixel](500, 300)}
	mark := marking.Spot{Kind: marking.SeedPoint, Web: hand.ThirdWeb, N: 1}
	b.Draw(Scene{
		Placed:  []marking.Placed{{Spot: mark, At: edge[1]}},
		Reading: marking.Reading{Edges: map[hand.Web][]plane.PixelPoint{hand.ThirdWeb: edge}},
	})
	var web, dropped hand.Web
	var from, to plane.PixelPoint
	b.OnDragEdge = func(w hand.Web, f, p plane.PixelPoint) { web, from, to = w, f, p }
	b.OnDropEdge = func(w hand.Web) { dropped = w }
	b.OnDrag = func(marking.Spot, plane.PixelPoint) { t.Error("dragged a mark far away") }
	drag(b, b.on(427, 400), 10, 0)
	moved := plane.Pixel(10 / b.view.Zoom)
	if web != hand.ThirdWeb || dropped != hand.ThirdWeb || !near(from, plane.Pt[plane.Pixel](425.12, 400.47), 0.2) || !near(to, from.Add(plane.Vec(moved, 0)), 0.01) {
		t.Errorf("dragged %v from %v to %v, dropped %v", web, from, to, dropped)
	}
	b.OnDragEdge = func(hand.Web, plane.PixelPoint, plane.PixelPoint) { t.Error("dragged the border where a mark is") }
	b.OnDrag = nil
	drag(b, b.on(450, 500), 10, 0)
}

func TestTheWheelKeepsThePixelUnderThePointer(t *testing.T) {
	for _, scale := range []float32{1, 2} {
		b, _ := newTestBoard(t, scale)
		at := fyne.NewPos(410, 130)
		want := b.view.On(b.place(at))
		for _, notches := range []float32{1, 1, 3, -2, 5, -1} {
			b.Scrolled(&fyne.ScrollEvent{PointEvent: fyne.PointEvent{Position: at}, Scrolled: fyne.NewDelta(0, 25*notches)})
			if now := b.view.On(b.place(at)); !near(now, want, 0.01) {
				t.Errorf("scale %g, zoom %g: under the pointer is %v, was %v", scale, b.view.Zoom, now, want)
			}
		}
		b.Scrolled(&fyne.ScrollEvent{PointEvent: fyne.PointEvent{Position: at}, Scrolled: fyne.NewDelta(0, -900)})
		if !b.view.Fitted() {
			t.Errorf("zoomed out all the way the view is %+v", b.view)
		}
	}
}

func TestTheZoomIsTold(t *testing.T) {
	b, _ := newTestBoard(t, 2)
	var told float64
	b.OnView = func(zoom float64) { told = zoom }
	b.PixelForPixel()
	if told != 1 {
		t.Errorf("told %g", told)
	}
	b.ZoomBy(3)
	if told != 3 {
		t.Errorf("told %g", told)
	}
	b.Fit()
	if told != 800.0/900 {
		t.Errorf("told %g", told)
	}
}

func TestThePhotographComesInThePlaceOfItsPreview(t *testing.T) {
	b, _ := newTestBoard(t, 1)
	b.ShowPreview(image.NewRGBA(image.Rect(0, 0, 160, 120)), image.Pt(4000, 3000))
	b.see(b.view.ZoomedTo(1, b.view.Screen(plane.Pt[plane.Pixel](1000, 800))))
	before := b.view
	b.ShowPhotograph(photo.From(ramp(image.Pt(4000, 3000))))
	if b.view != before {
		t.Error("the view jumped when the photograph came")
	}
}

func TestALatePhotographDoesNotReplaceTheNext(t *testing.T) {
	b, _ := newTestBoard(t, 1)
	var late []func()
	b.apart = func(work func()) { late = append(late, work) }
	b.ShowPhotograph(photo.From(ramp(image.Pt(400, 300))))
	b.ShowPhotograph(photo.From(ramp(image.Pt(500, 300))))
	late[1]()
	late[0]()
	if got := b.shown.Size(); got != image.Pt(500, 300) {
		t.Errorf("the board shows the photograph of %v", got)
	}
}

func TestThePointerShowsWhatAClickWouldDo(t *testing.T) {
	b, _ := newTestBoard(t, 1)
	if b.Cursor() != desktop.DefaultCursor {
		t.Error("nothing is wanted, and the pointer is no arrow")
	}
	at := plane.Pt[plane.Pixel](500, 400)
	s := Scene{Placed: []marking.Placed{{Spot: ringPIP, At: at}}}
	b.Draw(s)
	b.MouseMoved(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: b.on(at.X, at.Y)}})
	if b.Cursor() != desktop.PointerCursor {
		t.Error("over a mark the pointer is no hand")
	}
	s.Wanted = &marking.Spot{Kind: marking.ScalePoint}
	b.Draw(s)
	if b.Cursor() != desktop.CrosshairCursor {
		t.Error("a point is wanted, and the pointer is no cross")
	}
}

func TestATremorDuringAClickIsStillAClick(t *testing.T) {
	b, _ := newTestBoard(t, 1)
	b.see(b.view.ZoomedTo(2, b.view.Screen(plane.Pt[plane.Pixel](600, 450))))
	b.Draw(Scene{Wanted: &ringPIP})
	var placed plane.PixelPoint
	b.OnPlace = func(at plane.PixelPoint) { placed = at }
	before := b.view
	drag(b, fyne.NewPos(300, 200), 2, 1)
	if want := b.view.On(b.place(fyne.NewPos(300, 200))); placed != want || b.view != before {
		t.Errorf("placed at %v, not at %v where the hand pressed; the view moved: %v", placed, want, b.view != before)
	}
	at := plane.Pt[plane.Pixel](600, 450)
	b.Draw(Scene{Placed: []marking.Placed{{Spot: ringPIP, At: at}}})
	selected := 0
	b.OnSelect = func(marking.Spot) { selected++ }
	b.OnDrag = func(marking.Spot, plane.PixelPoint) { t.Error("a tremor moved a mark") }
	b.OnDrop = func(marking.Spot) { t.Error("a tremor dropped a mark") }
	drag(b, b.on(at.X, at.Y), 2, 1)
	if selected != 1 {
		t.Errorf("selected %d times", selected)
	}
}

// Fyne reports a press at the place where the pointer was one picture before,
// and the move to where it is right after the press.
func TestAPressReportedLateMeansWhereThePointerIs(t *testing.T) {
	b, _ := newTestBoard(t, 1)
	now := time.Unix(0, 0)
	b.clock = func() time.Time { return now }
	old := plane.Pt[plane.Pixel](300, 300)
	b.Draw(Scene{Placed: []marking.Placed{{Spot: ringPIP, At: old}}, Wanted: &marking.Spot{Kind: marking.ScalePoint}})
	b.OnDrag = func(marking.Spot, plane.PixelPoint) { t.Error("dragged the mark where the pointer was before") }
	var placed []plane.PixelPoint
	b.OnPlace = func(at plane.PixelPoint) { placed = append(placed, at) }
	want := plane.Pt[plane.Pixel](800, 600)

	// A click that lasts: press, move reported late as a drag, release.
	from, to := b.on(old.X, old.Y), b.on(want.X, want.Y)
	mouse := func(at fyne.Position) *desktop.MouseEvent {
		return &desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: at}, Button: desktop.MouseButtonPrimary}
	}
	b.MouseDown(mouse(from))
	b.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: to}, Dragged: fyne.NewDelta(to.X-from.X, to.Y-from.Y)})
	now = now.Add(90 * time.Millisecond)
	b.MouseUp(mouse(to))
	b.DragEnd()

	// A click within one picture: press, release, and the move after both.
	var after []func()
	b.soon = func(work func()) { after = append(after, work) }
	b.MouseDown(mouse(from))
	b.MouseUp(mouse(from))
	b.Tapped(&fyne.PointEvent{Position: from})
	b.MouseMoved(mouse(to))
	for _, work := range after {
		work()
	}
	if len(placed) != 2 || !near(placed[0], want, 0.01) || !near(placed[1], want, 0.01) {
		t.Errorf("placed at %v, the pointer was at %v", placed, want)
	}
}

// On a busy machine a tremor, too, is reported right after the press.
func TestATremorReportedWithThePressLeavesTheClickWhereItWasAimed(t *testing.T) {
	b, _ := newTestBoard(t, 1)
	now := time.Unix(0, 0)
	b.clock = func() time.Time { return now }
	b.Draw(Scene{Wanted: &marking.Spot{Kind: marking.ScalePoint}})
	var placed []plane.PixelPoint
	b.OnPlace = func(at plane.PixelPoint) { placed = append(placed, at) }
	want := plane.Pt[plane.Pixel](800, 600)
	at := b.on(want.X, want.Y)
	aside := at.AddXY(-3, 1)
	mouse := func(at fyne.Position) *desktop.MouseEvent {
		return &desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: at}, Button: desktop.MouseButtonPrimary}
	}
	b.MouseDown(mouse(at))
	b.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: aside}, Dragged: fyne.NewDelta(-3, 1)})
	now = now.Add(90 * time.Millisecond)
	b.MouseUp(mouse(aside))
	b.DragEnd()
	if len(placed) != 1 || !near(placed[0], want, 0.01) {
		t.Errorf("placed at %v, aimed at %v", placed, want)
	}
}
