package planfile

import (
	"bytes"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/santhosh-tekuri/jsonschema/v6"

	"ogive/assets"
	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/plan"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
)

const samplePath = "../../testdata/plans/right-dorsal.plan.json"

func sample(t testing.TB) string {
	t.Helper()
	data, err := os.ReadFile(samplePath)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

func schema(t testing.TB) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(assets.PlanSchema))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("plan.schema.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("plan.schema.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func bySchema(s *jsonschema.Schema, data []byte) error {
	v, err := jsonschema.UnmarshalJSON(bytes.NewReader(bytes.TrimPrefix(data, []byte("\xef\xbb\xbf"))))
	if err != nil {
		return err
	}
	return s.Validate(v)
}

func TestAPlanIsReadAsItStands(t *testing.T) {
	f, err := Read(samplePath)
	if err != nil {
		t.Fatal(err)
	}
	if err := bySchema(schema(t), []byte(sample(t))); err != nil {
		t.Error(err)
	}
	w := f.Web(hand.ThirdWeb)
	if w == nil || len(w.Alternatives) != 2 || w.ChosenAlternative() != &w.Alternatives[0] {
		t.Fatalf("third web %+v", w)
	}
	want := plan.Form{Shape: arch.Gothic, Span: 9.5, Flare: plane.Degrees(8), Turn: plane.Degrees(62.5)}
	if got := w.Alternatives[0].Arch.Form; got != want {
		t.Errorf("form %+v, want %+v", got, want)
	}
	if w.Girths.Radial.Taped != 52 || w.Girths.Ulnar.Width != 15.5 || (*w.Join)[1] != plane.Pt[plane.Pixel](1170, 620) {
		t.Errorf("girths %+v, join %v", w.Girths, w.Join)
	}
	if f.Web(hand.SecondWeb).ChosenAlternative() != nil {
		t.Error("one of three alternatives counts as chosen, though none was")
	}
	if f.Web(hand.FourthWeb) != nil {
		t.Error("a web is planned that is not in the file")
	}
	if got := f.MarksPath(samplePath); got != filepath.Join(filepath.Dir(samplePath), "right-dorsal.marks.json") {
		t.Errorf("the marks are sought at %s", got)
	}
}

func TestWhatIsSavedIsReadBack(t *testing.T) {
	f, err := Read(samplePath)
	if err != nil {
		t.Fatal(err)
	}
	again := filepath.Join(t.TempDir(), "again.plan.json")
	if err := f.Save(again); err != nil {
		t.Fatal(err)
	}
	g, err := Read(again)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(f, g); diff != "" {
		t.Error(diff)
	}
	written, err := os.ReadFile(again)
	if err != nil {
		t.Fatal(err)
	}
	if err := bySchema(schema(t), written); err != nil {
		t.Error(err)
	}
	if !IsPlan(written) || IsPlan([]byte(`{"ogive": 1}`)) || IsPlan([]byte(`[1]`)) {
		t.Error("a plan file is not told from another")
	}
}

func TestAnArchKeepsItsPlaceAndSizeThroughTheFile(t *testing.T) {
	// A photograph tilted and turned against the plane.
	m := scale.Map{H: [9]float64{0.04, 0.01, -3, -0.012, 0.05, 2, 1e-5, 2e-5, 1}}
	a := plan.Form{Shape: arch.Gothic, Span: 9, Flare: plane.Degrees(11), Turn: plane.Degrees(57)}.Placed(m.Position(plane.Pt[plane.Pixel](900, 700)), plane.Vec[plane.Millimetre](0.3, -1))
	b := ArchOn(a, m).On(m)
	if d := a.Crown.Distance(b.Crown); d > 1e-9 {
		t.Errorf("the crown moved by %v mm", d)
	}
	if d := a.Axis.AngleTo(b.Axis).Degrees(); d > 1e-6 {
		t.Errorf("the axis turned by %v degrees", d)
	}
	if d := math.Abs(float64(a.Span() - b.Span())); d > 1e-9 {
		t.Errorf("the span changed by %v mm", d)
	}
}

func TestWhatIsWrongIsRefusedWithFieldAndMend(t *testing.T) {
	s := schema(t)
	for _, c := range []struct {
		from, to, says string
		alsoBySchema   bool
	}{
		{`"ogive_plan": 1`, `"ogive_plan": 2`, "ogive_plan: is 2: the file was written by a later program than this one; use the later program", true},
		{`"ogive_plan": 1,`, ``, "ogive_plan: is missing, so this is not a plan file; ", true},
		{`"hand": "right"`, `"hand": "both"`, `hand: "both" is not known; give "left" or "right"`, true},
		{`"view": "dorsal"`, `"view": "web"`, "view: is the web view, in which nothing is planned; ", true},
		{`"photograph": "right-dorsal.jpg"`, `"photograph": " "`, "photograph: is empty; give the photograph's file name", true},
		{`"web": 2`, `"web": 3`, "webs[1].web: the third web is there twice; keep one", false},
		{`"web": 2`, `"web": 2.5`, "webs[1].web: 2.5 is no web; give a whole number", true},
		{`"web": 2`, `"web": 5`, "webs[1].web: is 5; give the number of a web", true},
		{`"chosen": "like the left hand"`, `"chosen": "widest"`, `webs[0].chosen: "widest" is none of the alternatives; give the name of one`, false},
		{`"name": "wider"`, `"name": "like the left hand"`, `webs[0].alternatives[1].name: "like the left hand" is there twice; `, false},
		{`"span_mm": 9.5`, `"span_mm": 0`, "webs[0].alternatives[0].arch.span_mm: is 0; give the span in millimetres, from 0.5 to 80", true},
		{`"span_mm": 9.5`, `"span_mm": 1e999`, "webs[0].alternatives[0].arch.span_mm: is 1e999; ", true},
		{`"span_mm": 9.5, `, ``, "webs[0].alternatives[0].arch.span_mm: is missing; give the span", true},
		{`"turn_deg": 62.5`, `"turn_deg": 9`, "webs[0].alternatives[0].arch.turn_deg: is 9, less than 3 degrees more than the flare; ", false},
		{`"shape": "V", `, `"shape": "V", "span_mm": 9, `, "webs[1].alternatives[0].arch.span_mm: is fixed by the shape V; leave it out", true},
		{`"axis": [1165, 900], "shape": "gothic"`, `"axis": [1160, 1150], "shape": "gothic"`, "webs[0].alternatives[0].arch.axis: lies on the crown; ", false},
		{`[1040, 1440], [1060, 1080], [1260, 1080], [1280, 1440]`, `[1040, 1440], [1060, 1080]`, "webs[0].alternatives[0].flap.outline: holds 2; give ", true},
		{`[1040, 1440], [1060, 1080], [1260, 1080], [1280, 1440]`, `[1, 1], [1, 1], [1, 1]`, "webs[0].alternatives[0].flap.outline: has all its points at one place; ", false},
		{`"kind": "dorsal"`, `"kind": "lateral"`, `webs[0].alternatives[0].flap.kind: "lateral" is not known; give "dorsal" or "palmar"`, true},
		{`[1260, 980]`, `[1260, "980"]`, "webs[0].alternatives[0].zigzag.dorsal[1][1]: is a text; give a number of pixels", true},
		{`[1260, 980]`, `[1260, 980, 3]`, "webs[0].alternatives[0].zigzag.dorsal[1]: holds 3; ", true},
		{`"taped_mm": 52`, `"taped_mm": 52, "width_mm": 16`, "webs[0].girths.radial: has both a taped girth and a width; keep the taped girth", true},
		{`"taped_mm": 52`, `"taped_mm": -3`, "webs[0].girths.radial.taped_mm: is -3; ", true},
		{`"gave_cm2": 12`, `"gave_cm2": 0`, "donors[0].gave_cm2: is 0; ", true},
		{`"radius_px": 24}`, `"radius_px": 0}`, "patches[0].radius_px: is 0; give the patch a radius", true},
		{`"stiffness", "nails"`, `"stiffness", "stiffness"`, "family.findings[1]: is there twice; keep one", true},
		{`"donors": [`, `"sites": [`, "sites: is not known here; use one of ", true},
		{`"name": "inner arm"`, `"name": "inner arm", "name": "other"`, "donors[1].name: is there twice; keep one", false},
		{`"gave_cm2": 12`, `"gave_cm2": NaN`, "donors[0].gave_cm2: this is not JSON", true},
		{`"text": "The middle joint will stay as stiff as it is."}]}` + "\n}", ``, "the file ends too early; take a whole copy", true},
	} {
		text := strings.Replace(sample(t), c.from, c.to, 1)
		if text == sample(t) {
			t.Fatalf("%s is not in the sample", c.from)
		}
		_, err := Parse([]byte(text))
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s for %s: %v\nwant %q", c.to, c.from, err, c.says)
		}
		if c.alsoBySchema && bySchema(s, []byte(text)) == nil {
			t.Errorf("the schema has nothing against %s for %s", c.to, c.from)
		}
	}
}

func TestAPlanThatCouldNotBeReadAgainIsNotSaved(t *testing.T) {
	path := filepath.Join(t.TempDir(), "sound.plan.json")
	sound := File{Photograph: "a.jpg", Side: hand.Left, View: hand.Dorsal}
	if err := sound.Save(path); err != nil {
		t.Fatal(err)
	}
	before, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	nan := plane.Pixel(math.NaN())
	for says, spoil := range map[string]func(*File){
		"hand:":        func(f *File) { f.Side = 0 },
		"no number":    func(f *File) { f.Patches = []Patch{{Name: "back", Centre: plane.Pt(nan, 0), Radius: 3}} },
		"webs[0].web:": func(f *File) { f.Webs = []Web{{Web: 7}} },
		"shape": func(f *File) {
			f.Webs = []Web{{Web: 3, Alternatives: []Alternative{{Name: "a", Arch: &Arch{Axis: plane.Pt[plane.Pixel](3, 3)}}}}}
		},
	} {
		f := sound
		spoil(&f)
		if err := f.Save(path); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%v, want %q", err, says)
		}
	}
	after, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(before, after) {
		t.Error("a refused plan replaced a sound one")
	}
}

func TestAPlanLiesBesideItsMarks(t *testing.T) {
	for marks, want := range map[string]string{
		"case/right.marks.json": "case/right.plan.json",
		"case/right.json":       "case/right.plan.json",
	} {
		if got := PathFor(marks); got != want {
			t.Errorf("%s: %s, want %s", marks, got, want)
		}
	}
}
