package rounds

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"ogive/imaging/marksfile"
	"ogive/imaging/wholefile"
)

const draftEnd = ".draft.json"

// Draft keeps the unfinished blind marks of a round's next picture, so that a mark
// that is on the screen is on the disk. It has the methods of a keeper of marks.
// Answering the picture drops it.
type Draft struct {
	round *Round
	path  string
	done  int
}

// Draft is the keeper of the marks on the next picture.
func (r *Round) Draft() *Draft {
	done := len(r.Results)
	return &Draft{round: r, done: done, path: r.draftPath(done + 1)}
}

// Name is where the marks are kept, for a sentence.
func (d *Draft) Name() string { return d.path }

// Load is the marks as they were kept last, false if there are none.
func (d *Draft) Load() (marksfile.File, bool, error) {
	if _, err := os.Stat(d.path); errors.Is(err, fs.ErrNotExist) {
		return marksfile.File{}, false, nil
	}
	f, err := marksfile.Read(d.path)
	return f, err == nil, err
}

// Save keeps the marks, whole or not at all; once the picture is answered they are
// let go.
func (d *Draft) Save(f marksfile.File) error {
	d.round.draft.Lock()
	defer d.round.draft.Unlock()
	if len(d.round.Results) > d.done {
		return nil
	}
	data, err := f.Encode()
	if err != nil {
		return err
	}
	return wholefile.Write(d.path, data)
}

// dropDraft removes the marks of the n-th picture of the order. What can't be
// removed does no harm: it is never asked for again.
func (r *Round) dropDraft(n int) {
	r.draft.Lock()
	defer r.draft.Unlock()
	_ = os.Remove(r.draftPath(n))
}

func (r *Round) draftPath(n int) string {
	return filepath.Join(r.folder, fmt.Sprintf("%s-%d%s", r.ID, n, draftEnd))
}
