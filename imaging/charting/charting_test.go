package charting_test

import (
	"bytes"
	"errors"
	"image"
	"image/color"
	"image/png"
	"math"
	"os/exec"
	"strings"
	"testing"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"ogive/imaging/charting"
)

// page is a drawing with everything that a chart uses.
func page() charting.Page {
	return charting.Page{Width: 300, Height: 200, Draw: func(c draw.Canvas, ink charting.Ink) {
		charting.Ground(c, ink)
		c.FillPolygon(ink.Own, []vg.Point{{X: 100, Y: 50}, {X: 200, Y: 50}, {X: 200, Y: 150}, {X: 100, Y: 150}})
		s := charting.Letters(ink.Text, charting.TextSize)
		c.FillText(s, vg.Point{X: 10, Y: 180}, "Žofie Müller, ΑΒ")
		s.Rotation = math.Pi / 2
		c.FillText(charting.Bold(s), vg.Point{X: 20, Y: 60}, "upright")
		var circle vg.Path
		circle.Move(vg.Point{X: 270, Y: 100})
		circle.Arc(vg.Point{X: 250, Y: 100}, 20, 0, 2*math.Pi)
		circle.Close()
		c.SetColor(charting.Faded(ink.Other, 0x80))
		c.Fill(circle)
		dot := image.NewRGBA(image.Rect(0, 0, 1, 1))
		dot.Set(0, 0, color.Black)
		c.DrawImage(vg.Rectangle{Min: vg.Point{X: 30, Y: 10}, Max: vg.Point{X: 50, Y: 30}}, dot)
	}}
}

func TestAPDFStatesNoTimeAndIsTheSameEachTime(t *testing.T) {
	var a, b bytes.Buffer
	if err := errors.Join(page().PDF(&a), page().PDF(&b)); err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(a.Bytes(), b.Bytes()) {
		t.Error("the same page gives two files")
	}
	if !bytes.HasPrefix(a.Bytes(), []byte("%PDF-")) || !bytes.Contains(a.Bytes(), []byte("D:20000101000000")) {
		t.Error("the file is no PDF, or states when it was made")
	}
}

// Source: poppler's pdftotext and pdftoppm, which share nothing with the writer.
func TestAPDFShowsWhatTheImageShows(t *testing.T) {
	for _, tool := range []string{"pdftotext", "pdftoppm"} {
		if _, err := exec.LookPath(tool); err != nil {
			t.Logf("not looked at: %s is not installed", tool)
			return
		}
	}
	var pdf bytes.Buffer
	if err := page().PDF(&pdf); err != nil {
		t.Fatal(err)
	}
	run := func(name string, arguments ...string) []byte {
		c := exec.Command(name, arguments...)
		c.Stdin = bytes.NewReader(pdf.Bytes())
		out, err := c.Output()
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		return out
	}
	text := string(run("pdftotext", "-", "-"))
	for _, want := range []string{"Žofie Müller, ΑΒ", "upright"} {
		if !strings.Contains(text, want) {
			t.Errorf("the text %q lacks %q", text, want)
		}
	}
	shown, err := png.Decode(bytes.NewReader(run("pdftoppm", "-png", "-r", "72", "-")))
	if err != nil {
		t.Fatal(err)
	}
	drawn := page().Image(image.Pt(300, 200), 1, charting.Paper)
	for _, at := range []image.Point{{150, 100}, {105, 55}, {195, 145}, {250, 100}, {262, 110}, {40, 180}} {
		if d := apart(shown.At(at.X, at.Y), drawn.At(at.X, at.Y)); d > 8 {
			t.Errorf("at %v the PDF shows %v, the image %v", at, shown.At(at.X, at.Y), drawn.At(at.X, at.Y))
		}
	}
}

func apart(a, b color.Color) (most int) {
	x, y := color.RGBAModel.Convert(a).(color.RGBA), color.RGBAModel.Convert(b).(color.RGBA)
	for _, p := range [][2]uint8{{x.R, y.R}, {x.G, y.G}, {x.B, y.B}} {
		most = max(most, int(p[0])-int(p[1]), int(p[1])-int(p[0]))
	}
	return most
}

func TestALongTextIsBrokenWhereItsRoomEnds(t *testing.T) {
	s := charting.Letters(color.Black, charting.TextSize)
	lines := charting.Wrapped("one two three four five six seven", s, 60)
	if len(lines) < 3 || strings.Join(lines, " ") != "one two three four five six seven" {
		t.Errorf("%q", lines)
	}
	for _, l := range lines {
		if s.Width(l) > 60 {
			t.Errorf("%q is wider than its room", l)
		}
	}
}
