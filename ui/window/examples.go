package window

import (
	"os"
	"path/filepath"

	"fyne.io/fyne/v2/lang"

	"ogive/imaging/phantom"
	"ogive/imaging/wholefile"
)

// firstExample is the one that the welcome page offers: there is something to
// be found on it.
func firstExample() phantom.Example {
	all := phantom.Examples()
	for _, e := range all {
		if e.Name == "deep-third" {
			return e
		}
	}
	return all[0]
}

// openExample opens an invented hand like any photograph. It is drawn the first
// time it is asked for and kept in the program's own folder, with its marks.
func (w *Window) openExample(e phantom.Example) {
	path := filepath.Join(w.home, "examples", e.Name+".jpg")
	if _, err := os.Stat(path); err == nil {
		w.Open(path)
		return
	}
	turn := w.turn.Add(1)
	w.notices.show(notice{about: aboutOpening, lasting: true, text: lang.L("The example is being drawn; this takes a few seconds.")})
	w.background(func() func() {
		err := drawExample(e, path)
		return func() {
			switch {
			case w.turn.Load() != turn:
			case err != nil:
				w.cannotOpen(plain(err))
			default:
				w.Open(path)
			}
		}
	})
}

func drawExample(e phantom.Example, path string) error {
	picture, err := e.Case.Render()
	if err != nil {
		return err
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return err
	}
	return wholefile.Write(path, picture.JPEG)
}
