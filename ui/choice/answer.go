package choice

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/ui/flow"
	"ogive/ui/look"
)

// answer is one of the answers. Unlike a button it goes on in a second line where
// its words find no room.
type answer struct {
	widget.BaseWidget
	name string
	do   func()

	chosen, hovered, focused, disabled bool

	ground *canvas.Rectangle
	lines  []*canvas.Text
	width  float32
}

var (
	_ fyne.Tappable      = (*answer)(nil)
	_ fyne.Focusable     = (*answer)(nil)
	_ desktop.Hoverable  = (*answer)(nil)
	_ desktop.Cursorable = (*answer)(nil)
)

func newAnswer(name string, do func()) *answer {
	a := &answer{name: name, do: do, ground: canvas.NewRectangle(nil)}
	a.ExtendBaseWidget(a)
	a.colour()
	return a
}

const (
	tick = "✓ "
	side = 10 // from the edge to the words
	rim  = 8
)

// text is what stands on the answer.
func (a *answer) text() string {
	if a.chosen {
		return tick + a.name
	}
	return a.name
}

// full is the width of the answer in one line, with a tick, so that nothing moves
// when it is chosen.
func (a *answer) full() float32 { return measure(tick+a.name).Width + 2*side + 1 }

func measure(text string) fyne.Size {
	return fyne.MeasureText(text, look.Size(theme.SizeNameText), fyne.TextStyle{Bold: true})
}

// HeightAt writes the words in lines of that width.
func (a *answer) HeightAt(width float32) float32 {
	a.width = width
	words := broken(a.text(), width-2*side)
	if len(words) != len(a.lines) {
		a.lines = nil
		for range words {
			a.lines = append(a.lines, canvas.NewText("", nil))
		}
	}
	high := measure("x").Height
	for i, l := range a.lines {
		l.Text = words[i]
		l.Alignment = fyne.TextAlignLeading
		if len(words) == 1 {
			l.Alignment = fyne.TextAlignCenter
		}
		flow.Put(l, side, rim+float32(i)*high, width-2*side, high)
	}
	a.colour()
	return 2*rim + high*float32(len(words))
}

// broken is a text in lines no longer than there is room for, if its words allow.
func broken(text string, room float32) []string {
	var lines []string
	for _, w := range strings.Fields(text) {
		last := len(lines) - 1
		if last >= 0 && measure(lines[last]+" "+w).Width <= room {
			lines[last] += " " + w
			continue
		}
		lines = append(lines, w)
	}
	return lines
}

func (a *answer) colour() {
	a.ground.CornerRadius = look.Size(theme.SizeNameInputRadius)
	a.ground.FillColor, a.ground.StrokeColor, a.ground.StrokeWidth = look.Colour(look.Card), look.Colour(look.Hairline), 1
	ink := look.Colour(theme.ColorNameForeground)
	switch {
	case a.disabled && !a.chosen:
		ink, a.ground.FillColor = look.Colour(theme.ColorNameDisabled), look.Colour(theme.ColorNameBackground)
	case a.disabled:
		a.ground.StrokeColor, a.ground.StrokeWidth = look.Colour(look.SecondInk), 2
	case a.chosen:
		ink, a.ground.FillColor = look.Colour(theme.ColorNameForegroundOnPrimary), look.Colour(look.Accent)
	case a.hovered:
		a.ground.StrokeColor = look.Colour(look.Accent)
	}
	if a.focused {
		a.ground.StrokeColor, a.ground.StrokeWidth = look.Colour(theme.ColorNameForeground), 2
	}
	for _, l := range a.lines {
		l.Color, l.TextSize, l.TextStyle = ink, look.Size(theme.SizeNameText), fyne.TextStyle{Bold: a.chosen}
	}
}

func (a *answer) paint() {
	a.colour()
	a.Refresh()
}

// Tapped chooses the answer.
func (a *answer) Tapped(*fyne.PointEvent) {
	if !a.disabled {
		a.do()
	}
}

// FocusGained shows that keys go here.
func (a *answer) FocusGained() { a.focused = true; a.paint() }

// FocusLost is called by Fyne.
func (a *answer) FocusLost() { a.focused = false; a.paint() }

// TypedRune does nothing.
func (a *answer) TypedRune(rune) {}

// TypedKey chooses with Space or Enter and goes on with the arrows.
func (a *answer) TypedKey(e *fyne.KeyEvent) {
	c := fyne.CurrentApp().Driver().CanvasForObject(a)
	switch e.Name {
	case fyne.KeySpace, fyne.KeyReturn, fyne.KeyEnter:
		a.Tapped(nil)
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
func (a *answer) MouseIn(*desktop.MouseEvent) { a.hovered = true; a.paint() }

// MouseMoved does nothing.
func (a *answer) MouseMoved(*desktop.MouseEvent) {}

// MouseOut is called by Fyne.
func (a *answer) MouseOut() { a.hovered = false; a.paint() }

// Cursor is the hand that says: click.
func (a *answer) Cursor() desktop.Cursor {
	if a.disabled {
		return desktop.DefaultCursor
	}
	return desktop.PointerCursor
}

// CreateRenderer is called by Fyne.
func (a *answer) CreateRenderer() fyne.WidgetRenderer { return answerRenderer{a} }

type answerRenderer struct{ a *answer }

func (r answerRenderer) MinSize() fyne.Size {
	return fyne.NewSize(r.a.full(), 2*rim+measure("x").Height)
}

func (r answerRenderer) Layout(size fyne.Size) {
	r.a.ground.Resize(size)
	r.a.HeightAt(size.Width)
}

func (r answerRenderer) Refresh() {
	if r.a.width > 0 {
		r.a.HeightAt(r.a.width)
	}
	for _, o := range r.Objects() {
		o.Refresh()
	}
}

func (r answerRenderer) Objects() []fyne.CanvasObject {
	out := []fyne.CanvasObject{r.a.ground}
	for _, l := range r.a.lines {
		out = append(out, l)
	}
	return out
}

func (r answerRenderer) Destroy() {}
