package normals

import (
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"ogive/assets"
	"ogive/geometry/norms"
)

func TestTheShippedTableComesBackFromItsCopyUnchanged(t *testing.T) {
	shipped := table(t)
	path := filepath.Join(t.TempDir(), "folder", "copy.json")
	if err := Save(path, shipped); err != nil {
		t.Fatal(err)
	}
	again, there, err := Load(path)
	if err != nil || !there {
		t.Fatalf("the copy is there: %v, error %v", there, err)
	}
	if !reflect.DeepEqual(again, shipped) || !Same(again, shipped) {
		t.Errorf("the copy reads %+v, the table was %+v", again, shipped)
	}
}

func TestAnEditedLimitIsKeptAndTellsTheTablesApart(t *testing.T) {
	edited := table(t)
	edited.Bands[0].Low += 0.01
	if Same(edited, table(t)) {
		t.Error("an edited table counts as the shipped one")
	}
	path := filepath.Join(t.TempDir(), "copy.json")
	if err := Save(path, edited); err != nil {
		t.Fatal(err)
	}
	if again, _, err := Load(path); err != nil || again.Bands[0].Low != edited.Bands[0].Low {
		t.Errorf("the limit came back as %v (%v), want %v", again.Bands[0].Low, err, edited.Bands[0].Low)
	}
}

func TestATableThatCouldNotBeReadAgainIsRefused(t *testing.T) {
	wrong := table(t)
	wrong.Bands[0].Low = wrong.Bands[0].High + 1
	path := filepath.Join(t.TempDir(), "copy.json")
	if err := Save(path, wrong); err == nil {
		t.Error("a band with its low above its high was kept")
	}
	if _, err := os.Stat(path); err == nil {
		t.Error("a refused table left a file")
	}
}

func TestADamagedCopyIsNamedAndLeftAsItIs(t *testing.T) {
	path := filepath.Join(t.TempDir(), "copy.json")
	if err := os.WriteFile(path, []byte("{"), 0o644); err != nil {
		t.Fatal(err)
	}
	_, there, err := Load(path)
	if !there || err == nil || !strings.Contains(err.Error(), "copy.json") {
		t.Errorf("a damaged copy gave there %v, error %v", there, err)
	}
	if data, _ := os.ReadFile(path); string(data) != "{" {
		t.Errorf("the damaged copy now holds %q", data)
	}
}

func TestWithoutACopyThereIsNone(t *testing.T) {
	path := filepath.Join(t.TempDir(), "none.json")
	if _, there, err := Load(path); there || err != nil {
		t.Errorf("a missing copy gave there %v, error %v", there, err)
	}
	if err := Remove(path); err != nil {
		t.Errorf("removing no copy failed: %v", err)
	}
}

func table(t *testing.T) norms.Table {
	t.Helper()
	shipped, err := norms.Parse(assets.NormalValues)
	if err != nil {
		t.Fatal(err)
	}
	return shipped
}
