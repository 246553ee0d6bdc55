package window

import (
	"os"
	"path/filepath"
	"slices"
)

const (
	recentsKey   = "recents"
	mostRecents  = 8
	lastOpenedIn = "last_folder"
)

// recents are the photographs that were opened before, the last one first.
func (w *Window) recents() []string { return w.app.Preferences().StringList(recentsKey) }

// remember puts a photograph first among the recent ones.
func (w *Window) remember(path string) {
	list := slices.DeleteFunc(slices.Clone(w.recents()), func(p string) bool { return p == path })
	list = append([]string{path}, list...)
	w.app.Preferences().SetStringList(recentsKey, list[:min(len(list), mostRecents)])
	if inside, err := filepath.Rel(w.home, path); err != nil || !filepath.IsLocal(inside) {
		w.app.Preferences().SetString(lastOpenedIn, filepath.Dir(path)) // nobody looks for files in the program's own folder
	}
}

// lastFolder is where the last photograph lay, else the user's own folder.
func (w *Window) lastFolder() string {
	if folder := w.app.Preferences().String(lastOpenedIn); folder != "" {
		if info, err := os.Stat(folder); err == nil && info.IsDir() {
			return folder
		}
	}
	home, err := os.UserHomeDir()
	if err != nil {
		return "."
	}
	return home
}
