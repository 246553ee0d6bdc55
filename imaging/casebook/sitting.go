package casebook

import (
	"database/sql"
	"errors"
)

// Stage is what a sitting is to the operation.
type Stage string

// Stages of a case.
const (
	Before      Stage = "before"
	AtOperation Stage = "operation"
	FollowUp    Stage = "follow-up"
)

func (s Stage) check() error {
	if s != Before && s != AtOperation && s != FollowUp {
		return refuse("%.40q is no stage; give before, operation or follow-up", string(s))
	}
	return nil
}

// stageOn is the stage of a day, by the first operation.
func (c Case) stageOn(d Date) Stage {
	switch op := c.Operated(); {
	case op == "" || d < op:
		return Before
	case d == op:
		return AtOperation
	}
	return FollowUp
}

// Sitting is one day of photographs, or of an appraisal without any.
type Sitting struct {
	ID    int64
	Date  Date
	Stage Stage
	Note  string
}

const sittingFields = "id,date,stage,note FROM sittings"

func scanSitting(scan func(...any) error) (s Sitting, err error) {
	return s, scan(&s.ID, &s.Date, &s.Stage, &s.Note)
}

// Sittings is the sittings of a case by date.
func (b *Casebook) Sittings(caseID int64) ([]Sitting, error) {
	return rows(b.db, scanSitting, "SELECT "+sittingFields+" WHERE case_id=? ORDER BY date", caseID)
}

// Sitting is one sitting.
func (b *Casebook) Sitting(id int64) (Sitting, error) {
	found, err := rows(b.db, scanSitting, "SELECT "+sittingFields+" WHERE id=?", id)
	if err == nil && len(found) == 0 {
		err = refuse("the sitting is not in this casebook any more; choose another")
	}
	if err != nil {
		return Sitting{}, err
	}
	return found[0], nil
}

// AddSitting adds a sitting without photographs, such as one with an appraisal
// alone, and gives its ID; that of the sitting which is there on that day, if
// there is one.
func (b *Casebook) AddSitting(caseID int64, d Date) (id int64, err error) {
	if err := properDay(d); err != nil {
		return 0, err
	}
	c, err := b.Case(caseID)
	if err != nil {
		return 0, err
	}
	err = b.change("the sitting can't be added", func(tx *sql.Tx) error {
		if _, err := tx.Exec("INSERT OR IGNORE INTO sittings(case_id,date,stage) VALUES(?,?,?)", c.ID, d, c.stageOn(d)); err != nil {
			return err
		}
		return tx.QueryRow("SELECT id FROM sittings WHERE case_id=? AND date=?", c.ID, d).Scan(&id)
	})
	return id, err
}

// RemoveSitting removes a sitting that holds no photographs, with its appraisals.
func (b *Casebook) RemoveSitting(sitting int64) error {
	return b.change("the sitting can't be removed", func(tx *sql.Tx) error {
		var photographs int
		if err := tx.QueryRow("SELECT count(*) FROM photographs WHERE sitting=?", sitting).Scan(&photographs); err != nil {
			return err
		}
		if photographs > 0 {
			return refuse("the sitting holds photographs (%d); remove them first", photographs)
		}
		_, err := tx.Exec("DELETE FROM sittings WHERE id=?", sitting)
		return err
	})
}

// SetStage corrects what a sitting is to the operation.
func (b *Casebook) SetStage(sitting int64, s Stage) error {
	if err := s.check(); err != nil {
		return err
	}
	return b.setOfSitting(sitting, "stage", string(s))
}

// SetSittingNote keeps a note on a sitting.
func (b *Casebook) SetSittingNote(sitting int64, note string) error {
	if err := checkRemark("the note", note); err != nil {
		return err
	}
	return b.setOfSitting(sitting, "note", note)
}

func (b *Casebook) setOfSitting(sitting int64, column, value string) error {
	return b.change("the sitting can't be changed", func(tx *sql.Tx) error {
		done, err := tx.Exec("UPDATE sittings SET "+column+"=? WHERE id=?", value, sitting)
		if err != nil {
			return err
		}
		if n, err := done.RowsAffected(); err != nil || n == 0 {
			return errors.Join(refuse("the sitting is not in this casebook any more; choose another"), err)
		}
		return nil
	})
}

// SetSittingDate corrects the day of a sitting, with its photographs. Its stage
// follows, unless it was set by hand. A day that has a sitting already is
// refused: two sittings can't be taken apart again once they are joined.
func (b *Casebook) SetSittingDate(sitting int64, d Date) error {
	if err := properDay(d); err != nil {
		return err
	}
	s, err := b.Sitting(sitting)
	if err != nil {
		return err
	}
	var caseID int64
	if err := b.db.QueryRow("SELECT case_id FROM sittings WHERE id=?", sitting).Scan(&caseID); err != nil {
		return plain("the casebook can't be read", err)
	}
	c, err := b.Case(caseID)
	if err != nil {
		return err
	}
	if s.Stage == c.stageOn(s.Date) {
		s.Stage = c.stageOn(d)
	}
	return b.change("the sitting can't be changed", func(tx *sql.Tx) error {
		var there int
		if err := tx.QueryRow("SELECT count(*) FROM sittings WHERE case_id=? AND date=? AND id<>?", caseID, d, sitting).Scan(&there); err != nil {
			return err
		}
		if there > 0 {
			return refuse("this case has a sitting on %s already, and the two would become one; give another day, or remove this sitting's photographs and import them for that day", d)
		}
		_, err := tx.Exec("UPDATE sittings SET date=?,stage=? WHERE id=?", d, s.Stage, sitting)
		return err
	})
}

func properDay(d Date) error {
	if _, err := ParseDate(string(d)); err != nil {
		return err
	}
	if d == "" {
		return refuse("a sitting has no date; write it as 2026-03-01")
	}
	return nil
}
