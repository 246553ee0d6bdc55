package casebook

import (
	"errors"
	"io/fs"
	"os"

	"github.com/gofrs/flock"
)

const (
	openElsewhere = "this casebook is open in another window; you can read it here and write there"
	notWritable   = "the folder of this casebook can't be written to; ask for the right to write, or copy the folder to a place of your own"
)

// takeLock makes this window the one that writes. The lock is the operating
// system's and goes with the program, however that ends; a word in the file says
// whether the last window could close it cleanly.
func (b *Casebook) takeLock() (unclean bool, err error) {
	_, gone := os.Stat(b.path(DatabaseName))
	if errors.Is(gone, fs.ErrNotExist) {
		if err := os.MkdirAll(b.folder, 0o777); err != nil {
			return false, plain("the casebook's folder can't be made", err)
		}
	}
	lock := flock.New(b.path(lockName), flock.SetFlag(os.O_CREATE|os.O_RDWR))
	got, err := lock.TryLock()
	if err != nil {
		if errors.Is(gone, fs.ErrNotExist) {
			return false, plain("a casebook can't be made in "+b.folder, err)
		}
		b.readOnly = notWritable
		return false, nil
	}
	if !got {
		b.readOnly = openElsewhere
		return false, nil
	}
	b.lock = lock
	info, err := os.Stat(b.path(lockName))
	unclean = err == nil && info.Size() > 0
	if err := os.WriteFile(b.path(lockName), []byte("open\n"), 0o666); err != nil && !fullDisk(err) {
		b.readOnly = notWritable
	}
	return unclean, nil
}
