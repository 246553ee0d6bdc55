package casebook

import (
	"bytes"
	"context"
	"database/sql"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"ogive/geometry/hand"
)

func opened(t *testing.T, folder string) *Casebook {
	t.Helper()
	book, err := Open(folder)
	if err != nil {
		t.Fatal(err)
	}
	return book
}

func closed(t *testing.T, book *Casebook) {
	t.Helper()
	if err := book.Close(); err != nil {
		t.Fatal(err)
	}
}

func fresh(t *testing.T) *Casebook {
	t.Helper()
	book := opened(t, filepath.Join(t.TempDir(), "book"))
	t.Cleanup(func() { closed(t, book) })
	return book
}

func addCase(t *testing.T, book *Casebook, code string) int64 {
	t.Helper()
	id, err := book.AddCase(Case{Code: code, Hand: LeftHand, Born: "2021-07", Findings: "missing phalanx",
		Joins: []Join{{Hand: hand.Left, Web: hand.ThirdWeb, Kind: Complex, Extent: Complete, Operated: "2024-01-10"}}})
	if err != nil {
		t.Fatal(err)
	}
	return id
}

func importTiny(t *testing.T, book *Casebook, id int64, n int) Result {
	t.Helper()
	path := filepath.Join(t.TempDir(), "a.jpg")
	if err := os.WriteFile(path, tinyJPEG(n), 0o666); err != nil {
		t.Fatal(err)
	}
	r, err := book.Import(t.Context(), id, []Item{{Path: path, Hand: hand.Left, View: hand.Dorsal, Date: "2024-05-01"}}, nil)
	if err != nil || r[0].Err != nil {
		t.Fatalf("%v %+v", err, r)
	}
	return r[0]
}

func TestACodeThatTellsWhoThePatientIsIsRefusedWithTheReason(t *testing.T) {
	for code, reason := range map[string]string{
		"Anna Schmidt": "looks like a name", "Schmidt, Anna": "looks like a name", "ANNA SCHMIDT": "looks like a name",
		"Schmidt_Anna": "looks like a name", "AnnaSchmidt": "looks like a name", "Mary O'Brien": "looks like a name",
		"Schmidt": "looks like a name", "smith": "looks like a name", "Schmidt-1": "looks like a name",
		"2019-05-12": "full date", "12-Mar-2021": "full date", "A 12.05.2019": "full date", "12 May 2019": "full date", "3/4/19": "full date",
		"20190512": "long number", "H1234567": "long number", "943 476 5919": "long number", "": "empty",
	} {
		if err := CheckCode(code); err == nil || !strings.Contains(err.Error(), reason) {
			t.Errorf("%q: %v, want a refusal that says %q", code, err, reason)
		}
	}
	for _, code := range []string{"S-012", "2026-0012", "case 7", "EXAMPLE-1", "SYN-A", "L3", "web 3 b", "Ω-17"} {
		if err := CheckCode(code); err != nil {
			t.Errorf("%q: %v", code, err)
		}
	}
	if _, err := ParseMonth("2021-07-14"); err == nil || !strings.Contains(err.Error(), "2021-07, which is enough for the age") {
		t.Errorf("a date of birth: %v", err)
	}
}

func TestACaseComesBackAsItWasGivenAndIsFoundByItsWords(t *testing.T) {
	book := fresh(t)
	id := addCase(t, book, "S-012")
	c, err := book.Case(id)
	if err != nil || c.Code != "S-012" || c.Born != "2021-07" || len(c.Joins) != 1 || c.Joins[0].Kind != Complex || c.Operated() != "2024-01-10" {
		t.Fatalf("%+v %v", c, err)
	}
	for search, want := range map[string]int{"": 1, "s-01": 1, "third complex": 1, "PHALANX": 1, "simple": 0, "100%": 0} {
		if found, err := book.Cases(search); err != nil || len(found) != want {
			t.Errorf("search %q: %d cases, %v", search, len(found), err)
		}
	}
	if _, err := book.AddCase(Case{Code: "s-012", Hand: LeftHand}); err == nil || !strings.Contains(err.Error(), "already") {
		t.Errorf("the same code again: %v", err)
	}
	c.Code, c.Joins = "S-013", nil
	if err := book.ChangeCase(c); err != nil {
		t.Fatal(err)
	}
	if c, err := book.Case(id); err != nil || c.Code != "S-013" || len(c.Joins) != 0 {
		t.Errorf("changed: %+v %v", c, err)
	}
}

func TestTheSamePhotographTwiceIsRecognisedAndTheOriginalIsUntouched(t *testing.T) {
	book := fresh(t)
	id := addCase(t, book, "S-1")
	first := importTiny(t, book, id, 7)
	if again := importTiny(t, book, addCase(t, book, "S-2"), 7); again.Twice == nil || again.Twice.Photograph != first.Photograph || again.Twice.Case != "S-1" {
		t.Errorf("the same file: %+v", again)
	}
	p, err := book.Photograph(first.Photograph)
	if err != nil {
		t.Fatal(err)
	}
	copied := filepath.Join(t.TempDir(), "copy.jpg")
	data, err := os.ReadFile(book.Path(p))
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(copied, append(data, "film"...), 0o666); err != nil {
		t.Fatal(err)
	}
	r, err := book.Import(t.Context(), id, []Item{{Path: copied, Date: "2024-01-01"}}, nil)
	if err != nil || r[0].Twice == nil {
		t.Errorf("the same picture with something behind it: %+v %v", r, err)
	}
	if now, err := os.ReadFile(copied); err != nil || !bytes.HasSuffix(now, []byte("film")) {
		t.Errorf("the original was touched: %v", err)
	}
	if s, err := book.Sittings(id); err != nil || len(s) != 1 || s[0].Stage != FollowUp || s[0].Date != "2024-05-01" {
		t.Errorf("sittings %+v %v", s, err)
	}
	if small, err := book.Thumbnail(p); err != nil || len(small) == 0 {
		t.Errorf("thumbnail: %v", err)
	}
}

func TestAnImportGoesOnPastWhatItCantReadAndStopsWhenTold(t *testing.T) {
	book := fresh(t)
	id := addCase(t, book, "S-1")
	folder := t.TempDir()
	var items []Item
	for i := range 4 {
		path := filepath.Join(folder, string(rune('a'+i))+".jpg")
		data := tinyJPEG(i)
		if i == 1 {
			data = []byte("no picture")
		}
		if err := os.WriteFile(path, data, 0o666); err != nil {
			t.Fatal(err)
		}
		items = append(items, Item{Path: path, Date: "2024-01-10"})
	}
	items[2].Date = ""
	ctx, cancel := context.WithCancel(t.Context())
	r, err := book.Import(ctx, id, items, func(done, all int, _ Result) {
		if done == 3 {
			cancel()
		}
	})
	if !errors.Is(err, context.Canceled) || len(r) != 3 || r[0].Err != nil ||
		!strings.Contains(r[1].Err.Error(), "b.jpg is not a picture") || !strings.Contains(r[2].Err.Error(), "c.jpg says no date") {
		t.Errorf("%v %+v", err, r)
	}
}

func TestEveryPieceOfWorkOnMarksStaysToBeReadAgain(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "book")
	book := opened(t, folder)
	p := importTiny(t, book, addCase(t, book, "S-1"), 1).Photograph
	for _, x := range []float64{1, 2} {
		if err := book.SaveMarks(p, "AB", marksAt(x)); err != nil {
			t.Fatal(err)
		}
	}
	closed(t, book)
	book = opened(t, folder)
	defer closed(t, book)
	if err := book.SaveMarks(p, "ab", marksAt(3)); err != nil {
		t.Fatal(err)
	}
	h, err := book.History(p, "AB")
	if err != nil || len(h) != 2 || !strings.Contains(h[0].Text, "[2,3]") || !strings.Contains(h[1].Text, "[3,3]") {
		t.Errorf("%+v %v", h, err)
	}
	if err := book.SaveMarks(p, "AB", marksAt(60)); err == nil || !strings.Contains(err.Error(), "outside the photograph") {
		t.Errorf("marks outside: %v", err)
	}
	if err := book.SetHandAndView(p, hand.Right, hand.Dorsal); err == nil {
		t.Error("a marked photograph changed its hand")
	}
}

func TestTheSecondWindowIsToldAndMayRead(t *testing.T) {
	first := fresh(t)
	id := addCase(t, first, "S-1")
	second := opened(t, first.Folder())
	defer closed(t, second)
	if second.ReadOnly() != openElsewhere {
		t.Errorf("the second window hears %q", second.ReadOnly())
	}
	if c, err := second.Case(id); err != nil || c.Code != "S-1" {
		t.Errorf("the second window reads %+v, %v", c, err)
	}
	if _, err := second.AddCase(Case{Code: "S-2", Hand: LeftHand}); err == nil || !strings.Contains(err.Error(), "another window") {
		t.Errorf("the second window writes: %v", err)
	}
	addCase(t, first, "S-3")
}

func TestAFullDiskIsSaidPlainlyAndNothingIsLost(t *testing.T) {
	book := fresh(t)
	id := addCase(t, book, "S-1")
	if _, err := book.db.Exec("PRAGMA max_page_count=1"); err != nil { // as many pages as there are
		t.Fatal(err)
	}
	c, err := book.Case(id)
	if err != nil {
		t.Fatal(err)
	}
	c.Findings = strings.Repeat("scar ", 1900)
	var full error
	for i := 0; i < 50 && full == nil; i++ {
		c.Code, c.ID = "F-"+string(rune('a'+i)), 0
		_, full = book.AddCase(c)
	}
	if full == nil || !strings.Contains(full.Error(), "the disk is full; nothing is lost: make space") {
		t.Errorf("a full disk: %v", full)
	}
	if _, err := book.db.Exec("PRAGMA max_page_count=1000000"); err != nil {
		t.Fatal(err)
	}
	c.Code = "F-100"
	if _, err := book.AddCase(c); err != nil {
		t.Errorf("after space was made: %v", err)
	}
	if err := book.Check(t.Context()); err != nil {
		t.Error(err)
	}
}

func TestFilesThatNobodyClaimsAreSetAsideAndMissingOnesNamed(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "book")
	book := opened(t, folder)
	id := addCase(t, book, "S-1")
	p, err := book.Photograph(importTiny(t, book, id, 1).Photograph)
	if err != nil {
		t.Fatal(err)
	}
	stray, cut := strings.Repeat("a", 64)+".jpg", strings.Repeat("b", 64)
	if err := os.WriteFile(book.path(photosName, stray), nil, 0o666); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(book.path(photosName, cut+".jpg"), nil, 0o666); err != nil {
		t.Fatal(err)
	}
	err = book.change("", func(tx *sql.Tx) error { _, err := tx.Exec("INSERT INTO intents VALUES(?)", cut); return err })
	if err != nil {
		t.Fatal(err)
	}
	if err := os.Remove(book.Path(p)); err != nil {
		t.Fatal(err)
	}
	closed(t, book)
	book = opened(t, folder)
	defer closed(t, book)
	f := book.Findings()
	if len(f.Swept) != 1 || len(f.Unclaimed) != 1 || len(f.Missing) != 1 || f.Missing[0] != p.Hash {
		t.Errorf("%+v", f)
	}
	if _, err := os.Stat(book.path(asideName, stray)); err != nil {
		t.Error(err)
	}
}
