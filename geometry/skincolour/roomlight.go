package skincolour

import "math"

// What the light of a room can be. The temperatures run from a candle-like bulb to
// deep shade (common practice, no source). The margin is this project's own: it
// lets in the greenish tubes, and cameras whose own balance is somewhat off; the
// cloths of a theatre lie beyond it.
const (
	warmest = 2500.0 // kelvin
	coldest = 10000.0
	// roomMargin is a distance in the CIE 1976 chromaticity diagram.
	roomMargin = 0.025
)

// OfARoom reports whether a white or grey thing of that light can be told from the
// light of a room alone: its chromaticity lies near that of some black body of
// 2500 to 10000 K. A blue or green cloth is neither white nor grey in any such
// light; skin is, in the light of a bulb.
func (c Light) OfARoom() bool {
	u, v := c.chromaticity()
	const coarse = 2.0 // mired
	for mired := 1e6 / coldest; mired <= 1e6/warmest; mired += coarse {
		x, y := blackBody(1e6 / mired)
		if math.Hypot(u-x, v-y) <= roomMargin {
			return true
		}
	}
	return false
}

// chromaticity is u' and v' of CIE 1976.
func (c Light) chromaticity() (u, v float64) {
	x, y, z := c.xyz()
	sum := x + 15*y + 3*z
	return 4 * x / sum, 9 * y / sum
}

// blackBody is the chromaticity of a black body of a temperature in kelvin, by the
// rational approximation of Krystek (Color Res Appl 1985;10:38-40: from memory),
// which is in u and v of CIE 1960.
func blackBody(t float64) (u, v float64) {
	u = (0.860117757 + 1.54118254e-4*t + 1.28641212e-7*t*t) / (1 + 8.42420235e-4*t + 7.08145163e-7*t*t)
	v = (0.317398726 + 4.22806245e-5*t + 4.20481691e-8*t*t) / (1 - 2.89741816e-5*t + 1.61456053e-7*t*t)
	return u, 1.5 * v
}
