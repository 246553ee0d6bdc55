package casebook

import (
	"archive/zip"
	"bufio"
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"regexp"
	"strings"
	"time"

	"filippo.io/age"

	"ogive/imaging/casebook/strip"
	"ogive/imaging/marksfile"
	"ogive/imaging/photo"
)

const (
	largestExport   = 8 << 30 // bytes
	largestManifest = 16 << 20
	mostExported    = 20_000 // files
	// mostSqueezed is how much smaller a packed text can be; photographs are not
	// packed at all.
	mostSqueezed = 200
)

var exportedName = regexp.MustCompile(`^(manifest\.json|marks-\d{4,6}\.json|photographs/[0-9a-f]{64}\.(jpg|png|webp|heic))$`)

// ErrPassphrase says that an exported case is encrypted and the passphrase is
// missing or wrong.
var ErrPassphrase = errors.New("the case is encrypted and the passphrase does not open it; ask the sender for it")

// Receive brings an exported case in and gives its ID: all of it or nothing.
// Nothing that is there is overwritten: a case with the same code, or a
// photograph that is in the casebook already, is refused. Every file is checked
// against its hash, and photographs are cleaned as at any import.
func (b *Casebook) Receive(path, passphrase string) (id int64, err error) {
	if err := b.mayWrite(); err != nil {
		return 0, err
	}
	f, err := os.Open(path)
	if err != nil {
		return 0, plain("the case can't be read", err)
	}
	defer func() { err = errors.Join(err, f.Close()) }()
	head, _ := bufio.NewReader(f).Peek(len(ageHead)) // a shorter file is no encrypted one
	if _, err := f.Seek(0, io.SeekStart); err != nil {
		return 0, err
	}
	if string(head) != ageHead {
		return b.receive(f)
	}
	opened, err := b.decrypted(f, passphrase)
	if err != nil {
		return 0, err
	}
	defer func() { err = errors.Join(err, opened.Close(), os.Remove(opened.Name())) }()
	return b.receive(opened)
}

const ageHead = "age-encryption.org/v1"

// decrypted is a file without encryption, inside the casebook, where a sweep
// finds it if the program is killed before it is removed.
func (b *Casebook) decrypted(f io.Reader, passphrase string) (*os.File, error) {
	if passphrase == "" {
		return nil, ErrPassphrase
	}
	key, err := age.NewScryptIdentity(passphrase)
	if err != nil {
		return nil, err
	}
	from, err := age.Decrypt(f, key)
	if err != nil {
		return nil, ErrPassphrase
	}
	out, err := os.CreateTemp(b.path(photosName), ".received-*.part")
	if err != nil {
		return nil, plain("the case can't be received", err)
	}
	n, err := io.Copy(out, io.LimitReader(from, largestExport+1))
	if err == nil && n > largestExport {
		err = refuse("the case is larger than %d GB; export it in parts", largestExport>>30)
	}
	if err != nil {
		return nil, errors.Join(plain("the case can't be received", err), out.Close(), os.Remove(out.Name()))
	}
	return out, nil
}

func (b *Casebook) receive(f *os.File) (int64, error) {
	info, err := f.Stat()
	if err != nil {
		return 0, err
	}
	z, err := zip.NewReader(f, info.Size())
	if err != nil {
		return 0, refuse("this is no exported case, or it is cut off; ask for a new copy")
	}
	files, err := listed(z, info.Size())
	if err != nil {
		return 0, err
	}
	m, err := readManifest(files)
	if err != nil {
		return 0, err
	}
	return b.admit(m, files)
}

// listed is the files by name. Names that no export has, names that are there
// twice and sizes that no export needs are refused before anything is unpacked.
func listed(z *zip.Reader, size int64) (map[string]*zip.File, error) {
	if len(z.File) > mostExported {
		return nil, refuse("the exported case holds more than %d files, which no case does; ask for a new copy", mostExported)
	}
	out := map[string]*zip.File{}
	for _, f := range z.File {
		if !exportedName.MatchString(f.Name) || out[f.Name] != nil || !f.Mode().IsRegular() {
			return nil, refuse("the exported case holds %.60q, which does not belong there; nothing was taken in, ask for a new copy", f.Name)
		}
		most := uint64(marksfile.MaxSize)
		switch {
		case f.Name == "manifest.json":
			most = largestManifest
		case strings.HasPrefix(f.Name, photosName):
			most = min(photo.MaxFileSize, uint64(size))
		}
		if f.UncompressedSize64 > most || f.UncompressedSize64 > mostSqueezed*(f.CompressedSize64+100) {
			return nil, refuse("%s in the exported case would unpack to far more than it should; nothing was taken in, ask for a new copy", f.Name)
		}
		out[f.Name] = f
	}
	return out, nil
}

func unpack(files map[string]*zip.File, name, sha string) (data []byte, err error) {
	f := files[name]
	if f == nil {
		return nil, refuse("the exported case lacks %.80q; ask for a new copy", name)
	}
	from, err := f.Open()
	if err != nil {
		return nil, refuse("%s in the exported case is damaged; ask for a new copy", name)
	}
	defer func() { err = errors.Join(err, from.Close()) }()
	data, err = io.ReadAll(io.LimitReader(from, int64(f.UncompressedSize64)+1))
	if err != nil || sha != "" && hashOf(data) != sha {
		return nil, refuse("%s in the exported case is damaged or was changed; ask for a new copy", name)
	}
	return data, nil
}

func readManifest(files map[string]*zip.File) (m manifest, err error) {
	data, err := unpack(files, "manifest.json", "")
	if err != nil {
		return m, err
	}
	if err := json.Unmarshal(data, &m); err != nil {
		return m, refuse("manifest.json in the exported case is damaged (%v); ask for a new copy", err)
	}
	if m.Form != exportForm {
		return m, refuse("the exported case is of form %d, this program reads form %d; use the program it was written with", m.Form, exportForm)
	}
	if err := m.Case.check(); err != nil {
		return m, err
	}
	for _, s := range m.Sittings {
		if _, err := ParseDate(string(s.Date)); err != nil || s.Date == "" {
			return m, refuse("a sitting in the exported case has no proper date; ask for a new copy")
		}
	}
	return m, nil
}

// admit writes the photographs and then lets the database know of the case, in
// one transaction.
func (b *Casebook) admit(m manifest, files map[string]*zip.File) (id int64, err error) {
	b.writing.Lock()
	defer b.writing.Unlock()
	var written []string
	for i := range m.Photographs {
		p, err := b.admitPhotograph(&m.Photographs[i], files)
		written = append(written, p...)
		if err != nil {
			return 0, errors.Join(err, b.fulfil(written))
		}
	}
	err = b.change("the case can't be received", func(tx *sql.Tx) error {
		if id, err = insertCase(tx, m.Case); err != nil {
			return err
		}
		m.Case.ID = id
		if err := insertContents(tx, m, files); err != nil {
			return err
		}
		for _, h := range written {
			if _, err := tx.Exec("DELETE FROM intents WHERE hash=?", h); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		return 0, errors.Join(err, b.fulfil(written))
	}
	return id, nil
}

// admitPhotograph keeps one photograph's file, and gives its hash once that is
// on the way to the disk. What the manifest says of the picture is replaced by
// what the picture itself says.
func (b *Casebook) admitPhotograph(e *exportedPhoto, files map[string]*zip.File) (written []string, err error) {
	data, err := unpack(files, e.File, e.SHA256)
	if err != nil {
		return nil, err
	}
	clean, err := strip.Photograph(data)
	if err != nil {
		return nil, fmt.Errorf("%s %w", e.File, err)
	}
	facts, size := clean.Picture.Facts(), clean.Picture.Size()
	e.About = Photograph{Date: e.About.Date, Hash: hashOf(clean.Data), Extension: clean.Extension, Hand: e.About.Hand, View: e.About.View,
		Taken: stamp(facts.Taken), Camera: facts.Camera, Width: size.X, Height: size.Y}
	for _, hash := range []string{e.SHA256, e.About.Hash, e.Original} {
		twice, err := b.find(hash)
		if err != nil {
			return nil, err
		}
		if twice != nil {
			return nil, refuse("a photograph of the exported case is in this casebook already, in case %s on %s; nothing was taken in or overwritten", twice.Case, twice.Date)
		}
	}
	err = b.change("the case can't be received", func(tx *sql.Tx) error {
		_, err := tx.Exec("INSERT OR IGNORE INTO intents(hash) VALUES(?)", e.About.Hash)
		return err
	})
	if err != nil {
		return nil, err
	}
	return []string{e.About.Hash}, plain("the case can't be received", b.writeFiles(e.About, clean))
}

func insertContents(tx *sql.Tx, m manifest, files map[string]*zip.File) error {
	for _, s := range m.Sittings {
		if _, err := tx.Exec("INSERT INTO sittings(case_id,date,stage) VALUES(?,?,?)", m.Case.ID, s.Date, s.Stage); err != nil {
			return err
		}
	}
	ids, about := map[string]int64{}, map[string]Photograph{}
	for _, e := range m.Photographs {
		id, err := insertPhotograph(tx, m.Case, e.About, e.Original)
		if err != nil {
			return err
		}
		ids[e.SHA256], about[e.SHA256] = id, e.About
	}
	for _, e := range m.Marks {
		data, err := unpack(files, e.File, e.SHA256)
		if err != nil {
			return err
		}
		f, err := marksfile.Parse(data)
		if err != nil {
			return refuse("%s in the exported case: %v", e.File, err)
		}
		if ids[e.Photograph] == 0 || e.Observer == "" || f.Photograph != about[e.Photograph].File() {
			return refuse("%s in the exported case belongs to no photograph or observer; ask for a new copy", e.File)
		}
		if _, err := time.Parse(time.RFC3339, e.Saved); err != nil {
			return refuse("%s in the exported case has no proper time; ask for a new copy", e.File)
		}
		if err := writeMarks(tx, ids[e.Photograph], e.Observer, e.Saved, string(data), false); err != nil {
			return err
		}
	}
	return nil
}
