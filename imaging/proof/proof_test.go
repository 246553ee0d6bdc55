package proof

import (
	"flag"
	"os"
	"testing"

	"ogive/geometry/plane"
)

// A short proof runs with every test; the full one on demand:
//
//	go test ./imaging/proof -run Targets -v -hands 100 -webviews 40
var (
	hands    = flag.Int("hands", 8, "phantom hands to measure")
	webViews = flag.Int("webviews", 4, "phantom web views to measure")
	clickSD  = flag.Float64("clicks", 2, "standard deviation of a click in pixels")
	seed     = flag.Uint64("seed", 1000, "seed of the first phantom")
)

func TestTheFiguresReachTheTargetsOnPhantoms(t *testing.T) {
	r, err := Run(Plan{Hands: *hands, WebViews: *webViews, ClickSD: plane.Pixel(*clickSD), Seed: *seed}, nil)
	if err != nil {
		t.Fatal(err)
	}
	if testing.Verbose() {
		if _, err := r.WriteTo(os.Stdout); err != nil {
			t.Fatal(err)
		}
	}
	// A few hands can't tell 90 per cent from 85: the short proof allows for that.
	slack := 0.0
	if *hands < 100 {
		slack = 0.12
	}
	for name, want := range targets {
		f := r.Figures[name]
		if f == nil {
			t.Errorf("no %s was measured", name)
			continue
		}
		if got := f.Within(want.limit); got < want.share-slack {
			t.Errorf("%s within %g in %.1f per cent, the target is %.0f", name, want.limit, 100*got, 100*want.share)
		}
	}
	if c := r.Coverage(); c < 0.92-slack/2 || (c > 0.99 && slack == 0) {
		t.Errorf("the truth lies inside the stated interval in %.1f per cent of figures, the target is 92 to 99", 100*c)
	}
	if s := r.ShapeRight(); s < 0.9-slack {
		t.Errorf("the shape is right in %.1f per cent, the target is 90", 100*s)
	}
	if b := quantile(r.Border, 0.5); b > 1 {
		t.Errorf("the traced border lies %.2f px from the true one at the median, the target is 1", b)
	}
}
