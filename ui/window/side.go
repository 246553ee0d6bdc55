package window

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/ui/look"
)

// buildSide is the column beside the photograph: the guide over the cards.
func (w *Window) buildSide() fyne.CanvasObject {
	gap := look.Size(look.Gap)
	guide := container.New(layout.NewCustomPaddedLayout(gap/2, 0, gap, gap), w.guide.Content())
	cards := container.New(layout.NewCustomPaddedLayout(0, 0, gap, gap), w.cards.Content())
	return newPlate(theme.ColorNameBackground, "", 0, container.New(sideLayout{}, guide, widget.NewSeparator(), cards))
}

// sideLayout stands the guide over the cards. The guide has what it needs and up
// to the guideShare of the height; the cards, which scroll, have the rest.
type sideLayout struct{}

const (
	columnWidth = 340
	guideShare  = 0.52
)

// MinSize is called by Fyne.
func (sideLayout) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(columnWidth, 400) }

// Layout is called by Fyne.
func (sideLayout) Layout(o []fyne.CanvasObject, size fyne.Size) {
	guide, rule, cards := o[0], o[1], o[2]
	least := guide.MinSize().Height
	height := max(least, min(guideShare*size.Height, 1.35*least))
	guide.Resize(fyne.NewSize(size.Width, height))
	rule.Move(fyne.NewPos(0, height))
	rule.Resize(fyne.NewSize(size.Width, 1))
	cards.Move(fyne.NewPos(0, height+1))
	cards.Resize(fyne.NewSize(size.Width, max(0, size.Height-height-1)))
}
