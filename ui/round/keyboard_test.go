package round

import (
	"testing"

	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
)

func TestTheRoomTakesTheKeysOnceItStandsInTheWindowAndNotBefore(t *testing.T) {
	test.NewTempApp(t)
	r := New(test.NewTempWindow(t, nil))
	if r.shown() {
		t.Error("a room that was only made takes the keys")
	}
	s := newScene(t, t.TempDir(), theme.VariantLight, small())
	if s.win.Canvas().Focused() != s.keyboard {
		t.Errorf("the keys go to %T", s.win.Canvas().Focused())
	}
}
