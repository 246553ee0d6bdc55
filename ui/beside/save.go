package beside

import (
	"bytes"
	"image"
	"image/jpeg"
	"image/png"
	"os"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/wholefile"
)

// askWhere asks where the picture is to be saved. It does not use Fyne's dialog
// for saving, which empties a chosen file before the program can say no.
func (r *Room) askWhere() {
	if !r.ready || r.sides[0].Photograph == nil {
		return
	}
	folder, err := os.UserHomeDir()
	if err != nil {
		folder = "."
	}
	name := widget.NewEntry()
	name.SetText("beside.png")
	where := widget.NewLabel(folder)
	where.Truncation = fyne.TextTruncateEllipsis
	other := widget.NewButton(lang.L("Another folder…"), func() {
		r.askForFolder(folder, func(path string) { folder = path; where.SetText(path) })
	})
	hint := widget.NewLabel(lang.L("A name that ends in .png or .jpg."))
	hint.Importance = widget.LowImportance
	form := container.NewVBox(widget.NewLabel(lang.L("Name")), name, hint,
		widget.NewLabel(lang.L("Folder")), container.NewBorder(nil, nil, nil, other, where))
	ask := dialog.NewCustomConfirm(lang.L("Save the picture"), lang.L("Save"), lang.L("Cancel"), form, func(yes bool) {
		if yes {
			r.overwriteOrSave(filepath.Join(folder, name.Text))
		}
	}, r.win)
	name.OnSubmitted = func(string) { ask.Confirm() }
	ask.Resize(r.nearlyWhole(620, 300))
	ask.Show()
	r.win.Canvas().Focus(name)
}

func (r *Room) askForFolder(from string, chosen func(string)) {
	ask := dialog.NewFolderOpen(func(folder fyne.ListableURI, err error) {
		if err == nil && folder != nil {
			chosen(folder.Path())
		}
	}, r.win)
	if at, err := storage.ListerForURI(storage.NewFileURI(from)); err == nil {
		ask.SetLocation(at)
	}
	ask.Show()
	ask.Resize(r.nearlyWhole(900, 680))
}

func (r *Room) nearlyWhole(width, height float32) fyne.Size {
	size := r.win.Canvas().Size()
	return fyne.NewSize(min(width, size.Width-40), min(height, size.Height-40))
}

// overwriteOrSave asks before another file is written over.
func (r *Room) overwriteOrSave(path string) {
	if encode(path) == nil {
		path += ".png"
	}
	if _, err := os.Stat(path); err != nil {
		r.save(path)
		return
	}
	dialog.ShowConfirm(lang.L("There is such a file already"), lang.L("{{.Name}} is there already. Write over it?", map[string]any{"Name": filepath.Base(path)}), func(yes bool) {
		if yes {
			r.save(path)
		}
	}, r.win)
}

// save draws the picture apart from the window and writes it whole or not at all.
func (r *Room) save(path string) {
	r.head.say(lang.L("Drawing {{.Name}}…", map[string]any{"Name": filepath.Base(path)}))
	draw := r.picture()
	r.apart(func() {
		var data bytes.Buffer
		err := encode(path)(&data, draw())
		if err == nil {
			err = wholefile.Write(path, data.Bytes())
		}
		r.soon(func() {
			text := lang.L("The picture is saved as {{.Name}}.", map[string]any{"Name": path})
			if err != nil {
				text = lang.L("The picture is not saved: {{.Problem}}.", map[string]any{"Problem": err.Error()})
			}
			r.head.say(text)
		})
	})
}

// encode is how a picture of that name is written, nil where the name tells no
// kind.
func encode(path string) func(*bytes.Buffer, image.Image) error {
	switch strings.ToLower(filepath.Ext(path)) {
	case ".png":
		return func(to *bytes.Buffer, p image.Image) error { return png.Encode(to, p) }
	case ".jpg", ".jpeg":
		return func(to *bytes.Buffer, p image.Image) error {
			return jpeg.Encode(to, p, &jpeg.Options{Quality: 92})
		}
	}
	return nil
}
