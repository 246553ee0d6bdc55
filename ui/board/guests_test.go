package board

import (
	"image"
	"image/color"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"ogive/geometry/plane"
	"ogive/imaging/photo"
	"ogive/ui/marking"
)

func TestAHandleIsTakenHoldOfBeforeTheMarkUnderIt(t *testing.T) {
	b, _ := newTestBoard(t, 1)
	at := plane.Pt[plane.Pixel](500, 400)
	b.Draw(Scene{
		Placed:  []marking.Placed{{Spot: ringPIP, At: at}},
		Handles: []Handle{{ID: "span", At: plane.Pt[plane.Pixel](300, 300)}, {ID: "crown", At: at.Add(plane.Vec[plane.Pixel](8, 0))}},
		Wanted:  &marking.Spot{Kind: marking.ScalePoint},
	})
	b.OnDrag = func(marking.Spot, plane.PixelPoint) { t.Error("the mark was dragged") }
	b.OnSelect = func(marking.Spot) { t.Error("the mark was selected") }
	b.OnPlace = func(plane.PixelPoint) { t.Error("a point was placed") }
	var dragged, dropped string
	var to plane.PixelPoint
	b.OnDragHandle = func(id string, p plane.PixelPoint) { dragged, to = id, p }
	b.OnDropHandle = func(id string) { dropped = id }
	drag(b, b.on(at.X, at.Y), 40, 20)
	moved := plane.Vec(plane.Pixel(40/b.view.Zoom), plane.Pixel(20/b.view.Zoom))
	if want := at.Add(plane.Vec[plane.Pixel](8, 0)).Add(moved); dragged != "crown" || dropped != "crown" || !near(to, want, 0.01) {
		t.Errorf("dragged %q to %v, not to %v; dropped %q", dragged, to, want, dropped)
	}
	dragged, dropped = "", ""
	click(b, b.on(at.X+8, at.Y))
	if dragged != "" || dropped != "" {
		t.Error("a click moved a handle")
	}
}

func TestTheLoupeShowsAHandleThatIsHeld(t *testing.T) {
	b, _ := newTestBoard(t, 1)
	at := plane.Pt[plane.Pixel](500, 400)
	b.Draw(Scene{Handles: []Handle{{ID: "crown", At: at}}})
	press(b, b.on(at.X, at.Y).AddXY(4, 0))
	if !b.lens.picture.Visible() || b.lens.at != at {
		t.Errorf("the loupe shows %v", b.lens.at)
	}
	b.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: b.on(at.X, at.Y).AddXY(4, 30)}, Dragged: fyne.NewDelta(0, 30)})
	want := at.Add(plane.Vec(0, plane.Pixel(30/b.view.Zoom)))
	if !near(b.lens.at, want, 0.01) {
		t.Errorf("the handle is at %v, the loupe shows %v", want, b.lens.at)
	}
}

func TestAPointWantedBesideAHandleCanBePlaced(t *testing.T) {
	b, _ := newTestBoard(t, 1)
	at := plane.Pt[plane.Pixel](500, 400)
	b.Draw(Scene{Handles: []Handle{{ID: "crown", At: at}}, Wanted: &ringPIP})
	placed := 0
	b.OnPlace = func(plane.PixelPoint) { placed++ }
	click(b, b.on(at.X, at.Y).AddXY(9, 0))
	click(b, b.on(at.X, at.Y).AddXY(3, 0))
	if placed != 1 {
		t.Errorf("placed %d times", placed)
	}
}

func TestTheBoardTellsOverWhichPixelThePointerIs(t *testing.T) {
	b, _ := newTestBoard(t, 1)
	var at plane.PixelPoint
	var over bool
	b.OnHover = func(p plane.PixelPoint, o bool) { at, over = p, o }
	want := plane.Pt[plane.Pixel](640, 333)
	hover(b, b.on(want.X, want.Y))
	if !over || !near(at, want, 0.01) {
		t.Errorf("over %v at %v", over, at)
	}
	hover(b, fyne.NewPos(4, 200)) // beside the photograph
	if over {
		t.Error("over the photograph, though beside it")
	}
	hover(b, b.on(want.X, want.Y))
	b.MouseOut()
	if over {
		t.Error("over the photograph, though the pointer is gone")
	}
}

// painted counts the pixels that a scene changes on a plain ground.
func painted(t *testing.T, s Scene) int {
	t.Helper()
	return strings.Count(cover(t, s), "x")
}

// cover has an x for every pixel that a scene changes on a plain ground.
func cover(t *testing.T, s Scene) string {
	t.Helper()
	b, _ := newTestBoard(t, 1)
	ground := image.NewRGBA(image.Rect(0, 0, 600, 400))
	for i := range ground.Pix {
		ground.Pix[i] = 120
	}
	for i := 3; i < len(ground.Pix); i += 4 {
		ground.Pix[i] = 255
	}
	b.ShowPhotograph(photo.From(ground))
	b.Draw(s)
	img := b.paint(600, 400).(*image.RGBA)
	changed := make([]byte, 0, 600*400)
	for y := range 400 {
		for x := range 600 {
			c := byte('.')
			if img.RGBAAt(x, y) != (color.RGBA{120, 120, 120, 255}) {
				c = 'x'
			}
			changed = append(changed, c)
		}
	}
	return string(changed)
}

func TestABlindSceneShowsNothingThatWasComputed(t *testing.T) {
	_, s := drawnScene()
	s.Selected, s.Blind = nil, true
	blind := painted(t, s)
	s.Reading.Webs = nil
	if marks := painted(t, s); blind != marks {
		t.Errorf("%d pixels are painted blind, the marks alone take %d", blind, marks)
	}
}

func TestAQuietSceneShowsSmallMarksAndLinesInFull(t *testing.T) {
	_, s := drawnScene()
	s.Selected, s.Reading = nil, marking.Reading{}
	loud := painted(t, s)
	s.Quiet = true
	quiet := painted(t, s)
	if quiet > loud*3/4 || quiet == 0 {
		t.Errorf("quiet marks take %d pixels, others %d", quiet, loud)
	}
	s.Placed = nil
	s.Lines = []Line{{Points: []plane.PixelPoint{plane.Pt[plane.Pixel](100, 100), plane.Pt[plane.Pixel](400, 100)}, Style: PlanLine}}
	with := painted(t, s)
	s.Quiet = false
	if full := painted(t, s); with != full || full < 300 {
		t.Errorf("a line takes %d pixels in a quiet scene, %d in another", with, full)
	}
}

// Without its colour, too, each style looks like no other.
func TestEveryStyleOfLineHasAShapeOfItsOwn(t *testing.T) {
	took := map[string]LineStyle{}
	for style := GhostLine; style <= PatchLine; style++ {
		shape := cover(t, Scene{Lines: []Line{{Style: style, Points: []plane.PixelPoint{plane.Pt[plane.Pixel](50, 80), plane.Pt[plane.Pixel](550, 320)}}}})
		if !strings.Contains(shape, "x") {
			t.Errorf("style %d paints nothing", style)
		}
		if other, ok := took[shape]; ok {
			t.Errorf("style %d looks like style %d", style, other)
		}
		took[shape] = style
	}
}

func TestGuestsOfTheBoardAreToldApart(t *testing.T) {
	b, w := newTestBoard(t, 1)
	b.ShowPhotograph(photo.From(drapes(image.Pt(600, 400))))
	s := Scene{Handles: []Handle{
		{ID: "a", At: plane.Pt[plane.Pixel](60, 360), Label: "round"}, {ID: "b", At: plane.Pt[plane.Pixel](210, 360), Shape: SquareHandle, Label: "square"},
		{ID: "c", At: plane.Pt[plane.Pixel](360, 360), Shape: DiamondHandle, Label: "diamond"}, {ID: "d", At: plane.Pt[plane.Pixel](500, 360), Shape: TriangleHandle, Label: "triangle"},
	}}
	for i, name := range []string{"other hand", "plan", "flap", "zigzag", "graft", "truth", "patch"} {
		y := plane.Pixel(30 + 42*i)
		l := Line{Style: LineStyle(i), Label: name}
		for x := plane.Pixel(20); x <= 580; x += 40 {
			l.Points = append(l.Points, plane.Pt(x, y+12*plane.Pixel(int(x)/40%2)))
		}
		s.Lines = append(s.Lines, l)
	}
	b.Draw(s)
	test.AssertImageMatches(t, "guests.png", w.Canvas().Capture())
}

// drapes is a picture of the grounds marks may lie on, side by side.
func drapes(size image.Point) *image.RGBA {
	grounds := []color.RGBA{{232, 196, 172, 255}, {92, 58, 42, 255}, {60, 120, 110, 255}, {240, 240, 238, 255}, {30, 40, 70, 255}}
	m := image.NewRGBA(image.Rectangle{Max: size})
	for y := range size.Y {
		for x := range size.X {
			m.SetRGBA(x, y, grounds[x*len(grounds)/size.X])
		}
	}
	return m
}
