package casebook

import (
	"archive/zip"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"filippo.io/age"
)

// exportForm is the form of exported cases that this program writes and reads.
const exportForm = 1

// manifest is the table of contents of an exported case.
type manifest struct {
	Form        int             `json:"ogive_case"`
	Case        Case            `json:"case"`
	Sittings    []Sitting       `json:"sittings"`
	Photographs []exportedPhoto `json:"photographs"`
	Marks       []exportedMarks `json:"marks"`
}

type exportedPhoto struct {
	File     string     `json:"file"`
	SHA256   string     `json:"sha256"`
	Original string     `json:"original_sha256"`
	About    Photograph `json:"about"`
}

type exportedMarks struct {
	File       string `json:"file"`
	SHA256     string `json:"sha256"`
	Photograph string `json:"photograph_sha256"`
	Observer   string `json:"observer"`
	Saved      string `json:"saved"`
	text       string
}

// Export writes one case to a new file: a zip of its photographs, all marks
// with their history, and manifest.json with the SHA-256 of each. With a
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
	if m.Case, err = b.Case(caseID); err != nil {
		return m, err
	}
	if m.Sittings, err = b.Sittings(caseID); err != nil {
		return m, err
	}
	photos, err := b.Photographs(caseID)
	if err != nil {
		return m, err
	}
	for _, p := range photos {
		e := exportedPhoto{File: p.File(), SHA256: p.Hash, About: p}
		if err := b.db.QueryRow("SELECT original FROM photographs WHERE id=?", p.ID).Scan(&e.Original); err != nil {
			return m, plain("the casebook can't be read", err)
		}
		m.Photographs = append(m.Photographs, e)
	}
	m.Marks, err = rows(b.db, func(scan func(...any) error) (e exportedMarks, err error) {
		err = scan(&e.Photograph, &e.Observer, &e.Saved, &e.text)
		e.SHA256 = hashOf([]byte(e.text))
		return e, err
	}, `SELECT p.hash,o.name,m.saved,m.text FROM marks m JOIN observers o ON m.observer=o.id JOIN photographs p ON m.photograph=p.id
		JOIN sittings s ON p.sitting=s.id WHERE s.case_id=? ORDER BY p.id,o.key,m.revision`, caseID)
	for i := range m.Marks {
		m.Marks[i].File = fmt.Sprintf("marks-%04d.json", i+1)
	}
	return m, err
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
	for _, e := range m.Marks {
		if err := addFile(z, e.File, zip.Deflate, bytes.NewReader([]byte(e.text))); err != nil {
			return err
		}
	}
	for _, e := range m.Photographs {
		data, err := os.ReadFile(b.Path(e.About))
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
