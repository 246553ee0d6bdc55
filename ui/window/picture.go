package window

import (
	"bytes"
	"fmt"
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

	"ogive/imaging/annotate"
	"ogive/imaging/wholefile"
)

// askForPicture asks where the marked picture is to be saved. It does not use
// Fyne's dialog for saving, which empties a chosen file before the program can
// say no: the photograph itself might be chosen.
func (w *Window) askForPicture() {
	if !w.ready() {
		return
	}
	base := filepath.Base(w.work.Path)
	name := widget.NewEntry()
	name.SetText(strings.TrimSuffix(base, filepath.Ext(base)) + "-marked.png")
	folder := filepath.Dir(w.work.Path)
	where := widget.NewLabel(folder)
	where.Truncation = fyne.TextTruncateEllipsis
	choose := widget.NewButton(lang.L("Another folder…"), func() {
		w.askForFolder(folder, func(path string) { folder = path; where.SetText(path) })
	})
	hint := widget.NewLabel(lang.L("A name that ends in .png or .jpg."))
	hint.Importance = widget.LowImportance
	form := container.NewVBox(
		widget.NewLabel(lang.L("Name")), name, hint,
		widget.NewLabel(lang.L("Folder")), container.NewBorder(nil, nil, nil, choose, where))
	ask := dialog.NewCustomConfirm(lang.L("Save the marked picture"), lang.L("Save"), lang.L("Cancel"), form, func(yes bool) {
		if yes {
			w.overwriteOrSave(filepath.Join(folder, name.Text))
		}
		w.keyboard.take()
	}, w.win)
	name.OnSubmitted = func(string) { ask.Confirm() }
	ask.Resize(w.nearlyWhole(620, 300))
	ask.Show()
	w.win.Canvas().Focus(name)
}

func (w *Window) askForFolder(from string, chosen func(string)) {
	ask := dialog.NewFolderOpen(func(folder fyne.ListableURI, err error) {
		if err == nil && folder != nil {
			chosen(folder.Path())
		}
	}, w.win)
	if at, err := storage.ListerForURI(storage.NewFileURI(from)); err == nil {
		ask.SetLocation(at)
	}
	ask.Show()
	ask.Resize(w.nearlyWhole(900, 680))
}

// overwriteOrSave asks before another picture is written over.
func (w *Window) overwriteOrSave(path string) {
	if _, err := os.Stat(path); err != nil || sameFile(path, w.work.Path) {
		w.savePicture(path)
		return
	}
	dialog.ShowConfirm(lang.L("There is such a file already"), lang.L("{{.Name}} is there already. Write over it?", map[string]any{"Name": filepath.Base(path)}), func(yes bool) {
		if yes {
			w.savePicture(path)
		}
		w.keyboard.take()
	}, w.win)
}

// savePicture draws the marked picture beside the window and writes it whole or
// not at all.
func (w *Window) savePicture(path string) {
	if problem := w.pictureProblem(path); problem != "" {
		w.notices.show(notice{about: aboutPicture, text: problem})
		return
	}
	name := filepath.Base(path)
	w.notices.show(notice{about: aboutPicture, lasting: true, text: lang.L("Drawing {{.Name}}…", map[string]any{"Name": name})})
	work, state := w.work, w.work.State()
	w.background(func() func() {
		err := savePicture(path, func() image.Image {
			r := work.Measure(state)
			marks := state.Marks()
			for i, web := range marks.Webs {
				marks.Webs[i].Edge = r.Edges[web.Web]
			}
			return annotate.Draw(work.Photograph, marks, state.Reference(), r.Reading)
		})
		return func() {
			text := lang.L("The marked picture is saved as {{.Name}}.", map[string]any{"Name": path})
			if err != nil {
				text = lang.L("The marked picture is not saved: {{.Problem}}.", map[string]any{"Problem": plain(err)})
			}
			w.notices.show(notice{about: aboutPicture, text: text})
		}
	})
}

// pictureProblem says why a name will not do, "" if it will.
func (w *Window) pictureProblem(path string) string {
	switch {
	case sameFile(path, w.work.Path):
		return lang.L("That is the photograph itself, which is never written over; give the marked picture another name.")
	case encoderFor(path) == nil:
		return lang.L("The name {{.Name}} tells no kind of picture; let it end in .png or .jpg.", map[string]any{"Name": filepath.Base(path)})
	}
	return ""
}

// sameFile reports whether two paths lead to one file, by whatever names.
func sameFile(a, b string) bool {
	first, err := os.Stat(a)
	second, also := os.Stat(b)
	return filepath.Clean(a) == filepath.Clean(b) || err == nil && also == nil && os.SameFile(first, second)
}

func encoderFor(path string) func(*bytes.Buffer, image.Image) error {
	switch strings.ToLower(filepath.Ext(path)) {
	case ".png":
		fast := png.Encoder{CompressionLevel: png.BestSpeed}
		return func(to *bytes.Buffer, p image.Image) error { return fast.Encode(to, p) }
	case ".jpg", ".jpeg":
		return func(to *bytes.Buffer, p image.Image) error {
			return jpeg.Encode(to, p, &jpeg.Options{Quality: 92})
		}
	}
	return nil
}

func savePicture(path string, drawn func() image.Image) error {
	encode := encoderFor(path)
	if encode == nil {
		return fmt.Errorf("%s tells no kind of picture", filepath.Base(path))
	}
	var data bytes.Buffer
	if err := encode(&data, drawn()); err != nil {
		return err
	}
	return wholefile.Write(path, data.Bytes())
}
