package wording

import (
	"math"
	"strconv"

	"ogive/geometry/plane"
)

// The finest decimals in which a figure is worth reading on a hand, however
// small its uncertainty (common practice, no source).
const (
	ratioDecimals      = 2
	millimetreDecimals = 1
	degreeDecimals     = 0
)

// unknown stands where a figure or its uncertainty is no number.
const unknown = "not known"

// Ratio writes an index or a rise to span: "0.47 ± 0.02".
func Ratio(e plane.Estimate[plane.Ratio]) string {
	return withUnit(float64(e.Value), float64(e.U95), ratioDecimals, "")
}

// Millimetres writes a length: "8.4 ± 0.3 mm".
func Millimetres(e plane.Estimate[plane.Millimetre]) string {
	return withUnit(float64(e.Value), float64(e.U95), millimetreDecimals, " mm")
}

// SquareMillimetres writes an area: "54 ± 3 mm²".
func SquareMillimetres(e plane.Estimate[plane.SquareMillimetre]) string {
	return withUnit(float64(e.Value), float64(e.U95), millimetreDecimals, " mm²")
}

// Degrees writes an angle: "118 ± 6°".
func Degrees(e plane.Estimate[plane.Angle]) string {
	return withUnit(e.Value.Degrees(), e.U95.Degrees(), degreeDecimals, "°")
}

// MillimetresPerPixel writes the scale of a photograph: "0.0333 ± 0.0004 mm per
// pixel".
func MillimetresPerPixel(e plane.Estimate[plane.Millimetre]) string {
	return withUnit(float64(e.Value), float64(e.U95), 5, " mm per pixel")
}

func withUnit(value, u95 float64, finest int, unit string) string {
	v, u := Rounded(value, u95, finest)
	if u == "" {
		return unknown
	}
	return v + " ± " + u + unit
}

// Rounded writes a figure and its uncertainty in the same decimals: as many as
// leave the uncertainty one or two digits, but never more than finest. Both are
// empty if either is no number.
//
// Two digits stay where the first three run from 100 to 354, one where they run
// from 355 to 949 (Particle Data Group, Review of Particle Physics,
// introduction, "Rounding"; from memory). The uncertainty is rounded up unless
// that would lose less than a twentieth of it (JCGM 100:2008, 7.2.6: it may be
// appropriate to round uncertainties up).
func Rounded(value, u95 float64, finest int) (v, u string) {
	if !finite(value) || !finite(u95) || u95 < 0 {
		return "", ""
	}
	decimals := finest
	if u95 > 0 {
		decimals = min(decimals, deserved(u95))
	}
	unit := math.Pow(10, float64(-decimals))
	up := roundedUp(u95/unit) * unit
	shown := math.Round(value/unit) * unit
	if shown == 0 {
		shown = 0 // drops the sign of a negative zero
	}
	decimals = max(decimals, 0)
	return strconv.FormatFloat(shown, 'f', decimals, 64), strconv.FormatFloat(up, 'f', decimals, 64)
}

// deserved is the number of decimals an uncertainty u > 0 leaves to its figure;
// it is negative for tens and hundreds.
func deserved(u float64) int {
	order := int(math.Floor(math.Log10(u)))
	lead := u / math.Pow(10, float64(order))
	if lead < 3.55 {
		return 1 - order
	}
	return -order
}

// roundedUp is the whole number not below u, or the nearest one if that is less
// than a twentieth below.
func roundedUp(u float64) float64 {
	if down := math.Floor(u); u-down <= u/20 {
		return down
	}
	return math.Ceil(u)
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
