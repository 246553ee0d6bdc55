package window

import (
	"context"
	"os"
	"os/user"
	"path/filepath"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/casebook"
	"ogive/imaging/casebook/example"
	"ogive/ui/appraise"
	"ogive/ui/beside"
	"ogive/ui/cases"
	"ogive/ui/timeline"
)

// Keys of the preferences.
const (
	casebooksKey = "casebooks"
	observerKey  = "observer"
)

// books is the casebook that is open, and its room.
type books struct {
	book *casebook.Casebook // nil while none is open
	// The rooms are built when they are first needed.
	cases    *cases.Room
	overTime *timeline.Room
	beside   *beside.Room
}

// askForCasebook opens a casebook in a folder chosen in a dialog; an empty
// folder becomes a new casebook.
func (w *Window) askForCasebook() {
	choose := dialog.NewFolderOpen(func(folder fyne.ListableURI, err error) {
		w.keyboard.take()
		switch {
		case err != nil:
			w.cannotOpen(plain(err))
		case folder != nil:
			w.openCasebook(folder.Path())
		}
	}, w.win)
	choose.SetTitleText(lang.L("The folder of a casebook, or an empty one for a new casebook"))
	if folder, err := storage.ListerForURI(storage.NewFileURI(w.lastFolder())); err == nil {
		choose.SetLocation(folder)
	}
	choose.Show()
	choose.Resize(w.nearlyWhole(1000, 720))
}

// openCasebook shows the casebook in folder. Another one that is open is closed
// after it could be opened.
func (w *Window) openCasebook(folder string) { w.openCasebookFor(folder, w.askObserverOnce) }

// openCasebookFor shows the casebook in folder and goes on with next.
func (w *Window) openCasebookFor(folder string, next func()) {
	if !w.putAway() {
		return
	}
	if w.book != nil && w.book.Folder() == folder {
		w.showCases()
		next()
		return
	}
	if problem := notACasebook(folder); problem != "" {
		w.cannotOpen(problem)
		return
	}
	turn := w.turn.Add(1)
	w.background(func() func() {
		book, err := casebook.Open(folder)
		return func() {
			switch {
			case err != nil:
				w.cannotOpen(plain(err))
			case w.turn.Load() != turn:
				_ = book.Close() // another thing was asked for meanwhile; nothing was written
			default:
				w.adoptCasebook(book)
				next()
			}
		}
	})
}

// notACasebook says why a folder with other things in it is not taken: photographs
// of somebody else would become part of a casebook.
func notACasebook(folder string) string {
	entries, err := os.ReadDir(folder)
	if err != nil {
		return folderOr(err, folder)
	}
	if len(entries) == 0 || casebook.Is(folder) {
		return ""
	}
	return lang.L("{{.Name}} is not a casebook and not empty; choose the folder of a casebook, or make an empty folder for a new one.", map[string]any{"Name": filepath.Base(folder)})
}

func (w *Window) adoptCasebook(book *casebook.Casebook) {
	w.closeCasebook()
	w.book = book
	if !w.inExample() {
		w.rememberCasebook(book.Folder())
	}
	if w.cases == nil {
		w.cases = cases.New(w.win)
		w.cases.OnOpen = w.openFromCase
		w.cases.OnLeave = w.leaveCasebook
		w.cases.OnOverTime = w.showOverTime
		w.cases.OnBeside = w.showBeside
		w.cases.OnPlan = w.planOn
		w.cases.Observer = w.observer
	}
	settings := w.settings
	w.cases.Figures = func(c casebook.Case, s casebook.Sitting) map[appraise.Beside]string {
		return figuresBeside(book, settings, c, s)
	}
	w.cases.Show(book)
	w.stand(w.cases.Object())
}

// showCases goes back to the casebook, where marks may have been made meanwhile.
func (w *Window) showCases() {
	if w.book == nil || !w.putAway() {
		return
	}
	w.cases.Refresh()
	w.stand(w.cases.Object())
}

func (w *Window) leaveCasebook() {
	if w.putAway() {
		w.closeCasebook()
		w.showWelcome()
	}
}

// closeCasebook lets another window write to it.
func (w *Window) closeCasebook() {
	if w.book == nil {
		return
	}
	w.cases.Finish()
	if err := w.book.Close(); err != nil {
		w.cannotOpen(plain(err))
	}
	w.book, w.reader = nil, nil
}

func (w *Window) exampleFolder() string {
	return filepath.Join(w.home, "example casebook")
}

func (w *Window) inExample() bool { return w.book != nil && w.book.Folder() == w.exampleFolder() }

// openExampleCasebook opens an invented case over three years.
func (w *Window) openExampleCasebook() { w.openExampleFor(func() {}) }

// openExampleFor opens the example casebook and goes on with next. It is made the
// first time it is asked for, in the program's own folder.
func (w *Window) openExampleFor(next func()) {
	if !w.putAway() {
		return
	}
	folder := w.exampleFolder()
	turn := w.turn.Add(1)
	say := func(share float64) {
		w.notices.show(notice{about: aboutOpening, lasting: true, text: lang.L("The example casebook is being made: {{.Percent}} per cent.", map[string]any{"Percent": int(100 * share)})})
	}
	say(0)
	w.background(func() func() {
		err := example.Make(context.Background(), folder, func(done, all int) {
			w.do(func() {
				if w.turn.Load() == turn {
					say(float64(done) / float64(max(all, 1)))
				}
			})
		})
		return func() {
			switch {
			case w.turn.Load() != turn:
			case err != nil:
				w.cannotOpen(plain(err))
			default:
				w.notices.close(aboutOpening)
				w.openCasebookFor(folder, next)
			}
		}
	})
}

// recentCasebooks are the casebooks that were opened before, the last one first.
func (w *Window) recentCasebooks() []string { return w.app.Preferences().StringList(casebooksKey) }

func (w *Window) rememberCasebook(folder string) {
	list := slices.DeleteFunc(slices.Clone(w.recentCasebooks()), func(p string) bool { return p == folder })
	list = append([]string{folder}, list...)
	w.app.Preferences().SetStringList(casebooksKey, list[:min(len(list), mostRecents)])
}

// learner is who takes a round, whatever casebook is open.
func (w *Window) learner() string {
	if name := strings.TrimSpace(w.app.Preferences().String(observerKey)); name != "" {
		return name
	}
	return userName()
}

// observer is who marks at this computer; the example has an observer of its own,
// whose marks are there to be seen and changed.
func (w *Window) observer() string {
	if w.inExample() {
		return example.Observer
	}
	return w.learner()
}

func userName() string {
	if u, err := user.Current(); err == nil && u.Username != "" {
		return filepath.Base(u.Username)
	}
	return lang.L("observer")
}

// askObserverOnce asks who marks, the first time that marks of several people
// may come together.
func (w *Window) askObserverOnce() {
	if w.app.Preferences().String(observerKey) == "" && w.book.ReadOnly() == "" && !w.inExample() {
		w.askObserver()
	}
}

func (w *Window) askObserver() {
	name := widget.NewEntry()
	name.SetText(w.app.Preferences().String(observerKey))
	name.SetPlaceHolder(lang.L("such as AB; empty: {{.Name}}", map[string]any{"Name": userName()}))
	why := wrapping(lang.L("Your initials, so that your marks in this casebook can be told from those of others."))
	ask := dialog.NewCustomWithoutButtons(lang.L("Who is marking?"), container.NewVBox(why, name), w.win)
	keep := widget.NewButton(lang.L("Go on"), func() {
		told := strings.TrimSpace(name.Text)
		if told == "" {
			told = userName()
		}
		w.app.Preferences().SetString(observerKey, told)
		ask.Hide()
		w.keyboard.take()
	})
	keep.Importance = widget.HighImportance
	name.OnSubmitted = func(string) { keep.OnTapped() }
	ask.SetButtons([]fyne.CanvasObject{keep})
	ask.Resize(w.nearlyWhole(460, 200))
	ask.Show()
	w.win.Canvas().Focus(name)
}

func (w *Window) casebookMenu() *fyne.Menu {
	open := w.menuShown.casebook != ""
	recent := fyne.NewMenuItem(lang.L("Open recent casebook"), nil)
	recent.ChildMenu = fyne.NewMenu("")
	for _, folder := range w.recentCasebooks() {
		recent.ChildMenu.Items = append(recent.ChildMenu.Items, fyne.NewMenuItem(short(folder), func() { w.openCasebook(folder) }))
	}
	recent.Disabled = len(recent.ChildMenu.Items) == 0
	return fyne.NewMenu(lang.L("Casebook"),
		item(lang.L("Open a casebook…"), nil, true, w.askForCasebook), recent,
		fyne.NewMenuItemSeparator(),
		item(lang.L("Back to the case"), command(fyne.KeyB), open, w.showCases),
		item(lang.L("Leave the casebook"), nil, open, w.leaveCasebook),
		fyne.NewMenuItemSeparator(),
		item(lang.L("How far observers agree"), nil, true, w.showAgreement),
		item(lang.L("Who is marking?"), nil, true, w.askObserver),
	)
}
