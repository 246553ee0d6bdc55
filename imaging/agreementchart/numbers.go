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
	return written(i, unit, places(i))
}

// correlation is a coefficient with its bounds, to two or three decimals. What is
// less than one is never rounded to it.
func correlation(i agreement.Interval) string {
	if math.IsNaN(i.Value) || math.IsNaN(i.Low) || math.IsNaN(i.High) {
		return bracketed(i, "")
	}
	at := min(max(places(i), 2), 3)
	return written(agreement.Interval{Value: below(i.Value, at), Low: below(i.Low, at), High: below(i.High, at)}, "", at)
}

// below is x, or the largest number of so many decimals below one where x is less
// than one and would be rounded to it.
func below(x float64, places int) float64 {
	if largest := 1 - math.Pow(10, -float64(places)); x < 1 && x > largest {
		return largest
	}
	return x
}

func written(i agreement.Interval, unit string, places int) string {
	return fmt.Sprintf("%s (%s to %s)", with(unit, number(i.Value, places)), number(i.Low, places), number(i.High, places))
}
