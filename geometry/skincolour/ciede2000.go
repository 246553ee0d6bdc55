package skincolour

import (
	"math"

	"ogive/geometry/plane"
)

// CIEDE2000 is the difference of two colours as the eye weighs it, with all
// weighting factors 1 (Sharma G, Wu W, Dalal EN. Color Res Appl 2005;30:21-30,
// whose symbols are used here).
//
// It is written out because the library used for CIELAB takes colours through
// sRGB on the way, which turns pairs of opposite hue to the wrong side: it
// misses the tenth of Sharma's pairs by 0.04.
func CIEDE2000(a, b Lab) float64 {
	half := seventh((math.Hypot(a.A, a.B) + math.Hypot(b.A, b.B)) / 2)
	stretch := 1.5 - 0.5*half
	a1, a2 := stretch*a.A, stretch*b.A
	c1, c2 := math.Hypot(a1, a.B), math.Hypot(a2, b.B)
	turn, h := hues(a1, a.B, a2, b.B)

	l, c := (a.L+b.L)/2, (c1+c2)/2
	t := 1 - 0.17*plane.Degrees(h-30).Cos() + 0.24*plane.Degrees(2*h).Cos() +
		0.32*plane.Degrees(3*h+6).Cos() - 0.20*plane.Degrees(4*h-63).Cos()
	sl := 1 + 0.015*(l-50)*(l-50)/math.Sqrt(20+(l-50)*(l-50))
	sc, sh := 1+0.045*c, 1+0.015*c*t
	bell := (h - 275) / 25
	rt := -2 * seventh(c) * plane.Degrees(60*math.Exp(-bell*bell)).Sin()

	dl := (b.L - a.L) / sl
	dc := (c2 - c1) / sc
	dh := 2 * math.Sqrt(c1*c2) * plane.Degrees(turn/2).Sin() / sh
	return math.Sqrt(dl*dl + dc*dc + dh*dh + rt*dc*dh)
}

// seventh is the root of c^7 / (c^7 + 25^7).
func seventh(c float64) float64 {
	c2 := c * c
	c7 := c2 * c2 * c2 * c
	return math.Sqrt(c7 / (c7 + 6103515625))
}

// hues is the turn in degrees from the first hue to the second the short way,
// and the hue in the middle. A grey has no hue: the turn is none, and the
// middle is the other's hue.
func hues(a1, b1, a2, b2 float64) (turn, middle float64) {
	h1, h2 := hue(a1, b1), hue(a2, b2)
	if (a1 == 0 && b1 == 0) || (a2 == 0 && b2 == 0) {
		return 0, h1 + h2
	}
	turn, middle = h2-h1, (h1+h2)/2
	switch {
	case math.Abs(turn) <= 180:
		return turn, middle
	case middle < 180:
		middle += 180
	default:
		middle -= 180
	}
	if turn > 180 {
		return turn - 360, middle
	}
	return turn + 360, middle
}

// hue is in degrees from 0 to 360; it is 0 for a grey.
func hue(a, b float64) float64 {
	if a == 0 && b == 0 {
		return 0
	}
	h := plane.Radians(math.Atan2(b, a)).Degrees()
	if h < 0 {
		return h + 360
	}
	return h
}
