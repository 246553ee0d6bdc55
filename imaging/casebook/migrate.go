package casebook

import (
	"database/sql"
	"embed"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"
)

// migrations are numbered 0001.sql, 0002.sql and so on; a file that was ever
// released is never changed.
//
//go:embed migrations/*.sql
var migrations embed.FS

// applicationID marks the database as a casebook in its header ("OGIV").
const applicationID = 0x4f474956

// steps brings a database from form i to form i+1.
type steps []string

func readSteps(from fs.FS) (steps, error) {
	var out steps
	for {
		data, err := fs.ReadFile(from, path.Join("migrations", fmt.Sprintf("%04d.sql", len(out)+1)))
		if errors.Is(err, fs.ErrNotExist) {
			return out, nil
		}
		if err != nil {
			return nil, err
		}
		out = append(out, string(data))
	}
}

// check refuses what is no casebook and what a later program wrote, by the
// header of the file (SQLite database file format, 1.3): nothing is touched.
func (s steps) check(path string) (err error) {
	f, err := os.Open(path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return plain("the casebook can't be opened", err)
	}
	defer func() { err = errors.Join(err, f.Close()) }()
	var header [100]byte
	if n, err := io.ReadFull(f, header[:]); n == 0 && errors.Is(err, io.EOF) {
		return nil // made a moment before the program was killed
	} else if err != nil || string(header[:16]) != "SQLite format 3\x00" {
		return refuse("%s is no casebook or is damaged; choose another folder, or put back %s from your last backup", path, DatabaseName)
	}
	version, id := int(binary.BigEndian.Uint32(header[60:])), binary.BigEndian.Uint32(header[68:])
	switch {
	case id != applicationID && version > 0:
		return refuse("%s is the database of another program; choose another folder", path)
	case version > len(s):
		return refuse("this casebook was written by a later program (form %d, this program knows form %d) and was left as it is; use the later program", version, len(s))
	}
	return nil
}

// present refuses to read an older form where it can't be brought to the
// present one.
func (s steps) present(db *sql.DB) error {
	var version int
	if err := db.QueryRow("PRAGMA user_version").Scan(&version); err != nil {
		return plain("the casebook can't be opened", err)
	}
	if version < len(s) {
		return refuse("this casebook is of an older form and can't be brought up to date while it can't be written to; open it once where it can")
	}
	return nil
}

// run brings the database to the present form, each step whole or not at all.
func (s steps) run(db *sql.DB) error {
	const what = "the casebook can't be brought up to date"
	var version int
	if err := db.QueryRow("PRAGMA user_version").Scan(&version); err != nil {
		return plain(what, err)
	}
	for ; version < len(s); version++ {
		tx, err := db.Begin()
		if err != nil {
			return plain(what, err)
		}
		_, err = tx.Exec(s[version] + fmt.Sprintf(";PRAGMA application_id=%d;PRAGMA user_version=%d", applicationID, version+1))
		if err != nil {
			_ = tx.Rollback() // the step's own error says what went wrong
			return plain(what, err)
		}
		if err := tx.Commit(); err != nil {
			return plain(what, err)
		}
	}
	return nil
}
