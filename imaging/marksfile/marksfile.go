// Package marksfile reads and writes marks files: everything one observer placed
// on one photograph, as JSON. The form is described by assets.MarksSchema.
//
//	f, err := marksfile.Read("right-dorsal.marks.json")
//	if err != nil { ... }                    // names the file, the field and the mend
//	if err := f.Complete(); err != nil { ... } // what is still to be marked
//	p, err := photo.Open(f.PhotographPath("right-dorsal.marks.json"))
//	if err := f.CheckWithin(p.Size()); err != nil { ... }
//
// A file may be unfinished: the scale and the joints may still be lacking, so
// that a window can keep every mark as it is made. What is there must be sound.
// A joint that is not there, or can't be seen, is written as null.
package marksfile

import (
	"fmt"
	"path/filepath"
	"strings"

	"ogive/geometry/hand"
	"ogive/geometry/scale"
	"ogive/imaging/boundedfile"
	"ogive/imaging/wholefile"
)

// Version is the form of marks file that this program reads and writes: the
// number in the field "ogive".
const Version = 1

// MaxSize is the size in bytes beyond which a file is refused unread. A hand
// with every border traced takes some 0.2 MB.
const MaxSize = 4 << 20

// File is what a marks file holds.
type File struct {
	// Photograph is the photograph's file as written: absolute, or as seen from
	// the folder of the marks file.
	Photograph string
	Marks      hand.Marks
	// Absent are the joints said not to be there or not to be seen. Figures that
	// need them can't be computed.
	Absent map[hand.Digit]map[hand.Joint]bool
	// Reference is nil while no scale is marked.
	Reference scale.Reference
	// Unfinished is nil where nothing is.
	Unfinished *Unfinished
}

// Read reads the marks file at path. The error names the file, the field and
// the mend.
func Read(path string) (File, error) {
	data, err := boundedfile.Read(path, MaxSize, "a marks file")
	if err != nil {
		return File{}, fmt.Errorf("%s: %w", path, err)
	}
	f, err := Parse(data)
	if err != nil {
		return File{}, fmt.Errorf("%s: %w", path, err)
	}
	return f, nil
}

// Save writes the file to path, whole or not at all.
func (f File) Save(path string) error {
	data, err := f.Encode()
	if err != nil {
		return fmt.Errorf("%s: %w", path, err)
	}
	return wholefile.Write(path, data)
}

// PhotographPath is where the photograph lies, for the marks file at path.
func (f File) PhotographPath(path string) string { return Named(path, f.Photograph) }

// Named is where a file lies that the file at path names: absolute, or as seen
// from the folder of that file, as it was written on Windows or elsewhere.
func Named(path, name string) string {
	name = filepath.FromSlash(name)
	if filepath.Separator == '/' && windowsPath(name) {
		name = strings.ReplaceAll(name, `\`, "/")
	}
	if filepath.IsAbs(name) {
		return name
	}
	return filepath.Join(filepath.Dir(path), name)
}

// windowsPath reports whether name was written on Windows: it has backslashes
// and no slash.
func windowsPath(name string) bool {
	return strings.Contains(name, `\`) && !strings.Contains(name, "/")
}
