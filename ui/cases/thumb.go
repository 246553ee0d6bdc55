package cases

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/ui/flow"
	"ogive/ui/look"
)

// thumb is a small photograph with two lines under it. It can be chosen by
// pointer and by key; a second tap at once, or Enter, opens it.
type thumb struct {
	widget.BaseWidget
	onChoose, onOpen func()

	chosen, hovered, focused bool

	ground        *canvas.Rectangle
	picture       *canvas.Image
	first, second *canvas.Text
	tick          *canvas.Text // on a chosen one, so that it is not told by colour alone
	words         [2]string
}

const (
	thumbWidth  = 148
	thumbHeight = 104 // of the picture
	thumbPad    = 6
)

var (
	_ fyne.Tappable      = (*thumb)(nil)
	_ fyne.Focusable     = (*thumb)(nil)
	_ desktop.Hoverable  = (*thumb)(nil)
	_ desktop.Cursorable = (*thumb)(nil)
)

func newThumb(first, second string) *thumb {
	t := &thumb{words: [2]string{first, second}}
	t.ground = canvas.NewRectangle(nil)
	t.picture = &canvas.Image{FillMode: canvas.ImageFillContain, ScaleMode: canvas.ImageScaleFastest}
	t.first, t.second, t.tick = canvas.NewText("", nil), canvas.NewText("", nil), canvas.NewText("✓", nil)
	t.ExtendBaseWidget(t)
	t.colour()
	return t
}

func (t *thumb) show(m image.Image) {
	if m == nil || t.picture.Image == m {
		return
	}
	t.picture.Image = m
	t.picture.Refresh()
}

func (t *thumb) choose(on bool) {
	if t.chosen != on {
		t.chosen = on
		t.Refresh()
	}
}

// Tapped chooses the photograph.
func (t *thumb) Tapped(*fyne.PointEvent) {
	if c := fyne.CurrentApp().Driver().CanvasForObject(t); c != nil {
		c.Focus(t)
	}
	t.onChoose()
}

// FocusGained shows that keys go here.
func (t *thumb) FocusGained() { t.focused = true; t.frame() }

// FocusLost is called by Fyne.
func (t *thumb) FocusLost() { t.focused = false; t.frame() }

// TypedRune does nothing.
func (t *thumb) TypedRune(rune) {}

// TypedKey chooses with Space, opens with Enter and goes on with the arrows.
func (t *thumb) TypedKey(e *fyne.KeyEvent) {
	c := fyne.CurrentApp().Driver().CanvasForObject(t)
	switch e.Name {
	case fyne.KeySpace:
		t.onChoose()
	case fyne.KeyReturn, fyne.KeyEnter:
		if t.onOpen != nil {
			t.onOpen()
		}
	case fyne.KeyRight, fyne.KeyDown:
		if c != nil {
			c.FocusNext()
		}
	case fyne.KeyLeft, fyne.KeyUp:
		if c != nil {
			c.FocusPrevious()
		}
	}
}

// MouseIn shows that it can be chosen.
func (t *thumb) MouseIn(*desktop.MouseEvent) { t.hovered = true; t.frame() }

// MouseMoved does nothing.
func (t *thumb) MouseMoved(*desktop.MouseEvent) {}

// MouseOut is called by Fyne.
func (t *thumb) MouseOut() { t.hovered = false; t.frame() }

// Cursor is the hand that says: click.
func (t *thumb) Cursor() desktop.Cursor { return desktop.PointerCursor }

func (t *thumb) frame() {
	t.colour()
	t.ground.Refresh()
}

func (t *thumb) colour() {
	t.ground.FillColor, t.ground.CornerRadius = look.Colour(look.Card), look.Size(theme.SizeNameInputRadius)
	t.ground.StrokeColor, t.ground.StrokeWidth = look.Colour(look.Hairline), 1
	switch {
	case t.chosen:
		t.ground.StrokeColor, t.ground.StrokeWidth = look.Colour(look.Accent), 3
	case t.focused:
		t.ground.StrokeColor, t.ground.StrokeWidth = look.Colour(look.Accent), 2
	case t.hovered:
		t.ground.StrokeColor, t.ground.StrokeWidth = look.Colour(look.Accent), 1
	}
	if t.focused {
		t.ground.FillColor = look.Colour(theme.ColorNameHover)
	}
	small := look.Size(theme.SizeNameCaptionText)
	for _, l := range []*canvas.Text{t.first, t.second, t.tick} {
		l.TextSize, l.Color = small, look.Colour(theme.ColorNameForeground)
	}
	t.first.TextStyle.Bold, t.tick.TextStyle.Bold = true, true
	t.second.Color, t.tick.Color = look.Colour(look.SecondInk), look.Colour(look.Accent)
	room := max(t.Size().Width, thumbWidth) - 2*thumbPad
	t.second.Text = shortened(t.words[1], room, t.second)
	if t.chosen {
		room -= 18
	}
	t.first.Text = shortened(t.words[0], room, t.first)
	flow.Visible(t.tick, t.chosen)
}

// shortened is as much of a text as there is room for.
func shortened(text string, room float32, as *canvas.Text) string {
	letters := []rune(text)
	for n := len(letters); n > 0; n-- {
		s := string(letters[:n])
		if n < len(letters) {
			s += "…"
		}
		if fyne.MeasureText(s, as.TextSize, as.TextStyle).Width <= room {
			return s
		}
	}
	return ""
}

// CreateRenderer is called by Fyne.
func (t *thumb) CreateRenderer() fyne.WidgetRenderer { return thumbRenderer{t} }

type thumbRenderer struct{ t *thumb }

// wide is the width beside the thread from which on pictures are shown larger.
const wide = 960

// sizeAmong is how large the picture is shown in a line of that width.
func (t *thumb) sizeAmong(width float32) fyne.Size {
	size := t.MinSize()
	if width >= wide {
		size = size.Add(fyne.NewSize(thumbWidth/3, thumbHeight/3))
	}
	return size
}

func (r thumbRenderer) MinSize() fyne.Size {
	return fyne.NewSize(thumbWidth, thumbHeight+3*thumbPad+2*r.t.first.MinSize().Height)
}

func (r thumbRenderer) Layout(size fyne.Size) {
	t := r.t
	t.colour()
	t.ground.Resize(size)
	inner := size.Width - 2*thumbPad
	line := t.first.MinSize().Height
	high := size.Height - 3*thumbPad - 2*line
	flow.Put(t.picture, thumbPad, thumbPad, inner, high)
	flow.Put(t.first, thumbPad+2, high+1.5*thumbPad, inner, line)
	flow.Put(t.second, thumbPad+2, high+1.5*thumbPad+line, inner, line)
	flow.Put(t.tick, size.Width-thumbPad-14, high+1.5*thumbPad, 14, line)
}

func (r thumbRenderer) Refresh() {
	r.t.colour()
	for _, o := range r.Objects() {
		o.Refresh()
	}
}

func (r thumbRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.t.ground, r.t.picture, r.t.first, r.t.second, r.t.tick}
}

func (r thumbRenderer) Destroy() {}
