package appraisal

import "ogive/geometry/hand"

// Key names a finding in files.
type Key string

// The findings.
const (
	Look         Key = "look"
	Feel         Key = "feel"
	Creep        Key = "creep_grade"
	Vascularity  Key = "vss_vascularity"
	Pigmentation Key = "vss_pigmentation"
	Pliability   Key = "vss_pliability"
	Height       Key = "vss_height"
	DorsalScars  Key = "dorsal_scars"
	GraftColour  Key = "graft_colour"
	GraftHair    Key = "graft_hair"
	NailFolds    Key = "nail_folds"
	Deviation    Key = "deviation"
	Rotation     Key = "rotation"
	Movement     Key = "movement"
	DonorSite    Key = "donor_site"
)

// Scope is what kind of place a finding is said of.
type Scope string

// The scopes.
const (
	OfWeb     Scope = "web"     // a hand and a web
	OfDigit   Scope = "digit"   // a hand and a digit
	OfHand    Scope = "hand"    // a hand
	OfPatient Scope = "patient" // neither
)

// Figure is a measured figure that stands beside a finding.
type Figure string

// The figures. Nothing: no figure can be measured for the finding.
const (
	Nothing          Figure = ""
	MeasuredIndex    Figure = "index"
	MeasuredCreep    Figure = "creep"
	MeasuredBend     Figure = "deviation"
	ColourDifference Figure = "colour difference"
)

// Finding is one thing that can be said.
type Finding struct {
	Key   Key
	Title string
	Scope Scope
	// Choices are in the order of a scale where there is one.
	Choices []Choice
	// Beside is the figure that the program can measure for it.
	Beside Figure
	// Source is where the wording comes from, and how far it is trusted.
	Source string
}

// Choice is one answer. Scored tells a score of zero from none.
type Choice struct {
	Key, Words string
	Scored     bool
	Score      int
}

// Scored reports whether the choices bear scores.
func (f Finding) Scored() bool { return f.Choices[0].Scored }

// Choice is the choice with that key.
func (f Finding) Choice(key string) (Choice, bool) {
	for _, c := range f.Choices {
		if c.Key == key {
			return c, true
		}
	}
	return Choice{}, false
}

// Find is the finding with that key.
func Find(k Key) (Finding, bool) {
	for _, f := range Vocabulary {
		if f.Key == k {
			return f, true
		}
	}
	return Finding{}, false
}

// Places are all places of the finding's scope on a hand.
func (f Finding) Places(h hand.Side) []Place {
	var out []Place
	switch f.Scope {
	case OfWeb:
		for _, w := range hand.Webs {
			out = append(out, Web(h, w))
		}
	case OfDigit:
		for _, d := range hand.Digits {
			out = append(out, Digit(h, d))
		}
	case OfHand:
		out = append(out, Hand(h))
	case OfPatient:
		out = append(out, Patient)
	}
	return out
}
