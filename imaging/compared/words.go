package compared

import (
	"fmt"
	"math"

	"ogive/imaging/wording"
)

// Tolerance says whose the tolerance of the verdicts is.
const Tolerance = "The tolerance, the larger of 1 mm and 10 per cent unless the table of normal values was edited, is this project's own; no norm for such differences is published."

// usualResidual is the residual up to which nothing need be thought of a
// registration, doubtfulResidual that from which its ghost is to be distrusted.
// On phantoms, whose digits are spread alike but for a few degrees, half of all
// pairs leave less than 0.7 mm and nine in ten less than 2.2 mm (go test
// ./imaging/proof -run Pairs -v -pairs 120). Both limits are this project's own.
const (
	usualResidual    = 2.5
	doubtfulResidual = 5
)

// Title names what is compared: "Operated right hand beside the left hand
// mirrored, back of the hand".
func (p Pair) Title() string {
	c := p.Comparison
	if c.TwoSittings() {
		return fmt.Sprintf("Two sittings of the %v hand, %s", c.Operated, wording.View(c.View))
	}
	return fmt.Sprintf("Operated %v hand beside the %v hand mirrored, %s", c.Operated, c.Other, wording.View(c.View))
}

// Order says which way differences are taken.
func (p Pair) Order() string {
	if p.Comparison.TwoSittings() {
		return "Differences are later minus earlier."
	}
	return "Differences are operated minus other."
}

// Growth is what must be known of two sittings, and empty beside the other hand
// or where a reminder says that the hand has grown.
func (p Pair) Growth() string {
	if !p.Comparison.TwoSittings() || len(p.Comparison.Reminders) > 0 {
		return ""
	}
	return "Millimetres grow with a child: between two sittings compare the index, which does not."
}

// Residual is the residual of the registration in words, empty where there is no
// registration.
func (p Pair) Residual() string {
	rms := float64(p.Comparison.RegistrationRMS)
	if math.IsNaN(rms) {
		return ""
	}
	return fmt.Sprintf("Residual of the registration: %.1f mm", rms)
}

// Trust is how far the place of a ghost can be trusted.
type Trust int

// From a registration that leaves nothing to think of to one that contradicts
// itself.
const (
	Unregistered Trust = iota // there is no ghost
	Close
	Loose
	Contrary
)

// Trust follows from the residual of the registration.
func (p Pair) Trust() Trust {
	rms := float64(p.Comparison.RegistrationRMS)
	switch {
	case math.IsNaN(rms):
		return Unregistered
	case rms > doubtfulResidual:
		return Contrary
	case rms > usualResidual:
		return Loose
	}
	return Close
}

// ResidualMeans says when to distrust the ghost.
func (p Pair) ResidualMeans() string {
	const figures = " The figures and their differences do not depend on it: each is measured on its own photograph."
	switch p.Trust() {
	case Unregistered:
		return "The arches can't be laid over each other: mark MCP and PIP of both digits on both photographs." + figures
	case Contrary:
		return "The joints of the two hands do not agree: distrust where the dashed arch lies. Check which hand is named on each photograph, and whether each joint is marked where it is." + figures
	case Loose:
		return "The fingers are spread or bent otherwise on the two photographs, or a joint is marked elsewhere: take the dashed arch for its shape rather than for its place." + figures
	}
	return "So far apart, on average, come the joints of the two hands to lie. Distrust the dashed arch from some 3 mm on: then fingers are spread otherwise, or a joint is marked elsewhere." + figures
}
