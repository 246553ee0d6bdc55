package window

import (
	"image"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/storage"

	"ogive/geometry/hand"
)

func TestWhatIsNoPhotographIsRefusedInOneSentenceAndNothingIsLost(t *testing.T) {
	s := newScene(t)
	path, _ := s.opened()
	s.tellHand(hand.Right, hand.Dorsal)
	folder := t.TempDir()
	text := filepath.Join(folder, "letter.jpg")
	write(t, text, []byte("Dear colleague, thank you for sending this child."))
	empty := filepath.Join(folder, "empty.jpg")
	write(t, empty, nil)
	for _, c := range []struct{ path, says string }{
		{text, "letter.jpg"},
		{empty, "empty.jpg"},
		{folder, "is a folder"},
		{filepath.Join(folder, "gone.jpg"), "no longer where it was"},
	} {
		s.notices.close(aboutOpening)
		s.Open(c.path)
		s.until("something is said", func() bool {
			n := s.notices.shown[aboutOpening]
			return n != nil && !strings.HasPrefix(n.text, "Opening")
		})
		said := s.notices.shown[aboutOpening].text
		if !strings.Contains(said, c.says) || strings.Count(said, "\n") > 0 || !strings.HasSuffix(said, ".") || strings.Contains(said, folder) {
			t.Errorf("of %s is said: %q", filepath.Base(c.path), said)
		}
		if s.work == nil || s.work.Path != path || s.previewing {
			t.Errorf("after %s the photograph that was open is gone", filepath.Base(c.path))
		}
	}
}

func TestAPhotographAskedForLaterWins(t *testing.T) {
	s := newScene(t)
	folder := t.TempDir()
	first, second := filepath.Join(folder, "first.jpg"), filepath.Join(folder, "second.jpg")
	write(t, first, aHand(t).JPEG)
	write(t, second, aHand(t).JPEG)
	s.Open(first)
	s.Open(second)
	s.until("the second is open", func() bool { return s.work != nil })
	s.settled()
	if got := filepath.Base(s.work.Path); got != "second.jpg" {
		t.Errorf("%s is open", got)
	}
}

func TestOfSeveralDroppedFilesTheFirstIsOpenedAndThatIsSaid(t *testing.T) {
	s := newScene(t)
	folder := t.TempDir()
	var uris []fyne.URI
	for _, name := range []string{"one.jpg", "two.jpg"} {
		write(t, filepath.Join(folder, name), aHand(t).JPEG)
		uris = append(uris, storage.NewFileURI(filepath.Join(folder, name)))
	}
	s.dropped(uris)
	s.until("one is open", func() bool { return s.work != nil })
	if got := filepath.Base(s.work.Path); got != "one.jpg" {
		t.Errorf("%s is open", got)
	}
	if !strings.Contains(strings.Join(s.notices.texts(), " "), "first of the 2") {
		t.Errorf("said is only %q", s.notices.texts())
	}
}

// The photographs show one flag of 192 x 128 pixels; those turned stand on end.
func TestEveryKindOfPhotographOpensUprightWithItsMarks(t *testing.T) {
	standing, lying := image.Pt(128, 192), image.Pt(192, 128)
	for name, upright := range map[string]image.Point{"turned.jpg": standing, "turned.png": standing, "turned.tif": standing, "turned.webp": standing, "flag.heic": lying} {
		s := newScene(t)
		data, err := os.ReadFile(filepath.Join("..", "..", "testdata", "photographs", name))
		if err != nil {
			t.Fatal(err)
		}
		path := filepath.Join(t.TempDir(), name)
		write(t, path, data)
		for _, again := range []bool{false, true} {
			s.dropped([]fyne.URI{storage.NewFileURI(path)})
			before := s.work
			s.until(name+" is open", func() bool {
				return s.work != before && !s.previewing || s.notices.shown[aboutOpening] != nil && !s.notices.shown[aboutOpening].lasting
			})
			if s.work == nil {
				t.Errorf("%s does not open: %q", name, s.notices.texts())
				break
			}
			if size := s.work.Photograph.Size(); size != upright {
				t.Errorf("%s lies on its side: %v", name, size)
			}
			if again && s.work.State().Side != hand.Left {
				t.Errorf("%s comes back without its marks", name)
			}
			s.tellHand(hand.Left, hand.Palmar)
		}
		if after, err := os.ReadFile(path); err != nil || string(after) != string(data) {
			t.Errorf("%s was written to (%v)", name, err)
		}
	}
}

func TestADroppedFolderIsNamedAsOne(t *testing.T) {
	s := newScene(t)
	s.dropped([]fyne.URI{storage.NewFileURI(t.TempDir())})
	if !strings.Contains(strings.Join(s.notices.texts(), " "), "is a folder; one photograph is opened at a time") {
		t.Errorf("said is %q", s.notices.texts())
	}
	if s.room.Visible() {
		t.Error("an empty photograph is shown")
	}
}

func TestDamagedMarksAreOfferedToBeSetAsideAndNeverWrittenOver(t *testing.T) {
	s := newScene(t)
	folder := t.TempDir()
	path, marks := filepath.Join(folder, "hand.jpg"), filepath.Join(folder, "hand.marks.json")
	write(t, path, aHand(t).JPEG)
	write(t, marks, []byte("{damaged"))
	s.Open(path)
	s.until("the damage is said", func() bool {
		n := s.notices.shown[aboutOpening]
		return n != nil && len(n.choices) == 2
	})
	if s.work != nil {
		t.Fatal("the photograph is open as though it had no marks")
	}
	if data, _ := os.ReadFile(marks); string(data) != "{damaged" {
		t.Fatalf("the marks file now holds %q", data)
	}
	s.notices.shown[aboutOpening].choices[0].do()
	s.until("it is open without them", func() bool { return s.work != nil })
	s.tellHand(hand.Left, hand.Palmar)
	if data, _ := os.ReadFile(filepath.Join(folder, "hand.marks.set-aside-1.json")); string(data) != "{damaged" {
		t.Errorf("the file set aside holds %q", data)
	}
	if data, _ := os.ReadFile(marks); !strings.Contains(string(data), "palmar") {
		t.Errorf("the new marks are not written: %q", data)
	}
}

func TestTheExampleIsDrawnOnceAndOpenedLikeAnyPhotograph(t *testing.T) {
	s := newScene(t)
	example := firstExample()
	example.Case.Width, example.Case.Height = 800, 600
	s.openExample(example)
	s.until("the example is open", func() bool { return s.work != nil })
	if base := filepath.Base(s.work.Path); base != example.Name+".jpg" || s.recents()[0] != s.work.Path {
		t.Errorf("open is %s, the recent ones are %q", base, s.recents())
	}
	before, err := os.Stat(s.work.Path)
	if err != nil {
		t.Fatal(err)
	}
	s.tellHand(hand.Right, hand.Dorsal)
	work := s.work
	s.openExample(example)
	s.until("it is open again", func() bool { return s.work != work })
	after, err := os.Stat(s.work.Path)
	if err != nil || !after.ModTime().Equal(before.ModTime()) || s.work.State().Side != hand.Right {
		t.Errorf("the example was drawn anew, or its marks are lost (%v)", err)
	}
}

func TestThePhotographOpenedLastIsTheFirstOfTheRecentOnes(t *testing.T) {
	s := newScene(t)
	for _, name := range []string{"a", "b", "c", "d", "e", "f", "g", "h", "i", "b"} {
		s.remember("/cases/" + name + ".jpg")
	}
	got := strings.Join(s.recents(), " ")
	if want := "/cases/b.jpg /cases/i.jpg /cases/h.jpg /cases/g.jpg /cases/f.jpg /cases/e.jpg /cases/d.jpg /cases/c.jpg"; got != want {
		t.Errorf("the recent ones are %s", got)
	}
}
