package planskin

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"

	"ogive/geometry/hand"
)

func TestThePanelSaysWhichAlternativeItReckons(t *testing.T) {
	r := show(t, drawn())
	held := "wide"
	r.InHand = func() string { return held }
	r.web = hand.FourthWeb
	r.again()
	if got := r.whose.said.Words(); !strings.Contains(got, "No alternative is chosen") || !strings.Contains(got, "“wide”") || !r.whose.choose.Visible() {
		t.Errorf("without a choice it says %q", got)
	}
	test.Tap(r.whose.choose)
	if r.file.Webs[1].Chosen != "wide" || r.whose.said.Words() != "For: “wide”, the one on the sheet." || r.whose.choose.Visible() {
		t.Errorf("chosen %q, it says %q", r.file.Webs[1].Chosen, r.whose.said.Words())
	}
	held = "narrow"
	r.again()
	if got := r.whose.said.Words(); !strings.HasPrefix(got, "For: “wide”, the one on the sheet.") || !strings.Contains(got, "another, “narrow”") || !r.whose.choose.Visible() {
		t.Errorf("with another in hand it says %q", got)
	}
	if strings.Join(r.steps, ", ") != "choose “wide”" {
		t.Errorf("steps %q", r.steps)
	}
}
