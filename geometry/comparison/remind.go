package comparison

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"ogive/geometry/hand"
)

// remind says of every digit that is larger than its fellow beyond uncertainty
// that it may be a slight overgrowth; between two sittings it is growth.
func (p *pair) remind(sizes []Size) []string {
	if !p.mirrored && grown(sizes) {
		return []string{"The hand has changed in size between the sittings: compare its index, not its millimetres. Its spans are not judged."}
	}
	if !p.mirrored {
		return nil
	}
	var out []string
	if everyDigitLarger(sizes) {
		out = append(out, "Every digit measures larger on the same hand: look first whether the length of the ruler or the card is right on both photographs.")
	}
	for _, d := range hand.Digits {
		for _, sign := range []int{1, -1} {
			var of []Size
			for _, s := range sizes {
				if s.Digit == d && s.Larger() == sign {
					of = append(of, s)
				}
			}
			if len(of) > 0 {
				out = append(out, p.reminder(of, sign))
			}
		}
	}
	return out
}

// grown reports whether a digit differs in millimetres beyond uncertainty.
func grown(sizes []Size) bool {
	return slices.ContainsFunc(sizes, func(s Size) bool { return s.Beyond })
}

// everyDigitLarger reports whether three or more digits were measured and each
// is larger in millimetres, beyond uncertainty, on the same hand.
func everyDigitLarger(sizes []Size) bool {
	seen, larger, smaller := map[hand.Digit]bool{}, map[hand.Digit]bool{}, map[hand.Digit]bool{}
	for _, s := range sizes {
		seen[s.Digit] = true
		if s.Beyond && s.Difference.Value > 0 {
			larger[s.Digit] = true
		}
		if s.Beyond && s.Difference.Value < 0 {
			smaller[s.Digit] = true
		}
	}
	return len(seen) >= 3 && (len(larger) == len(seen) || len(smaller) == len(seen))
}

// reminder is the sentence on one digit, larger (sign 1) or smaller (-1) than
// its fellow in every size given.
func (p *pair) reminder(of []Size, sign int) string {
	on, than, meaning := "operated", "other", "it may be a slight overgrowth; look again before any separation"
	if sign < 0 {
		on, than, meaning = than, on, "overgrowth of this digit or short growth of its fellow may lie behind it; look again at both before any separation"
	}
	var by []string
	for _, s := range of {
		by = append(by, s.Of.larger(p.operated.Marks.View)+" "+s.by())
	}
	return fmt.Sprintf("The %s digit of the %s hand is %s than on the %s hand: %s.", of[0].Digit, on, strings.Join(by, ", "), than, meaning)
}

// by is by how much the larger of the two digits is larger.
func (s Size) by() string {
	if s.Beyond || s.Excess == nil {
		return fmt.Sprintf("by %.1f ± %.1f mm", math.Abs(float64(s.Difference.Value)), float64(s.Difference.U95))
	}
	part, u := float64(s.Excess.Value), float64(s.Excess.U95)
	if part < 0 {
		part, u = 1/(1+part)-1, u/(1+part)/(1+part)
	}
	return fmt.Sprintf("by %.0f ± %.0f per cent in proportion to the other digits", 100*part, math.Max(100*u, 1))
}

func (m Measure) larger(v hand.View) string {
	switch m {
	case ToPIP:
		return "longer from " + hand.MCP.Label(v) + " to " + hand.PIP.Label(v)
	case ToTip:
		return "longer from " + hand.MCP.Label(v) + " to " + hand.Tip.Label(v)
	}
	return "wider"
}
