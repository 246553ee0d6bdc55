// Package example makes the casebook to try the program on: an invented child,
// operated on one hand, in five sittings over three years. Both hands are
// artificial photographs of known geometry (package phantom), marked by an
// invented observer with the usual errors. One of the two operated webs creeps,
// the other stays. No patient stands behind it.
//
//	err := example.Make(ctx, folder, progress) // or finds it there
//	book, err := casebook.Open(folder)
package example

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"time"

	"ogive/imaging/casebook"
)

// Code is the code of the example's one case, Observer the one who marked its
// photographs.
const (
	Code     = "EXAMPLE-1"
	Observer = "Example"
)

const databaseName = "casebook.sqlite"

// Make makes the example in folder, which appears whole or not at all. An
// example that is there is left as it is, with whatever was changed in it since.
// After each piece of work progress, which may be nil, is called with how many
// of how many are done, always by the goroutine that called Make.
//
// It fails if the folder holds something else, if there is no room on the disk,
// or if ctx ends; nothing is left behind then.
func Make(ctx context.Context, folder string, progress func(done, all int)) error {
	if _, err := os.Stat(filepath.Join(folder, databaseName)); err == nil {
		return nil
	}
	if err := vacant(folder); err != nil {
		return err
	}
	parent := filepath.Dir(folder)
	if err := os.MkdirAll(parent, 0o755); err != nil {
		return fmt.Errorf("the example casebook can't be made: %w", err)
	}
	sweep(parent)
	unfinished, err := os.MkdirTemp(parent, unfinishedPrefix+"*")
	if err != nil {
		return fmt.Errorf("the example casebook can't be made: %w", err)
	}
	defer func() { _ = os.RemoveAll(unfinished) }() // gone already if all went well
	work := filepath.Join(unfinished, "casebook")
	if err := fill(ctx, work, filepath.Join(unfinished, "originals"), counter(progress)); err != nil {
		return fmt.Errorf("the example casebook can't be made: %w", err)
	}
	// An empty folder is in the way of renaming on some systems.
	if err := os.Remove(folder); err != nil && !errors.Is(err, os.ErrNotExist) {
		return fmt.Errorf("the example casebook can't be put in its place: %w", err)
	}
	if err := os.Rename(work, folder); err != nil {
		return fmt.Errorf("the example casebook can't be put in its place: %w", err)
	}
	return nil
}

// vacant refuses a folder that holds something else.
func vacant(folder string) error {
	there, err := os.ReadDir(folder)
	switch {
	case errors.Is(err, os.ErrNotExist):
		return nil
	case err != nil:
		return fmt.Errorf("%s can't be made the example casebook: %w", folder, err)
	case len(there) > 0:
		return fmt.Errorf("%s holds other files, which are not touched; choose another folder for the example casebook", folder)
	}
	return nil
}

const unfinishedPrefix = ".ogive-example-"

// sweep removes what a killed program has left unfinished. What is younger than
// an hour may be another window's work.
func sweep(parent string) {
	left, err := filepath.Glob(filepath.Join(parent, unfinishedPrefix+"*"))
	if err != nil {
		return
	}
	for _, path := range left {
		if info, err := os.Stat(path); err == nil && time.Since(info.ModTime()) > time.Hour {
			_ = os.RemoveAll(path) // tried again the next time
		}
	}
}

// counter counts the pieces of work done.
func counter(progress func(done, all int)) func() {
	done := 0
	return func() {
		done++
		if progress != nil {
			progress(done, pieces)
		}
	}
}

// fill makes the casebook: the case, its photographs, marks, findings and
// readings.
func fill(ctx context.Context, folder, originals string, did func()) (err error) {
	if err := os.Mkdir(originals, 0o755); err != nil {
		return err
	}
	shots, err := photograph(ctx, originals, did)
	if err != nil {
		return err
	}
	book, err := casebook.Open(folder)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, book.Close()) }()
	id, err := book.AddCase(child())
	if err != nil {
		return err
	}
	if err := bring(ctx, book, id, shots, did); err != nil {
		return err
	}
	if err := appraise(book, id); err != nil {
		return err
	}
	return read(ctx, book, id, did)
}
