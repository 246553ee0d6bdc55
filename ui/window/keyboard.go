package window

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/plane"
	"ogive/ui/photographing"
)

// keyboard lies under everything and has the keys while no text is typed, so
// that Tab walks the points instead of the buttons.
type keyboard struct {
	widget.BaseWidget
	window *Window
	shift  bool
}

func newKeyboard(w *Window) *keyboard {
	k := &keyboard{window: w}
	k.ExtendBaseWidget(k)
	return k
}

// take gives the keys to the photograph.
func (k *keyboard) take() { k.window.win.Canvas().Focus(k) }

// CreateRenderer is called by Fyne; there is nothing to see.
func (k *keyboard) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(&fyne.Container{})
}

// AcceptsTab is true: Tab walks the points.
func (k *keyboard) AcceptsTab() bool { return true }

// FocusGained is called by Fyne.
func (k *keyboard) FocusGained() {}

// FocusLost takes the keys back if nothing else has them.
func (k *keyboard) FocusLost() {
	k.shift = false
	k.window.do(func() {
		if k.window.win.Canvas().Focused() == nil {
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

// TypedKey is called by Fyne.
func (k *keyboard) TypedKey(e *fyne.KeyEvent) { k.window.key(e) }

// TypedRune is called by Fyne.
func (k *keyboard) TypedRune(r rune) { k.window.typed(r) }

const (
	closer = 1.25 // one press of + magnifies so many times
	stride = 10   // pixels that an arrow moves a point with shift
)

// key does what a key that is no letter stands for.
func (w *Window) key(e *fyne.KeyEvent) {
	if w.covered() {
		w.keyOverPage(e.Name)
		return
	}
	step := plane.Pixel(1)
	if w.keyboard.shift {
		step = stride
	}
	switch e.Name {
	case fyne.KeyLeft:
		w.nudge(plane.Vec(-step, 0))
	case fyne.KeyRight:
		w.nudge(plane.Vec(step, 0))
	case fyne.KeyUp:
		w.nudge(plane.Vec(0, -step))
	case fyne.KeyDown:
		w.nudge(plane.Vec(0, step))
	case fyne.KeyTab:
		if w.keyboard.shift {
			w.walk(-1)
		} else {
			w.walk(1)
		}
	case fyne.KeyBackspace:
		w.takeBack()
	case fyne.KeyDelete:
		w.removeSelected()
	case fyne.KeyReturn, fyne.KeyEnter:
		w.accept()
	case fyne.KeyEscape:
		w.escape()
	}
}

// keyOverPage closes the caution with Enter, and a page that is only to be read
// with Enter or Esc.
func (w *Window) keyOverPage(name fyne.KeyName) {
	enter, escape := name == fyne.KeyReturn || name == fyne.KeyEnter, name == fyne.KeyEscape
	switch {
	case w.caution != nil && enter:
		w.caution.Hide()
	case w.page != nil && (enter || escape):
		w.page.Hide()
	}
}

// open shows a page that Enter or Esc closes.
func (w *Window) open(page dialog.Dialog) {
	w.page = page
	page.SetOnClosed(func() {
		w.page = nil
		w.keyboard.take()
	})
}

func (w *Window) showHow() { w.open(photographing.Show(w.win)) }

// covered reports whether a page or a menu lies over the window: keys are not
// meant for the photograph then.
func (w *Window) covered() bool { return w.win.Canvas().Overlays().Top() != nil }

// escape refuses proposals, else lets go of the selected point, else goes back
// to the order of the steps.
func (w *Window) escape() {
	switch {
	case w.proposed():
		w.refuse()
	case w.selected != nil:
		w.deselect()
	case w.step != 0:
		w.chooseStep(0)
	}
}

// typed does what a letter, a digit or a sign stands for, wherever it lies on
// the keyboard.
func (w *Window) typed(r rune) {
	if !w.ready() || w.covered() {
		return
	}
	switch r {
	case 'f', 'F':
		w.board.Fit()
	case '1', '0':
		w.board.PixelForPixel()
	case '+', '=':
		w.board.ZoomBy(closer)
	case '-', '_':
		w.board.ZoomBy(1 / closer)
	case 's', 'S':
		w.skip()
	}
}
