package plan

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/plane"
)

// keyboard lies under everything and has the keys while no text is typed, so that
// Tab walks the handles instead of the buttons.
type keyboard struct {
	widget.BaseWidget
	room  *Room
	shift bool
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

// take gives the keys to the photograph, if the room is in the window.
func (k *keyboard) take() {
	if c := k.room.win.Canvas(); c.Overlays().Top() == nil {
		c.Focus(k)
	}
}

// CreateRenderer is called by Fyne; there is nothing to see.
func (k *keyboard) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(&fyne.Container{})
}

// AcceptsTab is true: Tab walks the handles.
func (k *keyboard) AcceptsTab() bool { return true }

// FocusGained is called by Fyne.
func (k *keyboard) FocusGained() {}

// FocusLost takes the keys back if nothing else has them.
func (k *keyboard) FocusLost() {
	k.shift = false
	k.room.do(func() {
		if c := k.room.win.Canvas(); c.Focused() == nil && k.room.root.Visible() {
			k.take()
		}
	})
}

// Tapped takes the keys.
func (k *keyboard) Tapped(*fyne.PointEvent) { k.take() }

// KeyDown is called by Fyne.
func (k *keyboard) KeyDown(e *fyne.KeyEvent) { k.hold(e.Name, true) }

// KeyUp is called by Fyne.
func (k *keyboard) KeyUp(e *fyne.KeyEvent) { k.hold(e.Name, false) }

func (k *keyboard) hold(name fyne.KeyName, down bool) {
	if name == desktop.KeyShiftLeft || name == desktop.KeyShiftRight {
		k.shift = down
	}
}

const (
	closer = 1.25 // one press of + magnifies so many times
	stride = 10   // pixels that an arrow moves a handle with shift
)

// TypedKey is called by Fyne.
func (k *keyboard) TypedKey(e *fyne.KeyEvent) {
	r, step, way := k.room, plane.Pixel(1), 1
	if k.shift {
		step, way = stride, -1
	}
	switch e.Name {
	case fyne.KeyLeft:
		r.nudge(plane.Vec(-step, 0))
	case fyne.KeyRight:
		r.nudge(plane.Vec(step, 0))
	case fyne.KeyUp:
		r.nudge(plane.Vec(0, -step))
	case fyne.KeyDown:
		r.nudge(plane.Vec(0, step))
	case fyne.KeyTab:
		r.walk(way)
	case fyne.KeyDelete, fyne.KeyBackspace:
		r.removeSelected()
	case fyne.KeyEscape:
		r.choose("")
	}
}

// TypedRune does what a letter, a digit or a sign stands for.
func (k *keyboard) TypedRune(c rune) {
	b := k.room.plate
	switch c {
	case 'f', 'F':
		b.Fit()
	case '1', '0':
		b.PixelForPixel()
	case '+', '=':
		b.ZoomBy(closer)
	case '-', '_':
		b.ZoomBy(1 / closer)
	}
}

// TypedShortcut undoes and redoes.
func (k *keyboard) TypedShortcut(s fyne.Shortcut) {
	switch s := s.(type) {
	case *fyne.ShortcutUndo:
		k.room.Undo()
	case *fyne.ShortcutRedo:
		k.room.Redo()
	case *desktop.CustomShortcut:
		if s.KeyName == fyne.KeyZ && s.Modifier == fyne.KeyModifierShortcutDefault|fyne.KeyModifierShift {
			k.room.Redo()
		}
	}
}
