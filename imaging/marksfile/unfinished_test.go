package marksfile

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
)

func TestUnfinishedWorkComesBackAsItWas(t *testing.T) {
	f := File{
		Photograph: "left.jpg",
		Marks:      hand.Marks{Side: hand.Left, View: hand.Palmar, ClickSD: 2},
		Unfinished: &Unfinished{
			Points:  []NamedPoint{{"scale 0", plane.Pt[plane.Pixel](10.5, 20)}, {"web 3 seed 1", plane.Pt[plane.Pixel](7, 8)}},
			Skipped: []string{"joint ring pip"}, Proposed: []hand.Web{hand.SecondWeb},
			ScaleOn: "card", Length: 50, Card: [2]plane.Millimetre{85.6, 53.98},
		},
	}
	data, err := f.Encode()
	if err != nil {
		t.Fatal(err)
	}
	got, err := Parse(data)
	if err != nil {
		t.Fatalf("%v in\n%s", err, data)
	}
	if diff := cmp.Diff(f.Unfinished, got.Unfinished); diff != "" {
		t.Errorf("unfinished work changed on its way through a file:\n%s", diff)
	}
}

func TestUnfinishedWorkIsCheckedLikeTheRest(t *testing.T) {
	for text, field := range map[string]string{
		`{"points": [{"name": "scale 0", "at": [1]}]}`:     "unfinished.points[0].at",
		`{"points": [{"name": "scale 0", "at": [1, -2]}]}`: "unfinished.points[0].at[1]",
		`{"proposed": [7]}`: "unfinished.proposed[0]",
		`{"length_mm": 0}`:  "unfinished.length_mm",
		`{"more": 1}`:       "unfinished",
		`{"skipped": ["` + strings.Repeat("x", 80) + `"]}`: "unfinished.skipped[0]",
	} {
		_, err := Parse([]byte(`{"ogive": 1, "photograph": "a.jpg", "hand": "left", "view": "dorsal", "unfinished": ` + text + `}`))
		if err == nil || !strings.Contains(err.Error(), field) {
			t.Errorf("%s gave %v, want a refusal that names %s", text, err, field)
		}
	}
}
