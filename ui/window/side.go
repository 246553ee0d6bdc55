package window

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/ui/look"
)

// buildSide is the column beside the photograph: the guide, what the program
// offers, the cards.
func (w *Window) buildSide() fyne.CanvasObject {
	gap := look.Size(look.Gap)
	guide := container.New(layout.NewCustomPaddedLayout(gap/2, 0, gap, gap), w.guide.Content())
	cards := container.New(layout.NewCustomPaddedLayout(0, 0, gap, gap), w.cards.Content())
	w.offer = newOffer(w.accept, w.refuse)
	w.side = container.New(sideLayout{&w.more}, container.NewVScroll(guide), w.offer.panel, widget.NewSeparator(), cards)
	return newPlate(theme.ColorNameBackground, "", 0, w.side)
}

// arrangeSide lays the column out anew: the guide's text, an offer or the summary
// over the cards may need more room now.
func (w *Window) arrangeSide() { w.side.Layout.Layout(w.side.Objects, w.side.Size()) }

// sideLayout gives the guide's words, the offer and the verdicts over the cards
// what they need. What is left goes first to the guide's picture while a point is
// wanted, until it is clear or half of the column is used, then to the cards.
type sideLayout struct{ wanted *bool }

const (
	columnWidth = 340
	guideShare  = 0.5
	clearer     = 96 // with so much more than the least the picture is clear
)

// MinSize is called by Fyne.
func (sideLayout) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(columnWidth, 400) }

// Layout is called by Fyne.
func (l sideLayout) Layout(o []fyne.CanvasObject, size fyne.Size) {
	guide, offer, rule, cards := o[0].(*container.Scroll), o[1], o[2], o[3]
	least, offered := guide.Content.MinSize().Height, float32(0)
	if offer.Visible() {
		offered = offer.MinSize().Height
	}
	height := least
	if *l.wanted {
		height = max(least, min(max(guideShare*size.Height, least+clearer), size.Height-offered-cards.MinSize().Height))
	}
	height = min(height, size.Height-offered)
	y := float32(0)
	for _, part := range []struct {
		object fyne.CanvasObject
		height float32
	}{{guide, height}, {offer, offered}, {rule, 1}, {cards, max(0, size.Height-height-offered-1)}} {
		part.object.Move(fyne.NewPos(0, y))
		part.object.Resize(fyne.NewSize(size.Width, part.height))
		y += part.height
	}
}
