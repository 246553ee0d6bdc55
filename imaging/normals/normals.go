// Package normals keeps the user's own copy of the normal values in a file, in
// the same form as the table that the program is shipped with.
//
//	table, there, err := normals.Load(path)
//	err = normals.Save(path, table)
//
// A copy that can't be read is an error and is left as it is.
package normals

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"ogive/geometry/norms"
	"ogive/imaging/wholefile"
)

// Load reads the copy at path; there is false if there is none.
func Load(path string) (table norms.Table, there bool, err error) {
	data, err := os.ReadFile(path)
	if errors.Is(err, fs.ErrNotExist) {
		return norms.Table{}, false, nil
	}
	if err != nil {
		return norms.Table{}, false, err
	}
	if table, err = norms.Parse(data); err != nil {
		return norms.Table{}, true, fmt.Errorf("%s: %w", path, err)
	}
	return table, true, nil
}

// Save writes the table to path, whole or not at all, in a folder that is made
// if it is not there. A table that could not be read again is refused.
func Save(path string, t norms.Table) error {
	data, err := encode(t)
	if err != nil {
		return err
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return err
	}
	return wholefile.Write(path, data)
}

// Remove takes the copy at path away; it is no error if there is none.
func Remove(path string) error {
	if err := os.Remove(path); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	return nil
}

// Same reports whether two tables say the same.
func Same(a, b norms.Table) bool {
	first, err := a.Encode()
	second, also := b.Encode()
	return err == nil && also == nil && bytes.Equal(first, second)
}

func encode(t norms.Table) ([]byte, error) {
	data, err := t.Encode()
	if err != nil {
		return nil, fmt.Errorf("normal values: %w", err)
	}
	if _, err := norms.Parse(data); err != nil {
		return nil, err
	}
	return append(data, '\n'), nil
}
