package casebook

import (
	"database/sql"
	"errors"
	"image"
	"strings"
	"time"
	"unicode/utf8"

	"ogive/imaging/marksfile"
)

type marksKey struct {
	photograph int64
	observer   string
}

// Revision is the marks of one observer on one photograph as they stood at the
// end of one piece of work.
type Revision struct {
	Number int       // from 1
	Saved  time.Time // when they were last written
	Text   string    // a marks file
}

// Observers is the names of all who have marked, in alphabetical order.
func (b *Casebook) Observers() ([]string, error) {
	return rows(b.db, text, "SELECT name FROM observers ORDER BY key")
}

// SaveMarks keeps the marks of an observer on a photograph. The first saving
// after the casebook was opened begins a new revision, further ones write it
// anew: so every piece of work stays to be read again, and a hundred gestures do
// not make a hundred copies. The marks name the photograph as seen from the
// casebook's folder, whatever name they came with.
func (b *Casebook) SaveMarks(photograph int64, observer string, f marksfile.File) error {
	if observer != strings.TrimSpace(observer) || observer == "" || utf8.RuneCountInString(observer) > longestCode {
		return refuse("the observer's name is empty or longer than %d characters; give a short one, such as initials", longestCode)
	}
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
	key := marksKey{photograph, strings.ToLower(observer)}
	b.opening.Lock()
	defer b.opening.Unlock()
	err = b.change("the marks can't be kept", func(tx *sql.Tx) error {
		return writeMarks(tx, photograph, observer, time.Now().UTC().Format(time.RFC3339), string(data), b.opened[key])
	})
	if err == nil {
		b.opened[key] = true
	}
	return err
}

func writeMarks(tx *sql.Tx, photograph int64, observer, saved, text string, again bool) error {
	if _, err := tx.Exec("INSERT OR IGNORE INTO observers(name,key) VALUES(?,?)", observer, strings.ToLower(observer)); err != nil {
		return err
	}
	var who int64
	var last int
	err := tx.QueryRow(`SELECT o.id, coalesce(max(m.revision),0) FROM observers o LEFT JOIN marks m ON m.observer=o.id AND m.photograph=?
		WHERE o.key=? GROUP BY o.id`, photograph, strings.ToLower(observer)).Scan(&who, &last)
	if err != nil {
		return err
	}
	if last == 0 || !again {
		last++
	}
	_, err = tx.Exec(`INSERT INTO marks(photograph,observer,revision,saved,text) VALUES(?,?,?,?,?)
		ON CONFLICT(photograph,observer,revision) DO UPDATE SET saved=excluded.saved, text=excluded.text`,
		photograph, who, last, saved, text)
	return err
}

// Marks is the latest marks of an observer on a photograph; false if there are
// none.
func (b *Casebook) Marks(photograph int64, observer string) (marksfile.File, bool, error) {
	var text string
	err := b.db.QueryRow(`SELECT m.text FROM marks m JOIN observers o ON m.observer=o.id
		WHERE m.photograph=? AND o.key=? ORDER BY m.revision DESC LIMIT 1`, photograph, strings.ToLower(observer)).Scan(&text)
	if errors.Is(err, sql.ErrNoRows) {
		return marksfile.File{}, false, nil
	}
	if err != nil {
		return marksfile.File{}, false, plain("the marks can't be read", err)
	}
	f, err := marksfile.Parse([]byte(text))
	return f, err == nil, err
}

// MarkedBy is who has marked a photograph, in alphabetical order.
func (b *Casebook) MarkedBy(photograph int64) ([]string, error) {
	return rows(b.db, text, "SELECT DISTINCT o.name FROM marks m JOIN observers o ON m.observer=o.id WHERE m.photograph=? ORDER BY o.key", photograph)
}

// History is all revisions of an observer's marks on a photograph, oldest first.
func (b *Casebook) History(photograph int64, observer string) ([]Revision, error) {
	return rows(b.db, func(scan func(...any) error) (r Revision, err error) {
		var saved string
		if err = scan(&r.Number, &saved, &r.Text); err != nil {
			return r, err
		}
		r.Saved, err = time.Parse(time.RFC3339, saved)
		return r, err
	}, `SELECT m.revision,m.saved,m.text FROM marks m JOIN observers o ON m.observer=o.id
		WHERE m.photograph=? AND o.key=? ORDER BY m.revision`, photograph, strings.ToLower(observer))
}
