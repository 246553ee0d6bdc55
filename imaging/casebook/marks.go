package casebook

import (
	"image"

	"ogive/imaging/marksfile"
)

// Observers is the names of all who have marked, planned or appraised, in
// alphabetical order.
func (b *Casebook) Observers() ([]string, error) {
	return rows(b.db, text, "SELECT name FROM observers ORDER BY key")
}

// SaveMarks keeps the marks of an observer on a photograph. The first saving
// after the casebook was opened begins a new revision, further ones write it
// anew. The marks name the photograph as seen from the casebook's folder,
// whatever name they came with.
func (b *Casebook) SaveMarks(photograph int64, observer string, f marksfile.File) error {
	p, err := b.Photograph(photograph)
	if err != nil {
		return err
	}
	f.Photograph = p.File()
	if f.Marks.Side.String() != p.Hand || f.Marks.View.String() != p.View {
		return refuse("the marks are for the %v hand, %v view, the photograph is said to be %s %s; correct one of them", f.Marks.Side, f.Marks.View, p.Hand, p.View)
	}
	if err := f.CheckWithin(image.Pt(p.Width, p.Height)); err != nil {
		return err
	}
	data, err := f.Encode()
	if err != nil {
		return err
	}
	return b.save(keptMarks, photograph, observer, string(data))
}

// Marks is the latest marks of an observer on a photograph; false if there are
// none.
func (b *Casebook) Marks(photograph int64, observer string) (marksfile.File, bool, error) {
	text, ok, err := b.latest(keptMarks, photograph, observer)
	if err != nil || !ok {
		return marksfile.File{}, false, err
	}
	f, err := marksfile.Parse([]byte(text))
	return f, err == nil, err
}

// MarkedBy is who has marked a photograph, in alphabetical order.
func (b *Casebook) MarkedBy(photograph int64) ([]string, error) { return b.by(keptMarks, photograph) }

// History is all revisions of an observer's marks on a photograph, oldest first.
func (b *Casebook) History(photograph int64, observer string) ([]Revision, error) {
	return b.history(keptMarks, photograph, observer)
}
