// Package skincolour compares the colours of skin: how far two patches lie from
// each other, how fair each is, and which flap that speaks for.
//
//	back := skincolour.Sample{Place: skincolour.Back, Colour: light.Lab(), ...}
//	d := skincolour.Compare(back, palm)      // CIEDE2000 and CIELAB, ± at 95 %
//	tone := skincolour.ToneOf(back.ITA().Value)
//	why := skincolour.Reasoning(back, palm)  // the choice stays with the surgeon
//
// Colours are CIELAB under D65 for the 2 degree observer. Package skin samples
// them on photographs.
package skincolour

import (
	"math"

	"github.com/lucasb-eyer/go-colorful"

	"ogive/geometry/plane"
)

// Light is linear light in the primaries of sRGB: 1, 1, 1 is the white of D65.
type Light struct{ R, G, B float64 }

// Lab is a colour in CIELAB: L from 0 (black) to 100 (white), A from green to
// red, B from blue to yellow.
type Lab struct{ L, A, B float64 }

// hundred is what the library's CIELAB has to be multiplied by.
const hundred = 100

// Lab is the colour of the light (IEC 61966-2-1 and CIE 15).
func (c Light) Lab() Lab {
	l, a, b := colorful.XyzToLab(c.xyz())
	return Lab{hundred * l, hundred * a, hundred * b}
}

func (c Light) xyz() (x, y, z float64) { return colorful.LinearRgbToXyz(c.R, c.G, c.B) }

// Light is the inverse of Light.Lab.
func (c Lab) Light() Light {
	r, g, b := colorful.XyzToLinearRgb(colorful.LabToXyz(c.L/hundred, c.A/hundred, c.B/hundred))
	return Light{r, g, b}
}

// SRGB is the colour as three bytes, to show it; what no screen can show is
// drawn to the nearest that it can.
func (c Lab) SRGB() (r, g, b uint8) {
	return colorful.Lab(c.L/hundred, c.A/hundred, c.B/hundred).Clamped().RGB255()
}

// CIELAB is the plain distance of two colours in CIELAB, in which the limits
// of what is seen and accepted on hand skin are published.
func CIELAB(a, b Lab) float64 {
	return math.Sqrt((a.L-b.L)*(a.L-b.L) + (a.A-b.A)*(a.A-b.A) + (a.B-b.B)*(a.B-b.B))
}

// ITA is the individual typology angle atan((L - 50) / b): large for fair skin,
// negative for dark skin (Chardon A, Cretois I, Hourseau C. Int J Cosmet Sci
// 1991;13:191-208: from memory). It is meant for b above zero, which skin has.
func (c Lab) ITA() plane.Angle { return plane.Radians(math.Atan2(c.L-50, c.B)) }
