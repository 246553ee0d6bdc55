package agree

import (
	"context"
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"

	"ogive/imaging/agreementchart"
	"ogive/imaging/observations"
	"ogive/imaging/observed"
	"ogive/ui/look"
	"ogive/ui/shots"
)

// found is what two observers, of whom AB marked twice, read on invented hands.
func found() observed.Found {
	rng := rand.New(rand.NewPCG(4, 2))
	f := observed.Found{Photographs: 26, Corrected: 2, Shared: 1, Passed: []string{"S-009 photograph 2, marked by CD: its photograph is damaged; put it back from a backup"}}
	read := func(true, bias, sd float64) float64 { return math.Round((true+bias+sd*rng.NormFloat64())*1000) / 1000 }
	for i := range 24 {
		target := fmt.Sprintf("S-%03d photograph 1, right hand, third web", i+1)
		index, span, slope := 0.5+0.06*rng.NormFloat64(), 9+1.5*rng.NormFloat64(), 44+5*rng.NormFloat64()
		for _, who := range []string{"AB", "CD"} {
			bias := 0.0
			if who == "AB" {
				bias = 1
			}
			add := func(figure string, v float64) {
				f.Between = append(f.Between, observations.Observation{Target: target, Observer: who, Figure: figure, Value: v})
			}
			add("dorsal web index", read(index, 0.012*bias, 0.012))
			add("span (mm)", read(span, 0, 0.35))
			if i < 9 {
				add("slope (°)", read(slope, -2*bias, 4))
			}
		}
		if i < 12 {
			for n := range 2 {
				f.Within = append(f.Within, observations.Observation{Target: target, Observer: "AB", Occasion: fmt.Sprint(n + 1), Figure: "dorsal web index", Value: read(index, 0, 0.009)})
			}
		}
	}
	return f
}

func source() Source {
	return Source{Name: "the casebook Hand clinic", Load: func(_ context.Context, progress func(done, all int)) (observed.Found, error) {
		progress(1, 1)
		return found(), nil
	}}
}

// room is a room in a window of the given size that works at once.
func room(t *testing.T, width, height float32) (*Room, fyne.Window) {
	t.Helper()
	w := test.NewTempWindow(t, nil)
	r := New(w)
	r.beside = func(work func() func()) {
		if then := work(); then != nil {
			then()
		}
	}
	r.later = func(do func()) { do() }
	w.SetContent(r.Object())
	w.Resize(fyne.NewSize(width, height))
	return r, w
}

func app(t *testing.T, v fyne.ThemeVariant) {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(look.Theme(v))
}

func TestTheRoomOpensOnTheFirstTwoObserversAndTheirIndex(t *testing.T) {
	app(t, theme.VariantLight)
	r, _ := room(t, 1024, 700)
	r.Show(source())
	if got := r.current().Title(); got != "Dorsal web index: AB and CD" {
		t.Errorf("it opens on %s", got)
	}
	words := r.side.words[0].Words()
	if !strings.HasPrefix(words, "On the average AB reads the dorsal web index 0.00") || !strings.Contains(words, "higher than CD") {
		t.Errorf("AB reads higher; the room says %q", words)
	}
	for _, row := range r.side.rows {
		if !strings.Contains(row.Value(), " to ") {
			t.Errorf("a figure stands without its interval: %s", row.Value())
		}
	}
	for _, want := range []string{"the very same points: 1", "S-009 photograph 2"} {
		if !strings.Contains(r.side.remarks.Words(), want) {
			t.Errorf("the remarks %q lack %q", r.side.remarks.Words(), want)
		}
	}
	if r.plots.picture.Image == nil || r.plots.drawn.size.X < 500 {
		t.Errorf("the plots are drawn %v large", r.plots.drawn.size)
	}
}

func TestAFigureStaysWhenOthersAreHeldAgainstEachOther(t *testing.T) {
	app(t, theme.VariantLight)
	r, _ := room(t, 1024, 700)
	r.Show(source())
	r.side.what.Choose(1)
	if got := r.current().Title(); got != "Span: AB and CD" {
		t.Errorf("the second figure is %s", got)
	}
	drawn := r.plots.drawn
	r.side.what.Choose(0)
	r.side.whoIs.Choose(1)
	if got := r.current().Title(); got != "Dorsal web index: AB at occasions 1 and 2" {
		t.Errorf("the second pair is %s", got)
	}
	if r.plots.drawn == drawn {
		t.Error("the plots are not drawn anew")
	}
	if got := r.side.remarks.Words(); !strings.Contains(got, "not placed anew: 2") {
		t.Errorf("corrections are not told: %q", got)
	}
	r.Show(source())
	if got := r.current().Who(); got != "AB at occasions 1 and 2" {
		t.Errorf("shown again, the room is at %s", got)
	}
}

func TestWithoutReadingsTheRoomSaysHowToComeToThem(t *testing.T) {
	app(t, theme.VariantLight)
	r, _ := room(t, 1024, 700)
	if !r.empty.object.Visible() || !strings.Contains(r.empty.first.Words(), "No casebook is open") {
		t.Errorf("without a casebook it says %q", r.empty.first.Words())
	}
	r.Show(Source{Name: "x", Load: func(context.Context, func(int, int)) (observed.Found, error) { return observed.Found{}, nil }})
	if !r.empty.object.Visible() || !strings.Contains(r.empty.first.Words(), "No photograph has been marked twice") {
		t.Errorf("without readings it says %q", r.empty.first.Words())
	}
	r.Show(Source{Name: "x", Load: func(context.Context, func(int, int)) (observed.Found, error) {
		return observed.Found{Between: []observations.Observation{{Target: "1", Observer: "A", Value: 1}, {Target: "1", Observer: "B", Value: 1}}}, nil
	}})
	if got := r.empty.lacking.Words(); !strings.Contains(got, "A and B") {
		t.Errorf("one target is too few; the room says %q", got)
	}
	r.Show(Source{Name: "x", Load: func(context.Context, func(int, int)) (observed.Found, error) {
		return observed.Found{}, errors.New("the disk is gone")
	}})
	if got := r.empty.problem.Words(); !strings.Contains(got, "the disk is gone") || r.empty.first.Words() != "" {
		t.Errorf("a failure is told as %q, %q", got, r.empty.first.Words())
	}
}

func TestWhatComesAfterTheRoomWasLeftIsDroppedAndTheWorkIsBrokenOff(t *testing.T) {
	app(t, theme.VariantLight)
	r, _ := room(t, 1024, 700)
	var late func()
	r.beside = func(work func() func()) { late = work() }
	var gathering context.Context
	r.Show(Source{Load: func(ctx context.Context, progress func(done, all int)) (observed.Found, error) {
		gathering = ctx
		progress(3, 20)
		return found(), nil
	}})
	if !r.wait.object.Visible() || !strings.Contains(r.wait.words.Text, "3 of 20") {
		t.Errorf("while it reads, the room says %q", r.wait.words.Text)
	}
	r.Leave()
	if gathering.Err() == nil {
		t.Error("the work goes on")
	}
	late()
	if len(r.charts) != 0 {
		t.Error("what came late is shown")
	}
}

func TestATableOfReadingsIsOpenedAndSaidWhereItIsWrong(t *testing.T) {
	app(t, theme.VariantLight)
	r, _ := room(t, 1024, 700)
	r.Show(source())
	path := filepath.Join(t.TempDir(), "ward.csv")
	write := func(text string) {
		if err := os.WriteFile(path, []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	write("target,observer,figure,value\n1,X,span (mm),8\n1,Y,span (mm),9\n2,X,span (mm),7\n2,Y,span (mm),7.5\n3,X,span (mm),9\n3,Y,span (mm),9.1\n")
	r.read(path)
	if got := r.current().Title(); got != "Span: X and Y" || !strings.Contains(r.side.basis.Words(), "ward.csv") {
		t.Errorf("the file shows %s, %s", got, r.side.basis.Words())
	}
	if !r.again.Visible() {
		t.Error("there is no way back to the casebook")
	}
	write("target,observer,value\n1,X,about half\n")
	r.read(path)
	if got := r.empty.problem.Words(); !strings.Contains(got, "ward.csv: line 2, column value") {
		t.Errorf("what is wrong is told as %q", got)
	}
	test.Tap(r.again)
	if got := r.current().Title(); got != "Dorsal web index: AB and CD" || r.again.Visible() {
		t.Errorf("back, the room shows %s", got)
	}
}

func TestWhatIsShownIsSavedInEveryKind(t *testing.T) {
	app(t, theme.VariantLight)
	r, _ := room(t, 1024, 700)
	r.Show(source())
	folder := t.TempDir()
	for i, want := range []string{"agreement-dorsal-web-index-AB-and-CD.pdf", "agreement-dorsal-web-index-AB-and-CD.png", "agreement-dorsal-web-index-AB-and-CD.svg", "agreement-readings-dorsal-web-index-AB-and-CD.csv", "agreement-figures.csv"} {
		k := kinds[i]
		if got := k.name(r.current()); got != want {
			t.Errorf("the name proposed is %s, want %s", got, want)
		}
		r.write(k, r.current(), r.charts, filepath.Join(folder, want))
		if info, err := os.Stat(filepath.Join(folder, want)); err != nil || info.Size() == 0 {
			t.Errorf("%s is not written: %v", want, err)
		}
		if !strings.HasPrefix(r.side.saved.Words(), "Saved as") {
			t.Errorf("it is told as %q", r.side.saved.Words())
		}
	}
	r.write(kinds[0], r.current(), r.charts, filepath.Join(folder, "none", "a"))
	if !strings.HasPrefix(r.side.saved.Words(), "It is not saved") {
		t.Errorf("what can't be written is told as %q", r.side.saved.Words())
	}
	file, err := os.Open(filepath.Join(folder, "agreement-readings-dorsal-web-index-AB-and-CD.csv"))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	all, err := observations.Read(file)
	if charts, _ := agreementchart.Of(all, ""); err != nil || len(charts) != 1 || len(charts[0].Targets) != 24 {
		t.Errorf("the readings come in again as %d charts, %v", len(charts), err)
	}
}

func TestTheRoomInLightAndDark(t *testing.T) {
	for name, v := range map[string]fyne.ThemeVariant{"light": theme.VariantLight, "dark": theme.VariantDark} {
		for size, dims := range map[string]fyne.Size{"small": {Width: 1024, Height: 700}, "large": {Width: 1600, Height: 1000}} {
			app(t, v)
			r, w := room(t, dims.Width, dims.Height)
			shots.Keep(t, w, name+"-"+size+"-empty")
			r.OnLeave = func() {}
			r.Show(source())
			shots.Keep(t, w, name+"-"+size)
			r.side.page.Object().ScrollToBottom()
			shots.Keep(t, w, name+"-"+size+"-end")
			r.side.what.Choose(2)
			shots.Keep(t, w, name+"-"+size+"-slope")
			r.beside = func(work func() func()) { work() }
			r.Show(Source{Load: func(_ context.Context, progress func(done, all int)) (observed.Found, error) {
				progress(7, 20)
				return observed.Found{}, nil
			}})
			shots.Keep(t, w, name+"-"+size+"-wait")
			r.fail(errors.New("ward.csv: line 3, column value: \"about half\" is no number; write it with a point, as in 0.47"))
			shots.Keep(t, w, name+"-"+size+"-problem")
			if got := w.Canvas().Size(); got != dims {
				t.Errorf("%s %s: the room has grown to %v", name, size, got)
			}
		}
	}
}
