package board

import (
	"image"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"pgregory.net/rapid"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/ui/marking"
)

func hover(b *Board, at fyne.Position) {
	b.MouseMoved(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: at}})
}

func TestTheLoupeShowsWhileAPointIsWantedOrDragged(t *testing.T) {
	b, _ := newTestBoard(t, 1)
	middle := fyne.NewPos(300, 200)
	hover(b, middle)
	if b.lens.picture.Visible() {
		t.Error("nothing is wanted, and there is a loupe")
	}
	b.Draw(Scene{Wanted: &ringPIP})
	if !b.lens.picture.Visible() || !near(b.lens.at, b.view.On(b.place(middle)), 0.01) {
		t.Error("a point is wanted, and the loupe does not show what is under the pointer")
	}
	b.MouseOut()
	if b.lens.picture.Visible() {
		t.Error("the pointer is elsewhere, and there is a loupe")
	}
	at := plane.Pt[plane.Pixel](500, 400)
	b.Draw(Scene{Placed: []marking.Placed{{Spot: ringPIP, At: at}}})
	press(b, b.on(at.X, at.Y).AddXY(5, 5))
	if !b.lens.picture.Visible() || b.lens.at != at {
		t.Errorf("a mark is held, and the loupe shows %v", b.lens.at)
	}
}

func TestTheLoupeCoversNeitherPointerNorSpot(t *testing.T) {
	b, w := newTestBoard(t, 1)
	w.Resize(fyne.NewSize(700, 520))
	rapid.Check(t, func(t *rapid.T) {
		pointer := fyne.NewPos(float32(rapid.IntRange(0, 700).Draw(t, "x")), float32(rapid.IntRange(0, 520).Draw(t, "y")))
		spot := pointer.AddXY(float32(rapid.IntRange(-12, 12).Draw(t, "dx")), float32(rapid.IntRange(-12, 12).Draw(t, "dy")))
		b.lens.stand(pointer, spot)
		p := b.lens.picture.Position()
		here := image.Rect(int(p.X), int(p.Y), int(p.X)+lensSize, int(p.Y)+lensSize)
		for _, q := range []fyne.Position{pointer, spot} {
			if image.Pt(int(q.X), int(q.Y)).In(here) {
				t.Fatalf("the loupe at %v covers %v", here, q)
			}
		}
		if !here.In(image.Rect(-1, -1, 701, 521)) {
			t.Fatalf("the loupe at %v leaves the board, pointer at %v", here, pointer)
		}
	})
}

func TestTheLoupeStaysOnItsSideWhileItCan(t *testing.T) {
	b, w := newTestBoard(t, 1)
	w.Resize(fyne.NewSize(1000, 800))
	b.lens.picture.Show()
	b.lens.stand(fyne.NewPos(900, 400), fyne.NewPos(900, 400))
	side := b.lens.side
	b.lens.stand(fyne.NewPos(500, 400), fyne.NewPos(500, 400))
	if b.lens.side != side {
		t.Error("the loupe jumped though nothing was in its way")
	}
}

// marksUpRight is a scene with marks where the loupe likes to stand when the
// pointer is in the middle of the board.
func marksUpRight() Scene {
	s := Scene{Wanted: &ringPIP}
	for n := range 4 {
		at := plane.Pt(plane.Pixel(760+60*n), plane.Pixel(300-40*n))
		s.Placed = append(s.Placed, marking.Placed{Spot: marking.Spot{Kind: marking.JunctionPoint, Web: hand.ThirdWeb, N: n}, At: at})
	}
	return s
}

func TestTheLoupeHidesNoMarksWhereThereIsRoomElsewhere(t *testing.T) {
	b, _ := newTestBoard(t, 1)
	s := marksUpRight()
	b.Draw(s)
	hover(b, fyne.NewPos(300, 200))
	p := b.lens.picture.Position()
	for _, m := range s.Placed {
		q := b.on(m.At.X, m.At.Y)
		d := q.Subtract(p.AddXY(lensSize/2, lensSize/2))
		if d.X*d.X+d.Y*d.Y < lensSize*lensSize/4 {
			t.Errorf("the loupe at %v hides the mark at %v", p, q)
		}
	}
}

func TestTheLoupeDoesNotJumpToAndFro(t *testing.T) {
	b, _ := newTestBoard(t, 1)
	b.Draw(marksUpRight())
	hover(b, fyne.NewPos(150, 200))
	jumps, side, last := 0, b.lens.side, float32(0)
	for x := float32(150); x < 450; x++ {
		for _, tremble := range []float32{0, 2, -2} {
			hover(b, fyne.NewPos(x+tremble, 200))
			if b.lens.side != side {
				if jumps > 0 && x-last < 20 {
					t.Errorf("jumped at %g and at %g", last, x)
				}
				jumps, side, last = jumps+1, b.lens.side, x
			}
		}
	}
	if jumps > 4 {
		t.Errorf("on the way across the loupe jumped %d times", jumps)
	}
}
