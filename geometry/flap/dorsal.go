package flap

import (
	"math"

	"ogive/geometry/plane"
	"ogive/geometry/webframe"
)

// The thirds rule: the tip lies at two thirds of the way from MCP to PIP, the
// base a little proximal to the MCP joints (common practice, no source). How
// little, as a part of that way, is this project's own.
const (
	tipAt  plane.Ratio = 2.0 / 3
	baseAt plane.Ratio = -0.1
)

// Widths are the widths of a dorsal flap. Waist is zero for straight sides.
type Widths struct{ Base, Waist, Tip plane.Millimetre }

// WidthsFor is the widths for a planned span: the tip as wide as the span, which
// it is to line, and the base a fifth wider for its vessels. An hourglass is
// narrower by a fifth in its middle, which comes to lie in the new web. The
// parts are this project's own; the shape is that of the hourglass dorsal flap
// series, J Hand Surg Am 2015 (abstract).
func WidthsFor(span plane.Millimetre, hourglass bool) Widths {
	w := Widths{Base: 1.2 * span, Tip: span}
	if hourglass {
		w.Waist = 0.8 * span
	}
	return w
}

// Dorsal is the flap by the thirds rule, along the line from the middle between
// the MCP joints to the middle between the PIP joints. The outline runs from the
// base on the radial side over the tip to the base on the ulnar side.
func Dorsal(f webframe.Frame, w Widths) Flap {
	from, to := f.MCP[0].Mid(f.MCP[1]), f.PIP[0].Mid(f.PIP[1])
	axis := to.Sub(from).Direction()
	across := axis.Turned(plane.RightAngle)
	if across.Dot(f.Across()) < 0 {
		across = across.Scale(-1)
	}
	side := func(at plane.Ratio, width plane.Millimetre) plane.Position {
		return from.Towards(to, float64(at)).Add(across.Scale(float64(width) / 2))
	}
	var outline []plane.Position
	outline = append(outline, side(baseAt, -w.Base))
	if w.Waist > 0 {
		outline = append(outline, side((baseAt+tipAt)/2, -w.Waist))
	}
	outline = append(outline, side(tipAt, -w.Tip), side(tipAt, w.Tip))
	if w.Waist > 0 {
		outline = append(outline, side((baseAt+tipAt)/2, w.Waist))
	}
	outline = append(outline, side(baseAt, w.Base))
	return Flap{Kind: DorsalFlap, Outline: outline}
}

// FloorLength is how long a flap must be to line a web of that thickness, from
// back to palm, at that slope to the digits' long axis: thickness / sin(slope).
func FloorLength(thickness plane.Millimetre, slope plane.Angle) plane.Millimetre {
	return thickness / plane.Millimetre(math.Max(slope.Sin(), 0.1))
}
