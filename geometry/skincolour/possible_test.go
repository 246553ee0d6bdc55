package skincolour

import (
	"math"
	"testing"
)

// Illuminant A is a black body of 2856 K with x 0.44757, y 0.40745 (CIE 15).
func TestTheBlackBodyAt2856KelvinIsIlluminantA(t *testing.T) {
	const x, y = 0.44757, 0.40745
	below := -2*x + 12*y + 3
	u, v := blackBody(2856)
	if math.Abs(u-4*x/below) > 2e-4 || math.Abs(v-9*y/below) > 2e-4 {
		t.Errorf("%.5f, %.5f, want %.5f, %.5f", u, v, 4*x/below, 9*y/below)
	}
}

func TestGreyInTheLightsOfARoomIsGreyAndClothsAreNot(t *testing.T) {
	for name, c := range map[string]Light{
		"daylight": {1, 1, 1}, "a bulb": {1, 0.78, 0.5}, "a warm bulb": {1, 0.62, 0.24}, "shade": {0.7, 0.85, 1}, "old tubes": {0.75, 0.95, 0.7},
	} {
		if !c.OfARoom() {
			t.Errorf("grey in %s is refused", name)
		}
	}
	for name, c := range map[string]Light{
		"blue": {0.045, 0.156, 0.402}, "theatre green": {0.03, 0.18, 0.11}, "red": {0.4, 0.03, 0.03}, "violet": {0.2, 0.05, 0.3}, "black": {},
	} {
		if c.OfARoom() {
			t.Errorf("%s is taken for grey", name)
		}
	}
}

func TestEverySkinCanBeSkinAndNeonOrangeCannot(t *testing.T) {
	for _, c := range []Lab{{74, 9, 13}, {74, 13.5, 12.5}, {58, 11, 20}, {26, 7.5, 9}, {47, 12.5, 15.5}, {80, 4, 10}, {18, 4, 3}, {45, 24, 14}} {
		if !c.CanBeSkin() {
			t.Errorf("%v can be no skin", c)
		}
	}
	for name, c := range map[string]Lab{"neon orange": {70, 70, 85}, "a green cloth": {40, -25, 8}, "a ruler": {92, -0.5, 1}, "grey": {50, 0.4, 0.3},
		"a blue cloth": {45, -5, -30}, "black": {3, 3, 3}, "nothing": {math.NaN(), 10, 10}} {
		if c.CanBeSkin() {
			t.Errorf("%s can be skin", name)
		}
	}
}

func TestWhatCanBeNoSkinSpeaksForNoFlap(t *testing.T) {
	skin, orange := Sample{Place: Back, Colour: Lab{74, 9, 13}}, Sample{Place: Palm, Colour: Lab{74, 70, 85}}
	for _, pair := range [][2]Sample{{skin, orange}, {orange, skin}, {orange, orange}} {
		if r := Reasoning(pair[0], pair[1]); r.Favours != NoFlap || r.Certain || r.Possible {
			t.Errorf("%+v", r)
		}
	}
	if r := Reasoning(skin, skin); !r.Possible {
		t.Errorf("%+v", r)
	}
}
