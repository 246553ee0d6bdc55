package casebook

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"ogive/geometry/hand"
)

const fullFolder = "OGIVE_CASEBOOK_FULL"

func init() { workOnFull = workOnASmallDisk }

// TestTheWorkGoesOnAfterSpaceIsMadeOnAFullDisk works on a disk of two megabytes
// of its own, in a process that alone sees it. Where the system does not allow
// that, the database's own limit, in the test above, must do.
func TestTheWorkGoesOnAfterSpaceIsMadeOnAFullDisk(t *testing.T) {
	folder := t.TempDir()
	cmd := exec.Command(os.Args[0])
	cmd.Env = append(os.Environ(), fullFolder+"="+folder)
	cmd.SysProcAttr = &syscall.SysProcAttr{
		Cloneflags:  syscall.CLONE_NEWNS | syscall.CLONE_NEWUSER,
		UidMappings: []syscall.SysProcIDMap{{ContainerID: 0, HostID: os.Getuid(), Size: 1}},
		GidMappings: []syscall.SysProcIDMap{{ContainerID: 0, HostID: os.Getgid(), Size: 1}},
	}
	out, err := cmd.CombinedOutput()
	switch {
	case bytes.Contains(out, []byte(noSmallDisk)), err != nil && len(out) == 0:
		t.Logf("no disk of its own can be had here (%v): not tried", err)
	case err != nil || !strings.HasSuffix(string(out), "all is well\n"):
		t.Errorf("%v: %s", err, out)
	}
}

const noSmallDisk = "no small disk"

// workOnASmallDisk fills the disk under a casebook, sees every kind of work
// refused in plain words, makes space, and sees the work go on with nothing lost.
func workOnASmallDisk(disk string) error {
	if err := syscall.Mount("tmpfs", disk, "tmpfs", 0, "size=2m"); err != nil {
		return fmt.Errorf("%s: %w", noSmallDisk, err)
	}
	originals, err := os.MkdirTemp("", "originals")
	if err != nil {
		return err
	}
	defer func() { _ = os.RemoveAll(originals) }() // a temporary folder
	folder := filepath.Join(disk, "book")
	book, err := Open(folder)
	if err != nil {
		return err
	}
	id, err := book.AddCase(Case{Code: "S-1", Hand: LeftHand})
	if err != nil {
		return err
	}
	n := 0
	bringIn := func() (int64, error) {
		n++
		path := filepath.Join(originals, "a.jpg")
		if err := os.WriteFile(path, tinyJPEG(n), 0o666); err != nil {
			return 0, err
		}
		r, err := book.Import(context.Background(), id, []Item{{Path: path, Hand: hand.Left, View: hand.Dorsal, Date: "2024-05-01"}}, nil)
		if err != nil {
			return 0, err
		}
		return r[0].Photograph, r[0].Err
	}
	first, err := bringIn()
	if err != nil {
		return err
	}
	p, err := book.Photograph(first)
	if err != nil {
		return err
	}
	if err := errors.Join(book.SaveMarks(first, "AB", marksAt(4)), book.SavePlan(first, "AB", `{"at": 4}`)); err != nil {
		return err
	}
	filler := filepath.Join(disk, "filler")
	if err := fill(filler); err != nil {
		return err
	}
	for what, work := range map[string]func() error{
		"an import":    func() error { _, err := bringIn(); return err },
		"marks":        func() error { return book.SaveMarks(first, "AB", marksAt(5)) },
		"a plan":       func() error { return book.SavePlan(first, "AB", `{"at": 5}`) },
		"an appraisal": func() error { return book.SaveAppraisal(p.Sitting, felt("AB", "soft", "")) },
		"a case":       func() error { _, err := book.AddCase(Case{Code: "S-2", Hand: LeftHand}); return err },
		"a sent case":  func() error { return book.Export(id, filepath.Join(disk, "case.zip"), "") },
	} {
		if err := work(); err == nil || !strings.Contains(err.Error(), "the disk is full; nothing is lost: make space and do it again") {
			return fmt.Errorf("%s on a full disk: %v", what, err)
		}
	}
	if f, ok, err := book.Marks(first, "AB"); err != nil || !ok || f.Marks.Joints[hand.Middle][hand.MCP].X != 4 {
		return fmt.Errorf("after the disk was full the marks are %v %v", f.Marks.Joints, err)
	}
	// A window that is closed and opened again on the full disk shows everything.
	if err := book.Close(); err != nil {
		return fmt.Errorf("closing on a full disk: %w", err)
	}
	if book, err = Open(folder); err != nil {
		return fmt.Errorf("opening on a full disk: %w", err)
	}
	if all, err := book.Photographs(id); err != nil || len(all) != 1 {
		return fmt.Errorf("on a full disk there are %d photographs, %v", len(all), err)
	}
	if err := os.Remove(filler); err != nil {
		return err
	}
	if _, err := bringIn(); err != nil {
		return fmt.Errorf("an import after space was made: %w", err)
	}
	err = errors.Join(
		book.SaveMarks(first, "AB", marksAt(5)), book.SavePlan(first, "AB", `{"at": 5}`), book.SaveAppraisal(p.Sitting, felt("AB", "soft", "")),
		book.Export(id, filepath.Join(disk, "case.zip"), ""), book.Check(context.Background()),
	)
	if err != nil {
		return fmt.Errorf("after space was made: %w", err)
	}
	if err := book.Close(); err != nil {
		return err
	}
	if book, err = Open(folder); err != nil {
		return err
	}
	if f := book.Findings(); len(f.Missing)+len(f.Unclaimed) > 0 {
		return fmt.Errorf("at the end %+v", f)
	}
	return book.Close()
}

// fill writes until nothing more goes.
func fill(path string) (err error) {
	f, err := os.Create(path)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, f.Close()) }()
	for size := 1 << 16; size > 0; {
		if _, err := f.Write(make([]byte, size)); errors.Is(err, syscall.ENOSPC) {
			size /= 2
		} else if err != nil {
			return err
		}
	}
	return nil
}
