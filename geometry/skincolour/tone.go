package skincolour

import "ogive/geometry/plane"

// Tone is a class of skin by its individual typology angle.
type Tone int

// The classes (limits: Chardon A et al. Int J Cosmet Sci 1991;13:191-208, with
// the dark class added later by Del Bino S; both from memory).
const (
	VeryLight Tone = iota + 1
	LightTone
	Intermediate
	Tan
	Brown
	Dark
)

var tones = [...]struct {
	above float64 // degrees
	name  string
}{
	VeryLight: {55, "very light"}, LightTone: {41, "light"}, Intermediate: {28, "intermediate"},
	Tan: {10, "tan"}, Brown: {-30, "brown"}, Dark: {-180, "dark"},
}

// ToneOf is the class of an individual typology angle.
func ToneOf(ita plane.Angle) Tone {
	for t := VeryLight; t < Dark; t++ {
		if ita.Degrees() > tones[t].above {
			return t
		}
	}
	return Dark
}

// String is the class in words: "very light".
func (t Tone) String() string {
	if t < VeryLight || t > Dark {
		return "unknown tone"
	}
	return tones[t].name
}

// Fair reports whether the limits for fair skin apply. The study that gives
// them does not say by which angle it told fair from dark; that very light,
// light and intermediate skin count as fair is this project's own.
func (t Tone) Fair() bool { return t <= Intermediate }
