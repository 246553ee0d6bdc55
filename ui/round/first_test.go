package round

import (
	"reflect"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"ogive/imaging/measure"
	"ogive/imaging/rounds"
)

func TestTheFirstPictureIsMadeWhileTheStartPageIsLookedAt(t *testing.T) {
	folder := t.TempDir()
	s := newScene(t, folder, theme.VariantLight, small())
	var asked []rounds.Setup
	s.making = func(setup rounds.Setup, with measure.Settings) *rounds.First {
		asked = append(asked, setup)
		return rounds.MakeFirst(setup, with)
	}
	s.Show(folder, "AB", s.settings)
	s.came()
	if len(asked) != 1 || s.first == nil {
		t.Fatalf("made ahead: %+v", asked)
	}
	s.press(fyne.KeyReturn)
	s.came()
	if got := s.taking.round.Setup; s.page != judging || s.first != nil || !reflect.DeepEqual(got, asked[0].Filled()) {
		t.Errorf("page %v; made ahead was %+v, begun %+v", s.page, asked[0], got)
	}
}
