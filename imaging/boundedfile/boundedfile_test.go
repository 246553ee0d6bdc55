package boundedfile

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestOfALongFileOneByteMoreThanAllowedIsRead(t *testing.T) {
	path := filepath.Join(t.TempDir(), "film.json")
	for _, c := range []struct{ length, want int }{{0, 0}, {9, 9}, {10, 10}, {11, 11}, {5000, 11}} {
		if err := os.WriteFile(path, make([]byte, c.length), 0o644); err != nil {
			t.Fatal(err)
		}
		data, err := Read(path, 10, "a marks file")
		if err != nil || len(data) != c.want {
			t.Errorf("of %d bytes %d are read (%v), want %d", c.length, len(data), err, c.want)
		}
	}
}

func TestWhatCannotBeReadSaysHowToMendIt(t *testing.T) {
	folder := t.TempDir()
	for path, want := range map[string]string{
		filepath.Join(folder, "none.json"): "there is no such file; check the name and the folder",
		folder:                             "this is not a file; give the name of a marks file",
	} {
		_, err := Read(path, 10, "a marks file")
		if err == nil || err.Error() != want {
			t.Errorf("%s: %v, want %q", filepath.Base(path), err, want)
		}
	}
}

func TestAFileThatMayNotBeReadIsToldWithoutItsPathTwice(t *testing.T) {
	path := filepath.Join(t.TempDir(), "locked.json")
	if err := os.WriteFile(path, []byte("{}"), 0o000); err != nil {
		t.Fatal(err)
	}
	_, err := Read(path, 10, "a marks file")
	if err == nil {
		return // whoever may read everything is not refused
	}
	if !strings.HasPrefix(err.Error(), "the file can't be read: ") || strings.Contains(err.Error(), path) {
		t.Errorf("it says %q", err)
	}
}
