package window

import (
	"os"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/lang"

	"ogive/geometry/hand"
	"ogive/imaging/phantom"
	"ogive/imaging/wording"
)

// addShortcuts adds those that stand in no menu.
func (w *Window) addShortcuts() {
	again := &desktop.CustomShortcut{KeyName: fyne.KeyZ, Modifier: fyne.KeyModifierShortcutDefault | fyne.KeyModifierShift}
	w.win.Canvas().AddShortcut(again, func(fyne.Shortcut) { w.redo() })
}

// menuState is all that the menu depends on.
type menuState struct {
	open, ready, wanted, proposed, selected bool
	undo, redo, recents, casebook           string
	side                                    hand.Side
	view                                    hand.View
}

func (w *Window) menuState() menuState {
	m := menuState{open: w.work != nil, ready: w.ready(), proposed: w.proposed(), selected: w.selected != nil, recents: strings.Join(w.recents(), "\n")}
	if w.book != nil {
		m.casebook = w.book.Folder()
	}
	if w.work != nil {
		s := w.work.State()
		m.undo, m.redo, m.side, m.view = w.work.UndoName(), w.work.RedoName(), s.Side, s.View
		_, m.wanted = w.wanted()
	}
	return m
}

// refreshMenu brings the menu to the state of the work. Building it anew takes
// long enough to be felt in a run of nudges, so it is done only if it differs.
func (w *Window) refreshMenu() {
	now := w.menuState()
	if w.win.MainMenu() != nil && now == w.menuShown {
		return
	}
	w.menuShown = now
	w.win.SetMainMenu(fyne.NewMainMenu(w.fileMenu(), w.editMenu(), w.handMenu(), w.viewMenu(), w.casebookMenu(), w.helpMenu()))
}

func (w *Window) fileMenu() *fyne.Menu {
	open := w.menuShown.open
	recent := fyne.NewMenuItem(lang.L("Open recent"), nil)
	recent.ChildMenu = fyne.NewMenu("")
	for _, path := range w.recents() {
		recent.ChildMenu.Items = append(recent.ChildMenu.Items, fyne.NewMenuItem(short(path), func() { w.Open(path) }))
	}
	recent.Disabled = len(recent.ChildMenu.Items) == 0
	examples := fyne.NewMenuItem(lang.L("Open an example"), nil)
	examples.ChildMenu = fyne.NewMenu("")
	for _, e := range phantom.Examples() {
		examples.ChildMenu.Items = append(examples.ChildMenu.Items, fyne.NewMenuItem(e.Title, func() { w.openExample(e) }))
	}
	quit := item(lang.L("Quit"), command(fyne.KeyQ), true, w.close)
	quit.IsQuit = true
	return fyne.NewMenu(lang.L("File"),
		item(lang.L("Open…"), command(fyne.KeyO), true, w.askForPhotograph), recent, examples, fyne.NewMenuItemSeparator(),
		item(lang.L("Save marked picture…"), command(fyne.KeyS), open, w.askForPicture), fyne.NewMenuItemSeparator(),
		item(lang.L("Start page"), nil, true, w.toStart), item(lang.L("Take a round"), nil, true, w.showRounds), fyne.NewMenuItemSeparator(),
		item(lang.L("Preferences…"), nil, true, w.showPreferences), fyne.NewMenuItemSeparator(), quit)
}

func (w *Window) editMenu() *fyne.Menu {
	m := w.menuShown
	return fyne.NewMenu(lang.L("Edit"),
		item(lang.L("Undo {{.Gesture}}", map[string]any{"Gesture": m.undo}), &fyne.ShortcutUndo{}, m.undo != "", func() { w.orTyping(&fyne.ShortcutUndo{}, w.undo) }),
		item(lang.L("Redo {{.Gesture}}", map[string]any{"Gesture": m.redo}), &fyne.ShortcutRedo{}, m.redo != "", func() { w.orTyping(&fyne.ShortcutRedo{}, w.redo) }),
		fyne.NewMenuItemSeparator(),
		item(lang.L("Copy figures"), &fyne.ShortcutCopy{}, true, func() { w.orTyping(&fyne.ShortcutCopy{Clipboard: w.app.Clipboard()}, w.copyFigures) }),
		fyne.NewMenuItemSeparator(),
		item(lang.L("Skip this point"), single(fyne.KeyS), m.wanted && m.side != 0, w.skip),
		item(lang.L("Take back the last point"), single(fyne.KeyBackspace), m.ready, w.takeBack),
		item(lang.L("Remove the selected point"), single(fyne.KeyDelete), m.selected, w.removeSelected),
		item(lang.L("Clear all points"), nil, m.ready, w.clearAll),
		fyne.NewMenuItemSeparator(),
		item(lang.L("Accept proposed borders"), single(fyne.KeyReturn), m.proposed, w.accept),
		item(lang.L("Refuse proposed borders"), single(fyne.KeyEscape), m.proposed, w.refuse),
	)
}

// orTyping leaves a shortcut to the field in which text is being typed.
func (w *Window) orTyping(s fyne.Shortcut, do func()) {
	if field, ok := w.win.Canvas().Focused().(fyne.Shortcutable); ok {
		field.TypedShortcut(s)
		return
	}
	do()
}

func (w *Window) handMenu() *fyne.Menu {
	menu := fyne.NewMenu(lang.L("Hand"))
	m := w.menuShown
	for n, v := range views {
		if n > 0 {
			menu.Items = append(menu.Items, fyne.NewMenuItemSeparator())
		}
		for _, s := range sides {
			i := item(wording.Photograph(s, v), nil, m.ready, func() { w.tellHand(s, v) })
			i.Checked = s == m.side && v == m.view
			menu.Items = append(menu.Items, i)
		}
	}
	menu.Items = append(menu.Items, fyne.NewMenuItemSeparator(), item(lang.L("Plan the webs…"), nil, m.ready && m.side != 0, w.planHere))
	return menu
}

func (w *Window) viewMenu() *fyne.Menu {
	open := w.menuShown.ready
	return fyne.NewMenu(lang.L("View"),
		item(lang.L("Whole photograph"), single(fyne.KeyF), open, func() { w.typed('f') }),
		item(lang.L("Pixel for pixel"), single(fyne.Key1), open, func() { w.typed('1') }),
		item(lang.L("Closer"), single(fyne.KeyPlus), open, func() { w.typed('+') }),
		item(lang.L("Farther"), single(fyne.KeyMinus), open, func() { w.typed('-') }),
		fyne.NewMenuItemSeparator(),
		item(lang.L("Normal values…"), nil, true, w.showValues),
	)
}

func (w *Window) helpMenu() *fyne.Menu {
	return fyne.NewMenu(lang.L("Help"),
		item(lang.L("How to take the photograph"), nil, true, w.showHow),
		item(lang.L("Keys"), nil, true, w.showKeys),
		fyne.NewMenuItemSeparator(),
		item(lang.L("About Ogive"), nil, true, w.showAbout),
	)
}

// short is a path with its home folder left out.
func short(path string) string {
	home, err := os.UserHomeDir()
	if err != nil {
		return path
	}
	if inside, err := filepath.Rel(home, path); err == nil && filepath.IsLocal(inside) {
		return inside
	}
	return path
}
