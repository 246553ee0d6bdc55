package rounds

import (
	"strings"
	"testing"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
)

var usualLimits = Limits{Index: [2]float64{0.45, 0.67}, Slope: [2]float64{35, 50}, SpanLeast: 1, SpanFraction: 0.1, Against: "published values"}

func TestAnAnswerIsSaidWithTheTrueFigureAndItsLimit(t *testing.T) {
	third := hand.ThirdWeb
	for _, c := range []struct {
		result Result
		want   string
	}{
		{Result{Judged: []Judged{{Of: Place, Web: third, Given: within, True: "too deep", Counted: true, Figure: 0.38, Limit: 0.45}}},
			"Third web: too deep; you said normal. Index 0.38, normal from 0.45 to 0.67."},
		{Result{Judged: []Judged{{Of: Slope, Web: third, Given: "too steep", True: "too steep", Counted: true, Right: true, Figure: 57.3, Limit: 50}}},
			"Third web: too steep, as you said. Slope 57°, normal from 35 to 50°."},
		{Result{Judged: []Judged{{Of: Place, Web: third, Given: within, True: "too deep", Also: []string{within}, Counted: true, Right: true, Figure: 0.44, U95: 0.02, Limit: 0.45}}},
			"Third web: too deep; you said normal, which the reference's own uncertainty allows. Index 0.44 ± 0.02, normal from 0.45 to 0.67."},
		{Result{Judged: []Judged{{Of: Width, Web: third, True: "too wide", Counted: true, Figure: 12.34, Limit: 10.1}}},
			"Third web: too wide; you did not say. Span 12.3 mm, nearest limit by the other webs 10.1 mm."},
		{Result{Judged: []Judged{{Of: Width, Web: third, Given: within}}},
			"Third web: the width does not count, for a V has no span."},
		{Result{Judged: []Judged{{Of: Shape, Web: third, Given: "U", True: "gothic", Counted: true}}},
			"Third web: gothic; you said U."},
		{Result{Judged: []Judged{{Of: Crown, Web: third, Given: "too shallow", True: within, Counted: true, Figure: 0.72, Off: &Off{1.84, 0.41}}}},
			"Third web: your crown lies 1.8 mm too distal, 0.4 mm towards the ulnar side (index 0.72, normal from 0.45 to 0.67)."},
		{Result{Judged: []Judged{{Of: Crown, Web: third, Given: within, True: within, Counted: true, Right: true, Figure: 0.5, Off: &Off{0, -0.62}}}},
			"Third web: your crown lies where one is normal (index 0.50, normal from 0.45 to 0.67), 0.6 mm towards the radial side."},
		{Result{
			Judged:    []Judged{{Of: Crown, Web: third, Given: "far", True: "near", Counted: true, Off: &Off{-2.1, 0.03}}},
			Landmarks: []Landmark{{Kind: crownKind, Of: third.String()}},
		}, "Third web: crown 2.1 mm too proximal."},
		{Result{
			Judged:    []Judged{{Of: Place, Web: third, Given: "too deep", True: within, Counted: true, Figure: 0.47, Limit: 0.45}},
			Landmarks: []Landmark{{Kind: crownKind, Of: third.String()}},
			Figures:   []FigureGap{{placeFigure, third, 0.43, 0.47}},
		}, "Third web: normal; your marks read as too deep. Index 0.47, normal from 0.45 to 0.67. Your marks give 0.43."},
	} {
		if got := c.result.words(c.result.Judged[0], usualLimits); got != c.want {
			t.Errorf("said: %s\nwant: %s", got, c.want)
		}
	}
}

func TestEveryMistakeHasASentenceOnWhatToLookFor(t *testing.T) {
	for of, names := range findings {
		for _, name := range names {
			j := Judged{Of: of, Web: hand.ThirdWeb, True: name, Counted: true}
			if s := look(Result{Judged: []Judged{j}}, usualLimits); len(s) < 40 || !strings.HasSuffix(s, ".") {
				t.Errorf("%s %s: %q", of, name, s)
			}
		}
	}
	for _, shape := range shapeNames() {
		if s := look(Result{Judged: []Judged{{Of: Shape, True: shape, Counted: true}}}, usualLimits); len(s) < 40 {
			t.Errorf("%s: %q", shape, s)
		}
	}
	far := Result{Landmarks: []Landmark{{Kind: "MCP", Of: "ring", Off: Off{-4, 0}}}, Judged: []Judged{{Of: Place, True: within, Counted: true}}}
	if s := look(far, usualLimits); !strings.HasPrefix(s, "Your MCP of the ring finger is 4.0 mm too proximal: ") {
		t.Errorf("%q", s)
	}
}

func TestOffsetsAreNamedBySide(t *testing.T) {
	for off, want := range map[Off]string{
		{1.8, 0.4}: "1.8 mm too distal, 0.4 mm towards the ulnar side", {-0.3, -2}: "0.3 mm too proximal, 2.0 mm towards the radial side",
		{0.04, -0.04}: "where it belongs to a tenth of a millimetre",
	} {
		if got := offWords(off); got != want {
			t.Errorf("%v: %s", off, got)
		}
	}
}

// On a left hand the ulnar side lies to the left of the fingers as seen from the
// back, in the palm to the right.
func TestTheUlnarSideIsWhereTheLittleFingerIs(t *testing.T) {
	for _, s := range []hand.Side{hand.Left, hand.Right} {
		for _, v := range []hand.View{hand.Dorsal, hand.Palmar} {
			truth := Truth{Side: s, View: v}
			up := plane.Vec[plane.Millimetre](0, -1)
			want := plane.Millimetre(1)
			if (s == hand.Left) != (v == hand.Palmar) {
				want = -1
			}
			if got := truth.ulnar(up).X; got < want-1e-9 || got > want+1e-9 {
				t.Errorf("%v hand, %v: %v", s, v, got)
			}
		}
	}
}
