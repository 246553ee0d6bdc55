package rounds

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"ogive/geometry/plane"
)

var kept = cmpopts.IgnoreUnexported(Round{})

func TestARoundThatWasLeftGoesOnWhereItWas(t *testing.T) {
	r := begin(t, Setup{Kind: ByEye, Count: 5, Seed: 21})
	for range 2 {
		p := unpainted(t, r, r.Order[len(r.Results)])
		if _, err := r.Answer(p, rightAnswer(p, r.Limits, 0.5, 0), defaults(t), noon); err != nil {
			t.Fatal(err)
		}
	}
	list, refused := List(filepath.Dir(r.Path()))
	if len(list) != 1 || len(refused) > 0 {
		t.Fatalf("%d rounds, refused %v", len(list), refused)
	}
	again := list[0]
	if d := cmp.Diff(r, again, kept); d != "" {
		t.Error(d)
	}
	if done, of := again.Progress(); done != 2 || of != 5 {
		t.Errorf("%d of %d", done, of)
	}
	drawn, err := again.cases()
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(r.drawn[3].Webs, drawn[3].Webs); d != "" || r.drawn[3].Seed != drawn[3].Seed {
		t.Errorf("another picture is drawn: %s", d)
	}
}

// The same setup gives the same pictures whatever becomes of the table of normal
// values meanwhile.
func TestARoundKeepsItsOwnLimits(t *testing.T) {
	table := defaults(t).Norms
	table.Bands = slices.Clone(table.Bands)
	for i := range table.Bands {
		if table.Bands[i].Figure == placeFigure {
			table.Bands[i].Low = 0.4
		}
	}
	r, err := Begin(t.TempDir(), "AB", Setup{Kind: ByEye, Seed: 4}, table, noon)
	if err != nil {
		t.Fatal(err)
	}
	again, err := Load(r.Path())
	if err != nil {
		t.Fatal(err)
	}
	if again.Limits.Index != [2]float64{0.4, 0.67} {
		t.Errorf("limits %v", again.Limits.Index)
	}
}

func TestARepeatedRoundHasTheSamePicturesInAnotherOrder(t *testing.T) {
	r := begin(t, Setup{Kind: ByEye, Count: 8, Seed: 6})
	orders := [][]int{r.Order}
	for i := range 3 {
		again, err := r.Again(noon.Add(time.Duration(i) * time.Second))
		if err != nil {
			t.Fatal(err)
		}
		if again.Repeats != r.ID || again.ID == r.ID || again.Setup.Seed != r.Setup.Seed {
			t.Errorf("%+v", again)
		}
		for _, o := range orders {
			if slices.Equal(o, again.Order) {
				t.Errorf("the order %v comes again", o)
			}
		}
		if got := slices.Sorted(slices.Values(again.Order)); !slices.Equal(got, r.Order) {
			t.Errorf("pictures %v", got)
		}
		orders = append(orders, again.Order)
	}
	if list, _ := List(filepath.Dir(r.Path())); len(list) != 4 {
		t.Errorf("%d rounds are kept, want 4", len(list))
	}
}

func TestADamagedRoundIsRefusedWithASentenceAndTheOthersAreThere(t *testing.T) {
	r := begin(t, Setup{Kind: ByEye, Count: 3, Seed: 1})
	whole, err := os.ReadFile(r.Path())
	if err != nil {
		t.Fatal(err)
	}
	folder := filepath.Dir(r.Path())
	for i, c := range []struct{ from, to, says string }{
		{"{", "", "no JSON"}, {`"ogive_round": 1`, `"ogive_round": 9`, "later program"}, {`"kind": "by eye"`, `"kind": "by ear"`, "kind"},
		{`"count": 3`, `"count": 100000000`, "count"}, {`"observer": "AB"`, `"observer": 5`, "observer"}, {`"order"`, `"ordre"`, "ordre"},
		{`"results": []`, `"results": [{"picture": 2}]`, "results[0]"}, {r.ID, "../elsewhere", "id"}, {r.ID, "another", "id"},
	} {
		path := filepath.Join(folder, "damaged"+fileEnd)
		if err := os.WriteFile(path, []byte(strings.Replace(string(whole), c.from, c.to, 1)), 0o600); err != nil {
			t.Fatal(err)
		}
		list, refused := List(folder)
		if len(list) != 1 || len(refused) != 1 || !strings.Contains(refused[0].Error(), c.says) || strings.Contains(refused[0].Error(), "\n") {
			t.Errorf("%d: %d rounds, refused %v, want %q", i, len(list), refused, c.says)
		}
	}
}

func TestAnAnswerThatCanNotBeKeptDoesNotCount(t *testing.T) {
	r := begin(t, Setup{Kind: ByEye, Count: 3, Seed: 1})
	p := unpainted(t, r, r.Order[0])
	if err := os.RemoveAll(filepath.Dir(r.Path())); err != nil {
		t.Fatal(err)
	}
	if _, err := r.Answer(p, Answer{}, defaults(t), noon); err == nil || len(r.Results) != 0 {
		t.Errorf("error %v, %d results", err, len(r.Results))
	}
}

func TestUnfinishedMarksAreKeptUntilThePictureIsAnswered(t *testing.T) {
	r := begin(t, Setup{Kind: Blind, Count: 2, Seed: 1, Faults: []Fault{TooDeep}})
	d := r.Draft()
	if _, there, err := d.Load(); there || err != nil {
		t.Fatalf("there %v, %v", there, err)
	}
	p := unpainted(t, r, 0)
	marks := clicked(t, r, p, 1, seeded(3))
	if err := d.Save(*marks); err != nil {
		t.Fatal(err)
	}
	back, there, err := d.Load()
	if err != nil || !there || len(back.Marks.Webs) != 3 {
		t.Errorf("there %v, %v, %d webs", there, err, len(back.Marks.Webs))
	}
	if err := r.keep(Result{Picture: 0, At: noon}); err != nil {
		t.Fatal(err)
	}
	r.dropDraft(1)
	if err := d.Save(*marks); err != nil {
		t.Fatal(err)
	}
	if _, there, err := d.Load(); there || err != nil {
		t.Errorf("marks of an answered picture are kept: %v, %v", there, err)
	}
	if _, there, _ := r.Draft().Load(); there {
		t.Error("the next picture begins with marks")
	}
}

func TestTheCurveIsInTheOrderOfTimeAndOfOneObserver(t *testing.T) {
	folder := t.TempDir()
	for i, c := range []struct {
		who string
		at  int
		off plane.Millimetre
	}{{"AB", 3, 0}, {"CD", 2, 0}, {"AB", 1, -4}} {
		r, err := Begin(folder, c.who, Setup{Kind: ByEye, Count: 4, Seed: uint64(i + 1)}, defaults(t).Norms, noon.AddDate(0, 0, c.at))
		if err != nil {
			t.Fatal(err)
		}
		answerAll(t, r, defaults(t), func(p *Picture) Answer { return rightAnswer(p, r.Limits, 0.45, c.off) })
	}
	begun, err := Begin(folder, "AB", Setup{Kind: ByEye, Count: 4, Seed: 3}, defaults(t).Norms, noon.AddDate(0, 0, 9))
	if err != nil {
		t.Fatal(err)
	}
	if err := begun.keep(Result{Picture: 0, At: noon}); err != nil {
		t.Fatal(err)
	}
	list, refused := List(folder)
	if len(refused) > 0 {
		t.Fatal(refused)
	}
	curve := Curve(list, "AB", ByEye)
	if len(curve) != 2 || !curve[0].Begun.Before(curve[1].Begun) {
		t.Fatalf("%+v", curve)
	}
	if curve[0].Score.Value >= curve[1].Score.Value || curve[0].Crowns.Distal.Value > -3.5 || curve[1].Crowns.Distal.Value < -0.01 {
		t.Errorf("no better in time: %+v", curve)
	}
	if got := FreshSeed(list); got != 4 {
		t.Errorf("fresh seed %d, want 4", got)
	}
}
