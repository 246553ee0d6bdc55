package report

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"math"
	"slices"
	"strings"
	"testing"

	"ogive/assets"
	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/geometry/scale"
	"ogive/imaging/marksfile"
	"ogive/imaging/measure"
	"ogive/imaging/wording"
)

func est[Q plane.Measured](value, u95 Q) *plane.Estimate[Q] {
	return &plane.Estimate[Q]{Value: value, U95: u95}
}

// entry is a hand with one web read in full, one that could not be traced and
// one of which the junction alone was marked.
func entry() Entry {
	full := reading.Web{
		Web: hand.ThirdWeb, Index: est[plane.Ratio](0.4712345678, 0.02), Depth: est[plane.Millimetre](12.5, 0.31),
		Span: est[plane.Millimetre](8.4, 0.3), Rise: est[plane.Millimetre](6.9, 0.4), RiseToSpan: est[plane.Ratio](0.82, 0.03),
		Flare: est(plane.Degrees(4), plane.Degrees(1)), CrownAngle: est(plane.Degrees(118), plane.Degrees(6)),
		CrownRadius: est[plane.Millimetre](1.4, 0.2), Area: est[plane.SquareMillimetre](37, 3),
		Widths: []reading.Width{{Distal: 2, Width: *est[plane.Millimetre](4.6, 0.2)}, {Distal: 5, Width: *est[plane.Millimetre](7.7, 0.2)}},
		Shape:  arch.Gothic, ShapeAlso: []arch.Shape{arch.Round}, FitRMS: 0.08,
		Crown: plane.PixelPoint{X: 1100.123, Y: 700}, Springing: [2]plane.PixelPoint{{X: 1050, Y: 600}, {X: 1150, Y: 610}},
		Edge: []plane.PixelPoint{{X: 1040, Y: 500}, {X: 1100.126, Y: 700}, {X: 1160, Y: 500}},
		Verdicts: []norms.Verdict{
			{Figure: "index", Finding: "too deep", Limit: 0.48, Against: "published values"},
			{Figure: "span", Finding: "too wide", Certain: true, Limit: 7.2, Against: "other webs of the same hand"},
		},
		Warnings: []string{"No width at 10 mm."},
	}
	return Entry{Path: "case, 1/marks.json", Result: measure.Result{
		Marks: marksfile.File{Photograph: "a<b>.jpg"},
		Reading: reading.Reading{
			Side: hand.Left, View: hand.Palmar, Method: scale.ByTicks,
			PerPixel: *est[plane.Millimetre](0.0333, 0.0004),
			Webs:     []reading.Web{full, {Web: hand.SecondWeb, Warnings: []string{"The border could not be traced."}}, {Web: hand.FourthWeb, Slope: est(plane.Degrees(41), plane.Degrees(2))}},
		},
	}}
}

func written(t *testing.T, write func(*bytes.Buffer) error) string {
	t.Helper()
	var out bytes.Buffer
	if err := write(&out); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

func jsonOf(t *testing.T, e Entry) map[string]any {
	t.Helper()
	var v map[string]any
	if err := json.Unmarshal([]byte(written(t, func(b *bytes.Buffer) error { return JSON(b, e) })), &v); err != nil {
		t.Fatal(err)
	}
	return v
}

func at(t *testing.T, v any, path ...any) any {
	t.Helper()
	for _, p := range path {
		switch p := p.(type) {
		case string:
			m, ok := v.(map[string]any)
			if !ok || m[p] == nil {
				t.Fatalf("nothing at %v of %v", p, path)
			}
			v = m[p]
		case int:
			list, ok := v.([]any)
			if !ok || p >= len(list) {
				t.Fatalf("nothing at %v of %v", p, path)
			}
			v = list[p]
		}
	}
	return v
}

func TestJSONHoldsEveryFigureUnderItsName(t *testing.T) {
	v := jsonOf(t, entry())
	for _, c := range []struct {
		want any
		path []any
	}{
		{1.0, []any{"ogive"}},
		{"case, 1/marks.json", []any{"marks"}},
		{"a<b>.jpg", []any{"photograph"}},
		{"left", []any{"hand"}},
		{"palmar", []any{"view"}},
		{"ticks", []any{"scale", "method"}},
		{0.0333, []any{"scale", "mm_per_px", "value"}},
		{0.0004, []any{"scale", "mm_per_px", "u95"}},
		{3.0, []any{"webs", 0, "web"}},
		{0.471235, []any{"webs", 0, "index", "value"}},
		{0.02, []any{"webs", 0, "index", "u95"}},
		{12.5, []any{"webs", 0, "depth_mm", "value"}},
		{8.4, []any{"webs", 0, "span_mm", "value"}},
		{6.9, []any{"webs", 0, "rise_mm", "value"}},
		{0.82, []any{"webs", 0, "rise_to_span", "value"}},
		{4.0, []any{"webs", 0, "flare_deg", "value"}},
		{118.0, []any{"webs", 0, "crown_angle_deg", "value"}},
		{6.0, []any{"webs", 0, "crown_angle_deg", "u95"}},
		{1.4, []any{"webs", 0, "crown_radius_mm", "value"}},
		{37.0, []any{"webs", 0, "area_mm2", "value"}},
		{"gothic", []any{"webs", 0, "shape"}},
		{false, []any{"webs", 0, "shape_sure"}},
		{"round", []any{"webs", 0, "shape_also", 0}},
		{0.08, []any{"webs", 0, "fit_rms_mm"}},
		{1100.12, []any{"webs", 0, "crown_px", 0}},
		{610.0, []any{"webs", 0, "springing_px", 1, 1}},
		{1100.13, []any{"webs", 0, "edge_px", 1, 0}},
		{4.6, []any{"webs", 0, "widths_mm", "2"}},
		{0.2, []any{"webs", 0, "widths_u95_mm", "5"}},
		{"index", []any{"webs", 0, "verdicts", 0, "figure"}},
		{"too deep", []any{"webs", 0, "verdicts", 0, "verdict"}},
		{false, []any{"webs", 0, "verdicts", 0, "certain"}},
		{0.48, []any{"webs", 0, "verdicts", 0, "limit"}},
		{"published values", []any{"webs", 0, "verdicts", 0, "against"}},
		{"No width at 10 mm.", []any{"webs", 0, "warnings", 0}},
		{41.0, []any{"webs", 2, "slope_deg", "value"}},
	} {
		if got := at(t, v, c.path...); got != c.want {
			t.Errorf("%v is %v, want %v", c.path, got, c.want)
		}
	}
}

func TestAFigureThatIsNotKnownIsAbsentFromJSON(t *testing.T) {
	web := at(t, jsonOf(t, entry()), "webs", 1).(map[string]any)
	for name := range web {
		if !slices.Contains([]string{"web", "verdicts", "warnings"}, name) {
			t.Errorf("a web without a border has %s: %v", name, web[name])
		}
	}
}

func TestWhatIsNoNumberIsNeverWritten(t *testing.T) {
	e := entry()
	w := &e.Result.Reading.Webs[0]
	w.Index.Value, w.Span.U95, w.FitRMS = plane.Ratio(math.NaN()), plane.Millimetre(math.Inf(1)), plane.Millimetre(math.NaN())
	w.Crown.X, w.Edge[0].Y, w.Widths[0].Width.Value = plane.Pixel(math.NaN()), plane.Pixel(math.Inf(-1)), plane.Millimetre(math.NaN())
	w.Verdicts[0].Limit = math.NaN()
	e.Result.Reading.PerPixel.U95 = plane.Millimetre(math.NaN())
	web := at(t, jsonOf(t, e), "webs", 0).(map[string]any)
	for _, name := range []string{"index", "span_mm", "shape", "crown_px"} {
		if web[name] != nil {
			t.Errorf("%s is %v", name, web[name])
		}
	}
	for name, text := range map[string]string{
		"CSV":   written(t, func(b *bytes.Buffer) error { return CSV(b, []Entry{e}) }),
		"table": written(t, func(b *bytes.Buffer) error { return Table(b, []Entry{e}) }),
	} {
		if strings.Contains(text, "NaN") || strings.Contains(text, "Inf") {
			t.Errorf("the %s holds what is no number:\n%s", name, text)
		}
	}
}

func TestReadingsAreToldFromMarks(t *testing.T) {
	e := entry()
	for _, text := range []string{
		written(t, func(b *bytes.Buffer) error { return JSON(b, e) }),
		written(t, func(b *bytes.Buffer) error { return JSONList(b, []Entry{e, e}) }),
		written(t, func(b *bytes.Buffer) error { return JSONList(b, nil) }),
	} {
		if !IsReading([]byte(text)) {
			t.Errorf("not known as a reading: %.80s", text)
		}
	}
	for _, text := range []string{"", "{}", `{"ogive": 1, "photograph": "a.jpg"}`, `[{"ogive": 1}]`, "nonsense"} {
		if IsReading([]byte(text)) {
			t.Errorf("taken for a reading: %s", text)
		}
	}
}

func TestCSVIsARowForEveryWebWithUnitsInItsHeader(t *testing.T) {
	text := written(t, func(b *bytes.Buffer) error { return CSV(b, []Entry{entry(), entry()}) })
	if !strings.Contains(text, "\r\n") {
		t.Error("lines do not end as RFC 4180 has it")
	}
	records, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(records) != 7 {
		t.Fatalf("%d rows for six webs and a header", len(records))
	}
	column := func(row int, name string) string {
		i := slices.Index(records[0], name)
		if i < 0 {
			t.Fatalf("no column %s among %v", name, records[0])
		}
		return records[row][i]
	}
	for name, want := range map[string]string{
		"marks": "case, 1/marks.json", "hand": "left", "web": "3", "index": "0.471235", "index_u95": "0.02", "span_mm": "8.4", "span_u95_mm": "0.3",
		"crown_angle_deg": "118", "crown_angle_u95_deg": "6", "area_mm2": "37", "slope_deg": "", "shape": "gothic", "shape_sure": "false", "shape_also": "round",
		"width_at_2_mm": "4.6", "width_at_10_mm": "", "index_verdict": "too deep", "index_verdict_certain": "false", "span_limit": "7.2", "slope_verdict": "",
		"warnings": "No width at 10 mm.",
	} {
		if got := column(1, name); got != want {
			t.Errorf("%s is %q, want %q", name, got, want)
		}
	}
	if got := column(2, "span_mm") + column(2, "shape_sure") + column(2, "index_verdict"); got != "" {
		t.Errorf("a web without a border has %q", got)
	}
	if got := column(3, "slope_deg"); got != "41" {
		t.Errorf("the slope is %q", got)
	}
}

func TestTheTableReadsAsASurgeonWouldWriteIt(t *testing.T) {
	text := written(t, func(b *bytes.Buffer) error { return Table(b, []Entry{entry()}) })
	for _, want := range []string{
		"Left hand, palm; scale by ruler ticks, 0.0333 ± 0.0004 mm per pixel\n",
		"  palmar web index   0.47 ± 0.02        -                 -\n",
		"  span               8.4 ± 0.3 mm       -                 -\n",
		"  slope              -                  -                 41 ± 2°\n",
		"  width at 5 mm      7.7 ± 0.2 mm",
		"  shape              gothic, not sure   -",
		"Third web: index too deep? (doubtful); limit 0.48 (published values)\n",
		"Third web: span too wide (certain); limit 7.2 mm (other webs of the same hand)\n",
		"Second web: The border could not be traced.\n",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("the table lacks %q:\n%s", want, text)
		}
	}
	if last := strings.Join(strings.Fields(text), " "); !strings.HasSuffix(last, wording.Caution) {
		t.Errorf("the caution does not end the table:\n%s", text)
	}
}

func TestTheExplanationSaysWhatAFigureMeansAndHowSureItIs(t *testing.T) {
	table, err := norms.Parse(assets.NormalValues)
	if err != nil {
		t.Fatal(err)
	}
	text := strings.Join(strings.Fields(written(t, func(b *bytes.Buffer) error { return Explain(b, []Entry{entry()}, table) })), " ")
	for _, want := range []string{
		"Palmar web index 0.47 ± 0.02: on the way from the basal creases (0) to the PIP creases (1) the crown lies at 47 per cent. No normal value is published for it.",
		"Verdict: too deep? (doubtful); the interval reaches across the limit, so measure again before relying on it.",
		"Shape gothic: two arcs meet in a point at the crown. It is not sure: round explains the border about as well.",
		"Verdict: too wide (certain), limit 7.2 mm (other webs of the same hand); the whole interval lies beyond the limit.",
		"Slope 41 ± 2°",
		"Taken as normal: 35 to 50° (published values).",
		"The border could not be traced.",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("the explanation lacks %q:\n%s", want, text)
		}
	}
}
