package wording

import (
	"testing"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/geometry/scale"
)

func TestWordsAreThoseOfTheTrade(t *testing.T) {
	perPixel := plane.Estimate[plane.Millimetre]{Value: 0.05, U95: 0.001}
	for _, c := range []struct{ got, want string }{
		{WebName(hand.ThirdWeb), "Third web"},
		{WebDigits(hand.ThirdWeb), "middle to ring"},
		{WebName(hand.Web(9)), "Web 9"},
		{Photograph(hand.Right, hand.Dorsal), "Right hand, back of the hand"},
		{Photograph(hand.Left, hand.WebView), "Left hand, looking into a web"},
		{IndexName(hand.Palmar), "palmar web index"},
		{Shape(reading.Web{Shape: arch.Gothic, ShapeSure: true}), "gothic"},
		{Shape(reading.Web{Shape: arch.U}), "U, not sure"},
		{Shape(reading.Web{}), ""},
		{Joint(hand.MCP, hand.Palmar), "basal crease"},
		{Joint(hand.MCP, hand.Dorsal), "MCP"},
		{JointOf(hand.Ring, hand.PIP, hand.Dorsal), "ring PIP"},
		{JointOf(hand.Thumb, hand.PIP, hand.Palmar), "thumb IP crease"},
		{Finger(hand.IndexFinger), "index finger"},
		{Limit(norms.Verdict{Figure: "index", Limit: 0.45, Against: "published values"}), "0.45 (published values)"},
		{Limit(norms.Verdict{Figure: "span", Limit: 8.04, Against: "other hand"}), "8.0 mm (other hand)"},
		{Limit(norms.Verdict{Figure: "slope", Limit: 35, Against: "published values"}), "35° (published values)"},
		{Scale(scale.ByTicks, perPixel), "scale by ruler ticks, 0.0500 ± 0.0010 mm per pixel"},
	} {
		if c.got != c.want {
			t.Errorf("written %q, want %q", c.got, c.want)
		}
	}
}

func TestADoubtfulVerdictSaysSo(t *testing.T) {
	v := norms.Verdict{Figure: "index", Finding: "too deep", Certain: true}
	if got := VerdictOf(v); got != "index: too deep" {
		t.Errorf("certain verdict reads %q", got)
	}
	v.Certain = false
	if got := VerdictOf(v); got != "index: too deep? (doubtful)" {
		t.Errorf("doubtful verdict reads %q", got)
	}
}

func TestAMissingFigureIsNotWritten(t *testing.T) {
	w := reading.Web{
		Index: &plane.Estimate[plane.Ratio]{Value: 0.5, U95: 0.02},
		Span:  &plane.Estimate[plane.Millimetre]{Value: 9, U95: 0.3},
	}
	got := Figures(w, hand.Dorsal)
	want := []Figure{{"dorsal web index", "0.50 ± 0.02"}, {"span", "9.0 ± 0.3 mm"}}
	if len(got) != len(want) || got[0] != want[0] || got[1] != want[1] {
		t.Errorf("figures read %v, want %v", got, want)
	}
}
