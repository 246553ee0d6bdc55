package casebook

import (
	"database/sql"
	"errors"
	"os"
	"path/filepath"
)

// Is reports whether there is a casebook in folder, without opening it.
func Is(folder string) bool {
	info, err := os.Stat(filepath.Join(folder, DatabaseName))
	return err == nil && info.Mode().IsRegular()
}

// CaseOf is the case that a photograph belongs to.
func (b *Casebook) CaseOf(p Photograph) (Case, error) {
	var id int64
	err := b.db.QueryRow("SELECT case_id FROM sittings WHERE id=?", p.Sitting).Scan(&id)
	switch {
	case errors.Is(err, sql.ErrNoRows):
		return Case{}, refuse("the photograph is not in the casebook any more; choose another")
	case err != nil:
		return Case{}, plain("the case can't be read", err)
	}
	return b.Case(id)
}
