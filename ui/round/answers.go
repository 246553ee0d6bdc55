package round

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/rounds"
	"ogive/ui/flow"
	"ogive/ui/look"
)

// answers are the choices of a question beside each other, equally wide, so that
// none stands out. Each shows the key that chooses it; the one that is chosen is
// filled, and ticked instead.
type answers struct {
	widget.BaseWidget
	cells []*answer
}

var _ flow.Tall = (*answers)(nil)

func newAnswers(asked rounds.Question, choose func(int)) *answers {
	a := &answers{}
	for i, c := range asked.Choices {
		cell := newAnswer(fixed(float64(i+1), 0), c.Words, func() { choose(i) })
		if asked.Of == rounds.Shape {
			cell.draw(shapeLine(c.Value))
		}
		if asked.Of == rounds.Slope {
			cell.draw(slopeLine(i))
		}
		a.cells = append(a.cells, cell)
	}
	a.ExtendBaseWidget(a)
	return a
}

// choose fills the answer at i, none if i is negative.
func (a *answers) choose(i int) {
	for n, c := range a.cells {
		if c.chosen != (n == i) {
			c.chosen = n == i
			c.Refresh()
		}
	}
}

const between = 4

// HeightAt places the answers in that width.
func (a *answers) HeightAt(width float32) float32 {
	n := float32(len(a.cells))
	each := (width - between*(n-1)) / n
	high := float32(0)
	for _, c := range a.cells {
		high = max(high, c.MinSize().Height)
	}
	for i, c := range a.cells {
		flow.Put(c, float32(i)*(each+between), 0, each, high)
	}
	return high
}

// CreateRenderer is called by Fyne.
func (a *answers) CreateRenderer() fyne.WidgetRenderer { return answersRenderer{a} }

type answersRenderer struct{ a *answers }

func (r answersRenderer) MinSize() fyne.Size {
	return fyne.NewSize(120, r.a.HeightAt(max(120, r.a.Size().Width)))
}
func (r answersRenderer) Layout(size fyne.Size) { r.a.HeightAt(size.Width) }
func (r answersRenderer) Destroy()              {}
func (r answersRenderer) Refresh() {
	for _, c := range r.a.cells {
		c.Refresh()
	}
}

func (r answersRenderer) Objects() []fyne.CanvasObject {
	var out []fyne.CanvasObject
	for _, c := range r.a.cells {
		out = append(out, c)
	}
	return out
}

// answer is one of the answers.
type answer struct {
	widget.BaseWidget
	key             string
	do              func()
	chosen, hovered bool

	ground      *canvas.Rectangle
	mark, words *canvas.Text
	drawing     []fyne.Position // a line within a unit square, nil for none
	strokes     []fyne.CanvasObject
}

var (
	_ fyne.Tappable      = (*answer)(nil)
	_ desktop.Hoverable  = (*answer)(nil)
	_ desktop.Cursorable = (*answer)(nil)
)

func newAnswer(key, words string, do func()) *answer {
	a := &answer{key: key, do: do, ground: canvas.NewRectangle(nil), mark: canvas.NewText("", nil), words: canvas.NewText(words, nil)}
	a.words.Alignment = fyne.TextAlignCenter
	a.ExtendBaseWidget(a)
	a.colour()
	return a
}

// draw puts a drawing over the words.
func (a *answer) draw(line []fyne.Position) {
	a.drawing = line
	for range max(0, len(line)-1) {
		a.strokes = append(a.strokes, canvas.NewLine(nil))
	}
	a.colour()
}

func (a *answer) colour() {
	ink, edge, fill := look.Colour(theme.ColorNameForeground), look.Colour(look.Hairline), look.Colour(theme.ColorNameBackground)
	a.mark.Text = a.key
	switch {
	case a.chosen:
		ink, fill, edge = look.Colour(theme.ColorNameForegroundOnPrimary), look.Colour(look.Accent), look.Colour(look.Accent)
		a.mark.Text = "✓"
	case a.hovered:
		edge = look.Colour(look.Accent)
	}
	a.ground.CornerRadius, a.ground.StrokeWidth = look.Size(theme.SizeNameInputRadius), 1
	a.ground.FillColor, a.ground.StrokeColor = fill, edge
	a.mark.Color, a.mark.TextSize = ink, look.Size(theme.SizeNameCaptionText)
	a.mark.TextStyle.Bold = a.chosen
	a.words.Color, a.words.TextSize, a.words.TextStyle.Bold = ink, look.Size(theme.SizeNameText), a.chosen
	a.paintStrokes(ink)
}

func (a *answer) paintStrokes(ink color.Color) {
	for _, o := range a.strokes {
		l := o.(*canvas.Line)
		l.StrokeColor, l.StrokeWidth = ink, 2
	}
}

const (
	sketchWidth, sketchHeight = 30, 28
	answerHeight              = 43
)

// Tapped gives the answer.
func (a *answer) Tapped(*fyne.PointEvent) { a.do() }

// MouseIn shows that it can be chosen.
func (a *answer) MouseIn(*desktop.MouseEvent) { a.hovered = true; a.Refresh() }

// MouseMoved does nothing.
func (a *answer) MouseMoved(*desktop.MouseEvent) {}

// MouseOut is called by Fyne.
func (a *answer) MouseOut() { a.hovered = false; a.Refresh() }

// Cursor is the hand that says: click.
func (a *answer) Cursor() desktop.Cursor { return desktop.PointerCursor }

// CreateRenderer is called by Fyne.
func (a *answer) CreateRenderer() fyne.WidgetRenderer { return answerRenderer{a} }

type answerRenderer struct{ a *answer }

func (r answerRenderer) MinSize() fyne.Size {
	high := float32(answerHeight)
	if r.a.drawing != nil {
		high += sketchHeight - 12
	}
	return fyne.NewSize(40, high)
}

func (r answerRenderer) Layout(size fyne.Size) {
	a := r.a
	a.ground.Resize(size)
	flow.Put(a.mark, 7, 3, a.mark.MinSize().Width, a.mark.MinSize().Height)
	h := a.words.MinSize().Height
	flow.Put(a.words, 0, size.Height-h-6, size.Width, h)
	left := size.Width/2 - sketchWidth/2
	for i, o := range a.strokes {
		l := o.(*canvas.Line)
		l.Position1, l.Position2 = within(a.drawing[i], left), within(a.drawing[i+1], left)
	}
}

// within is a place of the unit square on the answer.
func within(p fyne.Position, left float32) fyne.Position {
	return fyne.NewPos(left+p.X*sketchWidth, 7+p.Y*sketchHeight)
}

func (r answerRenderer) Refresh() {
	r.a.colour()
	r.Layout(r.a.Size())
	for _, o := range r.Objects() {
		canvas.Refresh(o)
	}
}

func (r answerRenderer) Objects() []fyne.CanvasObject {
	return append([]fyne.CanvasObject{r.a.ground, r.a.mark, r.a.words}, r.a.strokes...)
}

func (r answerRenderer) Destroy() {}
