// Package saving asks where a file is to be saved and whether another one is to
// be written over.
//
//	saving.Ask(win, saving.Question{
//		Title: lang.L("Save the marked picture"), Hint: lang.L("A name that ends in .png or .jpg."),
//		Folder: folder, Name: "hand-marked.png", Endings: []string{".png", ".jpg"},
//	}, func(path string) { ... }, func() { ... })
//
// It does not use Fyne's dialog for saving, which empties a chosen file before
// the program can say no: the photograph itself might be chosen.
package saving

import (
	"os"
	"path/filepath"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"ogive/ui/overlay"
)

// Question is what is asked.
type Question struct {
	Title string
	Hint  string // below the name, "" for none
	// Folder and Name are proposed; the user may choose others. Without a folder
	// the user's own is.
	Folder, Name string
	// Endings are those that the name may have. The first is added to a name
	// with none of them, before it is looked for on the disk. Without endings
	// any name will do.
	Endings []string
	// Refused, if not nil, reports that save will refuse this path, so that
	// nobody is asked before whether it is to be written over.
	Refused func(path string) bool
}

// Ask asks the question over win. It calls save with the path if one is given,
// and done, if it is not nil, when the question is closed, either way.
func Ask(win fyne.Window, q Question, save func(path string), done func()) {
	if done == nil {
		done = func() {}
	}
	name := widget.NewEntry()
	name.SetText(q.Name)
	folder := q.folder()
	where := widget.NewLabel(folder)
	where.Truncation = fyne.TextTruncateEllipsis
	choose := widget.NewButton(lang.L("Another folder…"), func() {
		overlay.AskFolder(win, folder, func(path string) { folder = path; where.SetText(path) })
	})
	hint := widget.NewLabel(q.Hint)
	hint.Importance = widget.LowImportance
	hint.Hidden = q.Hint == ""
	form := container.NewVBox(
		widget.NewLabel(lang.L("Name")), name, hint,
		widget.NewLabel(lang.L("Folder")), container.NewBorder(nil, nil, nil, choose, where))
	ask := dialog.NewCustomConfirm(q.Title, lang.L("Save"), lang.L("Cancel"), form, func(yes bool) {
		if yes {
			q.overwriteOrSave(win, q.ended(filepath.Join(folder, name.Text)), save, done)
		}
		done()
	}, win)
	name.OnSubmitted = func(string) { ask.Confirm() }
	ask.Resize(overlay.Size(win, 620, 300))
	ask.Show()
	win.Canvas().Focus(name)
}

func (q Question) folder() string {
	if q.Folder != "" {
		return q.Folder
	}
	if own, err := os.UserHomeDir(); err == nil {
		return own
	}
	return "."
}

// ended is the path with an ending that it may have.
func (q Question) ended(path string) string {
	is := func(ending string) bool { return strings.EqualFold(filepath.Ext(path), ending) }
	if len(q.Endings) == 0 || slices.ContainsFunc(q.Endings, is) {
		return path
	}
	return path + q.Endings[0]
}

// overwriteOrSave asks before another file is written over.
func (q Question) overwriteOrSave(win fyne.Window, path string, save func(path string), done func()) {
	if _, err := os.Stat(path); err != nil || q.Refused != nil && q.Refused(path) {
		save(path)
		return
	}
	dialog.ShowConfirm(lang.L("There is such a file already"), lang.L("{{.Name}} is there already. Write over it?", map[string]any{"Name": filepath.Base(path)}), func(yes bool) {
		if yes {
			save(path)
		}
		done()
	}, win)
}
