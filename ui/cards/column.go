package cards

import (
	"fyne.io/fyne/v2"

	"ogive/ui/flow"
	"ogive/ui/look"
)

// heightOf is that of what is seen.
func heightOf(o fyne.CanvasObject, width float32) float32 {
	if !o.Visible() {
		return 0
	}
	return flow.HeightAt(o, width)
}

// column is the cards with the summary above and the caution below. In a low
// window, where the caution would leave too little room, it is scrolled with the
// cards; the summary always stays in sight.
type column struct {
	scrolled fyne.CanvasObject // the caution among the cards
	stack    *flow.Stack
}

// lowColumn is the height below which a column is low.
const lowColumn = 460

// leastCards is the height in which the first card shows its web and its figure.
const leastCards = 44

func (*column) MinSize([]fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(look.Size(look.Column), leastCards)
}

func (c *column) Layout(parts []fyne.CanvasObject, size fyne.Size) {
	summary, scroll, caution := parts[0], parts[1], parts[2]
	low := size.Height < lowColumn
	flow.Visible(caution, !low)
	if flow.Visible(c.scrolled, low) {
		c.stack.Arrange()
	}
	above, below := heightOf(summary, size.Width), heightOf(caution, size.Width)
	flow.Put(summary, 0, 0, size.Width, above)
	flow.Put(scroll, 0, above, size.Width, max(0, size.Height-above-below))
	flow.Put(caution, 0, size.Height-below, size.Width, below)
}
