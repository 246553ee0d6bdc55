package report

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"ogive/geometry/comparison"
	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
)

func somePair() Pair {
	return Pair{Operated: "right.json", Other: "left.json", Comparison: comparison.Comparison{
		Operated: hand.Right, Other: hand.Left, View: hand.Dorsal, RegistrationRMS: 0.75,
		Webs: []comparison.Web{{
			Web:   hand.ThirdWeb,
			Index: &plane.Estimate[plane.Ratio]{Value: -0.075, U95: 0.01},
			Depth: &plane.Estimate[plane.Millimetre]{Value: 3, U95: 0.5},
			Verdicts: []norms.Verdict{
				{Figure: "index", Finding: "too deep", Certain: true, Limit: 0.45, Against: norms.OtherHand},
				{Figure: "depth", Finding: "too deep", Limit: 22, Against: norms.OtherHand},
				{Figure: "span", Finding: norms.NoDifference, Limit: 9, Against: norms.OtherHand},
			},
			Warnings: []string{"Something lacks."},
		}},
	}}
}

func TestAComparisonIsWrittenAsItsFormSays(t *testing.T) {
	var out strings.Builder
	if err := CompareJSON(&out, somePair()); err != nil {
		t.Fatal(err)
	}
	var got struct {
		RMS  float64 `json:"registration_rms_mm"`
		Webs []map[string]any
	}
	if err := json.Unmarshal([]byte(out.String()), &got); err != nil {
		t.Fatalf("%v in %s", err, out.String())
	}
	if got.RMS != 0.75 || len(got.Webs) != 1 || got.Webs[0]["web"] != 3.0 {
		t.Errorf("%s", out.String())
	}
	if d, ok := got.Webs[0]["index_difference"].(map[string]any); !ok || d["value"] != -0.075 || d["u95"] != 0.01 {
		t.Errorf("%s", out.String())
	}
	if _, there := got.Webs[0]["span_difference_mm"]; there {
		t.Errorf("an unknown difference is written: %s", out.String())
	}
	if !strings.Contains(out.String(), `"warnings": []`) {
		t.Errorf("no list of warnings: %s", out.String())
	}
}

func TestAResidualThatIsNotKnownIsLeftOut(t *testing.T) {
	p := somePair()
	p.Comparison.RegistrationRMS = plane.Millimetre(math.NaN())
	var out, table strings.Builder
	if err := CompareJSON(&out, p); err != nil {
		t.Fatal(err)
	}
	if err := CompareTable(&table, p); err != nil {
		t.Fatal(err)
	}
	if !json.Valid([]byte(out.String())) || strings.Contains(out.String(), "registration") || strings.Contains(table.String(), "NaN") {
		t.Errorf("%s\n%s", out.String(), table.String())
	}
}

func TestTheTableOfAComparisonSaysWhatIsSureAndCautions(t *testing.T) {
	var out strings.Builder
	if err := CompareTable(&out, somePair()); err != nil {
		t.Fatal(err)
	}
	text := strings.Join(strings.Fields(out.String()), " ")
	for _, want := range []string{
		"Operated right hand beside the left hand mirrored", "residual, rms: 0.8 mm",
		"Third web: index too deep (certain); limit 0.45 (other hand and tolerance)",
		"depth too deep? (doubtful); limit 22.0 mm",
		"span no difference that can be told; nearest limit 9.0 mm",
		"this project's own", "Third web: Something lacks.", "responsible surgeon",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("the table lacks %q:\n%s", want, out.String())
		}
	}
}
