package casebook

import (
	"fmt"
	"time"

	"ogive/imaging/appraisal"
)

// Appraised is the latest appraisal of one observer at one sitting.
type Appraised struct {
	Sitting   int64
	Date      Date
	Appraisal appraisal.Appraisal
}

// SaveAppraisal keeps what a.Observer found at a sitting. Revisions are as with
// SaveMarks. Free text that could tell who the patient is is refused.
func (b *Casebook) SaveAppraisal(sitting int64, a appraisal.Appraisal) error {
	if _, err := b.Sitting(sitting); err != nil {
		return err
	}
	text, err := encodeAppraisal(a)
	if err != nil {
		return err
	}
	return b.save(keptAppraisals, sitting, a.Observer, text)
}

func encodeAppraisal(a appraisal.Appraisal) (string, error) {
	for _, t := range a.Texts() {
		if err := checkRemark("the appraisal", t); err != nil {
			return "", err
		}
	}
	data, err := a.Encode()
	if err != nil {
		return "", refuse("the appraisal can't be kept: %v", err)
	}
	return string(data), nil
}

const latestAppraisals = `SELECT s.id,s.date,o.name,a.saved,a.text FROM appraisals a JOIN sittings s ON a.sitting=s.id JOIN observers o ON a.observer=o.id
	WHERE a.revision=(SELECT max(revision) FROM appraisals l WHERE l.sitting=a.sitting AND l.observer=a.observer)`

// Appraisals is the latest appraisals of a case, by date and observer.
func (b *Casebook) Appraisals(caseID int64) ([]Appraised, error) {
	return rows(b.db, scanAppraised, latestAppraisals+" AND s.case_id=? ORDER BY s.date,o.key", caseID)
}

// AppraisalHistory is all revisions of an observer's appraisal at a sitting,
// oldest first, each in the form of package appraisal.
func (b *Casebook) AppraisalHistory(sitting int64, observer string) ([]Revision, error) {
	return b.history(keptAppraisals, sitting, observer)
}

func scanAppraised(scan func(...any) error) (a Appraised, err error) {
	var observer, saved, text string
	if err = scan(&a.Sitting, &a.Date, &observer, &saved, &text); err != nil {
		return a, err
	}
	if a.Appraisal, err = appraisal.Parse([]byte(text)); err != nil {
		return a, refuse("the appraisal of %s on %s: %v", observer, a.Date, err)
	}
	a.Appraisal.Observer = observer
	if a.Appraisal.Saved, err = time.Parse(time.RFC3339, saved); err != nil {
		return a, fmt.Errorf("the appraisal of %s on %s has no proper time: %w", observer, a.Date, err)
	}
	return a, nil
}
