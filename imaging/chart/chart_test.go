package chart_test

import (
	"bytes"
	"encoding/xml"
	"image"
	"image/color"
	"io"
	"math"
	"strings"
	"testing"

	"ogive/geometry/followup"
	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
	"ogive/imaging/chart"
	"ogive/imaging/measure"
	"ogive/imaging/wording"
)

type ratio = plane.Estimate[plane.Ratio]

func table(t *testing.T) norms.Table {
	t.Helper()
	s, err := measure.Defaults()
	if err != nil {
		t.Fatal(err)
	}
	return s.Norms
}

func at(day string, index plane.Ratio, change ...func(*followup.Sitting)) followup.Sitting {
	d, err := followup.ParseDay(day)
	if err != nil {
		panic(err)
	}
	s := followup.Sitting{Day: d, Index: ratio{Value: index, U95: 0.022}, Method: scale.ByRuler, View: hand.Dorsal, Observer: "A", Feel: followup.Soft}
	for _, c := range change {
		c(&s)
	}
	return s
}

func before(s *followup.Sitting)   { s.Before = true }
func byCard(s *followup.Sitting)   { s.Method = scale.ByCard }
func byOther(s *followup.Sitting)  { s.Observer = "B" }
func fromPalm(s *followup.Sitting) { s.View = hand.Palmar }

// creeping is a web that creeps over three years beside one that stays.
func creeping() followup.History {
	plan := plane.Ratio(0.46)
	d, _ := followup.ParseDay("2023-02-14")
	return followup.History{
		Operated: d, Plan: &plan,
		Sittings: []followup.Sitting{
			at("2023-01-20", 0.93, before), at("2023-02-14", 0.47), at("2023-05-16", 0.50),
			at("2024-02-20", 0.57, byCard), at("2025-02-14", 0.62, byOther), at("2026-02-10", 0.66),
		},
		Other: []followup.Sitting{
			at("2023-01-20", 0.49), at("2023-02-14", 0.48), at("2023-05-16", 0.50), at("2024-02-20", 0.49), at("2026-02-10", 0.485),
		},
	}
}

func drawn(t *testing.T) chart.Chart {
	return chart.Of("S-012", hand.Left, hand.ThirdWeb, followup.Follow(creeping()), table(t))
}

func TestTheSameChartIsDrawnTheSame(t *testing.T) {
	for name, write := range map[string]func(io.Writer) error{"PNG": drawn(t).PNG, "SVG": drawn(t).SVG} {
		var a, b bytes.Buffer
		if err := write(&a); err != nil {
			t.Fatal(err)
		}
		if err := write(&b); err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(a.Bytes(), b.Bytes()) {
			t.Errorf("%s differs from one drawing to the next", name)
		}
	}
}

func TestThePictureSaysWhatItShowsAndWarns(t *testing.T) {
	var b bytes.Buffer
	if err := drawn(t).SVG(&b); err != nil {
		t.Fatal(err)
	}
	said := texts(t, b.Bytes())
	for _, want := range []string{
		"S-012", "left hand, third web", "creep 0.36 ±", "grade 3", "dorsal web index", "months since the operation", "3 years",
		"other hand", "planned at 0.46", "normal, 0.45 to 0.67 (published values)", "other scale", "other observer",
		"before the release", "from memory", wording.Caution,
	} {
		if !strings.Contains(strings.ToLower(said), strings.ToLower(want)) {
			t.Errorf("the chart does not say %q; it says: %s", want, said)
		}
	}
}

// texts is all texts of an SVG, one after the other.
func texts(t *testing.T, svg []byte) string {
	t.Helper()
	var out []string
	d := xml.NewDecoder(bytes.NewReader(svg))
	for {
		token, err := d.Token()
		if err == io.EOF {
			return strings.Join(out, " ")
		}
		if err != nil {
			t.Fatalf("the SVG is no XML: %v", err)
		}
		if c, ok := token.(xml.CharData); ok && strings.TrimSpace(string(c)) != "" {
			out = append(out, strings.TrimSpace(string(c)))
		}
	}
}

func TestEveryPointIsDrawnWhereItIsSaidToLie(t *testing.T) {
	for _, scale := range []float64{1, 1.5, 2} {
		img, spots := drawn(t).Image(image.Pt(int(900*scale), int(600*scale)), scale, chart.Paper)
		if len(spots) != 6 {
			t.Fatalf("%d points are placed", len(spots))
		}
		for i, s := range spots {
			want := chart.Paper.Own
			if i == 0 {
				want = chart.Paper.Ground // not released yet: hollow
			}
			if got := img.At(int(s.X), int(s.Y)); !same(got, want) {
				t.Errorf("at scale %v point %d is said to lie at (%.0f, %.0f), where the colour is %v", scale, i, s.X, s.Y, got)
			}
		}
		for i := 1; i < len(spots); i++ {
			if spots[i].X <= spots[i-1].X {
				t.Errorf("at scale %v point %d lies left of the one before", scale, i)
			}
		}
		if spots[2].Y <= spots[5].Y {
			t.Errorf("at scale %v a larger index is not drawn higher", scale)
		}
	}
}

func TestPointsOfOneDayDoNotHideEachOther(t *testing.T) {
	h := creeping()
	h.Sittings = append(h.Sittings, at("2026-02-10", 0.655, byOther), at("2026-02-10", 0.665, byCard))
	c := chart.Of("S-012", hand.Left, hand.ThirdWeb, followup.Follow(h), table(t))
	_, spots := c.Image(image.Pt(900, 600), 1, chart.Paper)
	for i := range spots {
		for j := range i {
			if d := math.Hypot(spots[i].X-spots[j].X, spots[i].Y-spots[j].Y); d < 9 {
				t.Errorf("points %d and %d lie %.1f px apart", j, i, d)
			}
		}
	}
}

func same(a, b color.Color) bool {
	r, g, bl, _ := a.RGBA()
	r2, g2, bl2, _ := b.RGBA()
	d := math.Abs(float64(r)-float64(r2)) + math.Abs(float64(g)-float64(g2)) + math.Abs(float64(bl)-float64(bl2))
	return d < 3*1024
}

func TestEachKindOfDifferenceHasAShapeOfItsOwn(t *testing.T) {
	h := creeping()
	h.Sittings = append(h.Sittings, at("2025-08-01", 0.64, byCard, byOther), at("2025-06-01", 0.30, fromPalm), at("2025-10-01", 0.31, fromPalm, byCard))
	var b bytes.Buffer
	c := chart.Of("S-012", hand.Left, hand.ThirdWeb, followup.Follow(h), table(t))
	if err := c.SVG(&b); err != nil {
		t.Fatal(err)
	}
	said := texts(t, b.Bytes())
	for _, want := range []string{"other scale, other observer", "other view, other scale"} {
		if !strings.Contains(said, want) {
			t.Errorf("the legend does not name %q: %s", want, said)
		}
	}
}

func TestAChartOfLittleIsStillAChart(t *testing.T) {
	one := followup.History{Sittings: []followup.Sitting{at("2024-01-01", 0.5)}}
	for name, h := range map[string]followup.History{
		"nothing":         {},
		"one sitting":     one,
		"before only":     {Sittings: []followup.Sitting{at("2024-01-01", 0.97, before)}},
		"other hand only": {Other: one.Sittings},
		"twenty years":    {Sittings: []followup.Sitting{at("2004-01-01", 0.5), at("2024-01-01", 0.6)}},
		"palms":           {Sittings: []followup.Sitting{at("2023-01-01", 0.2, fromPalm), at("2024-01-01", 0.3, fromPalm)}},
	} {
		c := chart.Of("", hand.Right, hand.SecondWeb, followup.Follow(h), table(t))
		for _, size := range []image.Point{{1, 1}, {40, 30}, {320, 240}, {1600, 900}} {
			if img, _ := c.Image(size, 1, chart.Chalk); img.Bounds().Size() != size {
				t.Errorf("%s: the picture is %v, want %v", name, img.Bounds().Size(), size)
			}
		}
		if c.Summary() == "" || strings.Contains(c.Title(), "Case") {
			t.Errorf("%s: %q, %q", name, c.Title(), c.Summary())
		}
		if err := c.SVG(io.Discard); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestCreepAndGradeSoundNoSurerThanTheyAre(t *testing.T) {
	point := func(value, u95 plane.Ratio, f followup.Feel) followup.Point {
		c := ratio{Value: value, U95: u95}
		return followup.Point{Creep: &c, Grading: followup.Grade(c, f)}
	}
	for _, c := range []struct {
		p            followup.Point
		creep, grade string
	}{
		{point(0.21, 0.05, followup.Soft), "creep 0.21 ± 0.05", "grade 2"},
		{point(0.31, 0.05, followup.Soft), "creep 0.31 ± 0.05", "grade 2? (doubtful: 2 to 3)"},
		{point(0.02, 0.05, followup.Thickened), "no creep that can be told (0.02 ± 0.05)", "grade 1? (doubtful: 1 to 2)"},
		{point(-0.2, 0.05, followup.NotFelt), "deepened, creep -0.20 ± 0.05", "grade 0 or 1, as the skin is soft or thickened"},
		{followup.Point{}, "", "grade not known"},
	} {
		if got := chart.Creep(c.p); got != c.creep {
			t.Errorf("creep reads %q, want %q", got, c.creep)
		}
		if got := chart.Grade(c.p.Grading); got != c.grade {
			t.Errorf("grade reads %q, want %q", got, c.grade)
		}
	}
}

func TestTimeIsToldInMonthsAndYears(t *testing.T) {
	for months, want := range map[float64]string{
		0: "at the operation", -1: "1 month before the operation", 3.04: "3 months after the operation",
		12.1: "12 months (1 year) after the operation", 18.2: "18 months (1.5 years) after the operation",
	} {
		if got := chart.Months(followup.Point{Months: months}, followup.SinceOperation); got != want {
			t.Errorf("%v months read %q, want %q", months, got, want)
		}
	}
}
