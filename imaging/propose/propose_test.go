package propose

import (
	"fmt"
	"image"
	"image/color"
	"math"
	"slices"
	"testing"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/imaging/phantom"
	"ogive/imaging/photo"
)

// small is a drawn phantom on a picture of few pixels.
func small(tb testing.TB, seed uint64) (*image.RGBA, phantom.Truth) {
	tb.Helper()
	if pic, ok := drawn[seed]; ok {
		return clone(pic.Image), pic.Truth
	}
	c := phantom.Random(seed)
	const width = 900
	by := width / float64(max(c.Width, c.Height))
	c.Width, c.Height = int(by*float64(c.Width)), int(by*float64(c.Height))
	c.FocalPx *= plane.Pixel(by)
	pic, err := c.Render()
	if err != nil {
		tb.Fatal(err)
	}
	drawn[seed] = pic
	return clone(pic.Image), pic.Truth
}

// drawn keeps the phantoms for the next test: drawing one takes longer than
// looking at it.
var drawn = map[uint64]phantom.Picture{}

func clone(img *image.RGBA) *image.RGBA {
	out := *img
	out.Pix = slices.Clone(img.Pix)
	return &out
}

func TestEveryOpenWebIsProposedWhereItIs(t *testing.T) {
	for seed := uint64(2); seed < 8; seed++ {
		img, truth := small(t, seed)
		for name, joints := range map[string]map[hand.Digit]map[hand.Joint]plane.PixelPoint{"with joints": truth.Joints, "without": nil} {
			got := Webs(photo.From(img), hand.Marks{Side: truth.Side, View: truth.View, Joints: joints})
			for _, w := range truth.Webs {
				seeds, ok := got[w.Web]
				if !ok {
					t.Errorf("phantom %d %s: the %v (%v) is left out", seed, name, w.Web, w.Shape)
					continue
				}
				about(t, fmt.Sprintf("phantom %d %s: ", seed, name), truth, w, seeds)
			}
		}
	}
}

// about checks that the seeds lie on the web, each on its own side.
func about(t *testing.T, name string, truth phantom.Truth, w phantom.WebTruth, seeds [3]plane.PixelPoint) {
	t.Helper()
	distal := truth.Plane.Position(seeds[1]).Sub(truth.Plane.Position(w.Crown)).Dot(axisOf(truth, w.Web))
	if math.Abs(float64(distal)) > 1.5 {
		t.Errorf("%sthe crown of the %v (%v) is proposed %.2f mm distal of the true one", name, w.Web, w.Shape, distal)
	}
	for i, at := range []int{0, 2} {
		off, ok := fromLine(w.Border, seeds[at])
		if !ok || off > 3 {
			t.Errorf("%sseed %d of the %v (%v) lies %.1f px off the border", name, at, w.Web, w.Shape, off)
		}
		near, far := seeds[at].Distance(w.Springing[i]), seeds[at].Distance(w.Springing[1-i])
		if w.Span > 0 && near > far {
			t.Errorf("%sseed %d of the %v (%v) lies on the other finger", name, at, w.Web, w.Shape)
		}
	}
}

func TestJoinedFingersAreLeftOut(t *testing.T) {
	for _, groove := range []float64{1, 0.6} {
		img, truth := small(t, 5)
		join(img, truth, groove)
		got := Webs(photo.From(img), hand.Marks{Side: truth.Side, View: truth.View, Joints: truth.Joints})
		if seeds, ok := got[hand.ThirdWeb]; ok {
			t.Errorf("with joints and a groove of %.1f: a web between joined fingers is proposed at %v", groove, seeds)
		}
		if len(got) != 2 {
			t.Errorf("with joints: %d webs are proposed beside two joined fingers, want 2", len(got))
		}
		if got = Webs(photo.From(img), hand.Marks{Side: truth.Side, View: truth.View}); len(got) != 0 {
			t.Errorf("without joints: %d webs are proposed on a hand that shows four digits; which is which can't be known", len(got))
		}
	}
}

// join paints skin between middle and ring finger, with a groove half way that
// has so much of the light.
func join(img *image.RGBA, truth phantom.Truth, groove float64) {
	f := phalanges{
		mcp: [2]point{truth.Joints[hand.Middle][hand.MCP], truth.Joints[hand.Ring][hand.MCP]},
		pip: [2]point{truth.Joints[hand.Middle][hand.Tip], truth.Joints[hand.Ring][hand.Tip]},
	}
	f.pip[0], f.pip[1] = f.pip[0].Towards(f.mcp[0], 0.08), f.pip[1].Towards(f.mcp[1], 0.08)
	at := func(p point) color.RGBA { return img.RGBAAt(int(p.X), int(p.Y)) }
	const levels, parts = 900, 400
	for i := range levels {
		s := float64(i) / levels
		a, b := at(f.at(s, 0)), at(f.at(s, 1))
		for j := range parts {
			u := float64(j) / parts
			if u < 0.05 || u > 0.95 {
				continue
			}
			light := 1 - (1-groove)*math.Exp(-math.Pow((u-0.5)/0.04, 2))
			mix := func(x, y uint8) uint8 { return uint8(light * (float64(x)*(1-u) + float64(y)*u)) }
			p := f.at(s, u)
			img.SetRGBA(int(p.X), int(p.Y), color.RGBA{mix(a.R, b.R), mix(a.G, b.G), mix(a.B, b.B), 255})
		}
	}
}

func TestAHandOfTheOtherSideIsRefused(t *testing.T) {
	for seed := uint64(2); seed < 6; seed++ {
		img, truth := small(t, seed)
		if got := Webs(photo.From(img), hand.Marks{Side: truth.Side.Other(), View: truth.View}); len(got) != 0 {
			t.Errorf("phantom %d: %d webs are proposed on a hand said to be a %v one", seed, len(got), truth.Side.Other())
		}
	}
}

func TestTheHandMayLieAnyWayInThePicture(t *testing.T) {
	img, truth := small(t, 4)
	for quarter := range 4 {
		if quarter > 0 {
			img = turned(img)
			truth = turnedTruth(truth, img.Rect.Dx())
		}
		got := Webs(photo.From(img), hand.Marks{Side: truth.Side, View: truth.View})
		for _, w := range truth.Webs {
			seeds, ok := got[w.Web]
			if !ok {
				t.Errorf("after %d quarter turns the %v is left out", quarter, w.Web)
				continue
			}
			if d := seeds[1].Distance(w.Crown); d > 15 {
				t.Errorf("after %d quarter turns the crown of the %v is proposed %.0f px off", quarter, w.Web, d)
			}
		}
	}
}

// turned is a picture after a quarter turn clockwise.
func turned(img *image.RGBA) *image.RGBA {
	w, h := img.Rect.Dx(), img.Rect.Dy()
	out := image.NewRGBA(image.Rect(0, 0, h, w))
	for y := range h {
		for x := range w {
			out.SetRGBA(h-1-y, x, img.RGBAAt(x, y))
		}
	}
	return out
}

func turnedTruth(t phantom.Truth, width int) phantom.Truth {
	webs := make([]phantom.WebTruth, len(t.Webs))
	for i, w := range t.Webs {
		w.Crown = plane.Pt(plane.Pixel(width)-w.Crown.Y, w.Crown.X)
		webs[i] = w
	}
	t.Webs = webs
	return t
}

func TestNothingIsProposedWhereNoHandIsSeen(t *testing.T) {
	img := image.NewRGBA(image.Rect(0, 0, 640, 480))
	for y := range 480 {
		for x := range 640 {
			c := color.RGBA{30, 110, 80, 255}
			if x > 500 {
				c = color.RGBA{230, 230, 225, 255}
			}
			img.SetRGBA(x, y, c)
		}
	}
	right := hand.Marks{Side: hand.Right, View: hand.Dorsal}
	if got := Webs(photo.From(img), right); len(got) != 0 {
		t.Errorf("%d webs are proposed on a drape with a ruler", len(got))
	}
	if got := Webs(photo.From(image.NewRGBA(image.Rect(0, 0, 3, 2))), right); len(got) != 0 {
		t.Errorf("%d webs are proposed on six pixels", len(got))
	}
	if got := Webs(photo.From(img), hand.Marks{Side: hand.Right, View: hand.WebView}); len(got) != 0 {
		t.Errorf("%d webs are proposed for the web view", len(got))
	}
}

func TestJointsInASillyPlaceGiveNoFalseWeb(t *testing.T) {
	img, truth := small(t, 5)
	at := func(x, y plane.Pixel) map[hand.Joint]plane.PixelPoint {
		return map[hand.Joint]plane.PixelPoint{hand.MCP: plane.Pt(x, y+80), hand.PIP: plane.Pt(x, y)}
	}
	for name, joints := range map[string]map[hand.Digit]map[hand.Joint]plane.PixelPoint{
		"outside": {hand.Middle: at(-500, -500), hand.Ring: at(-400, -500)},
		"at once": {hand.Middle: at(300, 300), hand.Ring: at(300, 300)},
		"nowhere": {hand.Middle: at(plane.Pixel(math.NaN()), 0), hand.Ring: at(300, 300)},
		"afar":    {hand.Middle: at(1e12, 1e12), hand.Ring: at(-1e12, 1e12)},
	} {
		all := map[hand.Digit]map[hand.Joint]plane.PixelPoint{}
		for _, d := range hand.Digits {
			all[d] = truth.Joints[d]
		}
		all[hand.Middle], all[hand.Ring] = joints[hand.Middle], joints[hand.Ring]
		got := Webs(photo.From(img), hand.Marks{Side: truth.Side, View: truth.View, Joints: all})
		if seeds, ok := got[hand.ThirdWeb]; ok && seeds[1].Distance(truth.Webs[1].Crown) > 8 {
			t.Errorf("%s: a web is proposed at %v, the true one is at %v", name, seeds, truth.Webs[1].Crown)
		}
	}
}
