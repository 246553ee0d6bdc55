package compared_test

import (
	"errors"
	"flag"
	"image"
	"image/png"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
	"ogive/imaging/compared"
	"ogive/imaging/marksfile"
	"ogive/imaging/measure"
	"ogive/imaging/phantom"
	"ogive/imaging/photo"
	"ogive/imaging/wording"
)

var keep = flag.String("keep", "", "folder in which pictures are kept, to be looked at")

// pairOfHands is a small hand operated on whose third web lies 3.5 mm too deep,
// and the other hand, made once for all tests.
var pairOfHands = sync.OnceValues(func() (hands [2]measure.Subject, err error) {
	webs := func(third plane.Ratio) map[hand.Web]phantom.WebShape {
		return map[hand.Web]phantom.WebShape{
			hand.SecondWeb: {Shape: arch.U, Index: 0.5, Span: 10, Flat: 0.4},
			hand.ThirdWeb:  {Shape: arch.Gothic, Index: third, Span: 9, Turn: plane.Degrees(60)},
			hand.FourthWeb: {Shape: arch.V, Index: 0.5, Flare: plane.Degrees(8)},
		}
	}
	cases := [2]phantom.Case{
		{Seed: 5, Width: 1120, Height: 840, Size: 40, Reference: phantom.IDCard, Webs: webs(0.46)},
		{Seed: 6, Width: 1120, Height: 840, Size: 40, Reference: phantom.IDCard, Side: hand.Left, Webs: webs(0.55), Turn: plane.Degrees(8)},
	}
	for i, c := range cases {
		picture, err := c.Render()
		if err != nil {
			return hands, err
		}
		if hands[i].Photograph, err = photo.Decode(picture.JPEG); err != nil {
			return hands, err
		}
		m, reference := picture.Truth.Marks(0.7, rand.New(rand.NewPCG(9, uint64(i))))
		hands[i].Marks = marksfile.File{Photograph: "hand.jpg", Marks: m, Reference: reference}
	}
	return hands, nil
})

var titles = compared.Titles{Operated: "operated right hand", Other: "left hand"}

func pair(t *testing.T) (compared.Pair, *photo.Photograph) {
	t.Helper()
	hands, err := pairOfHands()
	if err != nil {
		t.Fatal(err)
	}
	settings, err := measure.Defaults()
	if err != nil {
		t.Fatal(err)
	}
	p, err := compared.Subjects(hands[0], hands[1], settings)
	if err != nil {
		t.Fatal(err)
	}
	return p, hands[0].Photograph
}

func TestAWebMovedProximallyIsTooDeepBesideTheOtherHand(t *testing.T) {
	p, _ := pair(t)
	for _, w := range p.Comparison.Webs {
		f := p.Figures(w)[0]
		if f.Verdict == nil {
			t.Fatalf("%v: no verdict on the index", w.Web)
		}
		got := compared.VerdictWords(*f.Verdict)
		if want := map[hand.Web]string{hand.SecondWeb: "no difference that can be told", hand.ThirdWeb: "too deep, certain", hand.FourthWeb: "no difference that can be told"}[w.Web]; got != want {
			t.Errorf("%v: index %s beside %s, %s: %q, want %q", w.Web, f.Operated, f.Other, f.Difference, got, want)
		}
	}
	third := p.Comparison.Webs[1]
	if f := p.Figures(third)[0]; !strings.HasPrefix(f.Difference, "−0.0") && !strings.HasPrefix(f.Difference, "−0.1") {
		t.Errorf("the difference is written %q", f.Difference)
	}
}

func TestAVShowsNoSpanOnEitherHand(t *testing.T) {
	p, _ := pair(t)
	f := p.Figures(p.Comparison.Webs[2])[2]
	if f.Name != wording.Span || f.Operated != "" || f.Other != "" || f.Difference != "" || f.Verdict != nil {
		t.Errorf("%+v", f)
	}
}

func TestTheTableCarriesEveryFigureAndTheCaution(t *testing.T) {
	p, _ := pair(t)
	table := compared.Table(p, titles)
	lines := strings.Split(strings.TrimSpace(table), "\n")
	if len(lines) < 3+12+4 || lines[len(lines)-1] != wording.Caution {
		t.Errorf("%d lines, the last %q", len(lines), lines[len(lines)-1])
	}
	for _, want := range []string{
		"Operated right hand beside the left hand mirrored, back of the hand",
		"Third web\tdorsal web index\t", "too deep, certain\tlimit 0.", "Fourth web\tspan\tnot known\tnot known\tnot known\t\t",
		"Residual of the registration: ", "Differences are operated minus other.", "Fourth web: No difference in span: a V has no span.",
	} {
		if !strings.Contains(table, want) {
			t.Errorf("the table lacks %q:\n%s", want, table)
		}
	}
}

// The drawn picture holds the photograph untouched but for the arches, and the
// page below it.
func TestThePictureShowsBothArchesAndThePageBelow(t *testing.T) {
	p, photograph := pair(t)
	img := compared.Picture(photograph, p, titles)
	size := photograph.Size()
	if got := img.Bounds().Size(); got.X != size.X || got.Y <= size.Y+size.Y/4 {
		t.Fatalf("a photograph of %v makes a picture of %v", size, got)
	}
	if *keep != "" {
		save(t, "compared.png", img)
	}
	source := photograph.Picture()
	changed := func(at plane.PixelPoint) bool {
		for y := int(at.Y) - 3; y <= int(at.Y)+3; y++ {
			for x := int(at.X) - 3; x <= int(at.X)+3; x++ {
				r, g, b, _ := img.At(x, y).RGBA()
				r0, g0, b0, _ := source.At(x, y).RGBA()
				if max(r, r0)-min(r, r0) > 9000 || max(g, g0)-min(g, g0) > 9000 || max(b, b0)-min(b, b0) > 9000 {
					return true
				}
			}
		}
		return false
	}
	third := p.Comparison.Webs[1]
	if !changed(p.Operated.Reading.Webs[1].Crown) || !changed(third.Ghost.CurvePixel[len(third.Ghost.CurvePixel)/2]) {
		t.Error("an arch or its ghost is not drawn")
	}
	if changed(plane.PixelPoint{X: 20, Y: 20}) {
		t.Error("the photograph is changed far from any arch")
	}
}

func save(t *testing.T, name string, img image.Image) {
	t.Helper()
	f, err := os.Create(filepath.Join(*keep, name))
	if err != nil {
		t.Fatal(err)
	}
	if err := errors.Join(png.Encode(f, img), f.Close()); err != nil {
		t.Fatal(err)
	}
}

func TestTwoSittingsAreLaterMinusEarlierAndSayThatMillimetresGrow(t *testing.T) {
	p, _ := pair(t)
	p.Comparison.Other = p.Comparison.Operated
	if !strings.HasPrefix(p.Title(), "Two sittings of the right hand") {
		t.Error(p.Title())
	}
	notes := strings.Join(p.Notes(), "\n")
	if !strings.Contains(notes, "compare the index, which does not") || !strings.Contains(notes, "later minus earlier") {
		t.Error(notes)
	}
}

func TestAResidualThatIsLargeIsDistrusted(t *testing.T) {
	p, _ := pair(t)
	seen := map[string]bool{}
	for rms, want := range map[plane.Millimetre]string{0.7: "from some 3 mm on", 3: "for its shape", 8: "do not agree"} {
		p.Comparison.RegistrationRMS = rms
		text := p.ResidualMeans()
		if !strings.Contains(text, want) || seen[text] {
			t.Errorf("%v mm: %q", rms, text)
		}
		seen[text] = true
	}
}

func TestUnmarkedPhotographsAreRefusedWithWhichAndWhy(t *testing.T) {
	hands, err := pairOfHands()
	if err != nil {
		t.Fatal(err)
	}
	settings, err := measure.Defaults()
	if err != nil {
		t.Fatal(err)
	}
	bare := hands[1]
	bare.Marks.Marks.Webs = nil
	_, err = compared.Subjects(hands[0], bare, settings)
	if !errors.Is(err, compared.ErrNothingRead) || !strings.Contains(err.Error(), "the photograph of the other hand: ") {
		t.Errorf("%v", err)
	}
	var none scale.Reference
	bare = hands[0]
	bare.Marks.Reference = none
	_, err = compared.Subjects(bare, hands[1], settings)
	if !errors.Is(err, compared.ErrNothingRead) || !strings.Contains(err.Error(), "the photograph of the operated hand: ") {
		t.Errorf("%v", err)
	}
}
