package marking

import (
	"errors"
	"fmt"
	"image"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"ogive/imaging/marksfile"
)

// Keeper keeps the marks of one photograph.
type Keeper interface {
	// Load is the marks as they were kept last; false if there are none yet.
	Load() (marksfile.File, bool, error)
	// Save keeps the marks, whole or not at all, before it returns. It may give
	// the photograph in them another name.
	Save(marksfile.File) error
	// Name is where the marks are kept, for a sentence.
	Name() string
}

// Beside keeps the marks next to the photograph: those of hand.jpg in
// hand.marks.json.
func Beside(photograph string) (Keeper, error) {
	marks, err := marksPath(photograph)
	return beside(marks), err
}

func marksPath(photograph string) (string, error) {
	full, err := filepath.Abs(photograph)
	if err != nil {
		return "", fmt.Errorf("%s: %w", photograph, err)
	}
	return strings.TrimSuffix(full, filepath.Ext(full)) + ".marks.json", nil
}

// beside is the path of a marks file.
type beside string

func (b beside) Load() (marksfile.File, bool, error) {
	if _, err := os.Stat(string(b)); errors.Is(err, fs.ErrNotExist) {
		return marksfile.File{}, false, nil
	}
	f, err := marksfile.Read(string(b))
	return f, err == nil, err
}

func (b beside) Save(f marksfile.File) error { return f.Save(string(b)) }

func (b beside) Name() string { return string(b) }

// loaded is the state that k keeps for a photograph of that size, a new one if
// there are no marks yet.
func loaded(k Keeper, size image.Point) (State, error) {
	f, any, err := k.Load()
	switch {
	case err != nil:
		return State{}, err
	case !any:
		return newState(), nil
	}
	if err := f.CheckWithin(size); err != nil {
		return State{}, fmt.Errorf("%s: %w", k.Name(), err)
	}
	return stateOf(f), nil
}
