package column

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"

	"ogive/ui/flow"
	"ogive/ui/look"
)

// Figure is a figure with its name at the left, and what is to be said of it
// below.
type Figure struct {
	Block
	name, note *Text
	value      *canvas.Text
	rule       *canvas.Line
	main       bool
}

// NewFigure is a figure without a value.
func NewFigure(name string) *Figure { return newFigure(name, false) }

// NewMainFigure is the figure that a section comes to: large, under a rule.
func NewMainFigure(name string) *Figure { return newFigure(name, true) }

func newFigure(name string, main bool) *Figure {
	f := &Figure{name: Body(name), note: Remark(""), value: canvas.NewText("", nil), rule: canvas.NewLine(nil), main: main}
	f.name.below, f.note.below = 0, 0
	f.name.words.Style.TextStyle.Bold = main
	f.value.TextStyle.Bold, f.value.Alignment = true, fyne.TextAlignTrailing
	f.rule.Hidden = !main
	f.begin(f, f.stand, f.paint, f.rule, f.name, f.value, f.note)
	return f
}

// Name changes the name.
func (f *Figure) Name(name string) { f.name.Set(name) }

// Set changes the value, which comes with its interval, and the note.
func (f *Figure) Set(value, note string) {
	f.value.Text = value
	f.note.Set(note)
	f.Refresh()
}

// Value is the value as it is shown.
func (f *Figure) Value() string { return f.value.Text }

// Note is the note as it is shown.
func (f *Figure) Note() string { return f.note.Words() }

func (f *Figure) paint() {
	f.value.Color, f.value.TextSize = look.Colour(theme.ColorNameForeground), look.Size(theme.SizeNameText)
	if f.main {
		f.value.TextSize = look.Size(look.FigureText)
	}
	f.rule.StrokeColor, f.rule.StrokeWidth = look.Colour(look.SecondInk), 1
}

func (f *Figure) stand(width float32) float32 {
	const gap, below = 12, 7
	y := float32(0)
	if f.main {
		f.rule.Position1, f.rule.Position2 = fyne.NewPos(0, 3), fyne.NewPos(width, 3)
		y = 11
	}
	value := f.value.MinSize()
	room := width - value.Width - gap
	h := f.name.HeightAt(room)
	lift := float32(0)
	if f.main {
		lift = max(0, (value.Height-h)/2)
	}
	flow.Put(f.name, 0, y+lift, room, h)
	flow.Put(f.value, 0, y, width, value.Height)
	y += max(h+lift, value.Height)
	if f.note.Visible() {
		h = f.note.HeightAt(width)
		flow.Put(f.note, 0, y+2, width, h)
		y += h + 2
	}
	return y + below
}
