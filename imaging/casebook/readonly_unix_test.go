//go:build unix

package casebook

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

const readerFolder = "OGIVE_CASEBOOK_READER"

func init() { readAs = readAsAnother }

// readAsAnother opens the casebook as a user who may write nothing, root least
// of all, and says what came of it.
func readAsAnother(folder string) {
	if os.Getuid() == 0 {
		if err := syscall.Setuid(65534); err != nil {
			fmt.Println(err)
			return
		}
	}
	book, err := Open(folder)
	if err != nil {
		fmt.Println(err)
		return
	}
	all, err := book.Cases("")
	_, refused := book.AddCase(Case{Code: "S-2", Hand: LeftHand})
	fmt.Println(len(all), err, "|", book.ReadOnly(), "|", refused, "|", book.Close())
}

func TestAFolderThatCantBeWrittenIsReadAndSaidSo(t *testing.T) {
	above, err := os.MkdirTemp("", "readonly")
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = os.RemoveAll(above) }() // a temporary folder
	folder := filepath.Join(above, "book")
	book := opened(t, folder)
	addCase(t, book, "S-1")
	closed(t, book)
	for path, mode := range map[string]os.FileMode{above: 0o755, folder: 0o555, filepath.Join(folder, DatabaseName): 0o444, filepath.Join(folder, lockName): 0o444} {
		if err := os.Chmod(path, mode); err != nil {
			t.Fatal(err)
		}
	}
	cmd := exec.Command(os.Args[0])
	cmd.Env = append(os.Environ(), readerFolder+"="+folder)
	out, err := cmd.CombinedOutput()
	want := "1 <nil> | " + notWritable + " | nothing was changed: " + notWritable + " | <nil>"
	if err != nil || strings.TrimSpace(string(out)) != want {
		t.Errorf("%v\n got %s\nwant %s", err, out, want)
	}
	if err := os.Chmod(folder, 0o755); err != nil {
		t.Fatal(err)
	}
}
