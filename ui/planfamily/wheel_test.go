package planfamily

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"

	"ogive/imaging/family"
)

func TestTheWheelOverATextTurnsThePage(t *testing.T) {
	r := show(t)
	r.win.Resize(fyne.NewSize(340, 300))
	page, ok := r.Object().(*container.Scroll)
	if !ok {
		t.Fatalf("the page is a %T", r.Object())
	}
	w := r.point(family.Opening).wheel
	if w.Size() != r.point(family.Opening).field.Size() {
		t.Errorf("the wheel covers %v of %v", w.Size(), r.point(family.Opening).field.Size())
	}
	w.Scrolled(&fyne.ScrollEvent{Scrolled: fyne.NewDelta(0, -40)})
	if page.Offset.Y <= 0 {
		t.Errorf("the page stands at %v", page.Offset)
	}
	var over fyne.CanvasObject = w
	if _, takes := over.(fyne.Tappable); takes {
		t.Error("clicks don't reach the text")
	}
	if _, takes := over.(desktop.Mouseable); takes {
		t.Error("the pointer doesn't reach the text")
	}
}
