package plane

import "math"

// Angle is an angle, held in radians; build it with Degrees or Radians.
type Angle float64

// RightAngle is 90 degrees.
const RightAngle = Angle(math.Pi / 2)

// Degrees is an angle of d degrees.
func Degrees(d float64) Angle { return Angle(d * math.Pi / 180) }

// Radians is an angle of r radians.
func Radians(r float64) Angle { return Angle(r) }

// Degrees is a in degrees.
func (a Angle) Degrees() float64 { return float64(a) * 180 / math.Pi }

// Radians is a in radians.
func (a Angle) Radians() float64 { return float64(a) }

// Sin is the sine of a.
func (a Angle) Sin() float64 { return math.Sin(float64(a)) }

// Cos is the cosine of a.
func (a Angle) Cos() float64 { return math.Cos(float64(a)) }

// Tan is the tangent of a.
func (a Angle) Tan() float64 { return math.Tan(float64(a)) }
