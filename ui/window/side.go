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
	w.side = container.New(sideLayout{&w.more}, container.NewVScroll(guide), widget.NewSeparator(), cards)
	return newPlate(theme.ColorNameBackground, "", 0, w.side)
}

// sideLayout stands the guide over the cards. While a point is wanted the guide
// has what it needs; in a low window, when nothing is wanted any more, the cards
// take its place but for the ribbon of steps.
type sideLayout struct{ wanted *bool }

const (
	columnWidth = 340
	guideShare  = 0.5
	ribbon      = 132 // the guide's steps and the name of the hand
	leastCards  = 110
	low         = 820 // a column that is less high than this is low
)

// MinSize is called by Fyne.
func (sideLayout) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(columnWidth, 400) }

// Layout is called by Fyne.
func (l sideLayout) Layout(o []fyne.CanvasObject, size fyne.Size) {
	guide, rule, cards := o[0].(*container.Scroll), o[1], o[2]
	least := guide.Content.MinSize().Height
	height := max(least, min(guideShare*size.Height, 1.35*least))
	switch {
	case size.Height < low && !*l.wanted:
		height = ribbon
	case size.Height < low:
		height = min(height, size.Height-leastCards)
	}
	guide.Resize(fyne.NewSize(size.Width, height))
	rule.Move(fyne.NewPos(0, height))
	rule.Resize(fyne.NewSize(size.Width, 1))
	cards.Move(fyne.NewPos(0, height+1))
	cards.Resize(fyne.NewSize(size.Width, max(0, size.Height-height-1)))
}
