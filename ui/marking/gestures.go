package marking

import (
	"fyne.io/fyne/v2/lang"

	"ogive/geometry/hand"
	"ogive/imaging/wording"
)

// The names of gestures on one spot, as undoing and redoing call them.

func (w *Work) placing(s Spot) string {
	return lang.L("place {{.Point}}", map[string]any{"Point": s.Name(w.state.View)})
}

func (w *Work) skipping(s Spot) string {
	return lang.L("skip {{.Point}}", map[string]any{"Point": s.Name(w.state.View)})
}

func (w *Work) removing(s Spot) string {
	return lang.L("remove {{.Point}}", map[string]any{"Point": s.Name(w.state.View)})
}

func (w *Work) nudging(s Spot) string {
	return lang.L("nudge {{.Point}}", map[string]any{"Point": s.Name(w.state.View)})
}

// DropSpot ends the drag of a spot: see Drop.
func (w *Work) DropSpot(s Spot) error {
	return w.Drop(lang.L("move {{.Point}}", map[string]any{"Point": s.Name(w.state.View)}))
}

// DropEdge ends the pulling of a web's border: see Drop.
func (w *Work) DropEdge(web hand.Web) error {
	return w.Drop(lang.L("pull {{.Web}} border", map[string]any{"Web": wording.Web(web)}))
}
