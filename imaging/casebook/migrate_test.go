package casebook

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"ogive/geometry/hand"
)

// The folder form-1 was written by the program when it knew form 1 only.
func aCasebookOfForm1(t *testing.T) string {
	t.Helper()
	folder := filepath.Join(t.TempDir(), "book")
	if err := os.CopyFS(folder, os.DirFS(filepath.Join("testdata", "form-1"))); err != nil {
		t.Fatal(err)
	}
	return folder
}

func TestACasebookOfTheFirstFormOpensWithEverythingInIt(t *testing.T) {
	folder := aCasebookOfForm1(t)
	for range 2 { // the second time it is of the present form
		book := opened(t, folder)
		asInForm1(t, book)
		closed(t, book)
	}
}

func asInForm1(t *testing.T, book *Casebook) {
	t.Helper()
	if f := book.Findings(); len(f.Missing)+len(f.Unclaimed)+len(f.Swept) > 0 {
		t.Errorf("%+v", f)
	}
	if err := book.Check(t.Context()); err != nil {
		t.Error(err)
	}
	all, err := book.Cases("")
	if err != nil || len(all) != 2 || all[0].Code != "S-012" || all[0].Sittings != 3 || all[0].Photographs != 3 || all[1].Code != "S-013" {
		t.Fatalf("%+v %v", all, err)
	}
	c, err := book.Case(all[0].ID)
	if err != nil || c.Born != "2021-07" || c.Findings != "missing phalanx" || len(c.Joins) != 1 || c.Joins[0] != (Join{hand.Left, hand.ThirdWeb, Complex, Complete, "2024-01-10"}) {
		t.Errorf("%+v %v", c, err)
	}
	sittings, err := book.Sittings(c.ID)
	want := "[{1 2023-12-01 before } {2 2024-01-10 operation } {3 2024-07-15 follow-up }]"
	if fmt.Sprint(sittings) != want || err != nil {
		t.Errorf("%v, want %s; %v", sittings, want, err)
	}
	photos, err := book.Photographs(c.ID)
	if err != nil || len(photos) != 3 || photos[2].Hand != "left" || photos[2].View != "dorsal" || photos[2].Width != 48 {
		t.Fatalf("%+v %v", photos, err)
	}
	for i, wanted := range map[int]string{0: "AB [10,3]", 1: "AB [11,3]", 2: "AB [12,3] [20,3] CD [21,3]"} {
		if got := placed(t, book, photos[i].ID); got != wanted {
			t.Errorf("photograph %d bears %s, want %s", i, got, wanted)
		}
	}
}

// placed is where every observer put the one joint, revision by revision.
func placed(t *testing.T, book *Casebook, photograph int64) string {
	t.Helper()
	who, err := book.MarkedBy(photograph)
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for _, o := range who {
		out = append(out, o)
		h, err := book.History(photograph, o)
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range h {
			_, rest, _ := strings.Cut(r.Text, `"mcp":`)
			at, _, _ := strings.Cut(rest, "]")
			out = append(out, strings.ReplaceAll(at, " ", "")+"]")
		}
	}
	return strings.Join(out, " ")
}

func TestACaseExportedInTheFirstFormComesIn(t *testing.T) {
	book := fresh(t)
	id, err := book.Receive(filepath.Join("testdata", "form-1-case.zip"), "")
	if err != nil {
		t.Fatal(err)
	}
	if c, err := book.Case(id); err != nil || c.Code != "S-012" || len(c.Joins) != 1 || c.Joins[0].Hand != hand.Left || c.Joins[0].Web != hand.ThirdWeb {
		t.Errorf("%+v %v", c, err)
	}
	if got := placed(t, book, 3); got != "AB [12,3] [20,3] CD [21,3]" {
		t.Errorf("the last photograph bears %s", got)
	}
}

func TestALaterCasebookIsRefusedAndLeftAsItIs(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "book")
	later := fstest.MapFS{"migrations/0003.sql": {Data: []byte("ALTER TABLE cases ADD COLUMN weight TEXT NOT NULL DEFAULT 'none'")}}
	for _, name := range []string{"migrations/0001.sql", "migrations/0002.sql"} {
		data, err := migrations.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		later[name] = &fstest.MapFile{Data: data}
	}
	book := opened(t, folder)
	id := addCase(t, book, "S-1")
	closed(t, book)

	book, err := open(folder, later)
	if err != nil {
		t.Fatalf("an older casebook: %v", err)
	}
	var weight string
	if err := book.db.QueryRow("SELECT weight FROM cases WHERE id=?", id).Scan(&weight); err != nil || weight != "none" {
		t.Errorf("after the step: %q %v", weight, err)
	}
	closed(t, book)
	before, err := os.ReadFile(filepath.Join(folder, DatabaseName))
	if err != nil {
		t.Fatal(err)
	}
	if err := os.Remove(filepath.Join(folder, lockName)); err != nil {
		t.Fatal(err)
	}
	if _, err := Open(folder); err == nil || !strings.Contains(err.Error(), "later program (form 3, this program knows form 2)") {
		t.Errorf("a later casebook: %v", err)
	}
	after, err := os.ReadFile(filepath.Join(folder, DatabaseName))
	if _, gone := os.Stat(filepath.Join(folder, lockName)); err != nil || !bytes.Equal(before, after) || gone == nil {
		t.Error("the later casebook was touched")
	}
}
