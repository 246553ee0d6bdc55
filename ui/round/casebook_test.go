package round

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/imaging/marksfile"
	"ogive/imaging/phantom"
	"ogive/imaging/photo"
	"ogive/imaging/rounds"
)

// shelf is a casebook of one hand, which the observer XY has marked.
type shelf struct {
	picture phantom.Picture
	asked   []string
}

func (s *shelf) Photograph(key string) (*photo.Photograph, error) {
	s.asked = append(s.asked, key)
	return photo.Decode(s.picture.JPEG)
}

func (s *shelf) Marks(key, observer string) (marksfile.File, error) {
	if observer != "XY" {
		return marksfile.File{}, fmt.Errorf("%s has no marks of %s", key, observer)
	}
	m, reference := s.picture.Truth.Marks(0.5, rand.New(rand.NewPCG(3, 4)))
	return marksfile.File{Photograph: key, Marks: m, Reference: reference}, nil
}

func aShelf(t *testing.T) *shelf {
	t.Helper()
	picture, err := phantom.Case{
		Seed: 5, Size: 40, Width: 1200, Height: 900, Reference: phantom.WhiteRuler,
		Webs: map[hand.Web]phantom.WebShape{
			hand.SecondWeb: {Shape: arch.U, Index: 0.5, Span: 10, Flat: 0.4},
			hand.ThirdWeb:  {Shape: arch.Gothic, Index: 0.35, Span: 9, Turn: plane.Degrees(60)},
			hand.FourthWeb: {Shape: arch.U, Index: 0.5, Span: 10, Flat: 0.35},
		},
	}.Render()
	if err != nil {
		t.Fatal(err)
	}
	return &shelf{picture: picture}
}

func TestPhotographsOfACasebookMakeARoundWhoseTruthIsTheReferences(t *testing.T) {
	s := newScene(t, t.TempDir(), theme.VariantLight, small())
	if s.start.from.Visible() {
		t.Error("without a casebook one can be chosen")
	}
	books := aShelf(t)
	s.UseCasebook(&Casebook{Name: "hands of 2026", Library: books, Photographs: []rounds.Reference{{Key: "a", Observer: "XY"}}})
	s.lookedAt("start-casebook")
	s.start.source.Choose(1)
	s.press(fyne.KeyReturn)
	s.came()
	if s.page != judging || len(books.asked) != 1 || s.taking.picture.Truth.Exact || s.taking.picture.Truth.By != "XY" {
		t.Fatalf("page %v, asked for %q, said %q", s.page, books.asked, s.start.notice.label.Text)
	}
	s.judgeBadly()
	s.press(fyne.KeyReturn)
	s.came()
	s.lookedAt("told-casebook")
	text := ""
	for _, l := range s.taking.feedback.Lines {
		text += l.Words + "\n"
	}
	if s.page != telling || !strings.Contains(text, "±") {
		t.Errorf("page %v; of a photograph it is told\n%s", s.page, text)
	}
	s.press(fyne.KeyReturn)
	s.came()
	if s.page != concluding || !strings.Contains(s.result.text(), "photographs") {
		t.Errorf("page %v:\n%s", s.page, s.result.text())
	}
}

func TestARoundOfPhotographsSaysWhichCasebookItLacks(t *testing.T) {
	folder := t.TempDir()
	s := newScene(t, folder, theme.VariantLight, small())
	if _, err := rounds.Begin(folder, "AB", rounds.Setup{Kind: rounds.ByEye, Photographs: []rounds.Reference{{Key: "a", Observer: "XY"}}}, s.settings.Norms, s.now()); err != nil {
		t.Fatal(err)
	}
	s.Show(folder, "AB", s.settings)
	s.came()
	s.goOn(s.all[0])
	s.came()
	if s.page != starting || s.busy || !strings.Contains(s.start.notice.label.Text, "open the casebook") {
		t.Errorf("page %v, it says %q", s.page, s.start.notice.label.Text)
	}
}

func TestARoundBegunInOneCasebookIsNotGoneOnWithInAnother(t *testing.T) {
	s := newScene(t, t.TempDir(), theme.VariantLight, small())
	books := aShelf(t)
	photographs := []rounds.Reference{{Key: "a", Observer: "XY"}}
	s.UseCasebook(&Casebook{Name: "one", Key: "1", Library: books, Photographs: photographs})
	s.start.source.Choose(1)
	s.press(fyne.KeyReturn)
	s.came()
	s.leave()
	s.came()
	s.UseCasebook(&Casebook{Name: "two", Key: "2", Library: books, Photographs: photographs})
	s.goOn(s.all[0])
	s.came()
	if s.page != starting || !strings.Contains(s.start.notice.label.Text, "open the casebook they were taken from") || len(books.asked) != 1 {
		t.Errorf("page %v, it says %q, asked for %q", s.page, s.start.notice.label.Text, books.asked)
	}
	s.UseCasebook(&Casebook{Name: "one again", Key: "1", Library: books, Photographs: photographs})
	s.goOn(s.all[0])
	s.came()
	if s.page != judging {
		t.Errorf("page %v, it says %q", s.page, s.start.notice.label.Text)
	}
}

func TestOtherPhotographsAreDrawnForAnotherRound(t *testing.T) {
	var c Casebook
	for i := range 12 {
		c.Photographs = append(c.Photographs, rounds.Reference{Key: fmt.Sprint(i), Observer: "XY"})
	}
	first, again, second := fmt.Sprint(c.some(5, 1)), fmt.Sprint(c.some(5, 1)), fmt.Sprint(c.some(5, 2))
	if first != again || first == second || len(c.some(20, 1)) != 12 {
		t.Errorf("%s, %s, %s", first, again, second)
	}
}
