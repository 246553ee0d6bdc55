package audit

import (
	"bytes"
	"encoding/csv"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"ogive/geometry/arch"
	"ogive/geometry/comparison"
	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/geometry/scale"
	"ogive/imaging/appraisal"
	"ogive/imaging/casebook"
	"ogive/imaging/casebook/readings"
	"ogive/imaging/marksfile"
	"ogive/imaging/measure"
)

func settings(t *testing.T) measure.Settings {
	t.Helper()
	s, err := measure.Defaults()
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// measured is a hand of 30 mm from MCP to PIP with its third web at that index,
// read as on a photograph.
func measured(t *testing.T, side hand.Side, index, radius float64) measure.Result {
	t.Helper()
	const perPixel = 0.1
	f := marksfile.File{Photograph: "a.jpg", Reference: scale.Ruler{From: plane.Pt[plane.Pixel](100, 430), To: plane.Pt[plane.Pixel](500, 430), Length: 40}}
	m := &f.Marks
	m.Side, m.View, m.ClickSD = side, hand.Dorsal, 1
	radial, ulnar := plane.Pixel(200), plane.Pixel(400)
	if side == hand.Left {
		radial, ulnar = ulnar, radial
	}
	m.Joints = map[hand.Digit]map[hand.Joint]plane.PixelPoint{
		hand.Middle: {hand.MCP: plane.Pt(radial, 400), hand.PIP: plane.Pt(radial, 100)},
		hand.Ring:   {hand.MCP: plane.Pt(ulnar, 400), hand.PIP: plane.Pt(ulnar, 100)},
	}
	a := arch.Arch{Shape: arch.Round, Crown: plane.Pt(30, plane.Millimetre(40-30*index)), Axis: plane.Vec[plane.Millimetre](0, -1), Flare: plane.Degrees(6), Turn: plane.RightAngle, Radius: plane.Millimetre(radius)}
	var edge []plane.PixelPoint
	for _, p := range a.Polyline(5, 0.2) {
		edge = append(edge, plane.Pt(plane.Pixel(p.X)/perPixel, plane.Pixel(p.Y)/perPixel))
	}
	m.Webs = []hand.WebMarks{{Web: hand.ThirdWeb, Edge: edge}}
	fit, err := f.Reference.Fit(scale.Camera{Width: 600, Height: 440, Tilt: scale.DefaultTilt}, m.ClickSD)
	if err != nil {
		t.Fatal(err)
	}
	return measure.Result{Marks: f, Reading: reading.Read(*m, fit, settings(t).Norms), Scale: fit}
}

// record is a case operated on its left third web, with sittings before, at and
// 6 and 24 months after the operation.
func record() *casebook.Record {
	r := &casebook.Record{Case: casebook.Case{ID: 1, Code: "S-1", Born: "2022-02", Hand: casebook.LeftHand,
		Joins: []casebook.Join{{Hand: hand.Left, Web: hand.ThirdWeb, Kind: casebook.Simple, Extent: casebook.Complete, Operated: "2024-01-10"}}}}
	for i, s := range []struct {
		date  casebook.Date
		stage casebook.Stage
	}{{"2023-12-01", casebook.Before}, {"2024-01-10", casebook.AtOperation}, {"2024-07-10", casebook.FollowUp}, {"2026-01-10", casebook.FollowUp}} {
		r.Sittings = append(r.Sittings, casebook.Sitting{ID: int64(i + 1), Date: s.date, Stage: s.stage})
	}
	return r
}

// shot adds a photograph with its reading.
func shot(r *casebook.Record, items *[]readings.Item, sitting int64, observer string, m measure.Result) {
	id := int64(len(r.Photographs) + 1)
	r.Photographs = append(r.Photographs, casebook.Photograph{ID: id, Sitting: sitting, Hash: strings.Repeat("0123456789abcdef", 4), Hand: m.Reading.Side.String(), View: m.Reading.View.String()})
	*items = append(*items, readings.Item{Case: 1, Sitting: sitting, Photograph: id, Observer: observer, Kept: readings.Of(m)})
}

// table is the table of one case, each row by the names of its columns.
func table(t *testing.T, r *casebook.Record, items []readings.Item) []map[string]string {
	t.Helper()
	c := collect(r, items)
	c.follow()
	c.compare(settings(t).Norms.Span)
	c.sort()
	var out bytes.Buffer
	if err := (Audit{Rows: c.rows}).CSV(&out); err != nil {
		t.Fatal(err)
	}
	lines, err := csv.NewReader(&out).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []map[string]string
	for _, l := range lines[1:] {
		row := map[string]string{}
		for i, name := range lines[0] {
			row[name] = l[i]
		}
		rows = append(rows, row)
	}
	return rows
}

func holds(t *testing.T, row map[string]string, want map[string]string) {
	t.Helper()
	for name, value := range want {
		got, ok := row[name]
		if !ok || got != value {
			t.Errorf("%s is %q, want %q", name, got, value)
		}
	}
}

func TestEveryWebOfEverySittingIsARowWithItsCreepAndItsFellow(t *testing.T) {
	r := record()
	var items []readings.Item
	shot(r, &items, 1, "AB", measured(t, hand.Left, 0.9, 3))
	shot(r, &items, 2, "AB", measured(t, hand.Left, 0.5, 4))
	shot(r, &items, 3, "AB", measured(t, hand.Left, 0.5, 4))
	shot(r, &items, 4, "AB", measured(t, hand.Left, 0.7, 4))
	shot(r, &items, 4, "AB", measured(t, hand.Right, 0.5, 4))
	rows := table(t, r, items)
	if len(rows) != 5 {
		t.Fatalf("%d rows", len(rows))
	}
	holds(t, rows[0], map[string]string{"case": "S-1", "sitting": "1", "stage": "before", "age_months": "21", "months_since_operation": "-1.29", "creep": "", "is_baseline": "false", "operated": "false", "joined": "true", "hand": "left", "web": "3"})
	holds(t, rows[1], map[string]string{"months_since_operation": "0", "creep": "", "is_baseline": "true", "operated": "true", "shape": "round", "photograph": "0123456789ab", "scale_method": "ruler"})
	holds(t, rows[3], map[string]string{"months_since_operation": "24", "months_since_first_operation": "24", "age_months": "46", "is_baseline": "false", "baseline_months": "0", "differs_from_baseline": "", "creep_grade": "3", "other_observer": "AB", "other_joined": "false", "other_index_verdict": "too shallow", "other_index_verdict_certain": "true"})
	if !strings.HasPrefix(rows[3]["creep"], "0.4") && !strings.HasPrefix(rows[3]["creep"], "0.39") {
		t.Errorf("creep from 0.5 to 0.7 is %s", rows[3]["creep"])
	}
	holds(t, rows[4], map[string]string{"hand": "right", "joined": "false", "months_since_operation": "", "months_since_first_operation": "24", "other_index_difference": "", "creep": "", "is_baseline": ""})
}

// What stands beside the other hand is what the comparison itself says.
func TestDifferencesAreThoseOfTheComparison(t *testing.T) {
	with := settings(t)
	left, right := measured(t, hand.Left, 0.62, 5), measured(t, hand.Right, 0.5, 4)
	r := record()
	var items []readings.Item
	shot(r, &items, 4, "AB", left)
	shot(r, &items, 4, "AB", right)
	c := collect(r, items)
	c.compare(with.Norms.Span)
	got := c.rows[0].Other
	both, err := comparison.Compare(photograph(left), photograph(right), with.Norms.Span)
	if err != nil {
		t.Fatal(err)
	}
	want := both.Webs[0]
	if got == nil || !cmp.Equal(got.Index, want.Index) || !cmp.Equal(got.Depth, want.Depth) || !cmp.Equal(got.Span, want.Span) || !cmp.Equal(got.CrownAngle, want.CrownAngle) {
		t.Errorf("%+v\nwant %+v", got, want)
	}
	if diff := cmp.Diff(want.Verdicts, got.Verdicts); diff != "" || len(got.Verdicts) != 3 {
		t.Error(diff)
	}
}

func photograph(r measure.Result) comparison.Photograph {
	return comparison.Photograph{Marks: r.Marks.Marks, Scale: r.Scale, Reading: r.Reading}
}

func TestEachObserverIsMeasuredAgainstTheirOwnBaselineWhereTheyMarkedIt(t *testing.T) {
	r := record()
	var items []readings.Item
	shot(r, &items, 2, "AB", measured(t, hand.Left, 0.5, 4))
	again := items[0]
	again.Observer, again.Kept = "CD", readings.Of(measured(t, hand.Left, 0.55, 4))
	items = append(items, again)
	shot(r, &items, 4, "AB", measured(t, hand.Left, 0.6, 4))
	for _, o := range []string{"CD", "EF"} {
		next := items[2]
		next.Observer = o
		items = append(items, next)
	}
	rows := table(t, r, items)
	of := func(observer string) map[string]string {
		return rows[slices.IndexFunc(rows, func(r map[string]string) bool { return r["observer"] == observer && r["sitting"] == "4" })]
	}
	holds(t, of("AB"), map[string]string{"differs_from_baseline": ""})
	holds(t, of("CD"), map[string]string{"differs_from_baseline": ""})
	holds(t, of("EF"), map[string]string{"differs_from_baseline": "observer"})
	if of("AB")["creep"] == of("CD")["creep"] || of("AB")["creep"] != of("EF")["creep"] {
		t.Errorf("creep AB %s, CD %s, EF %s", of("AB")["creep"], of("CD")["creep"], of("EF")["creep"])
	}
}

func foundBy(observer string, at time.Time, givens ...appraisal.Given) casebook.Appraised {
	a := casebook.Appraised{Sitting: 4, Date: "2026-01-10", Appraisal: appraisal.Appraisal{Observer: observer, Saved: at}}
	for _, g := range givens {
		a.Appraisal.Set(g)
	}
	return a
}

func TestFindingsStandInTheRowOfTheirWebAndNoneIsLost(t *testing.T) {
	r := record()
	var items []readings.Item
	shot(r, &items, 4, "AB", measured(t, hand.Left, 0.5, 4))
	web := appraisal.Web(hand.Left, hand.ThirdWeb)
	vss := []appraisal.Given{
		{Finding: appraisal.Vascularity, Place: web, Choice: "red"}, {Finding: appraisal.Pigmentation, Place: web, Choice: "normal"},
		{Finding: appraisal.Pliability, Place: web, Choice: "firm"}, {Finding: appraisal.Height, Place: web, Choice: "flat"},
		{Finding: appraisal.Deviation, Place: appraisal.Digit(hand.Left, hand.Middle), Choice: "ulnar", Note: "SECRET"},
		{Finding: appraisal.Movement, Place: appraisal.Digit(hand.Left, hand.Ring), Choice: "full"},
		{Finding: appraisal.DonorSite, Choice: "fine"}, {Finding: appraisal.DorsalScars, Place: appraisal.Hand(hand.Left), Choice: "visible"},
	}
	now := time.Date(2026, 1, 10, 12, 0, 0, 0, time.UTC)
	other := appraisal.Given{Finding: appraisal.Feel, Place: web, Choice: "thickened"}
	second := appraisal.Given{Finding: appraisal.Look, Place: appraisal.Web(hand.Left, hand.SecondWeb), Choice: "poor"}
	r.Appraisals = []casebook.Appraised{foundBy("AB", now, vss...), foundBy("CD", now.Add(time.Hour), other, second)}
	rows := table(t, r, items)
	if len(rows) != 3 {
		t.Fatalf("%d rows: %v", len(rows), rows)
	}
	byWeb := func(web, observer string) map[string]string {
		return rows[slices.IndexFunc(rows, func(r map[string]string) bool { return r["web"] == web && r["observer"] == observer })]
	}
	holds(t, byWeb("3", "AB"), map[string]string{"appraised_by": "AB", "found_vss_vascularity": "2", "found_vss_total": "5", "found_deviation_radial": "ulnar", "found_deviation_ulnar": "",
		"found_movement_ulnar": "full", "found_donor_site": "fine", "found_dorsal_scars": "visible", "found_feel": ""})
	holds(t, byWeb("3", "CD"), map[string]string{"appraised_by": "CD", "found_feel": "thickened", "found_vss_total": "", "view": "", "index": "", "photograph": ""})
	holds(t, byWeb("2", "CD"), map[string]string{"found_look": "poor", "joined": "false"})
	for _, row := range rows {
		for name, cell := range row {
			if strings.Contains(cell, "SECRET") {
				t.Errorf("%s holds free text", name)
			}
		}
	}
}

func TestUnfinishedMarksAreARowThatSaysWhatIsLacking(t *testing.T) {
	r := record()
	var items []readings.Item
	shot(r, &items, 3, "AB", measured(t, hand.Left, 0.5, 4))
	items[0].Kept = readings.Kept{Lacking: "scale: is missing"}
	rows := table(t, r, items)
	if len(rows) != 1 {
		t.Fatalf("%d rows", len(rows))
	}
	holds(t, rows[0], map[string]string{"web": "", "hand": "left", "view": "dorsal", "observer": "AB", "warnings": "scale: is missing", "index": "", "joined": "false", "found_movement_ulnar": ""})
}

func TestATextThatLooksLikeAFormulaIsNoneAndCanBeHadBack(t *testing.T) {
	for _, code := range []string{"=1+1", "+7", "-3", "@x", "'x", "\tx", "S-1", ""} {
		got := guarded(code)
		if back := strings.TrimPrefix(got, "'"); got != code && back != code || code != "" && strings.ContainsRune("=+-@\t\r", rune(got[0])) {
			t.Errorf("%q is written as %q", code, got)
		}
	}
	r := record()
	r.Case.Code = "-3"
	var items []readings.Item
	shot(r, &items, 1, "=AB", measured(t, hand.Left, 0.9, 4))
	rows := table(t, r, items)
	holds(t, rows[0], map[string]string{"case": "'-3", "observer": "'=AB", "months_since_operation": "-1.29"})
}

func TestTheDictionaryHasALineForEveryColumn(t *testing.T) {
	var words, rows bytes.Buffer
	if err := Dictionary(&words); err != nil {
		t.Fatal(err)
	}
	if err := (Audit{}).CSV(&rows); err != nil {
		t.Fatal(err)
	}
	lines, err := csv.NewReader(&words).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	header, err := csv.NewReader(&rows).Read()
	if err != nil {
		t.Fatal(err)
	}
	if len(lines) != len(header)+2 || lines[len(lines)-1][0] != "*" || !strings.Contains(lines[len(lines)-1][1], "responsible surgeon") {
		t.Fatalf("%d lines for %d columns", len(lines), len(header))
	}
	seen := map[string]bool{}
	for i, name := range header {
		if lines[i+1][0] != name || lines[i+1][1] == "" || lines[i+1][3] == "" || lines[i+1][4] == "" || seen[name] {
			t.Errorf("%q: %q", name, lines[i+1])
		}
		seen[name] = true
		if strings.Contains(name, "date") || strings.Contains(name, "path") || strings.Contains(name, "name") {
			t.Errorf("%s might tell who the patient is", name)
		}
	}
}

func TestWhatIsNoNumberIsAnEmptyCell(t *testing.T) {
	for x, want := range map[float64]string{0.123456789: "0.123457", -1e-12: "0", 1234567: "1234570", math.Inf(1): ""} {
		if got := number(x); got != want {
			t.Errorf("%v is written %q, want %q", x, got, want)
		}
	}
	if got := number(math.NaN()); got != "" {
		t.Errorf("NaN is written %q", got)
	}
}
