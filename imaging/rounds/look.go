package rounds

import (
	"fmt"

	"ogive/geometry/arch"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
)

// look is the one sentence on what to look for: at the first mistake in the order
// of the questions, or where there was none, at what decides the first of them. The
// advice is common practice, no source.
func look(r Result, l Limits) string {
	blind := len(r.Landmarks) > 0
	if far, ok := r.farJoint(farJoint); blind && ok {
		return jointAdvice(far)
	}
	first := ""
	for _, j := range r.Judged {
		if !j.Counted {
			continue
		}
		advice := j.advice(l, blind)
		if !j.Right {
			return advice
		}
		if first == "" {
			first = advice
		}
	}
	return first
}

// farJoint is how far off a joint is worth a sentence before all else, because the
// index hangs on it.
const farJoint plane.Millimetre = 3

func jointAdvice(l Landmark) string {
	where := fmt.Sprintf("Your %s of the %s finger is %s: ", l.Kind, l.Of, offWords(l.Off))
	switch l.Kind {
	case "MCP":
		return where + "find the top of the knuckle first, for the index is measured from there."
	case "PIP":
		return where + "the joint lies in the middle of its transverse wrinkles, and the index is measured up to it."
	}
	return where + "zoom in and mark the middle of the digit."
}

func (j Judged) advice(l Limits, blind bool) string {
	switch j.Of {
	case Place:
		return placeAdvice(j, l)
	case Width:
		return widthAdvice[j.True]
	case Shape:
		return shapeAdvice[j.True]
	case Slope:
		return slopeAdvice(j, l)
	}
	if blind {
		return "The crown is the most proximal point of the skin's edge, not the end of the fold nor the shadow before it: zoom in before you click."
	}
	return crownAdvice(j, l)
}

func placeAdvice(j Judged, l Limits) string {
	switch j.True {
	case "too deep":
		return "Halve the proximal phalanx with the eye, from the knuckle to the PIP joint: a crown that lies clearly nearer the knuckle is too deep."
	case "too shallow":
		return "Divide the proximal phalanx in three with the eye: a crown in the last third, next to the PIP joint, is too shallow, as after creep."
	}
	return fmt.Sprintf("A normal crown lies from %.0f to %.0f per cent of the way from the MCP to the PIP joint: find both joints before you look at the web.", 100*l.Index[0], 100*l.Index[1])
}

var widthAdvice = map[string]string{
	"too wide":         "Carry the widest of the other webs over to this one with the eye: it is too wide only if it clearly outdoes that one, and the third is normally the narrowest.",
	"too narrow":       "Carry the narrowest of the other webs over to this one with the eye: it is too narrow if it clearly falls short of that one, and the third may do so a little.",
	norms.WithinLimits: "Webs of one hand differ by a millimetre or a tenth without meaning anything: compare the openings where the borders become straight, not at the finger tips.",
}

var shapeAdvice = map[string]string{
	arch.V.String():      "A V has straight sides down to the very corner: look whether any part of the border bends.",
	arch.Gothic.String(): "A gothic web has two bowed sides that still meet in a point: look for the corner at the crown.",
	arch.Round.String():  "A round web bends evenly all along and has neither a corner nor a flat: see whether a coin would lie in it.",
	arch.U.String():      "A U has a flat floor between two bends: look for the straight piece across the axis at the crown.",
}

func slopeAdvice(j Judged, l Limits) string {
	switch j.True {
	case "too steep":
		return "Lay the finger level in the mind: a steep junction drops almost straight from the back of the hand to the palm."
	case "too flat":
		return "Lay the finger level in the mind: a flat junction runs out nearly along the finger instead of falling to the palm."
	}
	return fmt.Sprintf("Hold the junction against half a right angle: a normal one falls at %.0f to %.0f degrees to the finger's long axis.", l.Slope[0], l.Slope[1])
}

func crownAdvice(j Judged, l Limits) string {
	switch j.Given {
	case "too deep":
		return fmt.Sprintf("Go further distally: begin at the middle of the proximal phalanx, and do not put the crown nearer the knuckle than %.0f per cent of the way to the PIP joint.", 100*l.Index[0])
	case "too shallow":
		return fmt.Sprintf("Go further proximally: leave the last third of the proximal phalanx free, and do not put the crown beyond %.0f per cent of the way to the PIP joint.", 100*l.Index[1])
	case "aside":
		return "Find the middle line first: from half way between the two knuckles to half way between the two PIP joints; the crown belongs on it."
	case "":
		return "Begin at the middle of the proximal phalanx, half way between the two fingers, and go a little distally."
	}
	return "Find the knuckle and the PIP joint of both fingers first; the crown belongs about the middle between them, half way from finger to finger."
}
