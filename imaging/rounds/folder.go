package rounds

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"ogive/imaging/wholefile"
)

const fileEnd = ".round.json"

// Load reads the round in the file at path. A damaged one is refused with a
// sentence that names the file, the field and the mend, and left as it is.
func Load(path string) (*Round, error) {
	data, err := read(path)
	if err != nil {
		return nil, err
	}
	r, err := Parse(data)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", path, err)
	}
	if want := r.ID + fileEnd; filepath.Base(path) != want {
		return nil, fmt.Errorf("%s: id: the file holds the round %s; give it the name %s again", path, r.ID, want)
	}
	r.folder = filepath.Dir(path)
	return r, nil
}

// read reads no more of a file than a round can have.
func read(path string) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return io.ReadAll(io.LimitReader(f, MaxSize+1))
}

// List is all rounds in the folder that can be read, in the order in which they
// were begun, and an error for each that can't. A folder that is not there has
// none.
func List(folder string) ([]*Round, []error) {
	entries, err := os.ReadDir(folder)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, []error{err}
	}
	var list []*Round
	var refused []error
	for _, e := range entries {
		if !e.Type().IsRegular() || !strings.HasSuffix(e.Name(), fileEnd) || unborn(e) {
			continue
		}
		r, err := Load(filepath.Join(folder, e.Name()))
		if err != nil {
			refused = append(refused, err)
			continue
		}
		list = append(list, r)
	}
	slices.SortStableFunc(list, func(a, b *Round) int {
		return cmp.Or(a.Begun.Compare(b.Begun), cmp.Compare(a.ID, b.ID))
	})
	return list, refused
}

// unborn reports whether a round was cut off as it was begun: its name was taken
// and nothing is in it.
func unborn(e fs.DirEntry) bool {
	info, err := e.Info()
	return err == nil && info.Size() == 0
}

// Of is the rounds of one observer, in their order.
func Of(rounds []*Round, observer string) []*Round {
	var own []*Round
	for _, r := range rounds {
		if r.Observer == observer {
			own = append(own, r)
		}
	}
	return own
}

// Save writes the round to its file, whole or not at all. Answer does so by itself.
func (r *Round) Save() error {
	data, err := r.Encode()
	if err != nil {
		return err
	}
	return wholefile.Write(r.Path(), data)
}

// keepNew gives the round an ID that no file in its folder has yet, and writes it.
func (r *Round) keepNew() error {
	if err := os.MkdirAll(r.folder, 0o755); err != nil {
		return err
	}
	stem := r.Begun.UTC().Format("20060102-150405")
	for n := 1; ; n++ {
		r.ID = stem
		if n > 1 {
			r.ID = fmt.Sprintf("%s-%d", stem, n)
		}
		f, err := os.OpenFile(r.Path(), os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o644)
		if errors.Is(err, fs.ErrExist) {
			continue
		}
		if err != nil {
			return err
		}
		if err := f.Close(); err != nil {
			return err
		}
		break
	}
	if err := r.checkNew(); err != nil {
		return errors.Join(err, os.Remove(r.Path()))
	}
	return r.Save()
}

// checkNew refuses a round that could not be read again.
func (r *Round) checkNew() error {
	data, err := r.Encode()
	if err != nil {
		return err
	}
	_, err = Parse(data)
	return err
}

// Remove takes the round off the disk for good.
func (r *Round) Remove() error {
	r.dropDraft(len(r.Results) + 1)
	return os.Remove(r.Path())
}
