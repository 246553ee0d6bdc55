package comparison

import (
	"math"
	"testing"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
)

func TestTheOverlayHasTheOperatedCrownAtTheOriginAndOpensUpwards(t *testing.T) {
	operated := right()
	o := compared(t, operated, mirrored()).Webs[0].Overlay
	if o == nil || len(o.Operated) != 3 || len(o.Other) != 3 {
		t.Fatalf("%+v", o)
	}
	if d := o.Operated[1].Distance(plane.Position{}); d > 1e-9 {
		t.Errorf("the crown lies %v mm from the origin", d)
	}
	for i, q := range o.Operated {
		if d := q.Distance(o.Other[i]); d > 1e-6 {
			t.Errorf("point %d lies %v mm beside its mirror image", i, d)
		}
		if i != 1 && q.Y >= 0 {
			t.Errorf("the border at %v does not lie above the crown", q)
		}
	}
	// Lengths are those on the hand: from the crown to the first point 50 px
	// across and 110 px along, at 0.1 mm a pixel.
	if got, want := float64(o.Operated[0].Distance(o.Operated[1])), math.Hypot(5, 11); math.Abs(got-want) > 1e-9 {
		t.Errorf("%v mm long, want %v", got, want)
	}
}

func TestADeeperWebLiesBelowItsGhost(t *testing.T) {
	operated := right()
	w := &operated.Reading.Webs[0]
	for i := range w.Curve {
		w.Curve[i].Y += 30 // 3 mm proximally
	}
	w.Crown.Y += 30
	o := compared(t, operated, mirrored()).Webs[0].Overlay
	if math.Abs(float64(o.OtherCrown.Y)+3) > 0.05 || math.Abs(float64(o.OtherCrown.X)) > 0.3 {
		t.Errorf("the ghost's crown lies at %v, want 3 mm above", o.OtherCrown)
	}
}

func TestWithoutRegistrationThereIsNoOverlay(t *testing.T) {
	operated := right()
	operated.Marks.Joints = map[hand.Digit]map[hand.Joint]plane.PixelPoint{}
	if o := compared(t, operated, mirrored()).Webs[0].Overlay; o != nil {
		t.Errorf("%+v", o)
	}
}
