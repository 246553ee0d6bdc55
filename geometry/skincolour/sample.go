package skincolour

import (
	"math"

	"ogive/geometry/plane"
)

// Place is what a sample was taken from.
type Place int

// The places.
const (
	Back Place = iota + 1
	Palm
	Donor
	Graft
	Neighbour
)

// Places lists all places in the order in which they are shown.
var Places = [...]Place{Back, Palm, Donor, Graft, Neighbour}

var placeNames = [...]string{Back: "back of the hand", Palm: "palm", Donor: "donor skin", Graft: "graft", Neighbour: "neighbouring skin"}

// String is the place in words.
func (p Place) String() string {
	if p < Back || p > Neighbour {
		return "unknown place"
	}
	return placeNames[p]
}

var placeKeys = [...]string{Back: "back", Palm: "palm", Donor: "donor", Graft: "graft", Neighbour: "neighbour"}

// Key is the place's name in a plan file, empty for a place that is none.
func (p Place) Key() string {
	if p < Back || p > Neighbour {
		return ""
	}
	return placeKeys[p]
}

// PlaceOf is the place with that key.
func PlaceOf(key string) (Place, bool) {
	for _, p := range Places {
		if p.Key() == key {
			return p, true
		}
	}
	return 0, false
}

// Sample is the colour of a patch of skin.
type Sample struct {
	Place Place
	// Colour is the median of the patch, balanced if Balance says so.
	Colour Lab
	// Spread is the standard uncertainty of each coordinate from the skin itself:
	// how much the colour changes over the patch.
	Spread Lab
	// Balance is how the photograph was brought to neutral.
	Balance Balance
}

// Balance is how a photograph was brought to neutral light.
type Balance struct {
	// Photograph tells photographs apart: samples of one share its errors.
	Photograph string
	// Neutral is false where no white or grey patch was named.
	Neutral bool
	// Channels is the relative standard uncertainty of red, green and blue, each
	// on its own; Level that of all three together, which makes the photograph
	// too light or too dark.
	Channels, Level float64
}

// Unevenness is the relative standard uncertainty of the light on a patch from
// lamps that light one place, or one slope of the hand, more than another (this
// project's own, from what phantoms show).
const Unevenness = 0.05

// Unbalanced is the balance of a photograph without a neutral patch. The sizes
// are this project's own: what a camera's automatic may be wrong by.
func Unbalanced(photograph string) Balance {
	return Balance{Photograph: photograph, Channels: 0.08, Level: 0.2}
}

// ITA is the individual typology angle of the sample.
func (s Sample) ITA() plane.Estimate[plane.Angle] {
	value, light := s.Colour.ITA(), s.Colour.Light()
	misses := make([]float64, 0, trials)
	for _, d := range draws() {
		misses = append(misses, math.Abs(float64(d.of(s, light, first, d.balance[first]).ITA()-value)))
	}
	return plane.Estimate[plane.Angle]{Value: value, U95: plane.Angle(ninetyFifth(misses))}
}
