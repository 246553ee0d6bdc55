package beside

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/ui/flow"
	"ogive/ui/look"
)

// notice is what must not be overlooked, such as a digit that may be overgrown.
type notice struct {
	widget.BaseWidget
	ground, rail *canvas.Rectangle
	sign         *widget.Icon
	label        *widget.Label
}

func newNotice() *notice {
	n := &notice{ground: canvas.NewRectangle(nil), rail: canvas.NewRectangle(nil), label: wrapping()}
	n.sign = widget.NewIcon(look.ColouredIcon(look.IconWarning, look.OnNotice))
	n.ExtendBaseWidget(n)
	n.colour()
	n.Hide()
	return n
}

func (n *notice) show(text string) { n.label.SetText(text) }

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
	return parts{func(s fyne.Size) { n.HeightAt(s.Width) }, n.colour, []fyne.CanvasObject{n.ground, n.rail, n.sign, n.label}}
}

// parts is the renderer of a widget that places its parts itself.
type parts struct {
	place   func(fyne.Size)
	colour  func()
	objects []fyne.CanvasObject
}

func (parts) MinSize() fyne.Size             { return fyne.NewSize(160, 20) }
func (p parts) Layout(size fyne.Size)        { p.place(size) }
func (p parts) Objects() []fyne.CanvasObject { return p.objects }
func (parts) Destroy()                       {}
func (p parts) Refresh() {
	p.colour()
	for _, o := range p.objects {
		o.Refresh()
	}
}
