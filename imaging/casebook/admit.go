package casebook

import (
	"archive/zip"
	"database/sql"
	"fmt"
	"time"

	"ogive/imaging/appraisal"
	"ogive/imaging/casebook/strip"
	"ogive/imaging/marksfile"
)

// admitted is a photograph of an exported case whose file is in.
type admitted struct {
	exported exportedPhoto
	about    Photograph
}

// admitPhotograph keeps one photograph's file, and gives its hash once that is
// on the way to the disk. What it shows is asked of the picture itself.
func (b *Casebook) admitPhotograph(e exportedPhoto, files map[string]*zip.File) (p admitted, written []string, err error) {
	data, err := unpack(files, e.File, e.SHA256)
	if err != nil {
		return p, nil, err
	}
	clean, err := strip.Photograph(data)
	if err != nil {
		return p, nil, fmt.Errorf("%s %w", e.File, err)
	}
	facts, size := clean.Picture.Facts(), clean.Picture.Size()
	p = admitted{e, Photograph{Date: e.Date, Hash: hashOf(clean.Data), Extension: clean.Extension, Hand: e.Hand, View: e.View,
		Taken: stamp(facts.Taken), Camera: facts.Camera, Width: size.X, Height: size.Y}}
	for _, hash := range []string{e.SHA256, p.about.Hash, e.Original} {
		twice, err := b.find(hash)
		if err != nil {
			return p, nil, err
		}
		if twice != nil {
			return p, nil, refuse("a photograph of the exported case is in this casebook already, in case %s on %s; nothing was taken in or overwritten", twice.Case, twice.Date)
		}
	}
	err = b.change("the case can't be received", func(tx *sql.Tx) error {
		_, err := tx.Exec("INSERT OR IGNORE INTO intents(hash) VALUES(?)", p.about.Hash)
		return err
	})
	if err != nil {
		return p, nil, err
	}
	return p, []string{p.about.Hash}, plain("the case can't be received", b.writeFiles(p.about, clean))
}

// contents is what texts of an exported case can belong to.
type contents struct {
	photographs map[string]int64     // by their hash in the manifest
	files       map[string][2]string // named so in the manifest, and so here
	sittings    map[Date]int64
}

func insertContents(tx *sql.Tx, c Case, m manifest, photographs []admitted, files map[string]*zip.File) error {
	in := contents{map[string]int64{}, map[string][2]string{}, map[Date]int64{}}
	for _, s := range m.Sittings {
		if in.sittings[s.Date] != 0 {
			return refuse("the exported case has two sittings on %s; ask for a new copy", s.Date)
		}
		done, err := tx.Exec("INSERT INTO sittings(case_id,date,stage,note) VALUES(?,?,?,?)", c.ID, s.Date, s.Stage, s.Note)
		if err != nil {
			return err
		}
		if in.sittings[s.Date], err = done.LastInsertId(); err != nil {
			return err
		}
	}
	for _, p := range photographs {
		if in.photographs[p.exported.SHA256] != 0 {
			return refuse("the exported case names %s twice; ask for a new copy", p.exported.File)
		}
		id, err := insertPhotograph(tx, c, p.about, p.exported.Original)
		if err != nil {
			return err
		}
		in.photographs[p.exported.SHA256], in.files[p.exported.SHA256] = id, [2]string{p.exported.File, p.about.File()}
	}
	for _, part := range m.texts() {
		for _, e := range *part.list {
			if err := in.insert(tx, part.in, e, files); err != nil {
				return err
			}
		}
	}
	return nil
}

// insert takes one text in, once it is known to be sound.
func (in contents) insert(tx *sql.Tx, into kept, e exportedText, files map[string]*zip.File) error {
	data, err := unpack(files, e.File, e.SHA256)
	if err != nil {
		return err
	}
	text := string(data)
	about := in.photographs[e.Photograph]
	switch into {
	case keptMarks:
		text, err = in.marks(data, e)
	case keptPlans:
		err = checkPlan(text)
	case keptAppraisals:
		about = in.sittings[e.Sitting]
		var a appraisal.Appraisal
		if a, err = appraisal.Parse(data); err == nil {
			text, err = encodeAppraisal(a)
		}
	}
	if err != nil {
		return refuse("%s in the exported case: %v", e.File, err)
	}
	if about == 0 || checkObserver(e.Observer) != nil {
		return refuse("%s in the exported case belongs to nothing in it, or to no observer; ask for a new copy", e.File)
	}
	if _, err := time.Parse(time.RFC3339, e.Saved); err != nil {
		return refuse("%s in the exported case has no proper time; ask for a new copy", e.File)
	}
	return into.write(tx, about, e.Observer, e.Saved, text, false)
}

// marks is the text of marks, naming the photograph's file as it is named here:
// another program may have freed it of other facts than this one does.
func (in contents) marks(data []byte, e exportedText) (string, error) {
	f, err := marksfile.Parse(data)
	if err != nil {
		return "", err
	}
	name := in.files[e.Photograph]
	if f.Photograph != name[0] {
		return "", refuse("names another photograph than the table of contents; ask for a new copy")
	}
	if name[0] == name[1] {
		return string(data), nil
	}
	f.Photograph = name[1]
	again, err := f.Encode()
	return string(again), err
}
