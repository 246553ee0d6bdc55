package plancolour

import (
	"strings"
	"testing"

	"ogive/geometry/hand"
	"ogive/geometry/skincolour"
)

func TestAPalmOnAPhotographOfTheBackIsAskedAboutAndKept(t *testing.T) {
	r := show(t)
	r.place("palm", onSkin)
	r.place("back", onGrey)
	palm, back := r.rows[rowKey{place: skincolour.Palm}], r.rows[rowKey{place: skincolour.Back}]
	if !strings.Contains(palm.amiss.Words(), "of the back of the hand") || back.amiss.Words() != "" || len(r.file.Patches) != 2 {
		t.Errorf("palm: %q, back: %q", palm.amiss.Words(), back.amiss.Words())
	}
	r.file.View = hand.Palmar
	r.again()
	if !strings.Contains(back.amiss.Words(), "of the palm") || palm.amiss.Words() != "" {
		t.Errorf("palm: %q, back: %q", palm.amiss.Words(), back.amiss.Words())
	}
	r.file.View = hand.WebView
	r.again()
	if palm.amiss.Words()+back.amiss.Words() != "" {
		t.Error("a web view shows both")
	}
}
