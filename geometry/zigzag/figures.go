package zigzag

import (
	"fmt"
	"strconv"
	"strings"

	"ogive/geometry/drawn"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
)

// Figures are what a drawn zigzag is like.
type Figures struct {
	Length plane.Estimate[plane.Millimetre] // of the incision, from end to end
	Limbs  []Limb                           // one between each two points
	Flaps  []Flap                           // one at each inner point
	// Notes say in sentences what to look at again.
	Notes []string
}

// Limb is one straight part of the incision.
type Limb struct {
	Length plane.Estimate[plane.Millimetre]
	// Obliquity is the angle to the transverse, which the creases follow: 0
	// across the digit, 90 degrees along it.
	Obliquity plane.Estimate[plane.Angle]
}

// Flap is the triangular flap with its tip at one point.
type Flap struct {
	TipAngle plane.Estimate[plane.Angle]
	// Narrow reports whether the tip angle is below NarrowTip.
	Narrow bool
}

// NarrowTip is the tip angle below which a flap risks the blood supply of its
// tip (common practice, no source).
const NarrowTip = plane.RightAngle / 3

// Trade is the choice between narrow and broad flaps in one line (common
// practice, no source).
const Trade = "Narrow flaps leave scars almost across the finger, which sink into the creases, but their tips are short of blood; broad flaps are safer and leave scars running more along the finger (common practice, no source)."

// Of is the figures of a zigzag on a photograph of that scale.
func Of(z Zigzag, fit scale.Fit) Figures {
	var out Figures
	n := len(z.Points)
	if n < 2 {
		return out
	}
	points := append([]plane.Position{z.Join.From, z.Join.To}, z.Points...)
	e := drawn.Figures(fit, points, func(ps []plane.Position) []float64 {
		return Zigzag{Join: Join{ps[0], ps[1]}, Points: ps[2:]}.numbers()
	})
	out.Length = millimetres(e[0])
	for i := range n - 1 {
		out.Limbs = append(out.Limbs, Limb{millimetres(e[1+i]), angle(e[n+i])})
	}
	for i := range n - 2 {
		tip := angle(e[2*n-1+i])
		out.Flaps = append(out.Flaps, Flap{TipAngle: tip, Narrow: tip.Value < NarrowTip-roundOff})
	}
	out.Notes = out.notes()
	return out
}

// roundOff keeps a flap of exactly 30 degrees from being called narrow.
const roundOff = 1e-9

func millimetres(e plane.Estimate[float64]) plane.Estimate[plane.Millimetre] {
	return plane.Estimate[plane.Millimetre]{Value: plane.Millimetre(e.Value), U95: plane.Millimetre(e.U95)}
}

func angle(e plane.Estimate[float64]) plane.Estimate[plane.Angle] {
	return plane.Estimate[plane.Angle]{Value: plane.Radians(e.Value), U95: plane.Radians(e.U95)}
}

// numbers are the whole length, the limbs' lengths, their obliquities and the
// tip angles.
func (z Zigzag) numbers() []float64 {
	n := len(z.Points)
	out := make([]float64, 1, 3*n)
	for i := 1; i < n; i++ {
		l := float64(z.Points[i].Distance(z.Points[i-1]))
		out[0] += l
		out = append(out, l)
	}
	for i := 1; i < n; i++ {
		out = append(out, float64(z.obliquity(z.Points[i].Sub(z.Points[i-1]))))
	}
	for i := 1; i+1 < n; i++ {
		out = append(out, float64(z.Points[i-1].Sub(z.Points[i]).AngleTo(z.Points[i+1].Sub(z.Points[i]))))
	}
	return out
}

// obliquity is the angle of a limb to the transverse, either way.
func (z Zigzag) obliquity(limb plane.Vector[plane.Millimetre]) plane.Angle {
	a := limb.AngleTo(z.Join.across())
	return min(a, 2*plane.RightAngle-a)
}

// notes is one sentence for all narrow tips, counted from proximal.
func (f Figures) notes() []string {
	var numbers []string
	least := NarrowTip
	for i, flap := range f.Flaps {
		if flap.Narrow {
			numbers, least = append(numbers, strconv.Itoa(i+1)), min(least, flap.TipAngle.Value)
		}
	}
	const why = "degrees, below 30: the blood supply of a narrow tip is at risk (common practice, no source)."
	switch len(numbers) {
	case 0:
		return nil
	case 1:
		return []string{fmt.Sprintf("Flap %s, counted from proximal, has a tip of %.0f %s", numbers[0], least.Degrees(), why)}
	}
	return []string{fmt.Sprintf("Flaps %s, counted from proximal, have tips down to %.0f %s", strings.Join(numbers, ", "), least.Degrees(), why)}
}
