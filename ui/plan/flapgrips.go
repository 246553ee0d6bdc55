package plan

import (
	"fmt"
	"slices"

	"fyne.io/fyne/v2/lang"

	"ogive/geometry/plane"
	"ogive/imaging/planfile"
	"ogive/imaging/planning"
	"ogive/ui/board"
)

// Limits of an outline: with fewer points it is none, more are not kept.
const leastOutline, mostOutline = 3, 500

// leastSide is how long a side must be on the screen for a plus on it, in units
// of Fyne's.
const leastSide = 44

// flapGrips are the points of a flap's outline, and a plus on each side that is
// cut and long enough.
func (r *Room) flapGrips(a planning.Alternative) []grip {
	if a.Flap == nil {
		return nil
	}
	points := a.Flap.Pixels
	var out []grip
	for i, at := range points {
		out = append(out, flapPoint(i, len(points), at))
	}
	for i := 1; i < len(points) && len(points) < mostOutline; i++ {
		if r.plate.apart(points[i-1], points[i]) < leastSide {
			continue
		}
		out = append(out, grip{
			Handle:  board.Handle{ID: fmt.Sprintf("flap + %d", i), At: points[i-1].Mid(points[i]), Shape: board.RoundHandle, Label: "+"},
			name:    "+",
			gesture: lang.L("add a point to the flap"),
			adds:    &addition{name: lang.L("add a point to the flap"), as: flapID(i)},
			move: func(_ *planfile.Web, a *planfile.Alternative, to plane.PixelPoint) {
				a.Flap.Outline = slices.Insert(a.Flap.Outline, i, to)
			},
		})
	}
	return out
}

func flapID(i int) string { return fmt.Sprintf("flap %d", i) }

// flapPoint is one point of the outline; the two ends of the base are diamonds.
func flapPoint(i, of int, at plane.PixelPoint) grip {
	g := grip{
		Handle:  board.Handle{ID: flapID(i), At: at, Shape: board.SquareHandle},
		name:    lang.L("point {{.Number}}", map[string]any{"Number": i + 1}),
		gesture: lang.L("move a point of the flap"),
		move: func(_ *planfile.Web, a *planfile.Alternative, to plane.PixelPoint) {
			a.Flap.Outline[i] = to
		},
	}
	if i == 0 || i == of-1 { // without its end the base would be another line
		g.Shape, g.Label, g.name = board.DiamondHandle, lang.L("base"), lang.L("base")
		return g
	}
	if of > leastOutline {
		g.remove = func(a *planfile.Alternative) { a.Flap.Outline = slices.Delete(a.Flap.Outline, i, i+1) }
	}
	return g
}

// removing names the step of removing a point.
func removing() string { return lang.L("remove a point of the flap") }
