package marksfile

import (
	"bytes"
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/santhosh-tekuri/jsonschema/v6"

	"ogive/assets"
	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
)

func schema(t testing.TB) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(assets.MarksSchema))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("marks.schema.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("marks.schema.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// bySchema is what the schema says of a text.
func bySchema(s *jsonschema.Schema, data []byte) error {
	v, err := jsonschema.UnmarshalJSON(bytes.NewReader(bytes.TrimPrefix(data, []byte("\xef\xbb\xbf"))))
	if err != nil {
		return err
	}
	return s.Validate(v)
}

const samples = "../../testdata/marks"

func sample(t testing.TB, name string) string {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(samples, name))
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

func sampleFiles(t testing.TB, pattern string) []string {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(samples, pattern))
	if err != nil || len(files) == 0 {
		t.Fatalf("no samples match %s: %v", pattern, err)
	}
	return files
}

func TestAMarksFileHoldsWhatWasWritten(t *testing.T) {
	f, err := Parse([]byte(sample(t, "seeds-and-ruler.json")))
	if err != nil {
		t.Fatal(err)
	}
	want := File{
		Photograph: "right-dorsal.jpg",
		Marks: hand.Marks{
			Side: hand.Right, View: hand.Dorsal, ClickSD: 2,
			Joints: map[hand.Digit]map[hand.Joint]plane.PixelPoint{
				hand.Middle: {hand.MCP: {X: 1010, Y: 1400}, hand.PIP: {X: 1002, Y: 905}},
				hand.Ring:   {hand.MCP: {X: 1302, Y: 1421}, hand.PIP: {X: 1325, Y: 960}},
			},
			Webs: []hand.WebMarks{{Web: hand.ThirdWeb, Seeds: []plane.PixelPoint{{X: 1100, Y: 900}, {X: 1150, Y: 1180}, {X: 1205, Y: 930}}}},
			Junctions: []hand.JunctionMarks{{
				Web:  hand.ThirdWeb,
				Line: []plane.PixelPoint{{X: 900, Y: 700}, {X: 950, Y: 760}},
				Axis: [2]plane.PixelPoint{{X: 800, Y: 500}, {X: 1200, Y: 500}},
			}},
		},
		Absent:    map[hand.Digit]map[hand.Joint]bool{},
		Reference: scale.Ruler{From: plane.PixelPoint{X: 310, Y: 2210.5}, To: plane.PixelPoint{X: 1812, Y: 2204}, Length: 50},
	}
	if diff := cmp.Diff(want, f); diff != "" {
		t.Error(diff)
	}
}

func TestTicksAndCardsAreReadWithTheirSizes(t *testing.T) {
	f, err := Parse([]byte(sample(t, "junction-and-ticks.json")))
	if err != nil {
		t.Fatal(err)
	}
	if r, ok := f.Reference.(scale.Ticks); !ok || len(r.At) != 5 || r.Step != 1 {
		t.Errorf("the ticks are %+v", f.Reference)
	}
	if f, err = Parse([]byte(sample(t, "edge-and-card.json"))); err != nil {
		t.Fatal(err)
	}
	if r, ok := f.Reference.(scale.Card); !ok || r.Width != 85.6 || r.Height != 53.98 || r.Corners[2] != (plane.PixelPoint{X: 940, Y: 660}) {
		t.Errorf("the card is %+v", f.Reference)
	}
	if !f.Absent[hand.Ring][hand.PIP] {
		t.Error("the joint written as null is not known to be absent")
	}
}

func TestAnUngivenClickDeviationIsTwoPixels(t *testing.T) {
	f, err := Parse([]byte(sample(t, "unfinished.json")))
	if err != nil || f.Marks.ClickSD != hand.DefaultClickSD {
		t.Errorf("%v, %v", f.Marks.ClickSD, err)
	}
}

func TestEverySampleIsAcceptedHereAndByTheSchema(t *testing.T) {
	s := schema(t)
	for _, path := range sampleFiles(t, "*.json") {
		data, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := Parse(data); err != nil {
			t.Errorf("%s: %v", path, err)
		}
		if err := bySchema(s, data); err != nil {
			t.Errorf("%s: %v", path, err)
		}
	}
}

// change is one edit of a sound file and what the refusal must say. The schema
// must refuse it too, unless it is beyond a schema.
type change struct {
	from, to     string
	field        string
	says         string
	beyondSchema bool
}

const (
	ruled  = "seeds-and-ruler.json"
	carded = "edge-and-card.json"
	ticked = "junction-and-ticks.json"
)

var changes = map[string][]change{
	ruled: {
		{from: `"web": 3, "seeds"`, to: `"web": 0, "seeds"`, field: "webs[0].web", says: "0 is no web; give the number of a web: 1 (thumb-index)"},
		{from: `"web": 3, "seeds"`, to: `"web": 5, "seeds"`, field: "webs[0].web", says: "5 is no web"},
		{from: `"web": 3, "seeds"`, to: `"web": 1.5, "seeds"`, field: "webs[0].web", says: "1.5 is no web"},
		{from: `"web": 3, "seeds"`, to: `"web": "third", "seeds"`, field: "webs[0].web", says: "is a text; give the number of a web"},
		{from: `"web": 3, "seeds"`, to: `"seeds"`, field: "webs[0].web", says: "is missing; give the number of a web"},
		{from: `"web": 3, "line"`, to: `"web": 9, "line"`, field: "junctions[0].web", says: "9 is no web"},
		{from: `"seeds": [[1100, 900], [1150, 1180], [1205, 930]]`, to: `"seeds": [[1100, 900], [1150, 1180]]`, field: "webs[0].seeds", says: "holds 2; give 3 points: border, crown, border"},
		{from: `[1205, 930]]`, to: `[1205]]`, field: "webs[0].seeds[2]", says: "holds 1; give a point [x, y]"},
		{from: `[1205, 930]]`, to: `[1205, 930, 1]]`, field: "webs[0].seeds[2]", says: "holds 3; give a point [x, y]"},
		{from: `[1205, 930]]`, to: `[1205, "930"]]`, field: "webs[0].seeds[2][1]", says: "is a text; give a number of pixels"},
		{from: `[1205, 930]]`, to: `[1205, null]]`, field: "webs[0].seeds[2][1]", says: "is null; give a number of pixels"},
		{from: `[1205, 930]]`, to: `[1205, -4]]`, field: "webs[0].seeds[2][1]", says: "is -4, outside any photograph"},
		{from: `[1205, 930]]`, to: `[1205, 1e7]]`, field: "webs[0].seeds[2][1]", says: "outside any photograph"},
		{from: `[1205, 930]]`, to: `[1205, 1e999]]`, field: "webs[0].seeds[2][1]", says: "is larger than any number this program holds"},
		{from: `[1205, 930]]`, to: `[1205, NaN]]`, field: "webs[0].seeds[2][1]", says: "NaN is not a number (line 4, column 66); give a plain number"},
		{from: `[1205, 930]]`, to: `[1205, Infinity]]`, field: "webs[0].seeds[2][1]", says: "Infinity is not a number"},
		{from: `[1205, 930]]`, to: `[1205, -Infinity]]`, field: "webs[0].seeds[2][1]", says: "-Infinity is not a number"},
		{from: `[1205, 930]]`, to: `[1100, 900]]`, field: "webs[0].seeds[2]", says: "lies on seeds[0]", beyondSchema: true},
		{from: `"seeds": [[1100, 900], [1150, 1180], [1205, 930]]`, to: `"edge": [[1, 1], [2, 2], [3, 3], [4, 4]]`, field: "webs[0].edge", says: "holds 4; give the border as a list of 5 points or more"},
		{from: `"seeds": [[1100, 900], [1150, 1180], [1205, 930]]`, to: `"edge": [[1, 1], [1, 1], [1, 1], [1, 1], [1, 1]]`, field: "webs[0].edge", says: "has all its points at one place", beyondSchema: true},
		{from: `, "seeds": [[1100, 900], [1150, 1180], [1205, 930]]`, to: ``, field: "webs[0]", says: "has neither an edge nor seeds"},
		{from: `"webs": [{`, to: `"webs": [{"web": 3, "seeds": [[1, 1], [5, 5], [9, 9]]}, {`, field: "webs[1].web", says: "the third web is there twice; keep one of them", beyondSchema: true},
		{from: `"webs": [{`, to: `"webs": [3, {`, field: "webs[0]", says: "is a number; give a web"},
		{from: `"ring":`, to: `"fourth":`, field: "joints.fourth", says: "is not known here; use one of thumb, index, middle, ring, little"},
		{from: `"pip": [1325, 960]`, to: `"ip": [1325, 960]`, field: "joints.ring.ip", says: "is not known here; use one of mcp, pip, dip, tip"},
		{from: `"pip": [1325, 960]`, to: `"pip": [1302, 1421]`, field: "joints.ring.pip", says: "lies on the mcp; move one of them", beyondSchema: true},
		{from: `"pip": [1325, 960]`, to: `"pip": {"x": 1325, "y": 960}`, field: "joints.ring.pip", says: "is an object; give a point [x, y]"},
		{from: `"joints": {`, to: `"joints": [], "junction": {`, field: "junction", says: "is not known here; use one of ogive, photograph"},
		{from: `"click_sd_px"`, to: `"click_sd"`, field: "click_sd", says: "use one of ogive, photograph, hand, view, click_sd_px"},
		{from: `"click_sd_px": 2`, to: `"click_sd_px": 0`, field: "click_sd_px", says: "is 0; give the standard deviation of placing a point in pixels, above 0"},
		{from: `"click_sd_px": 2`, to: `"click_sd_px": 1000`, field: "click_sd_px", says: "is 1000"},
		{from: `"hand": "right"`, to: `"hand": "both"`, field: "hand", says: `"both" is not known; give "left" or "right"`},
		{from: `"hand": "right", `, to: ``, field: "hand", says: `is missing; give "left" or "right"`},
		{from: `"view": "dorsal"`, to: `"view": "Dorsal"`, field: "view", says: `"Dorsal" is not known; give "dorsal", "palmar" or "web"`},
		{from: `"view": "dorsal"`, to: `"view": true`, field: "view", says: `is true or false; give "dorsal"`},
		{from: `"ogive": 1, `, to: ``, field: "ogive", says: "is missing, so this is not a marks file"},
		{from: `"ogive": 1`, to: `"ogive": 2`, field: "ogive", says: "was written by a later program"},
		{from: `"ogive": 1`, to: `"ogive": 0`, field: "ogive", says: "is 0; give 1"},
		{from: `"ogive": 1`, to: `"ogive": "1"`, field: "ogive", says: "is a text; give the number 1"},
		{from: `"right-dorsal.jpg"`, to: `" "`, field: "photograph", says: "is empty; give the photograph's file name"},
		{from: `"photograph": "right-dorsal.jpg", `, to: ``, field: "photograph", says: "is missing"},
		{from: `"hand": "right",`, to: `"hand": "right", "hand": "left",`, field: "hand", says: "is there twice; keep one of them", beyondSchema: true},
		{from: `"pip": [1325, 960]`, to: `"mcp": [1325, 960]`, field: "joints.ring.mcp", says: "is there twice", beyondSchema: true},
		{from: `"length_mm": 50`, to: `"length_mm": 0`, field: "scale.length_mm", says: "is 0; give the length between the two points in millimetres, above 0"},
		{from: `"length_mm": 50`, to: `"length_mm": -50`, field: "scale.length_mm", says: "is -50"},
		{from: `"length_mm": 50`, to: `"length_mm": 50000`, field: "scale.length_mm", says: "at most 2000"},
		{from: `"length_mm": 50`, to: `"step_mm": 50`, field: "scale.step_mm", says: "is not known here; use one of ruler, length_mm"},
		{from: `, "length_mm": 50`, to: ``, field: "scale.length_mm", says: "is missing"},
		{from: `[[310.0, 2210.5], [1812.0, 2204.0]]`, to: `[[310.0, 2210.5]]`, field: "scale.ruler", says: "holds 1; give the 2 ends"},
		{from: `{"ruler": [[310.0, 2210.5], [1812.0, 2204.0]], "length_mm": 50}`, to: `{}`, field: "scale", says: "has no ruler, ticks or card"},
		{from: `{"ruler"`, to: `{"ticks": [], "ruler"`, field: "scale", says: "has more than one of ruler, ticks and card"},
		{from: `"axis": [[800, 500], [1200, 500]]`, to: `"axis": [[800, 500], [800, 500]]`, field: "junctions[0].axis", says: "has length zero", beyondSchema: true},
		{from: `"axis": [[800, 500], [1200, 500]]`, to: `"axis": [[800, 500]]`, field: "junctions[0].axis", says: "holds 1; give 2 points"},
		{from: `, "axis": [[800, 500], [1200, 500]]`, to: ``, field: "junctions[0].axis", says: "is missing"},
		{from: `"line": [[900, 700], [950, 760]]`, to: `"line": [[900, 700]]`, field: "junctions[0].line", says: "holds 1; give 2 points or more"},
		{from: `"line": [[900, 700], [950, 760]]`, to: `"line": [[900, 700], [900, 700]]`, field: "junctions[0].line", says: "has all its points at one place", beyondSchema: true},
		{from: `500]]}]}`, to: `500]]}]} and more`, says: "something follows the closing brace (line 5,"},
		{from: `500]]}]}`, to: `500]]}]`, says: "the file ends too early; take a whole copy"},
		{from: `500]]}]}`, to: `500]]}],}`, says: "this is not JSON (line 5,"},
		{from: `"view": "dorsal",`, to: `"view": "dorsal"`, says: "this is not JSON (line 1,"},
		{from: "right-dorsal", to: "right-\xe9", says: "the file is not UTF-8 text; save it again as UTF-8", beyondSchema: true},
	},
	carded: {
		{from: `, [90, 640]]`, to: `]`, field: "scale.card", says: "holds 3; give the 4 corners"},
		{from: `"width_mm": 85.6`, to: `"width_mm": 0`, field: "scale.width_mm", says: "is 0"},
		{from: `"height_mm": 53.98`, to: `"height_mm": 5398000`, field: "scale.height_mm", says: "at most 2000"},
	},
	ticked: {
		{from: `, [320, 902], [380, 903], [440, 904]]`, to: `]`, field: "scale.ticks", says: "holds 2; give 3 equally spaced ticks"},
		{from: `"step_mm": 1`, to: `"step_mm": 0`, field: "scale.step_mm", says: "is 0"},
	},
}

func TestEveryRefusalNamesTheFieldAndTheMendAndAgreesWithTheSchema(t *testing.T) {
	s := schema(t)
	for name, list := range changes {
		text := sample(t, name)
		for _, c := range list {
			if strings.Count(text, c.from) != 1 {
				t.Fatalf("%q stands %d times in %s", c.from, strings.Count(text, c.from), name)
			}
			data := []byte(strings.Replace(text, c.from, c.to, 1))
			_, err := Parse(data)
			var r *Refusal
			if !errors.As(err, &r) || r.Mend == "" || r.Field != c.field && c.field != "" || !strings.Contains(err.Error(), c.says) {
				t.Errorf("%s with %s: %v\nwant field %q and %q", name, c.to, err, c.field, c.says)
			}
			if json.Valid(data) && bySchema(s, data) == nil != c.beyondSchema {
				t.Errorf("%s with %s: the schema says %v", name, c.to, bySchema(s, data))
			}
		}
	}
}

func TestEveryBrokenSampleIsRefused(t *testing.T) {
	for _, path := range sampleFiles(t, "broken/*.json") {
		if _, err := Read(path); err == nil || !strings.HasPrefix(err.Error(), path+": ") {
			t.Errorf("%s: %v", path, err)
		}
	}
}

func TestAFileOfOtherKindsOrSizesIsRefused(t *testing.T) {
	for text, says := range map[string]string{
		"":                                     "the file is empty",
		" \n":                                  "the file is empty",
		"[]":                                   "is a list; give a marks file",
		"null":                                 "is null",
		"{}":                                   "is missing, so this is not a marks file",
		"\x89PNG\r\n":                          "not UTF-8",
		strings.Repeat(" ", MaxSize) + "{}   ": "is larger than 4 MB",
	} {
		if _, err := Parse([]byte(text)); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%.20q: %v, want %q", text, err, says)
		}
	}
}
