package marking

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
	"time"

	"ogive/imaging/marksfile"
)

// BesideOrIn keeps the marks next to the photograph, and in folder where nothing
// may be written there, as on a disc or on somebody else's share.
func BesideOrIn(photograph, folder string) (Keeper, error) {
	marks, err := marksPath(photograph)
	if err != nil {
		return nil, err
	}
	sum := sha256.Sum256([]byte(marks))
	return &besideOr{beside(marks), beside(filepath.Join(folder, hex.EncodeToString(sum[:6])+"-"+filepath.Base(marks)))}, nil
}

type besideOr struct{ next, aside beside }

// Load is the marks that were kept last, in either place.
func (b *besideOr) Load() (marksfile.File, bool, error) { return b.latest().Load() }

// Save keeps them next to the photograph if that may be written to.
func (b *besideOr) Save(f marksfile.File) error {
	err := b.next.Save(f)
	if err == nil {
		_ = os.Remove(string(b.aside)) // older than what was just written
		return nil
	}
	if !errors.Is(err, fs.ErrPermission) && !errors.Is(err, syscall.EROFS) {
		return err
	}
	if err := os.MkdirAll(filepath.Dir(string(b.aside)), 0o700); err != nil {
		return err
	}
	return b.aside.Save(f)
}

// Name is the path of the file that was written last.
func (b *besideOr) Name() string { return string(b.latest()) }

func (b *besideOr) latest() beside {
	if changed(b.aside).After(changed(b.next)) {
		return b.aside
	}
	return b.next
}

// changed is when a file was written, long ago if there is none.
func changed(b beside) time.Time {
	info, err := os.Stat(string(b))
	if err != nil {
		return time.Time{}
	}
	return info.ModTime()
}
