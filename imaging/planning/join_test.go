package planning

import (
	"strings"
	"testing"

	"ogive/geometry/flap"
	"ogive/geometry/hand"
	"ogive/imaging/marksfile"
)

// The second web is read at an index near 0.5; planned at 0.2 the fingers are
// joined from there up to its crown, planned at 0.9 nothing is left to separate.
func TestAJoinEndsAtThePresentWeb(t *testing.T) {
	h, truth := here(t)
	frame, _ := h.Ground.Frame(hand.SecondWeb)
	p, err := h.Propose(hand.SecondWeb, nil)
	if err != nil {
		t.Fatal(err)
	}
	a := p.Arch
	a.Crown = frame.Middle(0.2)
	join := h.BeginJoin(hand.SecondWeb, a)
	if join == nil || h.JoinNote(hand.SecondWeb, a) != "" {
		t.Fatalf("join %v, %q", join, h.JoinNote(hand.SecondWeb, a))
	}
	m := h.Ground.Fit.Best
	if d := m.Position(join[1]).Distance(m.Position(truth.Webs[0].Crown)); d > 0.7 {
		t.Errorf("the join ends %v mm from the web's true crown", d)
	}
	a.Crown = frame.Middle(0.9)
	// Who asks for a join there all the same gets one to drag.
	if h.Separates(hand.SecondWeb, a) || h.BeginJoin(hand.SecondWeb, a) == nil || !strings.Contains(h.JoinNote(hand.SecondWeb, a), "nothing to separate") {
		t.Errorf("%q", h.JoinNote(hand.SecondWeb, a))
	}
}

func TestAFreeWebIsPlannedWithoutAJoin(t *testing.T) {
	h, _ := here(t)
	b, err := Begin(h, nil, hand.SecondWeb)
	if err != nil {
		t.Fatal(err)
	}
	w := b.File.Webs[0]
	if w.Join != nil || w.Alternatives[0].Zigzag != nil || len(b.Notes) != 1 || !strings.Contains(b.Notes[0], "nothing to separate") {
		t.Errorf("join %v, notes %q", w.Join, b.Notes)
	}
}

func TestAWebThatNobodyAcceptedIsNoMeasure(t *testing.T) {
	h, _ := here(t)
	if len(h.beside(hand.ThirdWeb, nil).Webs) != 2 {
		t.Fatalf("%d webs beside", len(h.beside(hand.ThirdWeb, nil).Webs))
	}
	h.Marks.Unfinished = &marksfile.Unfinished{Proposed: []hand.Web{hand.SecondWeb, hand.FourthWeb}}
	if left := h.beside(hand.ThirdWeb, &h); len(left.Webs) != 0 {
		t.Errorf("%d webs nobody accepted are a measure", len(left.Webs))
	}
	if _, known := h.presentCrown(hand.SecondWeb); known {
		t.Error("a web that nobody accepted tells where a join ends")
	}
}

func TestAPalmarFlapOnTheBackEndsWithTheSkinBetweenTheDigits(t *testing.T) {
	h, _ := here(t)
	frame, _ := h.Ground.Frame(hand.SecondWeb)
	p, err := h.Propose(hand.SecondWeb, nil)
	if err != nil {
		t.Fatal(err)
	}
	a := p.Arch
	a.Crown = frame.Middle(0.2)
	present, _ := h.presentCrown(hand.SecondWeb)
	f := flap.Flap{Outline: h.Ground.Fit.Best.Positions(h.BeginPalmarFlap(a, nil).Outline)}
	want := max(present.Sub(a.Crown).Dot(a.Axis), a.Rise())
	if d := f.Length() - want; d > 0.01 || d < -0.01 {
		t.Errorf("the flap is %v mm long, the skin %v mm", f.Length(), want)
	}
}
