package cases

import (
	"context"
	"fmt"
	"testing"
	"time"

	"ogive/geometry/hand"
	"ogive/imaging/casebook"
)

// crowded is a casebook of many cases, one of them with 40 photographs.
func crowded(t testing.TB, cases int) (*casebook.Casebook, int64) {
	t.Helper()
	book := opened(t)
	for n := range cases {
		add(t, book, casebook.Case{Code: fmt.Sprintf("C-%04d", n), Hand: allHands[n%3], Findings: "missing middle phalanx",
			Joins: []casebook.Join{{Hand: hand.Left, Web: hand.Web(1 + n%4), Kind: casebook.Simple, Operated: "2023-03-14"}}})
	}
	id := add(t, book, child())
	folder := t.TempDir()
	var items []casebook.Item
	for n := range 40 {
		items = append(items, casebook.Item{Path: picture(t, folder, 200+n), Hand: sides[n%2], View: views[n%3], Date: casebook.Date(fmt.Sprintf("2024-%02d-01", 1+n/8))})
	}
	if _, err := book.Import(context.Background(), id, items, nil); err != nil {
		t.Fatal(err)
	}
	return book, id
}

// The program promises 300 ms on a quiet machine; the limit here leaves room for
// a busy one.
func TestFortyPhotographsAreOnTheScreenAtOnce(t *testing.T) {
	book, id := crowded(t, 3)
	s := newScene(t, book)
	s.until("the case is shown", s.allPictures)
	s.page.leave()
	s.page.small = newPictures()
	from := time.Now()
	s.ShowCase(id)
	s.until("all pictures are shown", s.allPictures)
	if took := time.Since(from); took > time.Second {
		t.Errorf("40 photographs take %v", took)
	} else {
		t.Logf("40 photographs take %v", took.Round(time.Millisecond))
	}
}

func (s *scene) allPictures() bool {
	if len(s.page.thumbs) < 40 {
		return false
	}
	for _, t := range s.page.thumbs {
		if t.picture.Image == nil {
			return false
		}
	}
	return true
}

// BenchmarkFortyPhotographs is from choosing a case to all its small pictures.
func BenchmarkFortyPhotographs(b *testing.B) {
	book, id := crowded(b, 3)
	s := newScene(b, book)
	for b.Loop() {
		s.page.leave()
		s.page.small = newPictures()
		s.ShowCase(id)
		s.until("all pictures are shown", s.allPictures)
	}
}

// BenchmarkKeystroke is from a keystroke in the search to the list, among 300
// cases.
func BenchmarkKeystroke(b *testing.B) {
	book, _ := crowded(b, 300)
	s := newScene(b, book)
	texts, n := []string{"third", "C-01", "phalanx 2023", "C"}, 0
	s.until("the list is filled", func() bool { return len(s.index.found) > 0 })
	s.settle()
	for b.Loop() {
		before := s.index.turn
		s.index.search.SetText(texts[n%len(texts)])
		n++
		done := false
		s.index.fill(func([]casebook.Summary) { done = true })
		s.until("it is found", func() bool { return done && s.index.turn > before })
	}
}
