package casebook

import (
	"database/sql"
	"errors"
	"strings"
)

// Marked is the latest marks of one observer on one photograph, and the reading
// that is kept of them. Package readings computes and keeps them.
type Marked struct {
	Case, Sitting, Photograph int64
	Observer                  string
	// Reading is empty where none is kept that was computed in the way asked for.
	Reading string
}

// Marked is the latest marks in a case, or for 0 in all cases, by case, date,
// photograph and observer, with the readings that were computed in that way.
func (b *Casebook) Marked(caseID int64, way string) ([]Marked, error) {
	return rows(b.db, func(scan func(...any) error) (m Marked, err error) {
		return m, scan(&m.Case, &m.Sitting, &m.Photograph, &m.Observer, &m.Reading)
	}, `SELECT s.case_id,s.id,p.id,o.name,coalesce(r.text,'')
		FROM (SELECT DISTINCT photograph,observer FROM marks) m
		JOIN photographs p ON p.id=m.photograph JOIN sittings s ON s.id=p.sitting JOIN observers o ON o.id=m.observer
		LEFT JOIN readings r ON r.photograph=m.photograph AND r.observer=m.observer AND r.way=?1
		WHERE ?2=0 OR s.case_id=?2 ORDER BY s.case_id,s.date,p.id,o.key`, way, caseID)
}

// NewReading is what marks come to.
type NewReading struct {
	Photograph int64
	Observer   string
	Marks      string // the text of the marks that it was computed from
	Text       string
}

// KeepReadings keeps readings that were computed in the given way, in the place
// of older ones. One whose marks have been changed meanwhile is passed over: a
// reading always belongs to the latest marks.
func (b *Casebook) KeepReadings(way string, all ...NewReading) error {
	return b.change("the readings can't be kept", func(tx *sql.Tx) error {
		for _, r := range all {
			if err := keepReading(tx, way, r); err != nil {
				return err
			}
		}
		return nil
	})
}

func keepReading(tx *sql.Tx, way string, r NewReading) error {
	var observer int64
	var marks string
	err := tx.QueryRow(`SELECT o.id,m.text FROM marks m JOIN observers o ON m.observer=o.id
		WHERE m.photograph=? AND o.key=? ORDER BY m.revision DESC LIMIT 1`, r.Photograph, strings.ToLower(r.Observer)).Scan(&observer, &marks)
	if errors.Is(err, sql.ErrNoRows) || err == nil && marks != r.Marks {
		return nil
	}
	if err != nil {
		return err
	}
	_, err = tx.Exec("INSERT OR REPLACE INTO readings(photograph,observer,marks,way,text) VALUES(?,?,?,?,?)", r.Photograph, observer, hashOf([]byte(marks)), way, r.Text)
	return err
}

// KeptReading is the reading of an observer's latest marks on a photograph that
// was computed in that way; false if none is kept.
func (b *Casebook) KeptReading(photograph int64, observer, way string) (text string, ok bool, err error) {
	err = b.db.QueryRow(`SELECT r.text FROM readings r JOIN observers o ON r.observer=o.id WHERE r.photograph=? AND o.key=? AND r.way=?`,
		photograph, strings.ToLower(observer), way).Scan(&text)
	if errors.Is(err, sql.ErrNoRows) {
		return "", false, nil
	}
	return text, err == nil, plain("the reading can't be read", err)
}

// MarksText is the latest marks as they are kept; false if there are none.
func (b *Casebook) MarksText(photograph int64, observer string) (string, bool, error) {
	return b.latest(keptMarks, photograph, observer)
}

// forgetStrays forgets readings of other marks than the latest, such as another
// program's hand in the database may leave.
func (b *Casebook) forgetStrays() error {
	type reading struct {
		id    int64
		stray bool
	}
	all, err := rows(b.db, func(scan func(...any) error) (r reading, err error) {
		var hash, marks string
		err = scan(&r.id, &hash, &marks)
		r.stray = hash != hashOf([]byte(marks))
		return r, err
	}, `SELECT r.id,r.marks,coalesce((SELECT text FROM marks m WHERE m.photograph=r.photograph AND m.observer=r.observer ORDER BY m.revision DESC LIMIT 1),'') FROM readings r`)
	if err != nil || b.readOnly != "" {
		return err
	}
	return b.change("a reading of other marks can't be forgotten", func(tx *sql.Tx) error {
		for _, r := range all {
			if !r.stray {
				continue
			}
			if _, err := tx.Exec("DELETE FROM readings WHERE id=?", r.id); err != nil {
				return err
			}
		}
		return nil
	})
}
