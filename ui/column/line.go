package column

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"ogive/ui/flow"
	"ogive/ui/look"
)

// Rule is a hairline with a gap above and below.
func Rule() fyne.CanvasObject {
	line := canvas.NewLine(nil)
	return NewBlock(func(width float32) float32 {
		line.Position1, line.Position2 = fyne.NewPos(0, 6), fyne.NewPos(width, 6)
		return 12
	}, func() { line.StrokeColor, line.StrokeWidth = look.Colour(look.Hairline), 1 }, line)
}

// Line stands things beside each other, each as wide as it needs; what finds no
// room goes on in the next line.
func Line(objects ...fyne.CanvasObject) *Block {
	const gap, below = 6, 8
	return NewBlock(func(width float32) float32 {
		x, y, high := float32(0), float32(0), float32(0)
		for _, o := range objects {
			if !o.Visible() {
				continue
			}
			least := o.MinSize()
			if x > 0 && x+least.Width > width {
				x, y, high = 0, y+high+gap, 0
			}
			flow.Put(o, x, y, min(least.Width, width), least.Height)
			x, high = x+least.Width+gap, max(high, least.Height)
		}
		return y + high + below
	}, nil, objects...)
}
