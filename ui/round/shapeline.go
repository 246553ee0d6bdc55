package round

import (
	"fyne.io/fyne/v2"

	"ogive/geometry/arch"
	"ogive/geometry/plane"
)

// typical are arches that show at a glance what their shapes are called.
var typical = map[string]arch.Arch{
	arch.V.String():      {Shape: arch.V, Flare: plane.Degrees(20), Turn: plane.Degrees(20)},
	arch.Gothic.String(): {Shape: arch.Gothic, Radius: 11, Turn: plane.Degrees(45)},
	arch.Round.String():  {Shape: arch.Round, Radius: 3.6, Turn: plane.RightAngle},
	arch.U.String():      {Shape: arch.U, Radius: 1.6, Flat: 4.4, Turn: plane.RightAngle},
}

// shapeLine is a typical arch of that name within a unit square, fingers up.
func shapeLine(name string) []fyne.Position {
	a, ok := typical[name]
	if !ok {
		return nil
	}
	a.Axis = plane.Vec[plane.Millimetre](0, -1)
	const side = 10 // mm that the square shows
	var line []fyne.Position
	for _, p := range a.Polyline(side, 0.4) {
		line = append(line, fyne.NewPos(0.5+float32(p.X)/side, 0.96+float32(p.Y)/side))
	}
	return cut(line)
}

// cut ends a line at the upper edge of the square, which only its ends leave.
func cut(line []fyne.Position) []fyne.Position {
	last := len(line) - 1
	line[0] = atEdge(line[0], line[1])
	line[last] = atEdge(line[last], line[last-1])
	return line
}

func atEdge(out, in fyne.Position) fyne.Position {
	if out.Y >= 0 {
		return out
	}
	return fyne.NewPos(out.X+(in.X-out.X)*out.Y/(out.Y-in.Y), 0)
}
