package window

import (
	"bytes"
	"image"
	_ "image/jpeg"
	_ "image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/imaging/measure"
	"ogive/imaging/normals"
	"ogive/imaging/wording"
	"ogive/ui/look"
)

func TestTheFiguresAreCopiedAsATableWithAColumnForEveryWeb(t *testing.T) {
	s := newScene(t)
	_, truth := s.opened()
	s.copyFigures()
	if !strings.Contains(strings.Join(s.notices.texts(), " "), "no figures to copy yet") {
		t.Errorf("without figures is said: %q", s.notices.texts())
	}
	s.finished(truth)
	s.copyFigures()
	text := s.app.Clipboard().Content()
	lines := strings.Split(text, "\n")
	if got := strings.Split(lines[0], "\t"); len(got) != 4 || got[1] != "Second web (index to middle)" {
		t.Errorf("the head is %q", got)
	}
	found := false
	for _, l := range lines {
		cells := strings.Split(l, "\t")
		if cells[0] == wording.IndexName(truth.View) {
			found = true
			if len(cells) != 4 || cells[2] != wording.Ratio(*s.reading.Webs[1].Index) {
				t.Errorf("the index reads %q", cells)
			}
		}
	}
	s.tellLength(truth.Ruler.Length + 1)
	if s.notices.shown[aboutCopying] != nil {
		t.Error("after the next gesture the copying is still spoken of")
	}
	if !found || !strings.Contains(text, wording.Caution) {
		t.Errorf("index or caution is missing:\n%s", text)
	}
}

func TestTheMarkedPictureIsSavedBesideAndNeverOverThePhotograph(t *testing.T) {
	s := newScene(t)
	path, truth := s.opened()
	s.finished(truth)
	original, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	link := filepath.Join(filepath.Dir(path), "link.jpg")
	if err := os.Symlink(path, link); err != nil {
		t.Fatal(err)
	}
	for _, over := range []string{path, link, filepath.Join(filepath.Dir(path), "words.txt")} {
		s.savePicture(over)
		if n := s.notices.shown[aboutPicture]; n == nil || n.lasting {
			t.Errorf("%s was taken for a name", over)
		}
	}
	for name, kind := range map[string]string{"hand-marked.png": "png", "hand-marked.JPG": "jpeg"} {
		to := filepath.Join(filepath.Dir(path), name)
		s.savePicture(to)
		s.until("it is saved", func() bool {
			n := s.notices.shown[aboutPicture]
			return n != nil && strings.Contains(n.text, "saved as "+to)
		})
		data, err := os.ReadFile(to)
		if err != nil {
			t.Fatal(err)
		}
		config, got, err := image.DecodeConfig(bytes.NewReader(data))
		if err != nil || got != kind || config.Width < 1200 || config.Height <= 900 {
			t.Errorf("%s is a %s of %d by %d (%v)", name, got, config.Width, config.Height, err)
		}
	}
	if now, _ := os.ReadFile(path); !bytes.Equal(now, original) {
		t.Error("the photograph itself has changed")
	}
}

func TestAPictureThatCannotBeWrittenIsSaidToBeMissing(t *testing.T) {
	s := newScene(t)
	path, truth := s.opened()
	s.finished(truth)
	s.savePicture(filepath.Join(filepath.Dir(path), "nowhere", "hand.png"))
	s.until("the failure is said", func() bool {
		n := s.notices.shown[aboutPicture]
		return n != nil && strings.Contains(n.text, "is not saved")
	})
}

func TestAnEditedCopyOfTheNormalValuesJudgesAndIsNamedInTheTitle(t *testing.T) {
	s := newScene(t)
	_, truth := s.opened()
	s.finished(truth)
	edited := s.settings.Norms
	edited.Bands = append([]norms.Band(nil), edited.Bands...)
	for i := range edited.Bands {
		if edited.Bands[i].Figure == "index" {
			edited.Bands[i].Low, edited.Bands[i].High = 0.01, 0.02
		}
	}
	if err := s.keepTable(edited); err != nil {
		t.Fatal(err)
	}
	s.settings.Norms = edited
	s.useSettings()
	s.settled()
	if !strings.HasSuffix(s.win.Title(), "(edited normal values)") {
		t.Errorf("the title is %q", s.win.Title())
	}
	if v := s.reading.Webs[0].Verdicts[0]; v.Figure != "index" || v.Finding != "too shallow" {
		t.Errorf("by the edited copy the second web is %+v", v)
	}
	if kept, there, err := normals.Load(s.ownTablePath()); !there || err != nil || !normals.Same(kept, edited) {
		t.Errorf("the copy is kept: %v (%v)", there, err)
	}
	own, err := measure.Defaults()
	if err != nil {
		t.Fatal(err)
	}
	if err := s.keepTable(own.Norms); err != nil || s.ownTable {
		t.Errorf("going back to the program's own table: %v, still edited %v", err, s.ownTable)
	}
	if _, err := os.Stat(s.ownTablePath()); err == nil {
		t.Error("the copy is left behind")
	}
}

func TestADamagedCopyOfTheNormalValuesIsSaidAndTheProgramsOwnJudge(t *testing.T) {
	s := newScene(t)
	if err := os.MkdirAll(filepath.Dir(s.ownTablePath()), 0o755); err != nil {
		t.Fatal(err)
	}
	write(t, s.ownTablePath(), []byte("{"))
	again, err := New(s.app)
	if err != nil {
		t.Fatal(err)
	}
	if said := strings.Join(again.notices.texts(), " "); again.ownTable || !strings.Contains(said, "the program's own are used") {
		t.Errorf("edited values count: %v; said is %q", again.ownTable, said)
	}
	if err := normals.Remove(s.ownTablePath()); err != nil {
		t.Fatal(err)
	}
}

func TestPreferencesCountAtOnceAndNextTime(t *testing.T) {
	s := newScene(t)
	_, truth := s.opened()
	s.finished(truth)
	p := s.app.Preferences()
	p.SetFloat(tiltKey, 20)
	p.SetFloat(clickKey, 99)
	p.SetString(shadeKey, "dark")
	p.SetFloat(widthKey, 1400)
	p.SetFloat(heightKey, 900)
	again, err := New(s.app)
	if err != nil {
		t.Fatal(err)
	}
	if again.settings.Tilt != plane.Degrees(20) || again.clickSD() != mostClick || again.rememberedSize() != fyne.NewSize(1400, 900) {
		t.Errorf("tilt %v, click %v, size %v", again.settings.Tilt.Degrees(), again.clickSD(), again.rememberedSize())
	}
	if got, want := s.app.Settings().Theme().Color(theme.ColorNameBackground, theme.VariantLight), look.Theme(theme.VariantDark).Color(theme.ColorNameBackground, 0); got != want {
		t.Errorf("the ground is %v, dark is %v", got, want)
	}
	before := s.reading.Webs[0].Span.U95
	s.settings.Tilt = plane.Degrees(20)
	s.useSettings()
	s.settled()
	if after := s.reading.Webs[0].Span.U95; after <= before {
		t.Errorf("with twice the tilt allowed the span's uncertainty went from %v to %v", before, after)
	}
}

func TestTheCautionIsShownOnceAtTheFirstUse(t *testing.T) {
	s := newScene(t)
	s.cautionOnce()
	if s.win.Canvas().Overlays().Top() == nil {
		t.Fatal("the first use shows no caution")
	}
	s.app.Preferences().SetBool(cautionKey, true)
	again := len(s.win.Canvas().Overlays().List())
	s.cautionOnce()
	if len(s.win.Canvas().Overlays().List()) != again {
		t.Error("the caution comes again")
	}
}
