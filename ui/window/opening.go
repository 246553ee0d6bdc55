package window

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"sync/atomic"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/storage"

	"ogive/imaging/photo"
	"ogive/ui/marking"
)

// endings are the endings of files in which photographs come.
var endings = []string{".jpg", ".jpeg", ".png", ".tif", ".tiff", ".webp", ".heic", ".heif"}

// opening is the photograph that is being opened.
type opening struct {
	// turn counts the photographs that were asked for: what comes back for an
	// earlier turn is dropped.
	turn atomic.Int64
	// previewing says that the small picture of a photograph stands on the board
	// while the photograph itself is decoded.
	previewing bool
	// aside is the work of which it was said that its marks are kept elsewhere.
	aside *marking.Work
}

// Open opens the photograph at path with the marks made on it before. Whatever
// is wrong is said in the window, where all stays as it was.
func (w *Window) Open(path string) {
	if full, err := filepath.Abs(path); err == nil {
		path = full
	}
	turn := w.turn.Add(1)
	w.notices.close(aboutOpening)
	if !w.safe() {
		return
	}
	if info, err := os.Stat(path); err != nil || info.IsDir() {
		w.cannotOpen(folderOr(err, path))
		return
	}
	w.notices.show(notice{about: aboutOpening, lasting: true, text: lang.L("Opening {{.Name}}…", map[string]any{"Name": filepath.Base(path)})})
	go w.decode(path, turn)
}

// safe reports whether the marks of the photograph that is open are on the disk,
// after one more attempt; if not, it says that they would be lost.
func (w *Window) safe() bool {
	if w.work == nil || !w.unsaved {
		return true
	}
	w.saved(w.work.Save())
	if w.unsaved {
		w.cannotOpen(lang.L("The marks on this photograph are not on the disk, so no other one is opened; make room or make the folder writable first."))
	}
	return !w.unsaved
}

// decode shows a small picture at once where there is one, then the photograph.
func (w *Window) decode(path string, turn int64) {
	current := func() bool { return w.turn.Load() == turn }
	if small, size, ok := photo.Glance(path); ok && current() {
		w.do(func() {
			if current() {
				w.previewing = true
				w.showRoom()
				w.board.ShowPreview(small, size)
			}
		})
	}
	if !current() {
		return
	}
	p, err := photo.Open(path)
	w.do(func() {
		if !current() {
			return
		}
		if err != nil {
			w.cannotOpen(plain(err))
			return
		}
		w.withMarks(path, p)
	})
}

// withMarks takes up the marks of a photograph that is decoded.
func (w *Window) withMarks(path string, p *photo.Photograph) {
	var work *marking.Work
	k, err := marking.BesideOrIn(path, filepath.Join(w.home, "marks"))
	if err == nil {
		work, err = marking.KeptBy(path, k, p, w.settings)
	}
	if err == nil {
		w.adopt(work, nil)
		return
	}
	w.backToWork()
	w.notices.show(notice{
		about: aboutOpening, lasting: true,
		text: lang.L("The marks of {{.Name}} cannot be read: {{.Problem}}. The photograph can be opened without them; the file is kept under another name.",
			map[string]any{"Name": filepath.Base(path), "Problem": within(path, plain(err))}),
		choices: []choiceOf{
			{lang.L("Open without the marks"), func() { w.openWithout(path, p) }},
			{lang.L("Leave it"), func() { w.notices.close(aboutOpening) }},
		},
	})
}

func (w *Window) openWithout(path string, p *photo.Photograph) {
	aside, err := marking.SetAside(path)
	if err != nil {
		w.cannotOpen(within(path, plain(err)))
		return
	}
	w.withMarks(path, p)
	w.notices.show(notice{about: aboutOpening, text: lang.L("The marks that cannot be read are kept in {{.Name}}.", map[string]any{"Name": filepath.Base(aside)})})
}

// adopt makes work what the window is about; of is where it belongs in a
// casebook, nil for a photograph by itself.
func (w *Window) adopt(work *marking.Work, of *inCase) {
	w.work, w.inCase = work, of
	w.previewing = false
	w.selected, w.step, w.placed, w.asked = nil, 0, nil, false
	w.proposals = proposals{}
	w.reading, w.dragging = marking.Reading{}, false
	clear(w.pulled)
	w.notices.closeAll()
	if s := work.State(); s.Side == 0 && len(s.Points) == 0 {
		w.saved(work.UseClickSD(w.clickSDOn(work.Photograph.Size()))) // marks made before keep theirs
	}
	w.bar.belongs(of)
	if of == nil {
		w.remember(work.Path)
	}
	w.showRoom()
	w.board.ShowPhotograph(work.Photograph)
	w.refresh()
	w.side.Refresh()
	w.keyboard.take()
}

// backToWork shows again what was open before an attempt to open another
// photograph.
func (w *Window) backToWork() {
	if !w.previewing {
		return
	}
	w.previewing = false
	if w.work == nil {
		w.showWelcome()
		return
	}
	w.board.ShowPhotograph(w.work.Photograph)
	w.refresh()
}

// cannotOpen says why a photograph was not opened.
func (w *Window) cannotOpen(why string) {
	w.backToWork()
	w.notices.show(notice{about: aboutOpening, text: sentence(why)})
}

func folderOr(err error, path string) string {
	name := filepath.Base(path)
	switch {
	case err == nil:
		return lang.L("{{.Name}} is a folder; one photograph is opened at a time, so drop or choose a photograph in it.", map[string]any{"Name": name})
	case errors.Is(err, fs.ErrNotExist):
		return lang.L("{{.Name}} is no longer where it was; look for it with File, Open.", map[string]any{"Name": name})
	case errors.Is(err, fs.ErrPermission):
		return lang.L("{{.Name}} may not be read by you; copy it to a folder of your own and open it there.", map[string]any{"Name": name})
	}
	return plain(err)
}

// dropped opens the first photograph of what was dropped on the window; in the
// casebook's room it imports them all.
func (w *Window) dropped(uris []fyne.URI) {
	if len(uris) == 0 {
		return
	}
	if w.book != nil && w.standing() == w.cases.Object() {
		paths := make([]string, len(uris))
		for i, u := range uris {
			paths[i] = u.Path()
		}
		w.cases.Import(paths)
		return
	}
	w.Open(uris[0].Path())
	if len(uris) > 1 {
		w.notices.show(notice{about: aboutDropping, text: lang.L("One photograph is opened at a time: this is the first of the {{.Count}} that were dropped.", map[string]any{"Count": len(uris)})})
	}
}

// askForPhotograph opens a photograph chosen in a dialog.
func (w *Window) askForPhotograph() {
	choose := dialog.NewFileOpen(func(file fyne.URIReadCloser, err error) {
		w.keyboard.take()
		if err != nil {
			w.cannotOpen(plain(err))
			return
		}
		if file == nil {
			return
		}
		path := file.URI().Path()
		if err := file.Close(); err != nil {
			w.cannotOpen(plain(err))
			return
		}
		w.Open(path)
	}, w.win)
	choose.SetFilter(storage.NewExtensionFileFilter(endings))
	choose.SetTitleText(lang.L("Open a photograph"))
	if folder, err := storage.ListerForURI(storage.NewFileURI(w.lastFolder())); err == nil {
		choose.SetLocation(folder)
	}
	choose.Show()
	choose.Resize(w.nearlyWhole(1000, 720))
}

// nearlyWhole is a size for a dialog, as far as the window has room for it.
func (w *Window) nearlyWhole(width, height float32) fyne.Size {
	size := w.win.Canvas().Size()
	return fyne.NewSize(min(width, size.Width-40), min(height, size.Height-40))
}

// plain is an error as one sentence without its full stop, the folder left out
// of the names of files.
func plain(err error) string {
	text := err.Error()
	var path *fs.PathError
	if errors.As(err, &path) {
		text = strings.ReplaceAll(text, path.Path, filepath.Base(path.Path))
	}
	return strings.TrimRight(strings.ReplaceAll(text, "\n", "; "), ".")
}

// within is a text about what lies beside the file at path, without the folder.
func within(path, text string) string {
	return strings.ReplaceAll(text, filepath.Dir(path)+string(filepath.Separator), "")
}

// sentence ends a text as a sentence.
func sentence(text string) string {
	text = strings.TrimRight(text, ".")
	if strings.HasSuffix(text, "…") || strings.HasSuffix(text, "?") {
		return text
	}
	return fmt.Sprintf("%s.", text)
}

// sayKeptAside tells once for a photograph that its marks are not beside it.
func (w *Window) sayKeptAside() {
	if w.work == nil || w.inCase != nil || w.aside == w.work || filepath.Dir(w.work.KeptIn()) != filepath.Join(w.home, "marks") {
		return
	}
	w.aside = w.work
	w.notices.show(notice{about: aboutDropping, text: lang.L("Nothing may be written where this photograph lies. Its marks are kept in the program's own folder, and come back with it.")})
}
