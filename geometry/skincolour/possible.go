package skincolour

import "math"

// What the colour of skin may be under neutral light, wide enough for every skin
// from the fairest to the darkest, for palms, scars and flushed hands (this
// project's own, from memory of what skin measures: lightness 20 to 80, hue 25 to
// 80 degrees, chroma 6 to 30).
const (
	darkestSkin, lightestSkin = 8.0, 92.0
	leastChroma, mostChroma   = 3.5, 45.0
	reddest, yellowest        = 5.0, 95.0 // hue, degrees
)

// CanBeSkin reports whether skin can have the colour. What can't be is a cloth, a
// ruler, a nail in a highlight, or skin balanced on what is neither white nor
// grey.
func (c Lab) CanBeSkin() bool {
	chroma := math.Hypot(c.A, c.B)
	hue := math.Atan2(c.B, c.A) * 180 / math.Pi
	return darkestSkin <= c.L && c.L <= lightestSkin &&
		leastChroma <= chroma && chroma <= mostChroma &&
		reddest <= hue && hue <= yellowest
}
