package agree

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"ogive/ui/choice"
	"ogive/ui/flow"
)

// held is the place of a choice whose answers change.
type held struct {
	widget.BaseWidget
	choice *choice.Choice
}

var _ flow.Tall = (*held)(nil)

func newHeld() *held {
	h := &held{choice: choice.New()}
	h.ExtendBaseWidget(h)
	return h
}

func (h *held) hold(c *choice.Choice) {
	h.choice = c
	h.Refresh()
}

// HeightAt is called by flow.
func (h *held) HeightAt(width float32) float32 {
	const below = 8
	high := h.choice.HeightAt(width)
	flow.Put(h.choice, 0, 0, width, high)
	return high + below
}

// CreateRenderer is called by Fyne.
func (h *held) CreateRenderer() fyne.WidgetRenderer { return heldRenderer{h} }

type heldRenderer struct{ h *held }

func (r heldRenderer) MinSize() fyne.Size           { return fyne.NewSize(160, r.h.choice.MinSize().Height) }
func (r heldRenderer) Layout(size fyne.Size)        { r.h.HeightAt(size.Width) }
func (r heldRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.h.choice} }
func (r heldRenderer) Destroy()                     {}
func (r heldRenderer) Refresh() {
	if width := r.h.Size().Width; width > 0 {
		r.h.HeightAt(width)
	}
	r.h.choice.Refresh()
}
