package round

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/rounds"
	"ogive/ui/look"
)

// tile is a kind of round as a large choice.
type tile struct {
	card
	kind rounds.Kind
	name *widget.Label
	do   func()

	text                     string
	chosen, hovered, focused bool
}

var (
	_ fyne.Tappable      = (*tile)(nil)
	_ fyne.Focusable     = (*tile)(nil)
	_ desktop.Hoverable  = (*tile)(nil)
	_ desktop.Cursorable = (*tile)(nil)
)

func newTile(k rounds.Kind, do func()) *tile {
	t := &tile{kind: k, do: do, text: lang.L("Judge by eye"), name: strong("")}
	words, key := lang.L("Look at a picture and say: too deep, too wide, which shape, how steep; and where you would put the crown. About a minute a picture."), "1"
	if k == rounds.Blind {
		t.text, key = lang.L("Mark blind"), "2"
		words = lang.L("Mark ruler, joints and webs as on a photograph, without seeing a figure. It also tells how widely your clicks scatter. About three minutes a picture.")
	}
	t.text = withKey(t.text, key)
	t.name.SizeName = theme.SizeNameSubHeadingText
	t.build([]fyne.CanvasObject{t.name, wrapped(words)})
	t.gap = -8
	t.ExtendBaseWidget(t)
	t.choose(false)
	return t
}

func (t *tile) choose(on bool) {
	t.chosen = on
	if on {
		t.name.SetText("✓ " + t.text)
	} else {
		t.name.SetText(t.text)
	}
	t.frame()
}

func (t *tile) frame() {
	switch {
	case t.focused:
		t.mark(theme.ColorNameForeground, 3)
	case t.chosen:
		t.mark(look.Accent, 3)
	case t.hovered:
		t.mark(look.Accent, 1)
	default:
		t.mark(look.Hairline, 1)
	}
}

// Tapped chooses the kind.
func (t *tile) Tapped(*fyne.PointEvent) { t.do() }

// FocusGained shows that keys go here.
func (t *tile) FocusGained() { t.focused = true; t.frame() }

// FocusLost is called by Fyne.
func (t *tile) FocusLost() { t.focused = false; t.frame() }

// TypedRune does nothing.
func (t *tile) TypedRune(rune) {}

// TypedKey chooses with Space or Enter.
func (t *tile) TypedKey(e *fyne.KeyEvent) {
	if e.Name == fyne.KeySpace || e.Name == fyne.KeyReturn || e.Name == fyne.KeyEnter {
		t.do()
	}
}

// MouseIn shows that it can be chosen.
func (t *tile) MouseIn(*desktop.MouseEvent) { t.hovered = true; t.frame() }

// MouseMoved does nothing.
func (t *tile) MouseMoved(*desktop.MouseEvent) {}

// MouseOut is called by Fyne.
func (t *tile) MouseOut() { t.hovered = false; t.frame() }

// Cursor is the hand that says: click.
func (t *tile) Cursor() desktop.Cursor { return desktop.PointerCursor }
