package round

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/plane"
)

// keyboard lies under everything and has the keys while no text is typed and no
// button is walked to, so that a digit answers and Enter goes on wherever the
// pointer is.
type keyboard struct {
	widget.BaseWidget
	room  *Room
	shift bool
	enter held
}

// held is the Enter key. One that is held down is reported again and again, and
// would run past the truth of a picture.
type held struct{ down, told bool }

// fresh reports whether this is a press of its own.
func (h *held) fresh() bool {
	again := h.down && h.told
	h.told = true
	return !again
}

var (
	_ fyne.Tabbable     = (*keyboard)(nil)
	_ fyne.Shortcutable = (*keyboard)(nil)
	_ desktop.Keyable   = (*keyboard)(nil)
)

func newKeyboard(r *Room) *keyboard {
	k := &keyboard{room: r}
	k.ExtendBaseWidget(k)
	return k
}

// take gives the keys to the room, if it is in the window.
func (k *keyboard) take() {
	if c := k.room.win.Canvas(); k.room.shown() && c.Overlays().Top() == nil {
		c.Focus(k)
	}
}

// CreateRenderer is called by Fyne; there is nothing to see.
func (k *keyboard) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(&fyne.Container{})
}

// AcceptsTab is true where Tab walks questions or points instead of buttons.
func (k *keyboard) AcceptsTab() bool { return k.room.page == judging || k.room.page == placing }

// FocusGained is called by Fyne.
func (k *keyboard) FocusGained() {}

// FocusLost takes the keys back if nothing else has them: a click beside the
// buttons gives them to nobody.
func (k *keyboard) FocusLost() {
	k.shift = false
	k.room.soon(func() {
		c := k.room.win.Canvas()
		if c.Focused() == nil {
			k.take()
		}
	})
}

// Tapped takes the keys.
func (k *keyboard) Tapped(*fyne.PointEvent) { k.take() }

// KeyDown is called by Fyne.
func (k *keyboard) KeyDown(e *fyne.KeyEvent) { k.press(e.Name, true) }

// KeyUp is called by Fyne.
func (k *keyboard) KeyUp(e *fyne.KeyEvent) { k.press(e.Name, false) }

func (k *keyboard) press(name fyne.KeyName, down bool) {
	switch name {
	case desktop.KeyShiftLeft, desktop.KeyShiftRight:
		k.shift = down
	case fyne.KeyReturn, fyne.KeyEnter:
		k.enter = held{down: down}
	}
}

const (
	closer = 1.25 // one press of + magnifies so many times
	stride = 10   // pixels that an arrow moves a point with shift
)

// TypedKey is called by Fyne.
func (k *keyboard) TypedKey(e *fyne.KeyEvent) {
	enter := e.Name == fyne.KeyReturn || e.Name == fyne.KeyEnter
	if enter && !k.enter.fresh() {
		return
	}
	switch t := k.room.table; k.room.page {
	case starting:
		if enter {
			k.room.start.begin()
		}
	case judging:
		k.judge(e.Name, enter)
	case placing:
		k.mark(e.Name, enter)
	case telling:
		if enter || e.Name == fyne.KeySpace {
			k.room.next()
		}
		if e.Name == fyne.KeyDown {
			t.told.scroll(1)
		}
		if e.Name == fyne.KeyUp {
			t.told.scroll(-1)
		}
	case concluding:
		k.room.result.key(e.Name, enter)
	}
}

func (k *keyboard) judge(name fyne.KeyName, enter bool) {
	q := k.room.table.judging
	by, arrow := k.arrow(name)
	switch {
	case enter:
		q.enter()
	case name == fyne.KeyTab && k.shift:
		q.walk(-1)
	case name == fyne.KeyTab:
		q.walk(1)
	case arrow && q.wantsCrown() && k.room.taking.crown != nil:
		q.nudge(by)
	case name == fyne.KeyDown:
		q.walk(1)
	case name == fyne.KeyUp:
		q.walk(-1)
	}
}

func (k *keyboard) mark(name fyne.KeyName, enter bool) {
	m := k.room.table.marking
	by, arrow := k.arrow(name)
	switch {
	case enter:
		m.enter()
	case arrow:
		m.nudge(by)
	case name == fyne.KeyTab && k.shift:
		m.walk(-1)
	case name == fyne.KeyTab:
		m.walk(1)
	case name == fyne.KeyBackspace:
		m.takeBack()
	case name == fyne.KeyDelete:
		m.removeSelected()
	case name == fyne.KeyEscape:
		m.escape()
	}
}

// arrow is how far an arrow key moves a point.
func (k *keyboard) arrow(name fyne.KeyName) (plane.Vector[plane.Pixel], bool) {
	step := plane.Pixel(1)
	if k.shift {
		step = stride
	}
	switch name {
	case fyne.KeyLeft:
		return plane.Vec(-step, 0), true
	case fyne.KeyRight:
		return plane.Vec(step, 0), true
	case fyne.KeyUp:
		return plane.Vec(0, -step), true
	case fyne.KeyDown:
		return plane.Vec(0, step), true
	}
	return plane.Vector[plane.Pixel]{}, false
}

// TypedRune does what a letter, a digit or a sign stands for.
func (k *keyboard) TypedRune(c rune) {
	r := k.room
	switch {
	case r.page == starting:
		r.start.typed(c)
		return
	case r.page == concluding:
		return
	case r.page == judging && c >= '1' && c <= '9':
		r.table.judging.pick(int(c - '1'))
		return
	case r.page == placing && (c == 's' || c == 'S'):
		r.table.marking.skip()
		return
	}
	switch c {
	case 'f', 'F':
		r.table.board.Fit()
	case '0':
		r.table.board.PixelForPixel()
	case '+', '=':
		r.table.board.ZoomBy(closer)
	case '-', '_':
		r.table.board.ZoomBy(1 / closer)
	}
}

// TypedShortcut undoes and redoes marks.
func (k *keyboard) TypedShortcut(s fyne.Shortcut) {
	if k.room.page != placing {
		return
	}
	switch s := s.(type) {
	case *fyne.ShortcutUndo:
		k.room.table.marking.undo()
	case *fyne.ShortcutRedo:
		k.room.table.marking.redo()
	case *desktop.CustomShortcut:
		if s.KeyName == fyne.KeyZ && s.Modifier == fyne.KeyModifierShortcutDefault|fyne.KeyModifierShift {
			k.room.table.marking.redo()
		}
	}
}
