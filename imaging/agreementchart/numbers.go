package agreementchart

import (
	"fmt"
	"math"
	"strings"

	"ogive/geometry/agreement"
	"ogive/imaging/wording"
)

// finest is how many decimals are written at most.
const finest = 4

// places is how many decimals an interval deserves.
func places(i agreement.Interval) int {
	v, _ := wording.Rounded(i.Value, (i.High-i.Low)/2, finest)
	if v == "" { // bounds that can't be told
		return 3
	}
	_, decimals, _ := strings.Cut(v, ".")
	return len(decimals)
}

// number writes x to so many decimals; what rounds to nothing has no sign.
func number(x float64, places int) string {
	text := fmt.Sprintf("%.*f", places, x)
	if strings.Trim(text, "-0.") == "" {
		return strings.TrimPrefix(text, "-")
	}
	return text
}

// with puts a unit behind a number.
func with(unit, number string) string {
	switch unit {
	case "":
		return number
	case "°":
		return number + unit
	}
	return number + " " + unit
}

// bracketed is a figure with its bounds: "0.010 (0.004 to 0.016) mm".
func bracketed(i agreement.Interval, unit string) string {
	if math.IsNaN(i.Value) {
		return "can't be told"
	}
	if math.IsNaN(i.Low) || math.IsNaN(i.High) {
		return with(unit, number(i.Value, 3)) + " (no interval can be told)"
	}
	p := places(i)
	return fmt.Sprintf("%s (%s)", with(unit, number(i.Value, p)), bounds(i, p))
}

func bounds(i agreement.Interval, places int) string {
	return number(i.Low, places) + " to " + number(i.High, places)
}
