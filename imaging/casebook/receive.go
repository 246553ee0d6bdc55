package casebook

import (
	"archive/zip"
	"bufio"
	"database/sql"
	"errors"
	"io"
	"os"
	"regexp"
	"strings"

	"filippo.io/age"

	"ogive/imaging/marksfile"
	"ogive/imaging/photo"
)

const (
	largestExport   = 8 << 30 // bytes
	largestManifest = 16 << 20
	largestTexts    = 512 << 20 // together
	mostExported    = 20_000    // files
	// mostSqueezed is how much smaller a packed text can be; photographs are not
	// packed at all.
	mostSqueezed = 200
)

var exportedName = regexp.MustCompile(`^(manifest\.json|(marks|plans|appraisals)-\d{4,6}\.json|photographs/[0-9a-f]{64}\.(jpg|png|webp|heic))$`)

var hash = regexp.MustCompile(`^[0-9a-f]{64}$`)

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
	m, c, err := readManifest(files)
	if err != nil {
		return 0, err
	}
	return b.admit(m, c, files)
}

// listed is the files by name. Names that no export has, names that are there
// twice and sizes that no export needs are refused before anything is unpacked.
func listed(z *zip.Reader, size int64) (map[string]*zip.File, error) {
	if len(z.File) > mostExported {
		return nil, refuse("the exported case holds more than %d files, which no case does; ask for a new copy", mostExported)
	}
	out := map[string]*zip.File{}
	var texts, pictures uint64
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
		if strings.HasPrefix(f.Name, photosName) {
			pictures += f.UncompressedSize64
		} else {
			texts += f.UncompressedSize64
		}
		// Pictures hardly pack, so that more of them than the file is long are
		// one and the same piece of it, given many names.
		if texts > largestTexts || pictures > 2*uint64(size) {
			return nil, refuse("the exported case would unpack to far more than it should; nothing was taken in, ask for a new copy")
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
	data, err = io.ReadAll(io.LimitReader(from, int64(f.UncompressedSize64)+1))
	// A close that fails, fails for what the reading has met already.
	if closed := from.Close(); err != nil || closed != nil || sha != "" && hashOf(data) != sha {
		return nil, refuse("%s in the exported case is damaged or was changed; ask for a new copy", name)
	}
	return data, nil
}

func readManifest(files map[string]*zip.File) (manifest, Case, error) {
	data, err := unpack(files, "manifest.json", "")
	if err != nil {
		return manifest{}, Case{}, err
	}
	m, err := parseManifest(data)
	if err != nil {
		return m, Case{}, err
	}
	c, err := m.Case.received()
	return m, c, err
}

// admit writes the photographs and then lets the database know of the case, in
// one transaction.
func (b *Casebook) admit(m manifest, c Case, files map[string]*zip.File) (id int64, err error) {
	b.writing.Lock()
	defer b.writing.Unlock()
	var written []string
	var photographs []admitted
	for _, e := range m.Photographs {
		p, hashes, err := b.admitPhotograph(e, files)
		written = append(written, hashes...)
		if err != nil {
			return 0, errors.Join(err, b.fulfil(written))
		}
		photographs = append(photographs, p)
	}
	err = b.change("the case can't be received", func(tx *sql.Tx) error {
		if id, err = insertCase(tx, c); err != nil {
			return err
		}
		c.ID = id
		if err := insertContents(tx, c, m, photographs, files); err != nil {
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
