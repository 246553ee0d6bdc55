package planfamily

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// wheel lies unseen over a field and hands the mouse's wheel to the page. An entry
// of wrapped lines keeps the wheel to itself, even where it has nothing to scroll;
// clicks and keys go through to it, since a wheel takes neither.
type wheel struct {
	widget.BaseWidget
	page fyne.CanvasObject
}

var _ fyne.Scrollable = (*wheel)(nil)

func newWheel(page fyne.CanvasObject) *wheel {
	w := &wheel{page: page}
	w.ExtendBaseWidget(w)
	return w
}

// Scrolled turns the page.
func (w *wheel) Scrolled(e *fyne.ScrollEvent) {
	if s, ok := w.page.(fyne.Scrollable); ok {
		s.Scrolled(e)
	}
}

// CreateRenderer is called by Fyne.
func (w *wheel) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(container.NewWithoutLayout())
}
