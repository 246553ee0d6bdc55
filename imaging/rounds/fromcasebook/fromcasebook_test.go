package fromcasebook

import (
	"math"
	"os"
	"path/filepath"
	"testing"
	"time"

	"math/rand/v2"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/imaging/casebook"
	"ogive/imaging/marksfile"
	"ogive/imaging/measure"
	"ogive/imaging/phantom"
	"ogive/imaging/rounds"
)

// book is a casebook with one photograph of a hand whose third web is far too deep,
// marked by the reference observer CD.
func book(t *testing.T) (*casebook.Casebook, phantom.Picture) {
	t.Helper()
	c := phantom.Case{Seed: 7, Size: 40, Width: 1000, Height: 750, Webs: map[hand.Web]phantom.WebShape{
		hand.ThirdWeb: {Shape: arch.Gothic, Index: 0.3, Span: 9, Turn: plane.Degrees(55)},
	}}
	picture, err := c.Render()
	if err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	path := filepath.Join(folder, "hand.jpg")
	if err := os.WriteFile(path, picture.JPEG, 0o600); err != nil {
		t.Fatal(err)
	}
	b, err := casebook.Open(filepath.Join(folder, "book"))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := b.Close(); err != nil {
			t.Error(err)
		}
	})
	id, err := b.AddCase(casebook.Case{Code: "S-012", Hand: casebook.RightHand})
	if err != nil {
		t.Fatal(err)
	}
	in, err := b.Import(t.Context(), id, []casebook.Item{{Path: path, Hand: hand.Right, View: hand.Dorsal, Date: "2026-03-01"}}, nil)
	if err != nil || in[0].Err != nil {
		t.Fatal(err, in)
	}
	if err := b.SaveMarks(in[0].Photograph, "CD", marks(picture, 1)); err != nil {
		t.Fatal(err)
	}
	return b, picture
}

func marks(p phantom.Picture, seed uint64) marksfile.File {
	m, reference := p.Truth.Marks(1, rand.New(rand.NewPCG(seed, 1)))
	return marksfile.File{Photograph: "hand.jpg", Marks: m, Reference: reference}
}

func TestARoundOfACasebookIsScoredAgainstTheReferenceObserver(t *testing.T) {
	b, picture := book(t)
	given, err := Photographs(b, "CD")
	if err != nil || len(given) != 1 {
		t.Fatalf("%v, %v", given, err)
	}
	settings, err := measure.Defaults()
	if err != nil {
		t.Fatal(err)
	}
	now := time.Date(2026, 3, 2, 9, 0, 0, 0, time.UTC)
	r, err := rounds.Begin(t.TempDir(), "AB", rounds.Setup{Kind: rounds.Blind, Photographs: given}, settings.Norms, now)
	if err != nil {
		t.Fatal(err)
	}
	s, err := r.Supply(t.Context(), settings, Library{b})
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	p, err := s.Next(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	if p.Truth.Exact || p.Truth.By != "CD" || len(p.Truth.Webs) != 3 {
		t.Errorf("%+v", p.Truth)
	}
	own := marks(picture, 2)
	f, err := r.Answer(p, rounds.Answer{Marks: &own}, settings, now)
	if err != nil {
		t.Fatal(err)
	}
	if f.Result.Exact || f.Result.Score() < 0.8 {
		t.Errorf("score %v: %+v", f.Result.Score(), f.Lines)
	}
	for _, l := range f.Result.Landmarks {
		if size := float64(l.Size()); size > 2 || math.IsNaN(size) {
			t.Errorf("%s of %s is %v mm off", l.Kind, l.Of, size)
		}
	}
	if _, ok := rounds.Repeatability([]*rounds.Round{r}, "AB"); ok {
		t.Error("clicks against another observer's tell an observer's own scatter")
	}
}

func TestByEyeEveryFindingThatTheReferenceAllowsIsRight(t *testing.T) {
	b, _ := book(t)
	given, err := Photographs(b, "CD")
	if err != nil {
		t.Fatal(err)
	}
	settings, err := measure.Defaults()
	if err != nil {
		t.Fatal(err)
	}
	now := time.Date(2026, 3, 2, 9, 0, 0, 0, time.UTC)
	r, err := rounds.Begin(t.TempDir(), "AB", rounds.Setup{Kind: rounds.ByEye, Photographs: given}, settings.Norms, now)
	if err != nil {
		t.Fatal(err)
	}
	s, err := r.Supply(t.Context(), settings, Library{b})
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	p, err := s.Next(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	if p.Web != hand.SecondWeb || len(p.Questions) != 4 {
		t.Fatalf("%v: %+v", p.Web, p.Questions)
	}
	f, err := r.Answer(p, rounds.Answer{Choices: map[rounds.Asked]string{rounds.Place: "within limits", rounds.Width: "within limits", rounds.Shape: "U"}}, settings, now)
	if err != nil {
		t.Fatal(err)
	}
	for _, j := range f.Result.Judged[:3] {
		if !j.Right || (j.Of != rounds.Shape && j.U95 == 0) {
			t.Errorf("%+v", j)
		}
	}
}

func TestWithoutMarksOrCasebookThereIsASentence(t *testing.T) {
	b, _ := book(t)
	if given, err := Photographs(b, "EF"); err != nil || len(given) != 0 {
		t.Errorf("%v, %v", given, err)
	}
	for _, key := range []string{"999", "x", ""} {
		if _, err := (Library{b}).Photograph(key); err == nil {
			t.Errorf("there is a photograph %q", key)
		}
	}
	if _, err := (Library{b}).Marks("1", "EF"); err == nil {
		t.Error("there are marks of one who made none")
	}
}

func TestDrawnPhotographsAreTheSameForASeed(t *testing.T) {
	all := []rounds.Reference{{Key: "1"}, {Key: "2"}, {Key: "3"}, {Key: "4"}, {Key: "5"}}
	one, two := Drawn(all, 3, 8), Drawn(all, 3, 8)
	if len(one) != 3 || one[0] != two[0] || one[1] != two[1] || one[2] != two[2] || len(Drawn(all, 9, 1)) != 5 {
		t.Errorf("%v, %v", one, two)
	}
}
