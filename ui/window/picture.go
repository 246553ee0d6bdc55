package window

import (
	"os"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2/lang"

	"ogive/imaging/annotate"
	"ogive/imaging/picturefile"
	"ogive/ui/saving"
)

// askForPicture asks where the marked picture is to be saved.
func (w *Window) askForPicture() {
	if !w.ready() {
		return
	}
	base := filepath.Base(w.work.Path)
	saving.Ask(w.win, saving.Question{
		Title: lang.L("Save the marked picture"), Hint: lang.L("A name that ends in .png or .jpg."),
		Folder: filepath.Dir(w.work.Path), Name: strings.TrimSuffix(base, filepath.Ext(base)) + "-marked.png",
		Refused: func(path string) bool { return !w.ready() || w.pictureProblem(path) != "" },
	}, func(path string) {
		if w.ready() {
			w.savePicture(path)
		}
	}, w.keyboard.take)
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
		r := work.Measure(state)
		marks := state.Marks()
		for i, web := range marks.Webs {
			marks.Webs[i].Edge = r.Edges[web.Web]
		}
		err := picturefile.Write(path, annotate.Draw(work.Photograph, marks, state.Reference(), r.Reading))
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
	case !picturefile.Known(path):
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
