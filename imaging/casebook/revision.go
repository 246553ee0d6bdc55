package casebook

import (
	"database/sql"
	"errors"
	"strings"
	"time"
	"unicode/utf8"
)

// kept is a table whose rows are revisions of a text by an observer about
// something, whose column is about.
type kept struct{ table, about, what string }

var (
	keptMarks      = kept{"marks", "photograph", "the marks"}
	keptPlans      = kept{"plans", "photograph", "the plan"}
	keptAppraisals = kept{"appraisals", "sitting", "the appraisal"}
)

// revised is one text of one observer, whatever its revision.
type revised struct {
	in       kept
	about    int64
	observer string // in lower case
}

// Revision is a text of one observer as it stood at the end of one piece of
// work.
type Revision struct {
	Number int       // from 1
	Saved  time.Time // when it was last written
	Text   string
}

func checkObserver(name string) error {
	if name != strings.TrimSpace(name) || name == "" || utf8.RuneCountInString(name) > longestCode || strings.ContainsFunc(name, func(r rune) bool { return r < ' ' }) {
		return refuse("the observer's name is empty or longer than %d characters, or begins or ends with a space; give a short one, such as initials", longestCode)
	}
	return nil
}

// save keeps a text. The first saving after the casebook was opened begins a new
// revision, further ones write it anew: so every piece of work stays to be read
// again, and a hundred gestures do not make a hundred copies.
func (b *Casebook) save(in kept, about int64, observer, text string) error {
	if err := checkObserver(observer); err != nil {
		return err
	}
	key := revised{in, about, strings.ToLower(observer)}
	b.opening.Lock()
	defer b.opening.Unlock()
	err := b.change(in.what+" can't be kept", func(tx *sql.Tx) error {
		return in.write(tx, about, observer, time.Now().UTC().Format(time.RFC3339), text, b.opened[key])
	})
	if err == nil {
		b.opened[key] = true
	}
	return err
}

func (k kept) write(tx *sql.Tx, about int64, observer, saved, text string, again bool) error {
	if _, err := tx.Exec("INSERT OR IGNORE INTO observers(name,key) VALUES(?,?)", observer, strings.ToLower(observer)); err != nil {
		return err
	}
	var who int64
	var last int
	err := tx.QueryRow("SELECT o.id, coalesce(max(k.revision),0) FROM observers o LEFT JOIN "+k.table+" k ON k.observer=o.id AND k."+k.about+"=? WHERE o.key=? GROUP BY o.id",
		about, strings.ToLower(observer)).Scan(&who, &last)
	if err != nil {
		return err
	}
	if last == 0 || !again {
		last++
	}
	_, err = tx.Exec("INSERT INTO "+k.table+"("+k.about+",observer,revision,saved,text) VALUES(?,?,?,?,?) ON CONFLICT("+k.about+",observer,revision) DO UPDATE SET saved=excluded.saved, text=excluded.text",
		about, who, last, saved, text)
	return err
}

// latest is the latest text of an observer; false if there is none.
func (b *Casebook) latest(in kept, about int64, observer string) (text string, ok bool, err error) {
	err = b.db.QueryRow("SELECT k.text FROM "+in.table+" k JOIN observers o ON k.observer=o.id WHERE k."+in.about+"=? AND o.key=? ORDER BY k.revision DESC LIMIT 1",
		about, strings.ToLower(observer)).Scan(&text)
	if errors.Is(err, sql.ErrNoRows) {
		return "", false, nil
	}
	return text, err == nil, plain(in.what+" can't be read", err)
}

// by is who has written, in alphabetical order.
func (b *Casebook) by(in kept, about int64) ([]string, error) {
	return rows(b.db, text, "SELECT DISTINCT o.name FROM "+in.table+" k JOIN observers o ON k.observer=o.id WHERE k."+in.about+"=? ORDER BY o.key", about)
}

func (b *Casebook) history(in kept, about int64, observer string) ([]Revision, error) {
	return rows(b.db, func(scan func(...any) error) (r Revision, err error) {
		var saved string
		if err = scan(&r.Number, &saved, &r.Text); err != nil {
			return r, err
		}
		r.Saved, err = time.Parse(time.RFC3339, saved)
		return r, err
	}, "SELECT k.revision,k.saved,k.text FROM "+in.table+" k JOIN observers o ON k.observer=o.id WHERE k."+in.about+"=? AND o.key=? ORDER BY k.revision",
		about, strings.ToLower(observer))
}
