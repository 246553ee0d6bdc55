package window

import (
	"testing"

	"fyne.io/fyne/v2"
)

func TestAPageThatIsOnlyReadIsClosedByAKey(t *testing.T) {
	s := newScene(t)
	for name, show := range map[string]func(){"how to photograph": s.showHow, "keys": s.showKeys, "about": s.showAbout, "preferences": s.showPreferences} {
		for _, key := range []fyne.KeyName{fyne.KeyEscape, fyne.KeyReturn} {
			show()
			if !s.covered() {
				t.Fatalf("%s is not shown", name)
			}
			s.key(&fyne.KeyEvent{Name: key})
			s.drain()
			if s.covered() {
				t.Errorf("%s closes %s not", key, name)
			}
		}
	}
}
