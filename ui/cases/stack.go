package cases

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"ogive/ui/look"
)

// stack stands things whose height depends on their width over each other. Fyne
// asks for a smallest size before it gives a width, so the stack says when the
// height it gave has turned out otherwise.
type stack struct {
	width, height float32
	objects       []fyne.CanvasObject
	onHeight      func()
}

// MinSize is called by Fyne.
func (s *stack) MinSize(objects []fyne.CanvasObject) fyne.Size {
	s.objects = objects
	return fyne.NewSize(0, s.height)
}

// Layout is called by Fyne.
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
		y += h
	}
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
	// Text that wraps knows its height once it has its width.
	o.Resize(fyne.NewSize(width, o.Size().Height))
	return o.MinSize().Height
}
