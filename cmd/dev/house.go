package main

import (
	"errors"
	"fmt"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"slices"
	"strconv"
	"strings"
)

const module = "ogive"

// topLevel is all that may lie at the top besides dot-files.
var topLevel = []string{
	"cmd", "ui", "geometry", "imaging", "assets", "testdata",
	"README.md", "DEVELOPERS.md", "LICENSE", "go.mod", "go.sum", "FyneApp.toml",
	buildFolder, demoFolder,
}

// room is a top-level folder of Go packages and what its packages may not
// import: themselves, or anything below them.
type room struct {
	name string
	// not is closed to all files, notOutsideTests to those that are no tests.
	not, notOutsideTests []string
	because              string
}

var rooms = []room{
	{
		name:            "geometry",
		not:             []string{module + "/imaging", module + "/ui", module + "/cmd", "fyne.io"},
		notOutsideTests: []string{"os", "image", "net", module + "/assets"},
		because:         "geometry is pure functions on values",
	},
	{
		name:            "imaging",
		not:             []string{module + "/ui", module + "/cmd", "fyne.io"},
		notOutsideTests: []string{"net"},
		because:         "imaging knows geometry and no window",
	},
	{
		name:            "ui",
		not:             []string{module + "/cmd"},
		notOutsideTests: []string{"net"},
		because:         "the window knows no command, and nothing leaves the machine",
	},
	{
		name:    "assets",
		not:     []string{module + "/geometry", module + "/imaging", module + "/ui", module + "/cmd"},
		because: "assets are data",
	},
	{
		name:    "cmd/ogive-batch",
		not:     []string{module + "/ui", "fyne.io", "net"},
		because: "the work without a window is built without cgo, and nothing leaves the machine",
	},
	{
		name:    "cmd/ogive",
		not:     []string{"net"},
		because: "nothing leaves the machine",
	},
}

// harmless opens no connection although it lies below net.
var harmless = []string{"net/url"}

// house checks what lies at the top level and that no arrow of imports runs
// back.
func (w workshop) house() error {
	complaints, err := complaints(os.DirFS(w.root))
	if err != nil {
		return fmt.Errorf("check the house: %w", err)
	}
	if len(complaints) > 0 {
		return errors.New(strings.Join(complaints, "\n"))
	}
	w.say("The top level is in order and no arrow runs back.")
	return nil
}

func complaints(house fs.FS) ([]string, error) {
	entries, err := fs.ReadDir(house, ".")
	if err != nil {
		return nil, err
	}
	var out []string
	for _, e := range entries {
		if !strings.HasPrefix(e.Name(), ".") && !slices.Contains(topLevel, e.Name()) {
			out = append(out, fmt.Sprintf("%s does not belong at the top level; move it into one of the rooms", e.Name()))
		}
	}
	for _, r := range rooms {
		found, err := r.complaints(house)
		if err != nil {
			return nil, err
		}
		out = append(out, found...)
	}
	return out, nil
}

func (r room) complaints(house fs.FS) ([]string, error) {
	var out []string
	err := goFiles(house, r.name, func(name string, source []byte) error {
		file, err := parser.ParseFile(token.NewFileSet(), name, source, parser.ImportsOnly)
		if err != nil {
			return err
		}
		for _, spec := range file.Imports {
			imported, err := strconv.Unquote(spec.Path.Value)
			if err != nil {
				return fmt.Errorf("%s: %w", name, err)
			}
			if r.closedTo(imported, strings.HasSuffix(name, "_test.go")) {
				out = append(out, fmt.Sprintf("%s imports %s, but %s", name, imported, r.because))
			}
		}
		return nil
	})
	return out, err
}

func (r room) closedTo(imported string, test bool) bool {
	within := func(closed string) bool {
		return imported == closed || strings.HasPrefix(imported, closed+"/")
	}
	if slices.Contains(harmless, imported) {
		return false
	}
	return slices.ContainsFunc(r.not, within) || !test && slices.ContainsFunc(r.notOutsideTests, within)
}

// goFiles visits every Go file at and below folder, test data left out. A
// folder that is not there has none.
func goFiles(house fs.FS, folder string, visit func(name string, source []byte) error) error {
	if _, err := fs.Stat(house, folder); errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	return fs.WalkDir(house, folder, func(name string, entry fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case entry.IsDir() && entry.Name() == "testdata":
			return fs.SkipDir
		case entry.IsDir() || path.Ext(name) != ".go":
			return nil
		}
		source, err := fs.ReadFile(house, name)
		if err != nil {
			return err
		}
		return visit(name, source)
	})
}
