package window

import (
	"testing"

	"fyne.io/fyne/v2"
)

// Fyne writes the keys of a shortcut in a fifth of the ink of other text, below
// the contrast of 4.5:1 that WCAG 2.2 (success criterion 1.4.3) asks for.
func TestKeysInMenusAreWrittenInTheInkOfOtherTextAndStillWork(t *testing.T) {
	s := newScene(t)
	s.opened()
	said := 0
	var walk func(items []*fyne.MenuItem)
	walk = func(items []*fyne.MenuItem) {
		for _, i := range items {
			if i.ChildMenu != nil {
				walk(i.ChildMenu.Items)
			}
			if i.Shortcut == nil {
				continue
			}
			said++
			if _, faint := i.Shortcut.(fyne.KeyboardShortcut); faint {
				t.Errorf("the keys of %q are left to Fyne to write", i.Label)
			}
		}
	}
	for _, m := range s.win.MainMenu().Items {
		walk(m.Items)
	}
	if said < 12 {
		t.Errorf("only %d items of the menu have keys", said)
	}
	open := item("Open…", command(fyne.KeyO), true, func() {})
	if open.Label != "Open…  (Ctrl+O)" || open.Shortcut.ShortcutName() != command(fyne.KeyO).ShortcutName() {
		t.Errorf("the item %q answers to %q", open.Label, open.Shortcut.ShortcutName())
	}
}
