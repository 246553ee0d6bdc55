// Package flow lays out things whose height depends on their width, such as
// wrapped text, pictures in rows and buttons that go on in the next line.
//
//	stack := &flow.Stack{}
//	page := container.New(stack, heading, wrapped, row)
//	scroll := container.NewVScroll(page)
//	stack.OnHeight = func() { page.Refresh(); scroll.Refresh() }
//
// Fyne asks for a smallest size before it gives a width, so a Stack says when
// the height it gave has turned out otherwise.
package flow

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"ogive/ui/look"
)

// Tall is a thing whose height depends on its width. HeightAt places what it
// holds for that width.
type Tall interface{ HeightAt(width float32) float32 }

// HeightAt is how high a thing is at a width; it is left with that width.
func HeightAt(o fyne.CanvasObject, width float32) float32 {
	if t, ok := o.(Tall); ok {
		return t.HeightAt(width)
	}
	// Text that wraps knows its height once it has its width.
	o.Resize(fyne.NewSize(width, o.Size().Height))
	return o.MinSize().Height
}

// Put gives a thing its place and size.
func Put(o fyne.CanvasObject, x, y, w, h float32) {
	o.Move(fyne.NewPos(x, y))
	o.Resize(fyne.NewSize(w, h))
}

// Stack is a layout that stands things over each other in the width it is given,
// less what a scroll bar needs.
type Stack struct {
	// Gap is left between things.
	Gap float32
	// OnHeight is called when the height has changed.
	OnHeight func()

	width, height float32
	objects       []fyne.CanvasObject
}

// MinSize is called by Fyne.
func (s *Stack) MinSize(objects []fyne.CanvasObject) fyne.Size {
	s.objects = objects
	return fyne.NewSize(0, s.height)
}

// Layout is called by Fyne.
func (s *Stack) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	s.objects = objects
	s.width = size.Width - look.Size(theme.SizeNameScrollBarSmall) - 3
	s.place()
}

// Arrange places everything anew after something has changed its height.
func (s *Stack) Arrange() {
	if s.width > 0 {
		s.place()
	}
}

func (s *Stack) place() {
	y := float32(0)
	for _, o := range s.objects {
		if !o.Visible() {
			continue
		}
		h := HeightAt(o, s.width)
		Put(o, 0, y, s.width, h)
		y += h + s.Gap
	}
	y = max(y-s.Gap, 0)
	if y != s.height {
		s.height = y
		s.OnHeight()
	}
}
