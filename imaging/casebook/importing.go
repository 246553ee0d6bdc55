package casebook

import (
	"context"
	"crypto/sha256"
	"database/sql"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"ogive/geometry/hand"
	"ogive/imaging/casebook/strip"
	"ogive/imaging/photo"
	"ogive/imaging/wholefile"
)

// Item is a photograph to bring in. Hand and view may be said later.
type Item struct {
	Path string
	Hand hand.Side
	View hand.View
	// Date is the day it was taken; empty: as the photograph itself says.
	Date Date
}

// Result is what became of an item. Exactly one of Photograph, Twice and Err is
// set.
type Result struct {
	Item       Item
	Photograph int64
	Twice      *Place // where the same photograph is already
	Err        error
}

// Place is where a photograph is in the casebook.
type Place struct {
	Photograph int64
	Case       string // its code
	Date       Date
}

// Import brings photographs into a case, each on its own: one that can't be
// read does not stop the others. After each, progress (which may be nil) is
// called with how many of all are done. When ctx ends, what is in stays in, and
// the results are those so far.
func (b *Casebook) Import(ctx context.Context, caseID int64, items []Item, progress func(done, all int, r Result)) ([]Result, error) {
	if err := b.mayWrite(); err != nil {
		return nil, err
	}
	c, err := b.Case(caseID)
	if err != nil {
		return nil, err
	}
	var out []Result
	for i, it := range items {
		if err := ctx.Err(); err != nil {
			return out, err
		}
		r := b.importOne(c, it)
		out = append(out, r)
		if progress != nil {
			progress(i+1, len(items), r)
		}
	}
	return out, nil
}

func (b *Casebook) importOne(c Case, it Item) Result {
	r := Result{Item: it}
	name := filepath.Base(it.Path)
	data, err := readOriginal(it.Path)
	if err != nil {
		r.Err = fmt.Errorf("%s %w", name, err)
		return r
	}
	original := hashOf(data)
	if r.Twice, r.Err = b.find(original); r.Twice != nil || r.Err != nil {
		return r
	}
	clean, err := strip.Photograph(data)
	if err != nil {
		r.Err = fmt.Errorf("%s %w", name, err)
		return r
	}
	facts := clean.Picture.Facts()
	if it.Date == "" {
		it.Date = DateOf(facts.Taken)
	}
	if it.Date == "" {
		r.Err = fmt.Errorf("%s %w", name, errNoDate)
		return r
	}
	if _, r.Err = ParseDate(string(it.Date)); r.Err != nil {
		return r
	}
	size := clean.Picture.Size()
	p := Photograph{Date: it.Date, Hash: hashOf(clean.Data), Extension: clean.Extension, Taken: stamp(facts.Taken),
		Camera: facts.Camera, Width: size.X, Height: size.Y}
	if it.Hand == hand.Left || it.Hand == hand.Right {
		p.Hand = it.Hand.String()
	}
	if it.View == hand.Dorsal || it.View == hand.Palmar || it.View == hand.WebView {
		p.View = it.View.String()
	}
	if r.Twice, r.Err = b.find(p.Hash); r.Twice != nil || r.Err != nil {
		return r
	}
	if r.Photograph, r.Err = b.keep(c, p, original, clean); r.Err != nil {
		r.Err = fmt.Errorf("%s: %w", name, r.Err)
	}
	return r
}

func readOriginal(path string) ([]byte, error) {
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, errors.New("is not there; check the name and the folder")
	case err != nil:
		return nil, errors.New("can't be read; check that you may read it")
	case !info.Mode().IsRegular():
		return nil, errors.New("is not a file; give the name of a photograph")
	case info.Size() > photo.MaxFileSize:
		return nil, fmt.Errorf("is larger than %d MB; export it as JPEG", photo.MaxFileSize>>20)
	}
	return os.ReadFile(path)
}

func hashOf(data []byte) string {
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:])
}

// find is where the photograph with that hash, of the copy or of the original,
// is already; nil if nowhere.
func (b *Casebook) find(hash string) (*Place, error) {
	var p Place
	err := b.db.QueryRow(`SELECT p.id,c.code,s.date FROM photographs p JOIN sittings s ON p.sitting=s.id JOIN cases c ON s.case_id=c.id
		WHERE p.hash=?1 OR p.original=?1 LIMIT 1`, hash).Scan(&p.Photograph, &p.Case, &p.Date)
	switch {
	case errors.Is(err, sql.ErrNoRows):
		return nil, nil
	case err != nil:
		return nil, plain("the casebook can't be read", err)
	}
	return &p, nil
}

// keep writes the copy and then lets the database know of it.
func (b *Casebook) keep(c Case, p Photograph, original string, clean strip.Clean) (id int64, err error) {
	b.writing.Lock()
	defer b.writing.Unlock()
	const what = "the photograph can't be kept"
	err = b.change(what, func(tx *sql.Tx) error {
		_, err := tx.Exec("INSERT OR IGNORE INTO intents(hash) VALUES(?)", p.Hash)
		return err
	})
	if err != nil {
		return 0, err
	}
	if err := b.writeFiles(p, clean); err != nil {
		return 0, errors.Join(plain(what, err), b.fulfil([]string{p.Hash}))
	}
	err = b.change(what, func(tx *sql.Tx) error {
		if id, err = insertPhotograph(tx, c, p, original); err != nil {
			return err
		}
		_, err = tx.Exec("DELETE FROM intents WHERE hash=?", p.Hash)
		return err
	})
	if err != nil {
		return 0, errors.Join(err, b.fulfil([]string{p.Hash}))
	}
	return id, nil
}

func (b *Casebook) writeFiles(p Photograph, clean strip.Clean) error {
	if err := wholefile.Write(b.Path(p), clean.Data); err != nil {
		return err
	}
	small, err := thumbnail(clean.Picture)
	if err != nil {
		return err
	}
	return wholefile.Write(b.path(thumbsName, p.Hash+".jpg"), small)
}

func insertPhotograph(tx *sql.Tx, c Case, p Photograph, original string) (int64, error) {
	_, err := tx.Exec("INSERT OR IGNORE INTO sittings(case_id,date,stage) VALUES(?,?,?)", c.ID, p.Date, c.stageOn(p.Date))
	if err != nil {
		return 0, err
	}
	done, err := tx.Exec(`INSERT INTO photographs(sitting,hash,original,ext,hand,view,taken,camera,width,height)
		SELECT id,?,?,?,?,?,?,?,?,? FROM sittings WHERE case_id=? AND date=?`,
		p.Hash, original, p.Extension, p.Hand, p.View, p.Taken, p.Camera, p.Width, p.Height, c.ID, p.Date)
	if err != nil {
		return 0, err
	}
	return done.LastInsertId()
}
