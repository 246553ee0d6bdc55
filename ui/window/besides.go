package window

import (
	"fmt"

	"fyne.io/fyne/v2/lang"

	"ogive/imaging/casebook"
	"ogive/imaging/marksfile"
	"ogive/imaging/photo"
	"ogive/ui/beside"
)

// showBeside holds two photographs of the casebook against each other, that of
// the operated hand or of the later sitting first.
func (w *Window) showBeside(operated, other casebook.Photograph) {
	book, observer, turn := w.book, w.observer(), w.turn.Add(1)
	w.notices.show(notice{about: aboutOpening, lasting: true, text: lang.L("The two photographs are being read…")})
	w.background(func() func() {
		a, err := sideOf(book, operated, observer)
		var b beside.Side
		if err == nil {
			b, err = sideOf(book, other, observer)
		}
		return func() {
			switch {
			case w.turn.Load() != turn || w.book != book:
			case err != nil:
				w.cannotOpen(plain(err))
			default:
				w.notices.close(aboutOpening)
				w.standBeside(a, b)
			}
		}
	})
}

func (w *Window) standBeside(operated, other beside.Side) {
	if w.beside == nil {
		w.beside = beside.New(w.win)
		w.beside.OnBack = w.showCases
		w.beside.OnOpen = func(s beside.Side) { w.openNumbered(s.Key) }
	}
	w.beside.UseSettings(w.settings)
	w.beside.Show(operated, other)
	w.stand(w.beside.Object())
}

// openNumbered opens the photograph of the casebook that a room knows by a key.
func (w *Window) openNumbered(key string) {
	var id int64
	if _, err := fmt.Sscan(key, &id); err != nil {
		w.cannotOpen(err.Error())
		return
	}
	p, err := w.book.Photograph(id)
	if err != nil {
		w.cannotOpen(plain(err))
		return
	}
	w.openFromCase(p)
}

// sideOf is a photograph with the observer's marks, or with those of another
// observer where there are none.
func sideOf(book *casebook.Casebook, p casebook.Photograph, observer string) (beside.Side, error) {
	s := beside.Side{Title: string(p.Date), Key: fmt.Sprint(p.ID)}
	var err error
	if s.Photograph, err = photo.Open(book.Path(p)); err != nil {
		return s, fmt.Errorf("%s: %w", s.Title, err)
	}
	s.Marks, err = marksOf(book, p, observer)
	return s, err
}

func marksOf(book *casebook.Casebook, p casebook.Photograph, observer string) (marksfile.File, error) {
	marks, any, err := book.Marks(p.ID, observer)
	if err != nil || any {
		return marks, err
	}
	all, err := book.MarkedBy(p.ID)
	if err != nil || len(all) == 0 {
		return marks, err
	}
	marks, _, err = book.Marks(p.ID, all[0])
	return marks, err
}
