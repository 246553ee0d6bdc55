package cases

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/hand"
	"ogive/ui/drawing"
	"ogive/ui/flow"
	"ogive/ui/label"
	"ogive/ui/look"
	"ogive/ui/plate"
)

var (
	sides = []hand.Side{hand.Left, hand.Right}
	views = []hand.View{hand.Dorsal, hand.Palmar, hand.WebView}
)

// asking asks in plain sight which hand photographs show and from where. One
// answer may serve many photographs; nothing is assumed.
type asking struct {
	room   *Room
	panel  *fyne.Container
	thumbs map[int64]*thumb
	order  []int64
	row    *fyne.Container
	scroll *container.Scroll
	count  *widget.Label
	all    *widget.Button
	tiles  []*tile
}

func newAsking(r *Room) *asking {
	a := &asking{room: r, thumbs: map[int64]*thumb{}, row: container.NewHBox(), count: label.Caption("")}
	a.scroll = container.NewHScroll(container.New(layout.NewCustomPaddedLayout(3, 14, 3, 3), a.row))
	a.all = quiet(lang.L("Choose all"), a.chooseAll)
	answers := container.NewGridWithRows(1)
	for _, view := range views {
		for _, side := range sides {
			t := newTile(side, view, func() { a.answer(side, view) })
			a.tiles = append(a.tiles, t)
			answers.Add(t)
		}
	}
	content := container.NewVBox(
		container.NewBorder(nil, nil, nil, a.all, heading(lang.L("Which hand is it, and from where is it seen?"))),
		a.scroll, a.count, answers)
	card := plate.New(look.Card, look.Accent, container.New(layout.NewCustomPaddedLayout(8, 12, 14, 14), content))
	a.panel = container.New(layout.NewCustomPaddedLayout(0, 16, 0, 0), card)
	a.panel.Hide()
	return a
}

// show asks for what is not said yet.
func (a *asking) show(c contents) {
	was := map[int64]bool{}
	for id, t := range a.thumbs {
		was[id] = t.chosen
	}
	a.thumbs, a.order = map[int64]*thumb{}, nil
	a.row.RemoveAll()
	chosen := false
	for _, p := range c.photographs {
		if sideOf(p) != 0 && viewOf(p) != 0 {
			continue
		}
		t := newThumb(dateText(p.Date), markedText(c.marked[p.ID]))
		t.chosen = was[p.ID]
		chosen = chosen || t.chosen
		t.onChoose = func() { t.choose(!t.chosen); a.say() }
		t.show(a.room.page.small.at(p.Hash))
		a.thumbs[p.ID], a.order = t, append(a.order, p.ID)
		a.row.Add(t)
	}
	if len(a.order) > 0 && !chosen {
		a.thumbs[a.order[0]].chosen = true
	}
	for _, t := range a.thumbs {
		t.colour()
	}
	flow.Visible(a.all, len(a.order) > 1)
	flow.Visible(a.panel, len(a.order) > 0)
	a.say()
}

// say tells how many photographs the next answer is for.
func (a *asking) say() {
	n := len(a.chosen())
	text := lang.L("The answer is for the {{.Count}} photographs with a tick.", map[string]any{"Count": n})
	switch {
	case n == 0:
		text = lang.L("Choose at least one photograph, then the drawing that shows the same.")
	case n == 1:
		text = lang.L("The answer is for the photograph with a tick; choose more to answer for all of them at once.")
	}
	if len(a.order) == 1 {
		text = lang.L("Choose the drawing that shows the same.")
	}
	a.count.SetText(text)
	for _, t := range a.tiles {
		t.disabled = n == 0 || !a.room.writable()
	}
}

func (a *asking) chosen() []int64 {
	var out []int64
	for _, id := range a.order {
		if a.thumbs[id].chosen {
			out = append(out, id)
		}
	}
	return out
}

func (a *asking) chooseAll() {
	for _, t := range a.thumbs {
		t.choose(true)
	}
	a.say()
}

func (a *asking) answer(side hand.Side, view hand.View) {
	if told := a.chosen(); len(told) > 0 && a.room.writable() {
		a.room.tell(told, side, view)
	}
}

func (a *asking) place(id int64, m image.Image) {
	if t := a.thumbs[id]; t != nil {
		t.show(m)
	}
}

// tile is an answer, drawn and in words.
type tile struct {
	plate.Plate
	do                func()
	disabled, focused bool
}

var (
	_ fyne.Tappable      = (*tile)(nil)
	_ fyne.Focusable     = (*tile)(nil)
	_ desktop.Hoverable  = (*tile)(nil)
	_ desktop.Cursorable = (*tile)(nil)
)

func newTile(side hand.Side, view hand.View, do func()) *tile {
	picture := drawing.New(map[hand.View]drawing.Name{hand.Dorsal: drawing.Back, hand.Palmar: drawing.Palm, hand.WebView: drawing.Web}[view], fyne.NewSize(64, 72))
	// Fingers up, the thumb of a right hand lies at the left on the back and at
	// the right on the palm.
	picture.Mirrored = (side == hand.Left) == (view == hand.Dorsal)
	name, detail := lang.L("Right"), map[hand.View]string{hand.Dorsal: lang.L("back"), hand.Palmar: lang.L("palm"), hand.WebView: lang.L("into the web")}[view]
	if side == hand.Left {
		name = lang.L("Left")
	}
	first := widget.NewLabelWithStyle(name, fyne.TextAlignCenter, fyne.TextStyle{Bold: true})
	second := widget.NewLabelWithStyle(detail, fyne.TextAlignCenter, fyne.TextStyle{})
	second.SizeName = theme.SizeNameCaptionText
	content := container.New(layout.NewCustomPaddedVBoxLayout(-4), picture, closely(first, second))
	t := &tile{Plate: plate.Plate{Ground: theme.ColorNameBackground, Edge: look.Hairline, Corner: look.Size(theme.SizeNameInputRadius), Content: container.New(layout.NewCustomPaddedLayout(6, 0, 0, 0), content)}, do: do}
	t.ExtendBaseWidget(t)
	return t
}

// Tapped gives the answer.
func (t *tile) Tapped(*fyne.PointEvent) {
	if !t.disabled {
		t.do()
	}
}

// FocusGained shows that keys go here.
func (t *tile) FocusGained() { t.focused = true; t.frame(look.Accent) }

// FocusLost is called by Fyne.
func (t *tile) FocusLost() { t.focused = false; t.frame(look.Hairline) }

// TypedRune does nothing.
func (t *tile) TypedRune(rune) {}

// TypedKey gives the answer with Space or Enter.
func (t *tile) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeySpace, fyne.KeyReturn, fyne.KeyEnter:
		t.Tapped(nil)
	}
}

// Cursor is the hand that says: click.
func (t *tile) Cursor() desktop.Cursor { return desktop.PointerCursor }

// MouseIn shows that the tile can be clicked.
func (t *tile) MouseIn(*desktop.MouseEvent) { t.frame(look.Accent) }

// MouseMoved does nothing.
func (t *tile) MouseMoved(*desktop.MouseEvent) {}

// MouseOut is called by Fyne.
func (t *tile) MouseOut() {
	if !t.focused {
		t.frame(look.Hairline)
	}
}

func (t *tile) frame(edge fyne.ThemeColorName) {
	t.Edge = edge
	t.Refresh()
}
