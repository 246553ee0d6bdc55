package casebook

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"os"
	"strings"
)

// Findings is what was found in the casebook's folder when it was opened.
type Findings struct {
	// Swept are files that an import or a removal cut short left behind; they
	// were removed.
	Swept []string
	// Unclaimed are photographs that the database does not know, as after an
	// older database was put back. They were moved to the folder "unclaimed".
	Unclaimed []string
	// Missing are photographs whose files are gone. Their marks are kept; put
	// the files back from a backup.
	Missing []string
}

// ownFile is the hash that a file of the casebook's own is named by, and whether
// it is one: 64 hexadecimal digits, a dot and an ending. There may be tens of
// thousands.
func ownFile(name string) (hash string, ok bool) {
	hash, ending, dotted := strings.Cut(name, ".")
	return hash, dotted && len(hash) == 64 && consistsOf(hash, "0123456789abcdef") && ending != "" && consistsOf(ending, "abcdefghijklmnopqrstuvwxyz")
}

func consistsOf(s, letters string) bool {
	for i := range len(s) {
		if strings.IndexByte(letters, s[i]) < 0 {
			return false
		}
	}
	return true
}

// sweep brings files and database into accord.
func (b *Casebook) sweep() error {
	known, err := rows(b.db, text, "SELECT hash FROM photographs")
	if err != nil {
		return err
	}
	intended, err := rows(b.db, text, "SELECT hash FROM intents")
	if err != nil {
		return err
	}
	lacking, claimed, doomed := set(known), set(known), set(intended)
	for _, folder := range []string{photosName, thumbsName} {
		entries, err := os.ReadDir(b.path(folder))
		if err != nil {
			return plain("the casebook's folder can't be read", err)
		}
		for _, e := range entries {
			name := e.Name()
			hash, own := ownFile(name)
			switch {
			case strings.HasPrefix(name, ".") && strings.HasSuffix(name, ".part"):
				err = b.sweepAway(folder, name)
			case !own:
			case claimed[hash]:
				if folder == photosName {
					delete(lacking, hash)
				}
			case doomed[hash] || folder == thumbsName:
				err = b.sweepAway(folder, name)
			default:
				err = b.putAside(name)
			}
			if err != nil {
				return err
			}
		}
	}
	for _, h := range known {
		if lacking[h] {
			b.findings.Missing = append(b.findings.Missing, h)
		}
	}
	if len(intended) == 0 {
		return nil
	}
	return b.change("the casebook can't be tidied", func(tx *sql.Tx) error {
		_, err := tx.Exec("DELETE FROM intents")
		return err
	})
}

func (b *Casebook) sweepAway(folder, name string) error {
	b.findings.Swept = append(b.findings.Swept, folder+"/"+name)
	return plain("a file left behind can't be removed", os.Remove(b.path(folder, name)))
}

func (b *Casebook) putAside(name string) error {
	b.findings.Unclaimed = append(b.findings.Unclaimed, name)
	if err := os.MkdirAll(b.path(asideName), 0o777); err != nil {
		return plain("an unclaimed photograph can't be put aside", err)
	}
	return plain("an unclaimed photograph can't be put aside", os.Rename(b.path(photosName, name), b.path(asideName, name)))
}

// fulfil removes the files of photographs that the database does not know, and
// the intents.
func (b *Casebook) fulfil(hashes []string) error {
	for _, h := range hashes {
		for _, path := range []string{
			b.path(photosName, h+".jpg"), b.path(photosName, h+".png"), b.path(photosName, h+".webp"), b.path(photosName, h+".heic"),
			b.path(thumbsName, h+".jpg"),
		} {
			if err := os.Remove(path); err != nil && !errors.Is(err, os.ErrNotExist) {
				return plain("a photograph's file can't be removed; it goes when the casebook is next opened", err)
			}
		}
	}
	return b.change("the casebook can't be tidied", func(tx *sql.Tx) error {
		for _, h := range hashes {
			if _, err := tx.Exec("DELETE FROM intents WHERE hash=?", h); err != nil {
				return err
			}
		}
		return nil
	})
}

func set(all []string) map[string]bool {
	out := make(map[string]bool, len(all))
	for _, v := range all {
		out[v] = true
	}
	return out
}

// intact checks the whole database.
func (b *Casebook) intact() error {
	said, err := rows(b.db, text, "PRAGMA integrity_check(3)")
	if err != nil {
		return err
	}
	if len(said) != 1 || said[0] != "ok" {
		return refuse("the casebook's database is damaged (%s); put back %s from your last backup, the photographs can stay", strings.Join(said, ", "), DatabaseName)
	}
	return nil
}

// Check looks at everything: the database, every kept reading against the marks
// it was computed from, and every photograph's file against its hash. It takes as
// long as reading all files does. A reading of other marks is forgotten.
func (b *Casebook) Check(ctx context.Context) error {
	if err := b.intact(); err != nil {
		return err
	}
	var broken int
	if err := b.db.QueryRow("SELECT count(*) FROM pragma_foreign_key_check").Scan(&broken); err != nil {
		return plain("the casebook can't be read", err)
	}
	if broken > 0 {
		return refuse("the casebook's database is damaged (%d entries belong to nothing); put back %s from your last backup", broken, DatabaseName)
	}
	if err := b.forgetStrays(); err != nil {
		return err
	}
	all, err := rows(b.db, scanPhotograph, "SELECT "+photographFields+" ORDER BY p.id")
	if err != nil {
		return err
	}
	for _, p := range all {
		if err := ctx.Err(); err != nil {
			return err
		}
		data, err := os.ReadFile(b.Path(p))
		if err != nil {
			return fmt.Errorf("%s can't be read: %w; put it back from a backup", p.File(), err)
		}
		if hashOf(data) != p.Hash {
			return refuse("%s is not what it was when it came in; put it back from a backup", p.File())
		}
	}
	return nil
}
