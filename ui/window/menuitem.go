package window

import (
	"runtime"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/lang"
)

// item is a menu item, greyed out where there is nothing to act on. Its keys
// stand behind its name: Fyne writes those of a shortcut in an ink that is a
// fifth of the text's, which nobody can read.
func item(name string, shortcut fyne.Shortcut, possible bool, do func()) *fyne.MenuItem {
	i := fyne.NewMenuItem(name, do)
	i.Shortcut, i.Disabled = shortcut, !possible
	if keys := keysOf(shortcut); keys != "" && runtime.GOOS != "darwin" {
		i.Label, i.Shortcut = withKey(name, keys), unwritten{shortcut}
	}
	return i
}

// unwritten is a shortcut that works as the one within and that Fyne's menu does
// not write out.
type unwritten struct{ fyne.Shortcut }

// command is a letter with Ctrl, or with Cmd on a Mac.
func command(key fyne.KeyName) fyne.Shortcut {
	return &desktop.CustomShortcut{KeyName: key, Modifier: fyne.KeyModifierShortcutDefault}
}

// single is a key alone, shown in the menu; the keyboard acts on it.
func single(key fyne.KeyName) fyne.Shortcut { return &desktop.CustomShortcut{KeyName: key} }

// keysOf is a shortcut in words, such as "Ctrl+Z".
func keysOf(s fyne.Shortcut) string {
	keyed, ok := s.(fyne.KeyboardShortcut)
	if !ok {
		return ""
	}
	words := ""
	for _, m := range []struct {
		is   fyne.KeyModifier
		name string
	}{{fyne.KeyModifierControl, lang.L("Ctrl")}, {fyne.KeyModifierAlt, lang.L("Alt")}, {fyne.KeyModifierShift, lang.L("Shift")}, {fyne.KeyModifierSuper, lang.L("Super")}} {
		if keyed.Mod()&m.is != 0 {
			words += m.name + "+"
		}
	}
	return words + keyName(keyed.Key())
}

func keyName(key fyne.KeyName) string {
	switch key {
	case fyne.KeyReturn:
		return lang.L("Enter")
	case fyne.KeyEscape:
		return lang.L("Esc")
	case fyne.KeyBackspace:
		return lang.L("Backspace")
	case fyne.KeyDelete:
		return lang.L("Delete")
	case fyne.KeyMinus:
		return "−"
	}
	return string(key)
}
