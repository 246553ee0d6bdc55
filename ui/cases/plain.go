package cases

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/ui/look"
)

// plate is a coloured ground under its content.
type plate struct {
	widget.BaseWidget
	ground, edge fyne.ThemeColorName // edge "" for none
	width        float32             // of the edge
	content      fyne.CanvasObject
}

func newPlate(ground, edge fyne.ThemeColorName, content fyne.CanvasObject) *plate {
	p := &plate{ground: ground, edge: edge, width: 1.5, content: content}
	p.ExtendBaseWidget(p)
	return p
}

// CreateRenderer is called by Fyne.
func (p *plate) CreateRenderer() fyne.WidgetRenderer {
	r := &plateRenderer{plate: p, ground: canvas.NewRectangle(nil)}
	r.WidgetRenderer = widget.NewSimpleRenderer(container.NewStack(r.ground, p.content))
	r.colour()
	return r
}

type plateRenderer struct {
	fyne.WidgetRenderer
	plate  *plate
	ground *canvas.Rectangle
}

func (r *plateRenderer) colour() {
	r.ground.FillColor = look.Colour(r.plate.ground)
	r.ground.CornerRadius = look.Size(theme.SizeNameInputRadius)
	r.ground.StrokeWidth = 0
	if r.plate.edge != "" {
		r.ground.StrokeColor, r.ground.StrokeWidth = look.Colour(r.plate.edge), r.plate.width
	}
}

// Refresh takes the colours of the theme anew.
func (r *plateRenderer) Refresh() {
	r.colour()
	r.WidgetRenderer.Refresh()
}

// notice is a line that says what cannot be done or what is amiss.
type notice struct {
	changed  func()
	object   *fyne.Container
	label    *widget.Label
	close    *widget.Button
	standing string // what is said while nothing else is
}

func newNotice(changed func()) *notice {
	n := &notice{label: wrapped(""), changed: changed}
	n.close = quiet(lang.L("Close"), func() { n.show("") })
	n.object = container.NewPadded(newPlate(look.Notice, "", container.NewBorder(nil, nil, nil, container.NewVBox(n.close), n.label)))
	n.object.Hide()
	return n
}

// stand says what holds as long as the casebook is open, "" for nothing.
func (n *notice) stand(text string) {
	n.standing = text
	n.show("")
}

// show says something until it is closed; "" takes it back.
func (n *notice) show(text string) {
	visible(n.close, text != "")
	if text == "" {
		text = n.standing
	}
	if n.label.Text == text {
		return
	}
	n.label.SetText(text)
	visible(n.object, text != "")
	n.changed()
}

func visible(o fyne.CanvasObject, on bool) {
	if on {
		o.Show()
	} else {
		o.Hide()
	}
}

func wrapped(text string) *widget.Label {
	l := widget.NewLabel(text)
	l.Wrapping = fyne.TextWrapWord
	return l
}

func caption(text string) *widget.Label {
	l := wrapped(text)
	l.SizeName = theme.SizeNameCaptionText
	return l
}

func heading(text string) *widget.Label {
	l := widget.NewLabelWithStyle(text, fyne.TextAlignLeading, fyne.TextStyle{Bold: true})
	l.SizeName = theme.SizeNameSubHeadingText
	return l
}

func quiet(text string, do func()) *widget.Button {
	b := widget.NewButton(text, do)
	b.Importance = widget.LowImportance
	return b
}

// middle is a sentence and what can be done, in the middle of a page.
func middle(text string, buttons ...fyne.CanvasObject) *fyne.Container {
	say := wrapped(text)
	say.Alignment = fyne.TextAlignCenter
	words := container.NewVBox(container.New(fixed(420), say), container.NewCenter(container.NewHBox(buttons...)))
	return container.NewCenter(words)
}

// fixed is a layout that gives its content a width.
type fixed float32

// MinSize is called by Fyne.
func (w fixed) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var height float32
	for _, o := range objects {
		o.Resize(fyne.NewSize(float32(w), o.Size().Height))
		height = max(height, o.MinSize().Height)
	}
	return fyne.NewSize(float32(w), height)
}

// Layout is called by Fyne.
func (w fixed) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	for _, o := range objects {
		o.Resize(size)
	}
}

// close stands labels over each other without the space between paragraphs.
func closely(objects ...fyne.CanvasObject) *fyne.Container {
	return container.New(layout.NewCustomPaddedVBoxLayout(-9), objects...)
}

// nearlyWhole is a size for a dialog, as far as the window has room for it.
func (r *Room) nearlyWhole(width, height float32) fyne.Size {
	size := r.win.Canvas().Size()
	return fyne.NewSize(min(width, size.Width-40), min(height, size.Height-40))
}
