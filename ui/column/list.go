package column

import (
	"fyne.io/fyne/v2"

	"ogive/ui/flow"
)

// NewList is a block of things over each other, which Replace can exchange.
func NewList(objects ...fyne.CanvasObject) *Block {
	b := &Block{}
	b.begin(b, func(width float32) float32 {
		y := float32(0)
		for _, o := range b.parts {
			if o.Visible() {
				h := flow.HeightAt(o, width)
				flow.Put(o, 0, y, width, h)
				y += h
			}
		}
		return y
	}, nil, objects...)
	return b
}

// Replace exchanges the parts.
func (b *Block) Replace(parts ...fyne.CanvasObject) {
	b.parts = parts
	b.Refresh()
}

// Parts are the parts.
func (b *Block) Parts() []fyne.CanvasObject { return b.parts }
