// Package column holds what columns beside a photograph are made of: a page that
// scrolls, headings and remarks, notices, figures, fields, rows of buttons.
//
//	page := column.NewPage()
//	remains := column.NewFigure(lang.L("Remains"))
//	page.Add(column.Heading(lang.L("Skin")), remains)
//	remains.Set("2.2 ± 0.4 cm²", "")
//	page.Arrange() // after anything has changed its height
//	page.Object()
//
// Everything here takes the width that it is given and finds its height.
package column

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"ogive/ui/flow"
)

// Page stands things over each other and scrolls.
type Page struct {
	stack  *flow.Stack
	inner  *fyne.Container
	scroll *container.Scroll
}

// NewPage is an empty page.
func NewPage() *Page {
	p := &Page{stack: &flow.Stack{}}
	p.inner = container.New(p.stack)
	p.scroll = container.NewVScroll(p.inner)
	p.stack.OnHeight = func() { p.inner.Refresh(); p.scroll.Refresh() }
	return p
}

// Object is the page, as high as there is room.
func (p *Page) Object() *container.Scroll { return p.scroll }

// Add stands things below what is there.
func (p *Page) Add(objects ...fyne.CanvasObject) {
	for _, o := range objects {
		p.inner.Add(o)
	}
}

// Arrange places everything anew after something has changed its height.
func (p *Page) Arrange() { p.stack.Arrange() }

// Block is a thing made of parts that it places itself. Those made here embed
// one; others make theirs with NewBlock.
type Block struct {
	widget.BaseWidget
	parts  []fyne.CanvasObject
	place  func(width float32) float32
	colour func()
}

// NewBlock is a block of parts. Place gives each its place for a width and tells
// the height; colour, which may be nil, takes the colours of the theme in use.
func NewBlock(place func(width float32) float32, colour func(), parts ...fyne.CanvasObject) *Block {
	b := &Block{}
	b.begin(b, place, colour, parts...)
	return b
}

func (b *Block) begin(whole fyne.Widget, place func(width float32) float32, colour func(), parts ...fyne.CanvasObject) {
	if colour == nil {
		colour = func() {}
	}
	b.place, b.colour, b.parts = place, colour, parts
	colour()
	b.ExtendBaseWidget(whole)
}

// HeightAt is called by flow.
func (b *Block) HeightAt(width float32) float32 { return b.place(width) }

// CreateRenderer is called by Fyne.
func (b *Block) CreateRenderer() fyne.WidgetRenderer { return renderer{b} }

type renderer struct{ b *Block }

func (renderer) MinSize() fyne.Size             { return fyne.NewSize(160, 16) }
func (r renderer) Layout(size fyne.Size)        { r.b.place(size.Width) }
func (r renderer) Objects() []fyne.CanvasObject { return r.b.parts }
func (renderer) Destroy()                       {}
func (r renderer) Refresh() {
	r.b.colour()
	if width := r.b.Size().Width; width > 0 {
		r.b.place(width)
	}
	for _, o := range r.b.parts {
		o.Refresh()
	}
}
