// Package wholefile writes files whole or not at all: whoever looks, at any
// moment and after any crash, finds the old contents or the new, never a part.
//
//	err := wholefile.Write("marks.json", data)
//
// It works by writing a neighbour and renaming it, which Windows, macOS and
// Linux all do in one step. The usual library for this leaves Windows out.
package wholefile

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// Write makes data the contents of the file at path, which keeps its permissions
// if it is there already. The error says what could not be done and leaves the
// old file as it was.
func Write(path string, data []byte) error {
	part, err := neighbour(path)
	if err != nil {
		return fmt.Errorf("%s can't be written: %w; check that the folder is there and may be written to", filepath.Base(path), plain(err))
	}
	if err := fill(part, path, data); err != nil {
		return errors.Join(
			fmt.Errorf("%s can't be written: %w; check the space on the disk", filepath.Base(path), plain(err)),
			os.Remove(part.Name()),
		)
	}
	if err := os.Rename(part.Name(), path); err != nil {
		return errors.Join(
			fmt.Errorf("%s can't be replaced: %w; close it in other programs", filepath.Base(path), plain(err)),
			os.Remove(part.Name()),
		)
	}
	return nil
}

// mostNeighbours is how many left over from crashes are passed over.
const mostNeighbours = 1000

// neighbour is a new file beside path; unlike os.CreateTemp it gets the
// permissions that the user's own settings give a new file.
func neighbour(path string) (*os.File, error) {
	folder, name := filepath.Split(path)
	for i := range mostNeighbours {
		part, err := os.OpenFile(filepath.Join(folder, fmt.Sprintf(".%s.%d-%d.part", name, os.Getpid(), i)),
			os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
		if !errors.Is(err, fs.ErrExist) {
			return part, err
		}
	}
	return nil, errors.New("too many half-written neighbours (.part) lie beside it")
}

func fill(part *os.File, path string, data []byte) (err error) {
	defer func() { err = errors.Join(err, part.Close()) }()
	if info, err := os.Stat(path); err == nil {
		if err := part.Chmod(info.Mode().Perm()); err != nil {
			return err
		}
	}
	if _, err := part.Write(data); err != nil {
		return err
	}
	return part.Sync()
}

// plain is err without the path, which would be that of the neighbour.
func plain(err error) error {
	var path *fs.PathError
	var link *os.LinkError
	switch {
	case errors.As(err, &path):
		return path.Err
	case errors.As(err, &link):
		return link.Err
	}
	return err
}
