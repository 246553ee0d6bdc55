// Package boundedfile reads files that a user names, no further than such files
// are long: a film taken for a marks file does not fill the memory.
//
//	data, err := boundedfile.Read(path, MaxSize, "a marks file")
//	if err != nil { ... }           // says what is wrong and how to mend it
//	if len(data) > MaxSize { ... }  // refuse it
package boundedfile

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
)

// Read reads the file at path, but of one that is longer than most bytes only one
// byte more than that. Kind is what the file should be, with its article. The
// error does not name the path.
func Read(path string, most int64, kind string) (data []byte, err error) {
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, errors.New("there is no such file; check the name and the folder")
	case err != nil:
		return nil, unreadable(err)
	case !info.Mode().IsRegular():
		return nil, fmt.Errorf("this is not a file; give the name of %s", kind)
	}
	file, err := os.Open(path)
	if err != nil {
		return nil, unreadable(err)
	}
	defer func() { err = errors.Join(err, file.Close()) }()
	if data, err = io.ReadAll(io.LimitReader(file, most+1)); err != nil {
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
