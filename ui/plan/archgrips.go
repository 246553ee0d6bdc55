package plan

import (
	"fmt"

	"fyne.io/fyne/v2/lang"

	"ogive/geometry/plan"
	"ogive/geometry/plane"
	"ogive/imaging/planfile"
	"ogive/imaging/planning"
	"ogive/ui/board"
)

// archShapes are the shapes of an arch's handles.
var archShapes = map[plan.Handle]board.HandleShape{
	plan.Crown: board.DiamondHandle, plan.Axis: board.TriangleHandle,
	plan.SpanLeft: board.SquareHandle, plan.SpanRight: board.SquareHandle,
	plan.Point: board.RoundHandle, plan.FlareLeft: board.TriangleHandle, plan.FlareRight: board.TriangleHandle,
}

// archGrips are the handles of a planned arch.
func (r *Room) archGrips(a planning.Alternative) []grip {
	if a.Arch == nil {
		return nil
	}
	m := r.model.Here.Ground.Fit.Best
	back := m.Back()
	var out []grip
	for _, g := range plan.Grips(a.Arch.Arch) {
		handle, at := g.Handle, back.Pixel(g.At)
		if handle == plan.Axis { // its distance means nothing, only its direction does
			at = r.plate.inSight(back.Pixel(a.Arch.Arch.Crown), at)
		}
		name := handleName(handle)
		label := name
		if handle == plan.SpanLeft || handle == plan.FlareLeft {
			label = "" // its fellow on the other side bears the name
		}
		out = append(out, grip{
			Handle:  board.Handle{ID: fmt.Sprintf("arch %d", handle), At: at, Shape: archShapes[handle], Label: label},
			name:    name,
			gesture: handleGesture(handle),
			move: func(_ *planfile.Web, a *planfile.Alternative, to plane.PixelPoint) {
				a.Arch = planfile.ArchOn(plan.Dragged(a.Arch.On(m), handle, m.Position(to)), m)
			},
		})
	}
	return out
}

// handleName is what a handle changes, in a word.
func handleName(h plan.Handle) string {
	switch h {
	case plan.Crown:
		return lang.L("crown")
	case plan.Axis:
		return lang.L("axis")
	case plan.SpanLeft, plan.SpanRight:
		return lang.L("span")
	case plan.Point:
		return lang.L("pointedness")
	}
	return lang.L("flare")
}

// handleGesture names the step of dragging a handle.
func handleGesture(h plan.Handle) string {
	switch h {
	case plan.Crown:
		return lang.L("move the crown")
	case plan.Axis:
		return lang.L("turn the axis")
	case plan.SpanLeft, plan.SpanRight:
		return lang.L("change the span")
	case plan.Point:
		return lang.L("change the pointedness")
	}
	return lang.L("change the flare")
}
