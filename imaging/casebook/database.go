package casebook

import (
	"database/sql"
	"errors"
	"fmt"
	"io/fs"
	"net/url"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"syscall"

	"modernc.org/sqlite"
	sqlite3 "modernc.org/sqlite/lib"
)

// openDatabase opens the database at path. One connection serves all, so that
// what is asked next sees what was written last.
func openDatabase(path string, readOnly bool) (*sql.DB, error) {
	absolute, err := filepath.Abs(path)
	if err != nil {
		return nil, err
	}
	slashed := filepath.ToSlash(absolute)
	if !strings.HasPrefix(slashed, "/") {
		slashed = "/" + slashed
	}
	options := "?_pragma=busy_timeout(5000)&_pragma=foreign_keys(1)&_txlock=immediate"
	if readOnly {
		options += "&mode=ro&_pragma=query_only(1)"
	} else {
		options += "&_pragma=journal_mode(delete)&_pragma=synchronous(extra)"
	}
	db, err := sql.Open("sqlite", "file://"+(&url.URL{Path: slashed}).EscapedPath()+options)
	if err != nil {
		return nil, err
	}
	db.SetMaxOpenConns(1)
	if err := db.Ping(); err != nil {
		return nil, errors.Join(plain("the casebook can't be opened", err), db.Close())
	}
	return db, nil
}

// change does work in one transaction: all of it or nothing.
func (b *Casebook) change(what string, work func(*sql.Tx) error) error {
	if err := b.mayWrite(); err != nil {
		return err
	}
	tx, err := b.db.Begin()
	if err != nil {
		return plain(what, err)
	}
	if err := work(tx); err != nil {
		_ = tx.Rollback() // the work's own error says what went wrong
		return plain(what, err)
	}
	return plain(what, tx.Commit())
}

// rows collects what a query gives.
func rows[T any](q querier, read func(scan func(...any) error) (T, error), query string, args ...any) (out []T, err error) {
	found, err := q.Query(query, args...)
	if err != nil {
		return nil, plain("the casebook can't be read", err)
	}
	defer func() { err = errors.Join(err, found.Close()) }()
	for found.Next() {
		v, err := read(found.Scan)
		if err != nil {
			return nil, plain("the casebook can't be read", err)
		}
		out = append(out, v)
	}
	return out, plain("the casebook can't be read", found.Err())
}

type querier interface {
	Query(query string, args ...any) (*sql.Rows, error)
}

func text(scan func(...any) error) (s string, err error) { return s, scan(&s) }

// plain says in plain words what could not be done, why, and how to mend it.
func plain(what string, err error) error {
	var told *refusal
	var db *sqlite.Error
	switch {
	case err == nil:
		return nil
	case errors.As(err, &told):
		return err
	case fullDisk(err):
		return fmt.Errorf("%s: the disk is full; nothing is lost: make space and do it again", what)
	case errors.Is(err, fs.ErrPermission):
		return fmt.Errorf("%s: it is not allowed there; ask for the right to write, or choose another folder", what)
	}
	if errors.As(err, &db) {
		switch db.Code() & 0xff {
		case sqlite3.SQLITE_READONLY, sqlite3.SQLITE_CANTOPEN:
			return fmt.Errorf("%s: %s", what, notWritable)
		case sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED:
			return fmt.Errorf("%s: another window is writing; try again in a moment", what)
		case sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB:
			return fmt.Errorf("%s: its database is damaged; put back %s from your last backup, the photographs can stay", what, DatabaseName)
		}
	}
	var path *os.PathError
	if errors.As(err, &path) {
		err = path.Err
	}
	return fmt.Errorf("%s: %w", what, err)
}

// fullDisk reports whether there is no space left.
func fullDisk(err error) bool {
	var db *sqlite.Error
	if errors.As(err, &db) && db.Code()&0xff == sqlite3.SQLITE_FULL {
		return true
	}
	if runtime.GOOS == "windows" {
		return errors.Is(err, syscall.Errno(112)) || errors.Is(err, syscall.Errno(39)) // ERROR_DISK_FULL, ERROR_HANDLE_DISK_FULL
	}
	return errors.Is(err, syscall.ENOSPC)
}

// refusal is an input that is not accepted; its text says all there is to say.
type refusal struct{ text string }

func (r *refusal) Error() string { return r.text }

func refuse(format string, args ...any) error { return &refusal{fmt.Sprintf(format, args...)} }
