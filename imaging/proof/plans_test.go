package proof

import (
	"flag"
	"os"
	"testing"

	"ogive/geometry/plane"
)

// A few pairs run with every test; a full proof on demand:
//
//	go test ./imaging/proof -run Planned -v -plans 60
var plans = flag.Int("plans", 2, "pairs of phantom hands to plan on")

func TestAPlannedArchProposedFromTheOtherHandLandsOnTheNormalWeb(t *testing.T) {
	r, err := RunPlans(PairsPlan{Pairs: *plans, ClickSD: plane.Pixel(*clickSD), Seed: *seed}, nil)
	if err != nil {
		t.Fatal(err)
	}
	if testing.Verbose() {
		if _, err := r.WriteTo(os.Stdout); err != nil {
			t.Fatal(err)
		}
	}
	if len(r.Crown) < 3**plans || len(r.Missed) > 0 {
		t.Errorf("%d webs of %d pairs: %q", len(r.Crown), *plans, r.Missed)
	}
	if got := share(within(r.Crown, 0.5), len(r.Crown)); got < 0.9 {
		t.Errorf("the crown lies within 0.5 mm of the true one in %.1f per cent, the target is 90", 100*got)
	}
}
