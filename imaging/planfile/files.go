package planfile

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"ogive/imaging/wholefile"
)

// Suffix ends the name of a plan file that lies beside its marks file: the plan
// of hand.marks.json is hand.plan.json.
const Suffix = ".plan.json"

// PathFor is where the plan for the marks file at path lies.
func PathFor(marks string) string {
	name := strings.TrimSuffix(marks, ".json")
	return strings.TrimSuffix(name, ".marks") + Suffix
}

// IsPlan reports whether a text is that of a plan file, sound or not.
func IsPlan(data []byte) bool {
	var head struct {
		Plan *json.RawMessage `json:"ogive_plan"`
	}
	return json.Unmarshal(data, &head) == nil && head.Plan != nil
}

// Read reads the plan file at path. The error names the file, the field and the
// mend.
func Read(path string) (File, error) {
	data, err := load(path)
	if err != nil {
		return File{}, fmt.Errorf("%s: %w", path, err)
	}
	f, err := Parse(data)
	if err != nil {
		return File{}, fmt.Errorf("%s: %w", path, err)
	}
	return f, nil
}

func load(path string) (data []byte, err error) {
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, errors.New("there is no such file; check the name and the folder")
	case err != nil:
		return nil, unreadable(err)
	case !info.Mode().IsRegular():
		return nil, errors.New("this is not a file; give the name of a plan file")
	}
	file, err := os.Open(path)
	if err != nil {
		return nil, unreadable(err)
	}
	defer func() { err = errors.Join(err, file.Close()) }()
	if data, err = io.ReadAll(io.LimitReader(file, MaxSize+1)); err != nil {
		return nil, unreadable(err)
	}
	return data, nil
}

func unreadable(err error) error {
	var path *fs.PathError
	if errors.As(err, &path) {
		err = path.Err
	}
	return fmt.Errorf("the file can't be read: %w; check that you may read it", err)
}

// Save writes the file to path, whole or not at all.
func (f File) Save(path string) error {
	data, err := f.Encode()
	if err != nil {
		return fmt.Errorf("%s: %w", path, err)
	}
	return wholefile.Write(path, data)
}

// MarksPath is where the marks file lies, for the plan file at path; empty where
// the plan names none.
func (f File) MarksPath(path string) string { return besidePath(path, f.Marks) }

// OtherPath is the same for the marks file of the other hand.
func (f File) OtherPath(path string) string { return besidePath(path, f.Other) }

func besidePath(path, name string) string {
	if name == "" {
		return ""
	}
	// Written on Windows, read elsewhere: all backslashes and no slash.
	if filepath.Separator == '/' && strings.Contains(name, `\`) && !strings.Contains(name, "/") {
		name = strings.ReplaceAll(name, `\`, "/")
	}
	name = filepath.FromSlash(name)
	if filepath.IsAbs(name) {
		return name
	}
	return filepath.Join(filepath.Dir(path), name)
}
