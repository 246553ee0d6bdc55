package window

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/hand"
	"ogive/ui/drawing"
	"ogive/ui/look"
	"ogive/ui/marking"
)

// asking is the panel that asks once which hand a photograph shows and from
// where: a swapped side is the worst mistake, so nothing is assumed.
type asking struct {
	panel   *shield
	onLater func()
	tiles   []*tile
}

// shows is one answer: a hand from one direction.
type shows struct {
	side hand.Side
	view hand.View
}

func newAsking(told func(hand.Side, hand.View)) *asking {
	a := &asking{}
	later := widget.NewButton(lang.L("Look at the photograph first"), func() { a.onLater() })
	later.Importance = widget.LowImportance
	row := container.NewGridWithRows(1)
	for _, view := range views {
		for _, side := range sides {
			t := newTile(shows{side, view}, func() { told(side, view) })
			a.tiles = append(a.tiles, t)
			row.Add(t)
		}
	}
	rows := container.NewVBox(container.NewBorder(nil, nil, nil, later, heading(lang.L("Which hand is it, and from where is it seen?"))), row)
	a.panel = newShield(look.Card, look.Hairline, container.NewPadded(container.NewPadded(rows)))
	a.panel.Hide()
	return a
}

func heading(text string) *widget.Label {
	l := widget.NewLabelWithStyle(text, fyne.TextAlignLeading, fyne.TextStyle{Bold: true})
	l.SizeName = theme.SizeNameSubHeadingText
	return l
}

// tile is an answer, drawn and in words.
type tile struct {
	plate
	do func()
}

func newTile(s shows, do func()) *tile {
	picture := drawing.New(pictureOf(s.view), fyne.NewSize(88, 88))
	// Fingers up, the thumb of a right hand lies at the left on the back and at
	// the right on the palm.
	picture.Mirrored = (s.side == hand.Left) == (s.view == hand.Dorsal)
	name, detail := tileWords(s)
	first := widget.NewLabelWithStyle(name, fyne.TextAlignCenter, fyne.TextStyle{Bold: true})
	second := widget.NewLabelWithStyle(detail, fyne.TextAlignCenter, fyne.TextStyle{})
	second.SizeName = theme.SizeNameCaptionText
	content := container.New(layout.NewCustomPaddedVBoxLayout(-10), picture, layout.NewSpacer(), first, second)
	t := &tile{plate: plate{ground: theme.ColorNameBackground, edge: look.Hairline, corner: 6, content: container.New(layout.NewCustomPaddedLayout(6, 0, 0, 0), content)}, do: do}
	t.ExtendBaseWidget(t)
	return t
}

func pictureOf(v hand.View) drawing.Name {
	switch v {
	case hand.Dorsal:
		return drawing.Back
	case hand.Palmar:
		return drawing.Palm
	}
	return drawing.Web
}

func tileWords(s shows) (name, detail string) {
	name = lang.L("Right")
	if s.side == hand.Left {
		name = lang.L("Left")
	}
	switch s.view {
	case hand.Dorsal:
		return name, lang.L("back")
	case hand.Palmar:
		return name, lang.L("palm")
	}
	return name, lang.L("into the web")
}

// Tapped gives the answer.
func (t *tile) Tapped(*fyne.PointEvent) { t.do() }

// Cursor is the hand that says: click.
func (t *tile) Cursor() desktop.Cursor { return desktop.PointerCursor }

// MouseIn shows that the tile can be clicked.
func (t *tile) MouseIn(*desktop.MouseEvent) { t.frame(look.Accent) }

// MouseMoved does nothing.
func (t *tile) MouseMoved(*desktop.MouseEvent) {}

// MouseOut is called by Fyne.
func (t *tile) MouseOut() { t.frame(look.Hairline) }

func (t *tile) frame(edge fyne.ThemeColorName) {
	t.edge = edge
	t.Refresh()
}

// askLater puts the question which hand it is aside, or asks it again.
func (w *Window) askLater(later bool) {
	w.asked = later
	w.refresh()
	w.keyboard.take()
}

// askWhatIsMissing shows the panel for what only the user can say.
func (w *Window) askWhatIsMissing(s marking.State) {
	show(w.asking.panel, s.Side == 0 && !w.asked)
	if s.Side == 0 && w.asked {
		w.notices.show(notice{about: aboutHand, lasting: true, text: lang.L("No point is placed before it is said which hand this is."),
			choices: []choiceOf{{lang.L("Which hand is it?"), func() { w.askLater(false) }}}})
	} else {
		w.notices.close(aboutHand)
	}
	w.askLength(s, s.Side != 0 && s.LacksLength())
	w.panels.Refresh()
}

func show(o fyne.CanvasObject, on bool) {
	if on {
		o.Show()
	} else {
		o.Hide()
	}
}
