package registration

import (
	"encoding/csv"
	"encoding/json"
	"math"
	"os"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"ogive/geometry/plane"
)

func pt(x, y plane.Millimetre) plane.Position { return plane.Pt(x, y) }

// Umeyama S. IEEE PAMI 1991;13:376-80, the example: R = [0.832 0.555; -0.555
// 0.832], c = 0.721, t = (-0.800, 0.400).
func TestUmeyamasExample(t *testing.T) {
	s, err := Fit([]plane.Position{pt(0, 0), pt(1, 0), pt(0, 2)}, []plane.Position{pt(0, 0), pt(-1, 0), pt(0, 2)})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "c", s.Scale, 0.721, 5e-4)
	near(t, "R11", s.Turn.Cos(), 0.832, 5e-4)
	near(t, "R12", -s.Turn.Sin(), 0.555, 5e-4)
	near(t, "t1", float64(s.Shift.X), -0.800, 5e-4)
	near(t, "t2", float64(s.Shift.Y), 0.400, 5e-4)
	m, err := FitMirrored([]plane.Position{pt(0, 0), pt(1, 0), pt(0, 2)}, []plane.Position{pt(0, 0), pt(-1, 0), pt(0, 2)})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "the residual of the mirror image", float64(m.RMS), 0, 1e-12)
	near(t, "the scale of the mirror image", m.Scale, 1, 1e-12)
}

// scikit-image 0.19.3 SimilarityTransform.estimate on pairs of the outlines of
// Stegmann and Gomez, and on the mirrored source.
func TestRealHandsRegisterAsScikitImageDoes(t *testing.T) {
	data, err := os.ReadFile("../../testdata/reference/similarity_scikit-image.json")
	if err != nil {
		t.Fatal(err)
	}
	var file struct {
		Cases []struct {
			Source        int        `json:"source_shape"`
			Target        int        `json:"target_shape"`
			Scale         float64    `json:"scale"`
			Rotation      float64    `json:"rotation_rad"`
			Translation   [2]float64 `json:"translation"`
			RMS           float64    `json:"rms"`
			MirroredScale float64    `json:"mirrored_scale"`
			MirroredRMS   float64    `json:"mirrored_rms"`
		} `json:"cases"`
	}
	if err := json.Unmarshal(data, &file); err != nil || len(file.Cases) == 0 {
		t.Fatal(len(file.Cases), err)
	}
	shapes := hands(t)
	for _, c := range file.Cases {
		from, to := shapes[c.Source], shapes[c.Target]
		s, err := Fit(from, to)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "scale", s.Scale, c.Scale, 1e-9)
		near(t, "rotation", s.Turn.Radians(), c.Rotation, 1e-9)
		near(t, "translation", float64(s.Shift.X), c.Translation[0], 1e-9)
		near(t, "translation", float64(s.Shift.Y), c.Translation[1], 1e-9)
		near(t, "rms", float64(s.RMS), c.RMS, 1e-9)
		m, err := FitMirrored(from, to)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "mirrored scale", m.Scale, c.MirroredScale, 1e-9)
		near(t, "mirrored rms", float64(m.RMS), c.MirroredRMS, 1e-9)
	}
}

// The points of Stegmann MB, Gomez DD. A brief introduction to statistical shape
// analysis. Technical University of Denmark, 2002: 40 left hands.
var (
	webs = []int{23, 33, 43}     // second to fourth
	tips = []int{18, 28, 38, 48} // index to little
)

func TestWebsOfRealHandsLieInOrderWhateverTheFingerSpread(t *testing.T) {
	shapes := hands(t)
	first := shapes[1]
	// Along the first hand: from the second to the fourth web ulnarward, square
	// to it distally, where its fingers point.
	ulnar := first[webs[2]-1].Sub(first[webs[0]-1]).Direction()
	distal := ulnar.Left()
	if first[tips[1]-1].Sub(first[webs[0]-1]).Dot(distal) < 0 {
		distal = distal.Scale(-1)
	}
	worst := plane.Millimetre(0)
	for shape := 1; shape <= len(shapes); shape++ {
		s, err := Fit(shapes[shape], first)
		if err != nil {
			t.Fatal(err)
		}
		worst = max(worst, s.RMS)
		h := s.Positions(shapes[shape])
		for i, w := range webs {
			web := h[w-1]
			if i > 0 && web.Sub(h[webs[i-1]-1]).Dot(ulnar) <= 0 {
				t.Errorf("hand %d: web %d does not lie ulnar to web %d", shape, i+2, i+1)
			}
			for _, tip := range tips[i : i+2] {
				if h[tip-1].Sub(web).Dot(distal) <= 0 {
					t.Errorf("hand %d: web %d does not lie proximal to point %d", shape, i+2, tip)
				}
			}
		}
	}
	t.Logf("40 hands registered to the first: residual up to %.3f of a hand's size", float64(worst))
}

func TestTheReflectionIsFoundExactly(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		number := rapid.Float64Range(-100, 100)
		want := Similarity{
			Scale:    rapid.Float64Range(0.2, 5).Draw(t, "scale"),
			Turn:     plane.Radians(rapid.Float64Range(-3.1, 3.1).Draw(t, "turn")),
			Mirrored: rapid.Bool().Draw(t, "mirrored"),
			Shift:    plane.Vec(plane.Millimetre(number.Draw(t, "dx")), plane.Millimetre(number.Draw(t, "dy"))),
		}
		from := []plane.Position{pt(0, 0), pt(40, 3), pt(2, 18), pt(41, 22)}
		to := want.Positions(from)
		got, err := fit(from, to, want.Mirrored)
		if err != nil {
			t.Fatal(err)
		}
		if got.RMS > 1e-9 || math.Abs(got.Scale-want.Scale) > 1e-9 {
			t.Errorf("got %+v, want %+v", got, want)
		}
		wrong, err := fit(from, to, !want.Mirrored)
		if err != nil {
			t.Fatal(err)
		}
		if wrong.RMS < 1 {
			t.Errorf("the wrong hand fits too, to %v mm", wrong.RMS)
		}
	})
}

func TestLandmarksThatCannotBeRegisteredAreRefused(t *testing.T) {
	a := []plane.Position{pt(0, 0), pt(1, 0), pt(0, 2)}
	for name, c := range map[string][2][]plane.Position{
		"one":       {a[:1], a[:1]},
		"unequal":   {a, a[:2]},
		"one place": {{pt(1, 1), pt(1, 1)}, a[:2]},
		"NaN":       {{pt(1, 1), pt(plane.Millimetre(math.NaN()), 1)}, a[:2]},
	} {
		if _, err := FitMirrored(c[0], c[1]); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}

// hands are the 40 outlines by their number.
func hands(t *testing.T) map[int][]plane.Position {
	t.Helper()
	f, err := os.Open("../../testdata/reference/hands_stegmann2002.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	out := map[int][]plane.Position{}
	for _, r := range rows[1:] {
		shape, err1 := strconv.Atoi(r[1])
		x, err2 := strconv.ParseFloat(r[3], 64)
		y, err3 := strconv.ParseFloat(r[4], 64)
		if err1 != nil || err2 != nil || err3 != nil {
			t.Fatal(r, err1, err2, err3)
		}
		out[shape] = append(out[shape], pt(plane.Millimetre(x), plane.Millimetre(y)))
	}
	if len(out) != 40 {
		t.Fatalf("%d hands", len(out))
	}
	return out
}

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s is %v, want %v", what, got, want)
	}
}
