package skin

import (
	"math"
	"testing"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/skincolour"
	"ogive/imaging/phantom"
	"ogive/imaging/photo"
)

// photographed is the phantom's JPEG, opened, and its truth.
func photographed(t *testing.T, c phantom.Case) (*photo.Photograph, phantom.Truth) {
	t.Helper()
	picture, err := c.Render()
	if err != nil {
		t.Fatal(err)
	}
	p, err := photo.Decode(picture.JPEG)
	if err != nil {
		t.Fatal(err)
	}
	return p, picture.Truth
}

// metacarpal is a spot proximal of the third and fourth MCP joints, by the
// length from MCP to PIP. Where the hand slopes, the lamp and not the skin makes
// the lightness: on the distal palm these phantoms are 3 too light.
func metacarpal(truth phantom.Truth, proximal float64) Spot {
	m, r := truth.Joints[hand.Middle], truth.Joints[hand.Ring]
	from := m[hand.MCP].Mid(r[hand.MCP])
	back := from.Sub(m[hand.PIP].Mid(r[hand.PIP]))
	return Spot{from.Add(back.Scale(proximal)), back.Norm() * 0.28}
}

// sampled is the sample of a place of a phantom, and the true colour there.
func sampled(t *testing.T, c phantom.Case, place skincolour.Place, proximal float64) (Sample, skincolour.Lab) {
	t.Helper()
	p, truth := photographed(t, c)
	on := On(p, place.String())
	if truth.Grey != nil {
		if err := on.BalanceOn(Neutral{Spot{truth.Grey.Centre, truth.Grey.Radius}, truth.Grey.Reflectance}); err != nil {
			t.Fatal(err)
		}
	}
	spot := metacarpal(truth, proximal)
	s, err := on.Sample(place, spot)
	if err != nil {
		t.Fatal(err)
	}
	return s, trueColour(t, c, spot)
}

// trueColour is the median of the true colours over a spot.
func trueColour(t *testing.T, c phantom.Case, at Spot) skincolour.Lab {
	t.Helper()
	var pixels []plane.PixelPoint
	for x := -at.Radius; x <= at.Radius; x += at.Radius / 8 {
		for y := -at.Radius; y <= at.Radius; y += at.Radius / 8 {
			if off := plane.Vec(x, y); off.Norm() <= at.Radius {
				pixels = append(pixels, at.Centre.Add(off))
			}
		}
	}
	colours, err := c.SkinAt(pixels...)
	if err != nil {
		t.Fatal(err)
	}
	var l, a, b []float64
	for _, k := range colours {
		l, a, b = append(l, k.L), append(a, k.A), append(b, k.B)
	}
	return skincolour.Lab{L: median(l), A: median(a), B: median(b)}
}

// The lamps' casts: what each leaves of red, green and blue.
var casts = []phantom.Cast{
	{Red: 1, Green: 0.78, Blue: 0.5},    // tungsten
	{Red: 0.7, Green: 0.85, Blue: 1},    // shade
	{Red: 0.75, Green: 0.95, Blue: 0.7}, // old fluorescent tubes
}

// low is a lamp beyond the fingers: under a high one the skin shines.
var low = phantom.Light{Azimuth: plane.Degrees(-90), Elevation: plane.Degrees(30)}

// Two photographs, each with a grey patch and each under a cast of its own: the
// difference between back and palm has to come out within 1.0 of the truth.
func TestBackAndPalmUnderAKnownCastDifferAsInTruth(t *testing.T) {
	for i, tone := range []phantom.SkinTone{phantom.VeryFair, phantom.Fair, phantom.Olive, phantom.Brown, phantom.VeryDark} {
		c := phantom.Case{Seed: uint64(tone) * 7, Skin: tone, Light: low, Width: 640, Height: 480, GreyPatch: 0.4, Cast: casts[i%3], NoiseSD: 1}
		back, trueBack := sampled(t, c, skincolour.Back, 0.6)
		c.View, c.Cast = hand.Palmar, casts[(i+1)%3]
		palm, truePalm := sampled(t, c, skincolour.Palm, 1.2)
		want := skincolour.CIEDE2000(trueBack, truePalm)
		got := skincolour.Compare(back.Sample, palm.Sample).CIEDE2000
		t.Logf("tone %d: CIEDE2000 %.2f ± %.2f, truth %.2f, miss %+.2f; back %.1f for %.1f, palm %.1f for %.1f",
			tone, got.Value, got.U95, want, got.Value-want, back.Colour, trueBack, palm.Colour, truePalm)
		if math.Abs(got.Value-want) > 1 || !got.Holds(want) {
			t.Errorf("tone %d: %.2f ± %.2f, want %.2f", tone, got.Value, got.U95, want)
		}
		if len(back.Notes)+len(palm.Notes) > 0 {
			t.Errorf("tone %d: notes %q %q on sound patches", tone, back.Notes, palm.Notes)
		}
	}
}

func TestWithoutTheGreyPatchTheCastStaysAndTheSampleSaysSo(t *testing.T) {
	c := phantom.Case{Seed: 4, Width: 480, Height: 360, GreyPatch: 0.4, Cast: casts[0], Plain: true}
	p, truth := photographed(t, c)
	s, err := On(p, "one").Sample(skincolour.Back, metacarpal(truth, 0.6))
	if err != nil {
		t.Fatal(err)
	}
	if miss := skincolour.CIEDE2000(s.Colour, truth.Skin.Back); miss < 5 {
		t.Errorf("the cast moves the colour by %.1f only", miss)
	}
	if s.Balance.Neutral || len(s.Notes) != 1 || s.Notes[0] != NoNeutral {
		t.Errorf("balanced %v, notes %q", s.Balance.Neutral, s.Notes)
	}
}

// A web view shows both skins beside each other under one light, but its slopes
// and its hollow make part of the lightness: only the hues can be relied on.
func TestAWebViewWithAGreyPatchShowsTheHuesOfBothSkins(t *testing.T) {
	c := phantom.Case{Seed: 4, View: hand.WebView, Skin: phantom.Brown, Width: 640, Height: 480, GreyPatch: 0.4, Cast: casts[1], Light: low}
	p, truth := photographed(t, c)
	on := On(p, "one")
	if err := on.BalanceOn(Neutral{Spot{truth.Grey.Centre, truth.Grey.Radius}, truth.Grey.Reflectance}); err != nil {
		t.Fatal(err)
	}
	line := truth.Junctions[0].Line
	across := line[len(line)-1].Sub(line[0])
	middle := line[len(line)/2]
	spot := func(k float64) Spot { return Spot{middle.Add(across.Left().Scale(k)), across.Norm() * 0.12} }
	back, err := on.Sample(skincolour.Back, spot(0.25))
	if err != nil {
		t.Fatal(err)
	}
	palm, err := on.Sample(skincolour.Palm, spot(-0.25))
	if err != nil {
		t.Fatal(err)
	}
	want := skincolour.CIEDE2000(truth.Skin.Back, truth.Skin.Palm)
	got := skincolour.Compare(back.Sample, palm.Sample).CIEDE2000
	t.Logf("CIEDE2000 %.2f ± %.2f, truth %.2f; back %.1f for %.1f, palm %.1f for %.1f", got.Value, got.U95, want, back.Colour, truth.Skin.Back, palm.Colour, truth.Skin.Palm)
	for _, pair := range [][2]skincolour.Lab{{back.Colour, truth.Skin.Back}, {palm.Colour, truth.Skin.Palm}} {
		if math.Abs(pair[0].A-pair[1].A) > 1.5 || math.Abs(pair[0].B-pair[1].B) > 1.5 {
			t.Errorf("%.1f, want the hue of %.1f", pair[0], pair[1])
		}
	}
}

// corner is a spot of the drape: the hand lies in the middle of the photograph.
func corner(p *photo.Photograph) Spot {
	size := p.Size()
	return Spot{plane.Pt(plane.Pixel(size.X)*0.06, plane.Pixel(size.Y)*0.08), plane.Pixel(size.X) * 0.02}
}

func TestColouredDrapesAreNoGreyCard(t *testing.T) {
	for name, drape := range map[string]phantom.Drape{"blue": phantom.Blue, "green": phantom.TheatreGreen} {
		for i, cast := range append(casts, phantom.Cast{Red: 1, Green: 1, Blue: 1}) {
			p, truth := photographed(t, phantom.Case{Seed: 3, Drape: drape, Width: 480, Height: 360, GreyPatch: 0.4, Cast: cast, Plain: true})
			on := On(p, "one")
			if err := on.BalanceOn(Neutral{corner(p), GreyCard}); err == nil || err.Error() != NotGrey || on.balance.Neutral {
				t.Errorf("%s drape, cast %d: error %v", name, i, err)
			}
			if err := on.BalanceOn(Neutral{Spot{truth.Grey.Centre, truth.Grey.Radius}, truth.Grey.Reflectance}); err != nil {
				t.Errorf("the grey card beside the %s drape, cast %d: %v", name, i, err)
			}
		}
	}
}

func TestTheWhiteOfARulerIsTakenForWhite(t *testing.T) {
	p, truth := photographed(t, phantom.Case{Seed: 3, Width: 1600, Height: 1200, Cast: casts[0], Plain: true})
	from, to := truth.Ruler.From, truth.Ruler.To
	along := to.Sub(from)
	// Between the ticks' ends and the figures the ruler is bare.
	for _, aside := range []float64{-1, 1} {
		at := from.Add(along.Scale(0.485)).Add(along.Left().Scale(aside * 0.08))
		s, err := On(p, "one").Sample(skincolour.Back, Spot{at, 6})
		if err != nil || s.Colour.L < 65 {
			continue
		}
		if err := On(p, "one").BalanceOn(Neutral{Spot{at, 6}, WhiteCard}); err != nil {
			t.Error(err)
		}
		return
	}
	t.Error("the ruler is nowhere")
}

// Skin in the light of a bulb can't be told from grey, but what is balanced on it
// turns grey itself.
func TestSkinBalancedOnSkinIsNoSkin(t *testing.T) {
	p, truth := photographed(t, phantom.Case{Seed: 5, Skin: phantom.Fair, Width: 480, Height: 360, Plain: true})
	on, spot := On(p, "one"), metacarpal(truth, 0.6)
	if err := on.BalanceOn(Neutral{spot, GreyCard}); err != nil {
		t.Fatal(err)
	}
	s, err := on.Sample(skincolour.Back, spot)
	if err != nil {
		t.Fatal(err)
	}
	if s.Doubt == "" || len(s.Notes) != 1 {
		t.Errorf("%.1f, notes %q", s.Colour, s.Notes)
	}
}
