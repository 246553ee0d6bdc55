package casebook

import (
	"bytes"
	"database/sql"
	"errors"
	"image"
	"image/jpeg"
	"os"
	"path/filepath"
	"time"

	"golang.org/x/image/draw"

	"ogive/geometry/hand"
	"ogive/imaging/photo"
	"ogive/imaging/wholefile"
)

// Photograph is one photograph of a case. Hand and View are empty until they
// are said.
type Photograph struct {
	ID, Sitting int64
	Date        Date // of its sitting
	Hash        string
	Extension   string
	Hand, View  string
	Taken       string // RFC 3339, empty if unknown
	Camera      string
	Width       int // upright
	Height      int
}

// File is the photograph's file as seen from the casebook's folder, with slashes.
func (p Photograph) File() string { return photosName + "/" + p.Hash + "." + p.Extension }

const photographFields = "p.id,p.sitting,s.date,p.hash,p.ext,p.hand,p.view,p.taken,p.camera,p.width,p.height FROM photographs p JOIN sittings s ON p.sitting=s.id"

func scanPhotograph(scan func(...any) error) (p Photograph, err error) {
	return p, scan(&p.ID, &p.Sitting, &p.Date, &p.Hash, &p.Extension, &p.Hand, &p.View, &p.Taken, &p.Camera, &p.Width, &p.Height)
}

// Photographs is the photographs of a case by sitting, then in the order they
// came in.
func (b *Casebook) Photographs(caseID int64) ([]Photograph, error) {
	return rows(b.db, scanPhotograph, "SELECT "+photographFields+" WHERE s.case_id=? ORDER BY s.date,p.id", caseID)
}

// Photograph is one photograph.
func (b *Casebook) Photograph(id int64) (Photograph, error) {
	found, err := rows(b.db, scanPhotograph, "SELECT "+photographFields+" WHERE p.id=?", id)
	if err == nil && len(found) == 0 {
		err = refuse("the photograph is not in this casebook any more; choose another")
	}
	if err != nil {
		return Photograph{}, err
	}
	return found[0], nil
}

// Path is where the photograph's file lies.
func (b *Casebook) Path(p Photograph) string { return b.path(filepath.FromSlash(p.File())) }

// SetHandAndView says which hand a photograph shows, and how. It is refused once
// the photograph bears marks that say otherwise.
func (b *Casebook) SetHandAndView(photograph int64, side hand.Side, view hand.View) error {
	return b.change("hand and view can't be kept", func(tx *sql.Tx) error {
		var marked int
		err := tx.QueryRow(`SELECT count(*) FROM marks m JOIN photographs p ON m.photograph=p.id
			WHERE p.id=? AND (p.hand<>? OR p.view<>?)`, photograph, side.String(), view.String()).Scan(&marked)
		if err != nil {
			return err
		}
		if marked > 0 {
			return refuse("the photograph bears marks made for another hand or view; remove it and import it again to start anew")
		}
		_, err = tx.Exec("UPDATE photographs SET hand=?,view=? WHERE id=?", side.String(), view.String(), photograph)
		return err
	})
}

// RemovePhotograph removes a photograph and its marks for good.
func (b *Casebook) RemovePhotograph(id int64) error {
	return b.remove("the photograph can't be removed", "SELECT hash FROM photographs WHERE id=?", "DELETE FROM photographs WHERE id=?", id)
}

// remove forgets photographs and then removes their files.
func (b *Casebook) remove(what, hashes, deletion string, id int64) error {
	b.writing.Lock()
	defer b.writing.Unlock()
	gone, err := rows(b.db, text, hashes, id)
	if err != nil {
		return err
	}
	err = b.change(what, func(tx *sql.Tx) error {
		for _, h := range gone {
			if _, err := tx.Exec("INSERT OR IGNORE INTO intents(hash) VALUES(?)", h); err != nil {
				return err
			}
		}
		_, err := tx.Exec(deletion, id)
		return err
	})
	if err != nil {
		return err
	}
	return b.fulfil(gone)
}

// thumbnailSide is the longer side of a thumbnail in pixels.
const thumbnailSide = 320

// Thumbnail is a small upright picture of the photograph as JPEG. It is made
// anew where it is not there.
func (b *Casebook) Thumbnail(p Photograph) ([]byte, error) {
	data, err := os.ReadFile(b.path(thumbsName, p.Hash+".jpg"))
	if err == nil {
		return data, nil
	}
	picture, err := photo.Open(b.Path(p))
	if err != nil {
		return nil, err
	}
	if data, err = thumbnail(picture); err == nil && b.readOnly == "" {
		err = wholefile.Write(b.path(thumbsName, p.Hash+".jpg"), data)
	}
	return data, err
}

func thumbnail(p *photo.Photograph) ([]byte, error) {
	size := p.Size()
	longer := max(size.X, size.Y, thumbnailSide)
	small := image.NewRGBA(image.Rect(0, 0, max(1, size.X*thumbnailSide/longer), max(1, size.Y*thumbnailSide/longer)))
	whole := p.Picture()
	draw.BiLinear.Scale(small, small.Rect, whole, whole.Rect, draw.Src, nil)
	var out bytes.Buffer
	err := jpeg.Encode(&out, small, &jpeg.Options{Quality: 85})
	return out.Bytes(), err
}

func stamp(t time.Time) string {
	if t.IsZero() {
		return ""
	}
	return t.Format(time.RFC3339)
}

var errNoDate = errors.New("says no date; give the day it was taken")
