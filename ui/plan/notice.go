package plan

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/ui/flow"
	"ogive/ui/look"
)

// notice is what must not be overlooked: why a rule can't be used, a tip that is
// too narrow.
type notice struct {
	widget.BaseWidget
	ground, rail *canvas.Rectangle
	sign         *widget.Icon
	label        *widget.Label
}

var _ flow.Tall = (*notice)(nil)

func newNotice() *notice {
	n := &notice{ground: canvas.NewRectangle(nil), rail: canvas.NewRectangle(nil), label: wrapping()}
	n.sign = widget.NewIcon(look.ColouredIcon(look.IconWarning, look.OnNotice))
	n.ExtendBaseWidget(n)
	n.colour()
	n.Hide()
	return n
}

// show reports whether the height may have changed. Without text there is none.
func (n *notice) show(text string) bool {
	changed := n.label.Text != text
	if changed {
		n.label.SetText(text)
	}
	return visible(n, text != "") || changed
}

func (n *notice) colour() {
	n.ground.FillColor = look.Colour(look.Notice)
	n.ground.CornerRadius = look.Size(theme.SizeNameInputRadius)
	n.rail.FillColor = look.Colour(look.Doubtful)
}

// HeightAt is called by flow.
func (n *notice) HeightAt(width float32) float32 {
	const rail, sign, below = 5, 22, 8
	left := float32(rail + sign + 8)
	h := flow.HeightAt(n.label, width-left)
	flow.Put(n.sign, rail+8, 9, sign, sign)
	flow.Put(n.label, left, 0, width-left, h)
	flow.Put(n.ground, 0, 0, width, h)
	flow.Put(n.rail, 0, 0, rail, h)
	return h + below
}

// CreateRenderer is called by Fyne.
func (n *notice) CreateRenderer() fyne.WidgetRenderer {
	return parts{n.HeightAt, n.colour, []fyne.CanvasObject{n.ground, n.rail, n.sign, n.label}}
}
