package round

import (
	"math"

	"fyne.io/fyne/v2"
)

// slopeAngles are slopes in degrees that show at a glance what flat, normal and
// steep are, in the order of the answers.
var slopeAngles = []float64{18, 42, 70}

// slopeLine is the finger's long axis, level and pointing right, and the junction
// that falls from it at its base, within a unit square.
func slopeLine(n int) []fyne.Position {
	if n < 0 || n >= len(slopeAngles) {
		return nil
	}
	base := fyne.NewPos(0.05, 0.15)
	sin, cos := math.Sincos(slopeAngles[n] * math.Pi / 180)
	long := min(0.9/cos, 0.7/sin)
	return []fyne.Position{{X: 0.95, Y: base.Y}, base, {X: base.X + float32(long*cos), Y: base.Y + float32(long*sin)}}
}
