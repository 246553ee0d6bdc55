package casebook

import (
	"archive/zip"
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func exported(t *testing.T, passphrase string) (from *Casebook, path string) {
	t.Helper()
	from = fresh(t)
	id := addCase(t, from, "S-1")
	p := importTiny(t, from, id, 5).Photograph
	if err := from.SaveMarks(p, "AB", marksAt(4)); err != nil {
		t.Fatal(err)
	}
	if err := from.SavePlan(p, "AB", `{"flap": 2}`); err != nil {
		t.Fatal(err)
	}
	at, err := from.Photograph(p)
	if err != nil {
		t.Fatal(err)
	}
	if err := errors.Join(from.SaveAppraisal(at.Sitting, felt("CD", "thickened", "radial side")), from.SetSittingNote(at.Sitting, "splint at night")); err != nil {
		t.Fatal(err)
	}
	path = filepath.Join(t.TempDir(), "case.zip")
	if err := from.Export(id, path, passphrase); err != nil {
		t.Fatal(err)
	}
	if err := from.Export(id, path, passphrase); err == nil || !strings.Contains(err.Error(), "is there already") {
		t.Errorf("exporting onto a file: %v", err)
	}
	return from, path
}

func TestACaseGoesOutAndComesInElsewhereAndOverwritesNothing(t *testing.T) {
	for _, passphrase := range []string{"", "four words of a passphrase"} {
		from, path := exported(t, passphrase)
		if data, err := os.ReadFile(path); err != nil || (passphrase != "") == bytes.Contains(data, []byte("manifest.json")) {
			t.Errorf("encryption with passphrase %q: %v", passphrase, err)
		}
		to := fresh(t)
		if passphrase != "" {
			if _, err := to.Receive(path, "another"); !errors.Is(err, ErrPassphrase) {
				t.Errorf("a wrong passphrase: %v", err)
			}
		}
		id, err := to.Receive(path, passphrase)
		if err != nil {
			t.Fatal(err)
		}
		photos, err := to.Photographs(id)
		if err != nil || len(photos) != 1 || photos[0].Hand != "left" || photos[0].Date != "2024-05-01" {
			t.Fatalf("%+v %v", photos, err)
		}
		there, err := from.History(1, "AB")
		if err != nil {
			t.Fatal(err)
		}
		here, err := to.History(photos[0].ID, "AB")
		if err != nil || len(here) != 1 || here[0] != there[0] {
			t.Errorf("marks %+v became %+v, %v", there, here, err)
		}
		if plan, ok, err := to.Plan(photos[0].ID, "AB"); plan != `{"flap": 2}` || !ok || err != nil {
			t.Errorf("the plan became %q %v %v", plan, ok, err)
		}
		if s, err := to.Sittings(id); err != nil || len(s) != 1 || s[0].Note != "splint at night" || s[0].Stage != FollowUp {
			t.Errorf("the sitting became %+v %v", s, err)
		}
		before, err := from.Appraisals(1)
		if err != nil {
			t.Fatal(err)
		}
		if after, err := to.Appraisals(id); err != nil || !cmp.Equal(before, after) || len(after) != 1 {
			t.Errorf("the appraisals differ: %s %v", cmp.Diff(before, after), err)
		}
		if err := to.Check(t.Context()); err != nil {
			t.Error(err)
		}
		if _, err := to.Receive(path, passphrase); err == nil || !strings.Contains(err.Error(), "already") {
			t.Errorf("the same case again: %v", err)
		}
		noOrphan(t, to, id)
	}
}

func TestAHostileExportIsRefusedAndNothingIsTakenIn(t *testing.T) {
	_, path := exported(t, "")
	good, err := zip.OpenReader(path)
	if err != nil {
		t.Fatal(err)
	}
	defer func() {
		if err := good.Close(); err != nil {
			t.Error(err)
		}
	}()
	for want, change := range map[string]func(name string, data []byte) (string, []byte){
		"does not belong there": func(n string, d []byte) (string, []byte) { return strings.Replace(n, "marks-", "../marks-", 1), d },
		"unpack to far more": func(n string, d []byte) (string, []byte) {
			if strings.HasPrefix(n, "marks") {
				d = make([]byte, 3<<20)
			}
			return n, d
		},
		"was changed": func(n string, d []byte) (string, []byte) {
			if strings.HasPrefix(n, photosName) {
				d = append(bytes.Clone(d), 0)
			}
			return n, d
		},
	} {
		bad := filepath.Join(t.TempDir(), "bad.zip")
		var out bytes.Buffer
		z := zip.NewWriter(&out)
		files := map[string]*zip.File{}
		for _, f := range good.File {
			files[f.Name] = f
		}
		for _, f := range good.File {
			data, err := unpack(files, f.Name, "")
			if err != nil {
				t.Fatal(err)
			}
			name, data := change(f.Name, data)
			if err := addFile(z, name, zip.Deflate, bytes.NewReader(data)); err != nil {
				t.Fatal(err)
			}
		}
		if err := errors.Join(z.Close(), os.WriteFile(bad, out.Bytes(), 0o666)); err != nil {
			t.Fatal(err)
		}
		to := fresh(t)
		if _, err := to.Receive(bad, ""); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%v, want a refusal that says %q", err, want)
		}
		files2, err := os.ReadDir(to.path(photosName))
		if all, err2 := to.Cases(""); len(files2)+len(all) > 0 || err != nil || err2 != nil {
			t.Errorf("%s: something was taken in", want)
		}
	}
}
