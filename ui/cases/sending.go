package cases

import (
	"errors"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/casebook"
	"ogive/ui/label"
	"ogive/ui/overlay"
)

// caseEnding ends the names of exported cases.
const caseEnding = ".ogive-case"

// exportForm asks where an exported case goes and how it is locked.
type exportForm struct {
	name, pass, again *widget.Entry
	folder            string
	where             *widget.Label
	hint              *widget.Label
	save              *widget.Button
	content           fyne.CanvasObject
}

func (r *Room) newExportForm(code string) *exportForm {
	f := &exportForm{name: widget.NewEntry(), pass: widget.NewPasswordEntry(), again: widget.NewPasswordEntry(), hint: label.Wrapped(""), where: widget.NewLabel("")}
	f.name.SetText(fileName(code) + caseEnding)
	f.inFolder(filepath.Dir(r.book.Folder()))
	f.where.Truncation = fyne.TextTruncateEllipsis
	choose := widget.NewButton(lang.L("Another folder…"), func() { overlay.AskFolder(r.win, f.folder, f.inFolder) })
	f.save = widget.NewButton(lang.L("Export"), nil)
	f.save.Importance = widget.HighImportance
	f.pass.OnChanged = func(string) { f.check() }
	f.again.OnChanged, f.name.OnChanged = f.pass.OnChanged, f.pass.OnChanged
	f.content = container.NewVBox(
		label.Caption(lang.L("One file with the photographs, all marks and what is known of the case, to be brought in elsewhere.")),
		widget.NewLabel(lang.L("Name of the file")), f.name,
		container.NewBorder(nil, nil, widget.NewLabel(lang.L("Folder")), choose, f.where),
		container.NewGridWithColumns(2,
			container.NewVBox(widget.NewLabel(lang.L("Passphrase, if it shall be locked")), f.pass),
			container.NewVBox(widget.NewLabel(lang.L("The same once more")), f.again)),
		f.hint)
	f.check()
	return f
}

func (f *exportForm) inFolder(folder string) {
	f.folder = folder
	f.where.SetText(folder)
}

// fileName is a code as the name of a file.
func fileName(code string) string {
	return strings.Map(func(r rune) rune {
		if strings.ContainsRune(`/\:*?"<>|`, r) {
			return '-'
		}
		return r
	}, code)
}

// check says what the passphrase means, or what is wrong with it.
func (f *exportForm) check() {
	text, importance, ok := "", widget.MediumImportance, true
	switch {
	case strings.TrimSpace(f.name.Text) == "" || f.name.Text != filepath.Base(f.name.Text):
		text, importance, ok = lang.L("Give the file a name, without a folder."), widget.DangerImportance, false
	case f.pass.Text == "" && f.again.Text == "":
		text, importance = lang.L("Without a passphrase anyone who gets hold of the file can look at the photographs."), widget.WarningImportance
	case f.pass.Text != f.again.Text:
		text, importance, ok = lang.L("The two passphrases are not the same yet."), widget.DangerImportance, false
	default:
		text = lang.L("The file will be locked. Tell the passphrase by another way than the file; if it is lost, nobody can open it.")
	}
	f.hint.Importance = importance
	f.hint.SetText(text)
	able(f.save, ok)
}

func (f *exportForm) path() string {
	name := strings.TrimSpace(f.name.Text)
	if filepath.Ext(name) != caseEnding {
		name += caseEnding
	}
	return filepath.Join(f.folder, name)
}

// export asks where the case goes and writes it there.
func (r *Room) export() {
	id := r.page.id
	f := r.newExportForm(r.page.shown.about.Code)
	ask := r.ask(lang.L("Export this case"), f.content, f.save, 640, 440)
	f.save.OnTapped = func() {
		path, pass := f.path(), f.pass.Text
		able(f.save, false)
		f.hint.Importance = widget.MediumImportance
		f.hint.SetText(lang.L("The case is being written…"))
		r.background(func(book *casebook.Casebook) func() {
			err := book.Export(id, path, pass)
			return func() {
				if err != nil {
					able(f.save, true)
					f.hint.Importance = widget.DangerImportance
					f.hint.SetText(sentence(err.Error()))
					return
				}
				ask.Hide()
				r.notice.show(lang.L("The case is exported as {{.Path}}.", map[string]any{"Path": path}))
			}
		})
	}
	r.win.Canvas().Focus(f.name)
}

// receive brings an exported case in.
func (r *Room) receive() {
	ask := dialog.NewFileOpen(func(file fyne.URIReadCloser, err error) {
		if file == nil {
			r.chosenPath(nil, err)
			return
		}
		path := file.URI().Path()
		if err := file.Close(); err != nil {
			r.notice.show(sentence(err.Error()))
			return
		}
		r.receiveFrom(path, "", func(string) {})
	}, r.win)
	ask.SetFilter(storage.NewExtensionFileFilter([]string{caseEnding, ".zip", ".age"}))
	ask.SetTitleText(lang.L("Bring an exported case in"))
	overlay.ShowFiles(r.win, ask)
}

// receiveFrom reads the file, and asks for the passphrase if it needs one. What
// is said goes to tell, "" when it is done.
func (r *Room) receiveFrom(path, passphrase string, tell func(string)) {
	r.notice.show(lang.L("{{.Name}} is being brought in…", map[string]any{"Name": filepath.Base(path)}))
	r.background(func(book *casebook.Casebook) func() {
		id, err := book.Receive(path, passphrase)
		return func() {
			switch {
			case errors.Is(err, casebook.ErrPassphrase) && passphrase == "":
				r.notice.show("")
				r.askPassphrase(path)
			case err != nil:
				r.notice.show(sentence(err.Error()))
				tell(sentence(err.Error()))
			default:
				r.notice.show("")
				tell("")
				r.index.search.SetText("")
				r.index.fill(func([]casebook.Summary) { r.ShowCase(id) })
			}
		}
	})
}

func (r *Room) askPassphrase(path string) {
	pass, hint := widget.NewPasswordEntry(), label.Wrapped("")
	hint.Importance = widget.DangerImportance
	open := widget.NewButton(lang.L("Open"), nil)
	open.Importance = widget.HighImportance
	content := container.NewVBox(label.Wrapped(lang.L("{{.Name}} is locked. The sender knows the passphrase.", map[string]any{"Name": filepath.Base(path)})), pass, hint)
	ask := r.ask(lang.L("Passphrase"), content, open, 520, 280)
	open.OnTapped = func() {
		able(open, false)
		hint.SetText("")
		r.receiveFrom(path, pass.Text, func(problem string) {
			able(open, true)
			hint.SetText(problem)
			if problem == "" {
				ask.Hide()
			} else {
				r.notice.show("")
			}
		})
	}
	pass.OnChanged = func(text string) { able(open, text != "") }
	pass.OnSubmitted = func(string) { open.OnTapped() }
	able(open, false)
	r.win.Canvas().Focus(pass)
}

// ask shows a form with its one way on and a way back.
func (r *Room) ask(title string, content fyne.CanvasObject, on *widget.Button, width, height float32) *dialog.CustomDialog {
	ask := dialog.NewCustomWithoutButtons(title, content, r.win)
	ask.SetButtons([]fyne.CanvasObject{widget.NewButton(lang.L("Cancel"), ask.Hide), on})
	ask.Resize(overlay.Size(r.win, width, height))
	ask.Show()
	return ask
}
