package cards

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"ogive/ui/look"
)

// stack stands things whose height depends on their width over each other. Fyne
// asks for a smallest size before it gives a width, so the stack says when the
// height it gave has turned out otherwise.
type stack struct {
	gap      float32
	width    float32
	height   float32
	objects  []fyne.CanvasObject
	onHeight func()
}

func (s *stack) MinSize(objects []fyne.CanvasObject) fyne.Size {
	s.objects = objects
	return fyne.NewSize(0, s.height)
}

func (s *stack) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	s.objects = objects
	s.width = size.Width - look.Size(theme.SizeNameScrollBarSmall) - 3
	s.place()
}

// arrange places everything anew after something has changed its height.
func (s *stack) arrange() {
	if s.width > 0 {
		s.place()
	}
}

func (s *stack) place() {
	y := float32(0)
	for _, o := range s.objects {
		if !o.Visible() {
			continue
		}
		h := heightAt(o, s.width)
		o.Move(fyne.NewPos(0, y))
		o.Resize(fyne.NewSize(s.width, h))
		y += h + s.gap
	}
	y = max(y-s.gap, 0)
	if y != s.height {
		s.height = y
		s.onHeight()
	}
}

// tall is a thing whose height depends on its width.
type tall interface{ heightAt(width float32) float32 }

func heightAt(o fyne.CanvasObject, width float32) float32 {
	if t, ok := o.(tall); ok {
		return t.heightAt(width)
	}
	// A label that wraps knows its height once it has its width.
	o.Resize(fyne.NewSize(width, o.Size().Height))
	return o.MinSize().Height
}

// heightOf is that of what is seen.
func heightOf(o fyne.CanvasObject, width float32) float32 {
	if !o.Visible() {
		return 0
	}
	return heightAt(o, width)
}

// column is the cards with the summary above and the caution below. In a low
// window, where the caution would leave too little room, it is scrolled with the
// cards; the summary always stays in sight.
type column struct {
	scrolled fyne.CanvasObject // the caution among the cards
	stack    *stack
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
	setVisible(caution, !low)
	if setVisible(c.scrolled, low) {
		c.stack.arrange()
	}
	above, below := heightOf(summary, size.Width), heightOf(caution, size.Width)
	put(summary, 0, 0, size.Width, above)
	put(scroll, 0, above, size.Width, max(0, size.Height-above-below))
	put(caution, 0, size.Height-below, size.Width, below)
}
