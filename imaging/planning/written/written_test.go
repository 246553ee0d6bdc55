package written

import (
	"bytes"
	"encoding/json"
	"math"
	"regexp"
	"strings"
	"testing"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/plan"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/geometry/scale"
	"ogive/imaging/marksfile"
	"ogive/imaging/measure"
	"ogive/imaging/planfile"
	"ogive/imaging/planning"
	"ogive/imaging/wording"
)

// opened is a plan for the third web of a hand photographed square at 0.1 mm a
// pixel: two digits of 40 mm, 20 mm apart.
func opened(t *testing.T) planning.Opened {
	t.Helper()
	settings, err := measure.Defaults()
	if err != nil {
		t.Fatal(err)
	}
	at := func(x plane.Pixel) map[hand.Joint]plane.PixelPoint {
		return map[hand.Joint]plane.PixelPoint{hand.MCP: {X: x, Y: 900}, hand.PIP: {X: x, Y: 500}}
	}
	marks := hand.Marks{Side: hand.Right, View: hand.Dorsal, ClickSD: 2, Joints: map[hand.Digit]map[hand.Joint]plane.PixelPoint{hand.Middle: at(600), hand.Ring: at(800)}}
	here := planning.Hand{
		Marks:   marksfile.File{Photograph: "hand.jpg", Marks: marks},
		Ground:  plan.Ground{Marks: marks, Fit: scale.Fit{Best: scale.Map{H: [9]float64{0.1, 0, 0, 0, 0.1, 0, 0, 0, 1}}}},
		Reading: reading.Reading{Side: hand.Right, View: hand.Dorsal, PerPixel: plane.Estimate[plane.Millimetre]{Value: 0.1, U95: 0.001}, Warnings: []string{"The ruler lies askew."}},
		Table:   settings.Norms,
	}
	b, err := planning.Begin(here, nil)
	if err != nil {
		t.Fatal(err)
	}
	w := &b.File.Webs[0]
	w.Join = &[2]plane.PixelPoint{{X: 700, Y: 680}, {X: 700, Y: 380}}
	w.Girths = &planfile.Girths{Radial: planfile.Girth{Taped: 56}, Ulnar: planfile.Girth{Taped: 52}}
	form := plan.Form{Shape: arch.Gothic, Span: 9, Turn: plane.Degrees(60)}
	w.Alternatives[0].Arch = planfile.ArchOn(form.Placed(plane.Pt[plane.Millimetre](70, 80), plane.Vec[plane.Millimetre](0, -1)), here.Ground.Fit.Best)
	return planning.Opened{Begun: b, Here: here}
}

func TestTheTableReadsLikeASurgeonsNotes(t *testing.T) {
	var out bytes.Buffer
	if err := Table(&out, "hand.plan.json", opened(t)); err != nil {
		t.Fatal(err)
	}
	text := out.String()
	for _, says := range []string{
		`^hand\.plan\.json\n`, `Third web \(middle to ring\)`, `proposed from: table of normal values`,
		`dorsal web index +0\.25 ± 0\.01`, `span +9\.0 ± 0\.0 mm`, `crown angle +120 ± 0°`,
		`index too deep \(certain\); limit 0\.45 \(published values\)`,
		`shape as "somewhat gothic" has it`, `dorsal flap, length +30\.7 ± 0\.0 mm`,
		`dorsal zigzag, tips`, `limbs to the creases`, `common practice, no source`,
		`girths +56\.0 ± 2\.0 mm and 52\.0 ± 2\.0 mm`, `skin apart to skin joined +1\.22 ± 0\.01`, `graft +[0-9.]+ ± [0-9.]+ cm²`,
		`patch, radial digit +[0-9.]+ x [0-9.]+ mm`, `The ruler lies askew\.`,
	} {
		if !regexp.MustCompile(says).MatchString(text) {
			t.Errorf("nothing reads %s in\n%s", says, text)
		}
	}
	if !strings.HasSuffix(strings.Join(strings.Fields(text), " "), wording.Caution) {
		t.Error("the caution does not stand under the table")
	}
	for line := range strings.Lines(text) {
		if len([]rune(line)) > wide+20 {
			t.Errorf("a line is %d characters long: %s", len([]rune(line)), line)
		}
	}
}

// By the formula of the design: 2 pi r + 4 r for equal digits; here of 56 and 52
// mm the outline is 88.3 mm, so 19.7 mm are short for each millimetre of join,
// 30 mm of which lack 5.9 cm².
func TestTheJSONHoldsTheFiguresAndTheOutlines(t *testing.T) {
	var out bytes.Buffer
	if err := JSON(&out, "hand.plan.json", opened(t)); err != nil {
		t.Fatal(err)
	}
	var got planForm
	d := json.NewDecoder(&out)
	d.DisallowUnknownFields()
	if err := d.Decode(&got); err != nil {
		t.Fatal(err)
	}
	w := got.Webs[0]
	a := w.Alternatives[0]
	for what, pair := range map[string][2]float64{
		"index": {float64(a.Arch.Index.Value), 0.25}, "span": {float64(a.Arch.Span.Value), 9}, "crown angle": {float64(a.Arch.CrownAngle.Value), 120},
		"join": {float64(w.Join.Value), 30}, "short per mm": {float64(w.Skin.PerMillimetre.Value), 19.7}, "short in all": {float64(w.Skin.Shortage.Value), 5.9},
		"apart to joined": {float64(w.Skin.Ratio.Value), 1.22},
	} {
		if math.Abs(pair[0]-pair[1]) > 0.006*pair[1] {
			t.Errorf("%s is %v, want %v", what, pair[0], pair[1])
		}
	}
	for name, line := range map[string][2][]xy{
		"arch": {a.Arch.Outline, a.Arch.Pixels}, "flap": {a.Flap.Outline, a.Flap.Pixels},
		"dorsal": {a.Dorsal.Outline, a.Dorsal.Pixels}, "palmar": {a.Palmar.Outline, a.Palmar.Pixels},
	} {
		if len(line[0]) < 2 || len(line[0]) != len(line[1]) {
			t.Fatalf("%s: %d mm, %d px", name, len(line[0]), len(line[1]))
		}
		for i := range line[0] {
			if math.Abs(float64(line[0][i][0])-0.1*float64(line[1][i][0])) > 1e-3 {
				t.Errorf("%s: point %d", name, i)
			}
		}
	}
	if w.Proposal == nil || w.Proposal.From != "table of normal values" || len(a.Arch.Verdicts) == 0 || a.Trade == "" || len(got.Scale.Warnings) != 1 {
		t.Errorf("%+v", w)
	}
}

func TestWhatIsNoNumberIsNullInTheJSON(t *testing.T) {
	for n, want := range map[number]string{number(math.Inf(1)): "null", 1234567: "1.23457e+06", 0.1 + 0.2: "0.3", 0: "0"} {
		if got, err := json.Marshal(n); err != nil || string(got) != want {
			t.Errorf("%v is written %s, want %s (%v)", float64(n), got, want, err)
		}
	}
	if got, err := json.Marshal(number(math.NaN())); err != nil || string(got) != "null" {
		t.Errorf("%s, %v", got, err)
	}
}
