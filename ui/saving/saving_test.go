package saving

import (
	"os"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
)

func TestAnotherFileIsWrittenOverOnlyWhenThatIsSaid(t *testing.T) {
	test.NewTempApp(t)
	w := test.NewTempWindow(t, widget.NewLabel(""))
	w.Resize(fyne.NewSize(1024, 700))
	folder := t.TempDir()
	there := filepath.Join(folder, "there.png")
	if err := os.WriteFile(there, []byte("another picture"), 0o644); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		what, name string
		press      []string
		refused    bool
		want       string
	}{
		{"a new name", "new.png", []string{"Save"}, false, "new.png"},
		{"given up", "new.png", []string{"Cancel"}, false, ""},
		{"one that is there, and no", "there.png", []string{"Save", "No"}, false, ""},
		{"one that is there, and yes", "there.png", []string{"Save", "Yes"}, false, "there.png"},
		{"one that will be refused anyway", "there.png", []string{"Save"}, true, "there.png"},
		{"an ending in capitals", "new.JPG", []string{"Save"}, false, "new.JPG"},
		{"no ending", "new", []string{"Save"}, false, "new.png"},
		{"no ending, one is there, and no", "there", []string{"Save", "No"}, false, ""},
	} {
		got, closed := "", 0
		Ask(w, Question{Title: "Save", Hint: "A name that ends in .png.", Folder: folder, Name: c.name, Endings: []string{".png", ".jpg"}, Refused: func(string) bool { return c.refused }},
			func(path string) { got = filepath.Base(path) }, func() { closed++ })
		for _, name := range c.press {
			press(t, w, name)
		}
		if got != c.want {
			t.Errorf("%s: saved as %q, want %q", c.what, got, c.want)
		}
		if closed != len(c.press) || w.Canvas().Overlays().Top() != nil {
			t.Errorf("%s: closing was told %d times for %d questions", c.what, closed, len(c.press))
		}
	}
}

func TestAnyNameWillDoWhereNoEndingIsAskedFor(t *testing.T) {
	if got := (Question{}).ended("figures.txt"); got != "figures.txt" {
		t.Errorf("figures.txt becomes %s", got)
	}
}

func TestTheUsersOwnFolderIsProposedWhereNoneIsGiven(t *testing.T) {
	home := t.TempDir()
	t.Setenv("HOME", home)
	t.Setenv("USERPROFILE", home)
	if got := (Question{}).folder(); got != home {
		t.Errorf("proposed is %s, the user's own is %s", got, home)
	}
}

func TestANameHasNothingThatAFileSystemObjectsTo(t *testing.T) {
	if got := Name("S/01 2", "left", "third web?"); got != "S-01-2-left-third-web" {
		t.Errorf("the name is %q", got)
	}
}

// press taps the button of that name on the topmost dialog.
func press(t *testing.T, w fyne.Window, name string) {
	t.Helper()
	var find func(objects []fyne.CanvasObject) *widget.Button
	find = func(objects []fyne.CanvasObject) *widget.Button {
		for _, o := range objects {
			var within []fyne.CanvasObject
			switch o := o.(type) {
			case *widget.Button:
				if o.Text == name {
					return o
				}
			case *fyne.Container:
				within = o.Objects
			case fyne.Widget:
				within = test.WidgetRenderer(o).Objects()
			}
			if b := find(within); b != nil {
				return b
			}
		}
		return nil
	}
	top := w.Canvas().Overlays().Top()
	if top == nil {
		t.Fatalf("no question is asked that has a %s", name)
	}
	b := find([]fyne.CanvasObject{top})
	if b == nil {
		t.Fatalf("the question has no button %s", name)
	}
	test.Tap(b)
}
