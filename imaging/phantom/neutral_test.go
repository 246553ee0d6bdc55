package phantom

import (
	"math"
	"testing"

	"ogive/geometry/hand"
	"ogive/geometry/skincolour"
)

// In even light each channel of the patch is its reflectance, as much of it as
// the cast leaves, to half a step of 255.
func TestTheGreyPatchShowsItsReflectanceUnderTheCast(t *testing.T) {
	cast := Cast{Red: 1, Green: 0.8, Blue: 0.5}
	for _, view := range []hand.View{hand.Dorsal, hand.Palmar} {
		p := rendered(t, Case{Seed: 3, View: view, Width: 400, Height: 300, GreyPatch: 0.4, Cast: cast, Plain: true})
		at := p.Truth.Grey.Centre
		for _, off := range []float64{-0.9, 0, 0.9} {
			got := p.Image.RGBAAt(int(at.X)+int(off*float64(p.Truth.Grey.Radius)), int(at.Y))
			for i, v := range [3]uint8{got.R, got.G, got.B} {
				part := [3]float64{1, 0.8, 0.5}[i]
				within(t, 3, "a channel of the patch", float64(v), 255*srgb(0.4*part), 0.51)
			}
		}
	}
}

func TestTheGreyPatchLiesFreeOfHandAndReference(t *testing.T) {
	placed := 0
	for seed := range uint64(6) {
		c := Random(seed)
		c.FocalPx *= 0.2
		c.Width, c.Height, c.GreyPatch = c.Width/5, c.Height/5, 0.18
		st, err := c.stage()
		if err != nil {
			t.Logf("seed %d: %v", seed, err) // some hands fill the frame
			continue
		}
		placed++
		grey := st.truth.Grey
		if grey.Centre.X < grey.Radius || grey.Centre.Y < grey.Radius || float64(grey.Centre.X+grey.Radius) > float64(c.Width) {
			t.Errorf("seed %d: the patch at %v reaches out of the picture", seed, grey.Centre)
		}
		for _, joints := range st.truth.Joints {
			for _, q := range joints {
				if q.Distance(grey.Centre) < 2*grey.Radius {
					t.Errorf("seed %d: the patch lies on the hand", seed)
				}
			}
		}
	}
	if placed < 4 {
		t.Errorf("room for the patch on %d of 6 pictures", placed)
	}
}

func TestTheTrueColourOfPlainSkinIsThatOfItsTone(t *testing.T) {
	c := Case{Seed: 3, Skin: Olive, Width: 400, Height: 300, Plain: true}
	truth, err := c.Truth()
	if err != nil {
		t.Fatal(err)
	}
	got, err := c.SkinAt(truth.Joints[hand.Middle][hand.MCP])
	if err != nil {
		t.Fatal(err)
	}
	want := skincolour.Lab{L: 58, A: 11, B: 20} // as skinColours has it
	if d := skincolour.CIELAB(got[0], want); !(d < 0.05) || math.Abs(skincolour.CIELAB(truth.Skin.Back, want)) > 0.05 {
		t.Errorf("%v and %v, want %v", got[0], truth.Skin.Back, want)
	}
}

func TestAPatchOrACastThatNoPhotographHasIsRefused(t *testing.T) {
	for _, c := range []Case{{GreyPatch: 1.2}, {GreyPatch: -0.1}, {Cast: Cast{Red: 1}}, {Cast: Cast{Red: 3, Green: 1, Blue: 1}}} {
		if _, err := c.Truth(); err == nil {
			t.Errorf("%v and %v are taken", c.GreyPatch, c.Cast)
		}
	}
}
