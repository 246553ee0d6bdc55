package guide

// The web view: one finger seen from the side, its tip to the right and the back
// of the hand up; the finger before it is spread towards the eye. The units are
// those of the hand's drawing.

var (
	sideBack = smooth([]spot{{0, 88}, {40, 91}, {76, 97}, {96, 105}, {124, 111}, {140, 109}, {154, 113}, {178, 117}, {190, 116}, {206, 120}, {218, 127}, {222, 136}}, false)
	sidePalm = smooth([]spot{{222, 136}, {217, 146}, {204, 151}, {188, 148}, {176, 153}, {160, 152}, {146, 148}, {134, 152}, {112, 155}, {96, 164}, {84, 178}, {66, 190}, {30, 194}, {0, 192}}, false)
	// sideNear is the finger spread towards the eye, cut off by its fist.
	sideNear = smooth([]spot{{0, 140}, {26, 142}, {50, 151}, {66, 164}, {72, 182}, {66, 201}, {48, 213}, {22, 214}, {0, 208}}, false)

	axisPlaces = [2]spot{{112, 132}, {196, 134}}
)

// sideJunction is the line between the two kinds of skin: over the web, then
// along the side of the finger.
var sideJunction = smooth([]spot{{20, 112}, {44, 114}, {62, 120}, {98, 152}, {116, 148}, {150, 142}, {190, 141}, {221, 138}}, false)

// junctionPlace is the n-th point along the straight part of the junction.
func junctionPlace(n int) spot {
	return spot{62, 120}.to(spot{95, 149}, float64(min(n, 3))/3)
}
