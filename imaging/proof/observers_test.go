package proof

import (
	"flag"
	"os"
	"testing"

	"ogive/geometry/plane"
)

// A few adults are measured with every test; the whole study on demand:
//
//	go test ./imaging/proof -run Observers -v -adults 30
var adults = flag.Int("adults", 3, "adult phantoms that two observers measure")

func TestTwoObserversAgreeOnTheDorsalIndex(t *testing.T) {
	r, err := RunObservers(ObserversPlan{Adults: *adults, ClickSD: plane.Pixel(*clickSD), Seed: *seed}, nil)
	if err != nil {
		t.Fatal(err)
	}
	if testing.Verbose() {
		if _, err := r.WriteTo(os.Stdout); err != nil {
			t.Fatal(err)
		}
	}
	index := r.Figures["index"]
	if want := 6 * *adults; len(index.Rows) != want {
		t.Fatalf("%d of %d webs were read by both: %v", len(index.Rows), want, r.Unread)
	}
	a, err := index.Agreement()
	if err != nil {
		t.Fatal(err)
	}
	if a.Absolute.Value <= enough || a.Consistency.Value <= enough {
		t.Errorf("ICC(2,1) %.3f, ICC(3,1) %.3f, the target is above %.2f", a.Absolute.Value, a.Consistency.Value, enough)
	}
}
