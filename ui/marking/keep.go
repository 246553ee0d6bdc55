package marking

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"strings"

	"fyne.io/fyne/v2/lang"

	"ogive/geometry/plane"
)

// Save writes the marks once more, for when writing them failed before.
func (w *Work) Save() error { return w.save() }

// Clear takes every point away; hand, view and scale method stay.
func (w *Work) Clear() error {
	return w.change(lang.L("clear all points"), func(s *State) {
		clear(s.Points)
		clear(s.Skipped)
		clear(s.Edges)
		clear(s.Proposed)
	})
}

// UseClickSD changes how far the observer is taken to miss a point. On a
// photograph on which nothing was done yet it is no step of the history.
func (w *Work) UseClickSD(sd plane.Pixel) error {
	if sd == w.state.ClickSD {
		return nil
	}
	if len(w.history.done) == 0 && len(w.state.Points) == 0 {
		w.state.ClickSD = sd
		return w.save()
	}
	return w.change(lang.L("click deviation {{.Deviation}} px", map[string]any{"Deviation": float64(sd)}), func(s *State) { s.ClickSD = sd })
}

// SetAside gives the marks file of a photograph another name, so that the
// photograph can be opened without it and nothing is written over. It returns
// the new name.
func SetAside(photograph string) (string, error) {
	marks, err := marksPath(photograph)
	if err != nil {
		return "", err
	}
	base := strings.TrimSuffix(marks, ".json")
	for n := 1; n <= mostSetAside; n++ {
		name := fmt.Sprintf("%s.set-aside-%d.json", base, n)
		_, err := os.Lstat(name)
		if errors.Is(err, fs.ErrNotExist) {
			if err := os.Rename(marks, name); err != nil {
				return "", fmt.Errorf("%s cannot be given another name: %w", marks, err)
			}
			return name, nil
		}
	}
	return "", fmt.Errorf("%s: there are %d files set aside already; look through them and delete some", marks, mostSetAside)
}

// mostSetAside is the most files that are set aside for one photograph.
const mostSetAside = 99
