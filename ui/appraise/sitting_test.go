package appraise

import (
	"bytes"
	"context"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/imaging/appraisal"
	"ogive/imaging/casebook"
	"ogive/imaging/casebook/readings"
	"ogive/imaging/marksfile"
	"ogive/imaging/measure"
	"ogive/imaging/planfile"
)

// painted is a photograph of a web that is a semicircle of radius 50 pixels, its
// crown at the given height, skin on a green drape.
func painted(t *testing.T, crown float64) []byte {
	t.Helper()
	img := image.NewRGBA(image.Rect(0, 0, 400, 440))
	for y := range 440 {
		for x := range 400 {
			grain := uint8((x*7 + y*13) % 5)
			c := color.RGBA{215 + grain, 165 + grain, 140, 255}
			dx, below := math.Abs(float64(x)-199.5), float64(y)-(crown-50)
			if below < 0 && dx < 50 || below >= 0 && math.Hypot(dx, below) < 50 {
				c = color.RGBA{40 + grain, 110 + grain, 90, 255}
			}
			img.SetRGBA(x, y, c)
		}
	}
	var out bytes.Buffer
	if err := png.Encode(&out, img); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

const painting = `{"ogive": 1, "photograph": "photo.png", "hand": "left", "view": "dorsal", "click_sd_px": 1,
 "scale": {"ruler": [[100, 430], [300, 430]], "length_mm": 20},
 "joints": {"middle": {"mcp": [280, 400], "pip": [280, 100]}, "ring": {"mcp": [120, 400], "pip": [120, 100], "tip": [125, 4]}},
 "webs": [{"web": 3, "seeds": [[150, 120], [200, %v], [250, 120]]}]}`

// The joints lie at 400 and 100 pixels: a crown at 250 has the index 0.5, one at
// 220 the index 0.6, a creep of (0.6 - 0.5)/(1 - 0.5) = 0.2.
func TestTheCreepOfAFollowUpStandsBesideHowTheWebFeels(t *testing.T) {
	book, err := casebook.Open(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = book.Close() }()
	id, err := book.AddCase(casebook.Case{Code: "S-1", Hand: casebook.LeftHand, Joins: []casebook.Join{{Hand: hand.Left, Web: hand.ThirdWeb, Operated: "2024-03-01"}}})
	if err != nil {
		t.Fatal(err)
	}
	for day, crown := range map[casebook.Date]float64{"2024-06-01": 250, "2025-06-01": 220} {
		path := filepath.Join(t.TempDir(), "photo.png")
		if err := os.WriteFile(path, painted(t, crown), 0o644); err != nil {
			t.Fatal(err)
		}
		results, err := book.Import(context.Background(), id, []casebook.Item{{Path: path, Hand: hand.Left, View: hand.Dorsal, Date: day}}, nil)
		if err != nil || results[0].Err != nil {
			t.Fatal(err, results)
		}
		marks, err := marksfile.Parse([]byte(fmt.Sprintf(painting, crown)))
		if err != nil {
			t.Fatal(err)
		}
		if err := book.SaveMarks(results[0].Photograph, "AB", marks); err != nil {
			t.Fatal(err)
		}
	}
	with, err := measure.Defaults()
	if err != nil {
		t.Fatal(err)
	}
	read, err := readings.In(book, with)
	if err != nil {
		t.Fatal(err)
	}
	sittings, err := book.Sittings(id)
	if err != nil {
		t.Fatal(err)
	}
	keepPatches(t, book, id, sittings[1].ID)
	m, err := Measured(context.Background(), book, read, id, sittings[1].ID, with.Norms)
	if err != nil {
		t.Fatal(err)
	}
	for at, want := range map[Beside]string{
		{appraisal.MeasuredIndex, third}:                                "dorsal web index 0.6",
		{appraisal.MeasuredCreep, third}:                                "creep 0.2",
		{appraisal.MeasuredBend, appraisal.Digit(hand.Left, hand.Ring)}: "at the PIP joint",
		{appraisal.ColourDifference, third}:                             "CIEDE2000 0.", // the painted skin is all alike
	} {
		if !strings.Contains(m[at], want) || !strings.Contains(m[at], "±") {
			t.Errorf("beside %v stands %q, want %q with its interval", at, m[at], want)
		}
	}
}

// keepPatches keeps a plan that samples a graft and the skin next to it on the
// photograph of a sitting.
func keepPatches(t *testing.T, book *casebook.Casebook, id, sitting int64) {
	t.Helper()
	all, err := book.Photographs(id)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range all {
		if p.Sitting != sitting {
			continue
		}
		text, err := planfile.File{Photograph: p.File(), Side: hand.Left, View: hand.Dorsal, Patches: []planfile.Patch{
			{Name: "graft", Centre: plane.Pt[plane.Pixel](60, 200), Radius: 20}, {Name: "neighbour", Centre: plane.Pt[plane.Pixel](340, 200), Radius: 20}}}.Encode()
		if err != nil {
			t.Fatal(err)
		}
		if err := book.SavePlan(p.ID, "AB", string(text)); err != nil {
			t.Fatal(err)
		}
	}
}
