package wholefile

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func contents(t *testing.T, path string) string {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

func onlyFile(t *testing.T, folder, name string) {
	t.Helper()
	entries, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	if len(entries) != 1 || entries[0].Name() != name {
		t.Errorf("the folder holds %v, want %s alone", entries, name)
	}
}

func TestAFileIsMadeAndReplacedWithoutLeftovers(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "marks.json")
	for _, want := range []string{"first", "second, longer", ""} {
		if err := Write(path, []byte(want)); err != nil {
			t.Fatal(err)
		}
		if got := contents(t, path); got != want {
			t.Errorf("the file holds %q, want %q", got, want)
		}
		onlyFile(t, folder, "marks.json")
	}
}

func TestAReplacedFileKeepsItsPermissions(t *testing.T) {
	path := filepath.Join(t.TempDir(), "marks.json")
	if err := os.WriteFile(path, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := Write(path, []byte("x")); err != nil {
		t.Fatal(err)
	}
	info, err := os.Stat(path)
	if err != nil {
		t.Fatal(err)
	}
	if info.Mode().Perm() != 0o600 {
		t.Errorf("permissions became %v", info.Mode().Perm())
	}
}

func TestARefusalNamesTheFileAndLeavesNothingBehind(t *testing.T) {
	folder := t.TempDir()
	err := Write(filepath.Join(folder, "none", "marks.json"), []byte("x"))
	if err == nil || !strings.Contains(err.Error(), "marks.json can't be written") || !strings.Contains(err.Error(), "check that the folder is there") {
		t.Errorf("writing into a folder that is not there: %v", err)
	}
	if err := os.Mkdir(filepath.Join(folder, "taken"), 0o700); err != nil {
		t.Fatal(err)
	}
	if err := Write(filepath.Join(folder, "taken"), []byte("x")); err == nil || !strings.Contains(err.Error(), "taken can't be replaced") {
		t.Errorf("writing over a folder: %v", err)
	}
	onlyFile(t, folder, "taken")
}
