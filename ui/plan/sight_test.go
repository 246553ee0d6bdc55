package plan

import (
	"testing"

	"fyne.io/fyne/v2/theme"

	"ogive/geometry/plan"
	"ogive/geometry/plane"
)

func TestTheAxisHandleStaysInSightWhenTheCrownIsDragged(t *testing.T) {
	r := shown(t)
	crown, ok := r.grip(archID(plan.Crown))
	if !ok {
		t.Fatal("no crown")
	}
	size := r.plate.Size()
	shorter := false
	for _, by := range []plane.Vector[plane.Pixel]{plane.Vec[plane.Pixel](0, -1), plane.Vec[plane.Pixel](0, 1)} {
		for far := 20.0; far <= 600; far += 20 {
			to := crown.At.Add(by.Scale(far))
			if p := r.plate.PositionOf(to); p.Y < 48 || p.Y > size.Height-48 {
				break
			}
			r.dragged(crown.ID, to)
			axis, _ := r.grip(archID(plan.Axis))
			here, _ := r.grip(archID(plan.Crown))
			p := r.plate.PositionOf(axis.At)
			if r.plate.apart(axis.At, here.At) > 120 && (p.X < 0 || p.Y < 0 || p.X > size.Width || p.Y > size.Height) {
				t.Fatalf("with the crown at %v the axis handle is at %v of %v", to, p, size)
			}
			shorter = shorter || p.Y <= 40 || p.Y >= size.Height-40
		}
		r.drop()
	}
	if !shorter {
		t.Error("the handle was never near the rim, so that nothing was tried")
	}
}

func TestTheRoomAsksForNoMoreThanASmallWindow(t *testing.T) {
	r, _ := room(t, theme.VariantLight, small700())
	r.Show(model(t))
	if least := r.Object().MinSize(); least.Width > 1024 || least.Height > 700 {
		t.Errorf("the room asks for %v", least)
	}
}
