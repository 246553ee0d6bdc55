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

func TestEveryPageCanBeSeenInLightAndDark(t *testing.T) {
	if *keep == "" {
		t.Log("no folder is given for pictures; one look is taken without")
	}
	for _, v := range variants() {
		for _, size := range []fyne.Size{small(), fyne.NewSize(1600, 1000)} {
			if *keep == "" && (v == theme.VariantDark || size != small()) {
				continue
			}
			name := func(page string) string {
				return fmt.Sprintf("%s-%v-%.0f", page, map[fyne.ThemeVariant]string{theme.VariantLight: "light", theme.VariantDark: "dark"}[v], size.Width)
			}
			folder := t.TempDir()
			s := newScene(t, folder, v, size)
			s.lookedAt(name("start-new"))
			judgedBefore(t, folder, s)
			s.Show(folder, "AB", s.settings)
			s.came()
			s.lookedAt(name("start"))
			s.start.counts.Set(0)
			began := time.Now()
			s.press(fyne.KeyReturn)
			s.came()
			t.Log("first picture after", time.Since(began))
			s.lookedAt(name("judge"))
			for {
				s.judgeBadly()
				if s.page == judging {
					s.lookedAt(name("judged"))
				}
				s.press(fyne.KeyReturn)
				s.came()
				s.lookedAt(name("told" + fmt.Sprint(len(s.taking.round.Results))))
				s.press(fyne.KeyReturn)
				s.came()
				if s.page == concluding {
					break
				}
			}
			s.lookedAt(name("result"))
		}
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
