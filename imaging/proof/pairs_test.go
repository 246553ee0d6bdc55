package proof

import (
	"flag"
	"os"
	"testing"

	"ogive/geometry/plane"
)

// A few pairs run with every test; a full proof on demand:
//
//	go test ./imaging/proof -run Pairs -v -pairs 120
var pairs = flag.Int("pairs", 4, "pairs of phantom hands to compare")

func TestPairsOfHandsAreComparedAsTheyTrulyDiffer(t *testing.T) {
	r, err := RunPairs(PairsPlan{Pairs: *pairs, ClickSD: plane.Pixel(*clickSD), Seed: *seed}, nil)
	if err != nil {
		t.Fatal(err)
	}
	if testing.Verbose() {
		if _, err := r.WriteTo(os.Stdout); err != nil {
			t.Fatal(err)
		}
	}
	f := r.Figures["index"]
	if f == nil {
		t.Fatal("no index was compared")
	}
	if got := f.Within(0.02); got < 0.9 {
		t.Errorf("the index difference lies within 0.02 in %.1f per cent, the target is 90", 100*got)
	}
	if got := r.Quiet(); got < 0.95 {
		t.Errorf("no certain verdict in %.1f per cent of unchanged pairs, the target is 95", 100*got)
	}
	if got := r.Told(); got < 0.95 {
		t.Errorf("a certain and right verdict in %.1f per cent of changes of 3 mm or more, want 95", 100*got)
	}
}

// Digits need no picture, so many pairs are compared with every test.
func TestDigitsOfEqualHandsAreSeldomRemindedOfAndLargeOnesAre(t *testing.T) {
	r, err := RunSizes(PairsPlan{Pairs: 200, ClickSD: 2, Seed: *seed})
	if err != nil {
		t.Fatal(err)
	}
	if testing.Verbose() {
		if _, err := r.WriteTo(os.Stdout); err != nil {
			t.Fatal(err)
		}
	}
	if got := share(r.Quiet, r.Pairs); got < 0.95 {
		t.Errorf("no reminder of size in %.1f per cent of equal hands, the target is 95", 100*got)
	}
	for _, name := range []string{longer, wider} {
		// A ruler that shows no tilt leaves up to a tenth of a small digit in
		// doubt; a card hardly does.
		if got := share(r.SightedReminded[name], r.Sighted[name]); !(got >= 0.9) {
			t.Errorf("%s beside a card: reminded of in %.1f per cent, want 90", name, 100*got)
		}
		if got := share(r.Reminded[name], r.Grown[name]); got < 0.8 {
			t.Errorf("%s: reminded of in %.1f per cent, want 80", name, 100*got)
		}
	}
}
