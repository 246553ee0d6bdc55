// Package casebook keeps cases over years: a folder with one SQLite database and
// the photographs as files named by their SHA-256.
//
//	book, err := casebook.Open(folder) // made if it is not there
//	defer book.Close()
//	if book.ReadOnly() != "" { ... }   // another window has it, or the folder can't be written
//	id, err := book.AddCase(casebook.Case{Code: "S-012", Hand: casebook.LeftHand})
//	results, err := book.Import(ctx, id, []casebook.Item{{Path: "a.jpg"}}, progress)
//	photographs, err := book.Photographs(id)
//	err = book.SaveMarks(photographs[0].ID, "observer", marks)
//	err = book.SavePlan(photographs[0].ID, "observer", plan)
//	err = book.SaveAppraisal(photographs[0].Sitting, appraisal)
//	err = book.Export(id, "S-012.zip", passphrase)
//
// When a method returns without error, what it did is on the disk: a program
// killed at any moment opens the casebook again with it. A file is written
// before the database names it and removed after the database has forgotten it;
// an intent noted before either tells, after a crash, what to sweep away.
//
// The database uses a rollback journal, not a write-ahead log: folders on a
// hospital's file server work, and between two gestures the casebook is one file
// and its photographs, whole for any backup.
package casebook

import (
	"database/sql"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"sync"

	"github.com/gofrs/flock"
)

// DatabaseName is the database's file in the casebook's folder.
const DatabaseName = "casebook.sqlite"

const (
	lockName   = "casebook.lock"
	photosName = "photographs"
	thumbsName = "thumbnails"
	asideName  = "unclaimed"
)

// Casebook is an open casebook. Its methods may be called by several goroutines.
type Casebook struct {
	folder   string
	db       *sql.DB
	lock     *flock.Flock
	readOnly string
	findings Findings
	writing  sync.Mutex // one import or removal of files at a time
	// opened tells revisions: each opening of the casebook begins a new one.
	opened  map[revised]bool
	opening sync.Mutex
}

// Open opens the casebook in folder and makes it if it is not there. If another
// window has it open, or the folder can't be written to, it is opened for
// reading only and ReadOnly says why. A casebook of a later program is refused
// and not touched.
func Open(folder string) (*Casebook, error) {
	return open(folder, migrations)
}

func open(folder string, steps fs.FS) (*Casebook, error) {
	plan, err := readSteps(steps)
	if err != nil {
		return nil, err
	}
	b := &Casebook{folder: folder, opened: map[revised]bool{}}
	if err := plan.check(b.path(DatabaseName)); err != nil {
		return nil, err
	}
	unclean, err := b.takeLock()
	if err != nil {
		return nil, err
	}
	if err := b.start(plan, unclean); err != nil {
		return nil, errors.Join(err, b.Close())
	}
	return b, nil
}

func (b *Casebook) path(parts ...string) string {
	return filepath.Join(append([]string{b.folder}, parts...)...)
}

// start opens the database, brings it to the present form and sweeps.
func (b *Casebook) start(plan steps, unclean bool) error {
	var err error
	if b.db, err = openDatabase(b.path(DatabaseName), b.readOnly != ""); err != nil {
		return err
	}
	if b.readOnly != "" {
		return plan.present(b.db)
	}
	if unclean {
		if err := b.intact(); err != nil {
			return err
		}
	}
	if err := plan.run(b.db); err != nil {
		return err
	}
	for _, name := range []string{photosName, thumbsName} {
		if err := os.MkdirAll(b.path(name), 0o777); err != nil {
			return plain("the casebook's folder can't be made", err)
		}
	}
	return b.sweep()
}

// ReadOnly is empty if the casebook may be written to, else a sentence that says
// why not.
func (b *Casebook) ReadOnly() string { return b.readOnly }

// Folder is where the casebook lies.
func (b *Casebook) Folder() string { return b.folder }

// Findings is what was found and mended when the casebook was opened.
func (b *Casebook) Findings() Findings { return b.findings }

// Close ends the work. Everything is on the disk before.
func (b *Casebook) Close() error {
	var errs []error
	if b.db != nil {
		errs = append(errs, b.db.Close())
	}
	if b.lock != nil {
		if len(errs) == 0 || errs[0] == nil {
			errs = append(errs, os.Truncate(b.path(lockName), 0))
		}
		errs = append(errs, b.lock.Unlock())
	}
	if err := errors.Join(errs...); err != nil {
		return fmt.Errorf("the casebook could not be closed cleanly: %w", err)
	}
	return nil
}

// mayWrite is an error if the casebook is open for reading only.
func (b *Casebook) mayWrite() error {
	if b.readOnly != "" {
		return fmt.Errorf("nothing was changed: %s", b.readOnly)
	}
	return nil
}
