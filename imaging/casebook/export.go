package casebook

import (
	"archive/zip"
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"

	"filippo.io/age"
)

// Export writes one case to a new file: a zip of its photographs, all marks,
// plans and appraisals with their history, and manifest.json with the SHA-256 of
// each. With a
// passphrase the whole is encrypted (age-encryption.org/v1). A file that is
// there already is not replaced.
func (b *Casebook) Export(caseID int64, path, passphrase string) error {
	m, err := b.manifest(caseID)
	if err != nil {
		return err
	}
	if _, err := os.Lstat(path); err == nil {
		return refuse("%s is there already and was left as it is; choose another name", filepath.Base(path))
	}
	part, err := os.CreateTemp(filepath.Dir(path), ".case-*.part")
	if err != nil {
		return plain("the case can't be exported", err)
	}
	err = b.writeExport(part, m, passphrase)
	err = errors.Join(err, part.Close())
	if err == nil {
		err = os.Rename(part.Name(), path)
	}
	if err != nil {
		return errors.Join(plain("the case can't be exported", err), os.Remove(part.Name()))
	}
	return nil
}

func (b *Casebook) manifest(caseID int64) (m manifest, err error) {
	m.Form = exportForm
	c, err := b.Case(caseID)
	if err != nil {
		return m, err
	}
	m.Case = exportCase(c)
	sittings, err := b.Sittings(caseID)
	if err != nil {
		return m, err
	}
	for _, s := range sittings {
		m.Sittings = append(m.Sittings, exportedSitting{s.Date, s.Stage, s.Note})
	}
	m.Photographs, err = rows(b.db, func(scan func(...any) error) (e exportedPhoto, err error) {
		var ext string
		err = scan(&e.SHA256, &ext, &e.Original, &e.Date, &e.Hand, &e.View)
		e.File = Photograph{Hash: e.SHA256, Extension: ext}.File()
		return e, err
	}, "SELECT p.hash,p.ext,p.original,s.date,p.hand,p.view FROM photographs p JOIN sittings s ON p.sitting=s.id WHERE s.case_id=? ORDER BY s.date,p.id", caseID)
	if err != nil {
		return m, err
	}
	for _, part := range m.texts() {
		if *part.list, err = b.exportTexts(part.in, caseID); err != nil {
			return m, err
		}
		number(*part.list, part.in.table)
	}
	return m, nil
}

// part is the texts of one kind.
type part struct {
	in   kept
	list *[]exportedText
}

func (m *manifest) texts() []part {
	return []part{{keptMarks, &m.Marks}, {keptPlans, &m.Plans}, {keptAppraisals, &m.Appraisals}}
}

func (b *Casebook) exportTexts(in kept, caseID int64) ([]exportedText, error) {
	photograph, sitting, join := "p.hash", "''", "JOIN photographs p ON k.photograph=p.id JOIN sittings s ON p.sitting=s.id"
	if in.about == "sitting" {
		photograph, sitting, join = "''", "s.date", "JOIN sittings s ON k.sitting=s.id"
	}
	return rows(b.db, func(scan func(...any) error) (e exportedText, err error) {
		err = scan(&e.Photograph, &e.Sitting, &e.Observer, &e.Saved, &e.text)
		e.SHA256 = hashOf([]byte(e.text))
		return e, err
	}, "SELECT "+photograph+","+sitting+",o.name,k.saved,k.text FROM "+in.table+" k JOIN observers o ON k.observer=o.id "+join+
		" WHERE s.case_id=? ORDER BY k."+in.about+",o.key,k.revision", caseID)
}

func (b *Casebook) writeExport(part *os.File, m manifest, passphrase string) error {
	var to io.Writer = part
	finish := func() error { return nil }
	if passphrase != "" {
		key, err := age.NewScryptRecipient(passphrase)
		if err != nil {
			return err
		}
		sealed, err := age.Encrypt(part, key)
		if err != nil {
			return err
		}
		to, finish = sealed, sealed.Close
	}
	z := zip.NewWriter(to)
	about, err := json.MarshalIndent(m, "", "  ")
	if err != nil {
		return err
	}
	if err := addFile(z, "manifest.json", zip.Deflate, bytes.NewReader(about)); err != nil {
		return err
	}
	for _, part := range m.texts() {
		for _, e := range *part.list {
			if err := addFile(z, e.File, zip.Deflate, strings.NewReader(e.text)); err != nil {
				return err
			}
		}
	}
	for _, e := range m.Photographs {
		data, err := os.ReadFile(b.path(filepath.FromSlash(e.File)))
		if err != nil {
			return err
		}
		if hashOf(data) != e.SHA256 {
			return refuse("%s is not what it was when it came in; put it back from a backup before the case is exported", e.File)
		}
		if err := addFile(z, e.File, zip.Store, bytes.NewReader(data)); err != nil {
			return err
		}
	}
	return errors.Join(z.Close(), finish(), part.Sync())
}

func addFile(z *zip.Writer, name string, method uint16, from io.Reader) error {
	to, err := z.CreateHeader(&zip.FileHeader{Name: name, Method: method})
	if err != nil {
		return err
	}
	_, err = io.Copy(to, from)
	return err
}
