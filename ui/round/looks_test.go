package round

import (
	"fmt"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/imaging/rounds"
)

// variants are light and dark.
func variants() []fyne.ThemeVariant {
	return []fyne.ThemeVariant{theme.VariantLight, theme.VariantDark}
}

// judgedBefore keeps some rounds of AB in a folder, each a little better.
func judgedBefore(t *testing.T, folder string, s *scene) {
	t.Helper()
	for n := range 4 {
		round, err := rounds.Begin(folder, "AB", rounds.Setup{Kind: rounds.ByEye, Seed: uint64(n + 1), Count: 10}, s.settings.Norms, s.now().AddDate(0, 0, n-9))
		if err != nil {
			t.Fatal(err)
		}
		for i, number := range round.Order {
			if n == 3 && i == 4 {
				break // begun and left
			}
			round.Results = append(round.Results, rounds.Result{Picture: number, At: s.now(), Web: hand.ThirdWeb, Exact: true, Judged: []rounds.Judged{
				{Of: rounds.Place, Web: hand.ThirdWeb, Given: norms.WithinLimits, True: "too deep", Counted: true},
				{Of: rounds.Width, Web: hand.ThirdWeb, Given: norms.WithinLimits, True: norms.WithinLimits, Counted: true, Right: i%4 < n+1},
				{Of: rounds.Shape, Web: hand.ThirdWeb, Given: "U", True: "U", Counted: true, Right: true},
			}})
		}
		if err := round.Save(); err != nil {
			t.Fatal(err)
		}
	}
}

// With a folder for pictures every page is kept, in light and dark and two sizes.
func TestNoQuestionIsOutOfSightInASmallWindow(t *testing.T) {
	s := newScene(t, t.TempDir(), theme.VariantLight, small())
	s.through("light-1024")
	if *keep == "" {
		return
	}
	for _, v := range variants() {
		for _, size := range []fyne.Size{small(), fyne.NewSize(1600, 1000)} {
			folder := t.TempDir()
			s := newScene(t, folder, v, size)
			name := fmt.Sprintf("%v-%.0f", map[fyne.ThemeVariant]string{theme.VariantLight: "light", theme.VariantDark: "dark"}[v], size.Width)
			s.lookedAt("start-new-" + name)
			judgedBefore(t, folder, s)
			s.Show(folder, "AB", s.settings)
			s.came()
			s.lookedAt("start-" + name)
			s.through(name)
		}
	}
}

// through judges three pictures and looks at every page.
func (s *scene) through(name string) {
	s.t.Helper()
	began := time.Now()
	s.begun(rounds.ByEye, 3)
	s.t.Log("first picture after", time.Since(began))
	s.lookedAt("judge-" + name)
	most := 0
	for n := 1; s.page != concluding; n++ {
		most = max(most, len(s.taking.picture.Questions))
		s.checkRoom()
		s.judgeBadly()
		s.checkRoom()
		s.lookedAt("judged-" + name)
		s.press(fyne.KeyReturn)
		s.came()
		s.lookedAt(fmt.Sprintf("told%d-%s", n, name))
		s.press(fyne.KeyReturn)
		s.came()
	}
	if most < 4 {
		s.t.Errorf("at most %d questions were asked", most)
	}
	s.lookedAt("result-" + name)
}

// checkRoom checks that all questions are seen at once.
func (s *scene) checkRoom() {
	s.t.Helper()
	list := s.table.judging.list
	if need, room := list.list.MinSize().Height, list.object.Size().Height; need > room {
		s.t.Errorf("%d questions are %.0f high, and there is room for %.0f", len(s.taking.picture.Questions), need, room)
	}
}

// judgeBadly answers the first choice everywhere, and puts the crown too deep.
func (s *scene) judgeBadly() {
	for _, q := range s.taking.picture.Questions {
		if q.Of == rounds.Crown {
			s.click(middle(s.taking.picture, 0.3))
			continue
		}
		s.keyboard.TypedRune('1')
	}
}
