package planskin

import (
	"math"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/skinbudget"
	"ogive/imaging/planfile"
	"ogive/imaging/planning"
	"ogive/ui/look"
	"ogive/ui/shots"
)

// room stands for the room: it makes steps and shows what follows from them.
type room struct {
	*Panel
	t     *testing.T
	win   fyne.Window
	file  planfile.File
	web   hand.Web
	steps []string
	undo  []planfile.File
}

func show(t *testing.T, f planfile.File) *room {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(look.Theme(theme.VariantLight))
	r := &room{t: t, file: f, web: hand.ThirdWeb}
	r.win = test.NewTempWindow(t, nil)
	r.Panel = New(r.win)
	r.OnChange = r.change
	r.win.SetContent(r.Object())
	r.win.Resize(fyne.NewSize(340, 900))
	r.again()
	return r
}

func (r *room) change(name string, by func(*planfile.File)) {
	r.undo = append(r.undo, clone(r.file))
	r.file = clone(r.file)
	by(&r.file)
	r.steps = append(r.steps, name)
	r.again()
}

func clone(f planfile.File) planfile.File {
	data, err := f.Encode()
	if err != nil {
		panic(err)
	}
	again, err := planfile.Parse(data)
	if err != nil {
		panic(err)
	}
	return again
}

func (r *room) again() { r.Show(r.file, reckoned(r.t, r.file), r.web) }

// reckoned is what planning makes of the plan, for a join of 30 mm and a flap of
// 120 mm².
func reckoned(t *testing.T, f planfile.File) planning.Plan {
	t.Helper()
	out := planning.Plan{File: f}
	for _, w := range f.Webs {
		web := planning.Web{Web: w.Web, Chosen: -1}
		if w.ChosenAlternative() != nil {
			web.Chosen = 0
		}
		if w.Girths != nil && w.Join != nil && web.Chosen >= 0 && w.Girths.Radial != (planfile.Girth{}) && w.Girths.Ulnar != (planfile.Girth{}) {
			web.Skin = skinOf(t, *w.Girths)
		}
		out.Webs = append(out.Webs, web)
	}
	return out
}

func skinOf(t *testing.T, g planfile.Girths) *planning.Skin {
	t.Helper()
	girth := func(g planfile.Girth) plane.Estimate[plane.Millimetre] {
		if g.Taped > 0 {
			return skinbudget.Taped(g.Taped)
		}
		return skinbudget.FromWidth(plane.Estimate[plane.Millimetre]{Value: g.Width, U95: 1})
	}
	b, err := skinbudget.Reckon(skinbudget.Girths{Radial: girth(g.Radial), Ulnar: girth(g.Ulnar)},
		plane.Estimate[plane.Millimetre]{Value: 30, U95: 0.8}, plane.Estimate[plane.SquareMillimetre]{Value: 120, U95: 9})
	if err != nil {
		t.Fatal(err)
	}
	s := &planning.Skin{Budget: b, Patches: b.Patches(), Remarks: b.Remarks}
	s.Spindle = skinbudget.SpindleFor(s.Patches)
	if fromWidth(g.Radial) || fromWidth(g.Ulnar) {
		s.Remarks = append([]string{skinbudget.WidthWarning}, s.Remarks...)
	}
	return s
}

func drawn() planfile.File {
	return planfile.File{Photograph: "hand.jpg", Side: hand.Left, View: hand.Dorsal, Webs: []planfile.Web{
		{Web: hand.ThirdWeb, Join: &[2]plane.PixelPoint{{X: 10, Y: 200}, {X: 12, Y: 20}}, Alternatives: []planfile.Alternative{{Name: "proposed"}}},
		{Web: hand.FourthWeb, Alternatives: []planfile.Alternative{{Name: "wide"}, {Name: "narrow"}}},
	}}
}

func (r *room) write(i int, text string) {
	r.girths[i].field.SetText(text)
	r.girths[i].field.Finish()
}

func TestWhatIsMissingIsSaidUntilSkinCanBeReckoned(t *testing.T) {
	f := drawn()
	join := f.Webs[0].Join
	f.Webs[0].Join = nil
	r := show(t, f)
	says := func(want string) {
		t.Helper()
		if got := r.missing.Words(); !strings.Contains(got, want) || r.figures.remains.Visible() || r.graft.drawing.Visible() {
			t.Errorf("it says %q, want %q", got, want)
		}
	}
	says("give the girths of both digits")
	r.write(0, "36")
	says("the girth of the ring finger is missing")
	r.write(1, "34")
	says("mark both ends of the join")
	r.file.Webs[0].Join = join
	r.again()
	if r.missing.Visible() || !r.figures.remains.Visible() || !r.graft.drawing.Visible() {
		t.Error("with all there nothing is reckoned")
	}
	r.file.Webs[0].Alternatives = append(r.file.Webs[0].Alternatives, planfile.Alternative{Name: "narrow"})
	r.again()
	says("choose one of the alternatives")
}

// Two equal digits of girth g need 2 g apart and g (pi + 2)/pi joined: with 36
// mm that is 72 - 58.92 = 13.08 mm for each mm, 3.92 cm² over 30 mm.
func TestTheShortageIsReadWithItsIntervalAndLessTheFlap(t *testing.T) {
	r := show(t, drawn())
	r.write(0, "36")
	r.write(1, "36")
	want := 72 - 36*(math.Pi+2)/math.Pi
	if got := r.figures.each.Value(); !strings.HasPrefix(got, "13.1 ± ") || math.Abs(want-13.08) > 0.01 {
		t.Errorf("short for each mm: %q, want %.2f", got, want)
	}
	for f, begins := range map[string]string{r.figures.all.Value(): "3.9", r.figures.flap.Value(): "1.20 ± 0.09 cm²", r.figures.remains.Value(): "2.7"} {
		if !strings.HasPrefix(f, begins) || !strings.Contains(f, " ± ") {
			t.Errorf("%q, want %q", f, begins)
		}
	}
	if len(r.graft.shapes) != 3 || !strings.HasPrefix(r.graft.shapes[0].name, "Middle finger: ") || !strings.HasPrefix(r.graft.shapes[2].name, "Spindle") {
		t.Errorf("%+v", r.graft.shapes)
	}
}

func TestAGirthIsOneNamedStepOfItsOwnWeb(t *testing.T) {
	r := show(t, drawn())
	r.write(1, "34,5")
	if len(r.steps) != 1 || r.steps[0] != "girth of the ring finger" || r.file.Webs[0].Girths.Ulnar.Taped != 34.5 || r.file.Webs[1].Girths != nil {
		t.Errorf("steps %q, %+v", r.steps, r.file.Webs)
	}
	r.file = r.undo[0]
	r.again()
	if r.girths[1].field.Text != "" {
		t.Errorf("after undo it reads %q", r.girths[1].field.Text)
	}
}

func TestWhatIsStillBeingWrittenGoesToItsOwnWebWhenAnotherIsTakenInHand(t *testing.T) {
	r := show(t, drawn())
	r.girths[0].field.SetText("36")
	r.web = hand.FourthWeb
	r.again()
	if g := r.file.Webs[0].Girths; g == nil || g.Radial.Taped != 36 || r.file.Webs[1].Girths != nil {
		t.Errorf("%+v", r.file.Webs)
	}
	if r.girths[0].field.Text != "" || r.girths[0].title.Words() != "Ring finger" {
		t.Errorf("the fourth web shows %q for the %s", r.girths[0].field.Text, r.girths[0].title.Words())
	}
}

func TestAWidthIsTakenWithTheWarningThatATapeIsSurer(t *testing.T) {
	r := show(t, drawn())
	r.write(0, "36")
	r.girths[0].kind.Choose(width)
	if r.file.Webs[0].Girths != nil || r.girths[0].field.Text != "" {
		t.Errorf("a girth was taken for a width: %+v", r.file.Webs[0].Girths)
	}
	r.write(0, "11.5")
	r.write(1, "34")
	if g := r.file.Webs[0].Girths.Radial; g.Width != 11.5 || g.Taped != 0 || r.girths[0].problem.Words() != skinbudget.WidthWarning || r.girths[1].problem.Visible() {
		t.Errorf("%+v, it says %q", g, r.girths[0].problem.Words())
	}
}

func TestWhatIsNoGirthIsRefusedAndThePlanStays(t *testing.T) {
	r := show(t, drawn())
	for _, text := range []string{"thick", "-4", "240"} {
		r.write(0, text)
		if len(r.steps) != 0 || !r.girths[0].problem.Visible() {
			t.Errorf("%q made the steps %q", text, r.steps)
		}
	}
	r.write(0, "36")
	if r.girths[0].problem.Visible() || len(r.steps) != 1 {
		t.Errorf("steps %q, it says %q", r.steps, r.girths[0].problem.Words())
	}
}

func TestTheListOfDonorSitesGrowsAndShrinksByNamedSteps(t *testing.T) {
	r := show(t, drawn())
	r.donors.draft()
	row := r.donors.rows[0]
	row.gave.SetText("12")
	row.gave.Finish()
	if len(r.steps) != 0 || !row.problem.Visible() {
		t.Fatalf("a site without a name was kept: %q", r.steps)
	}
	row.name.SetText("groin")
	row.name.Finish()
	row.drawbacks.SetText("hair later, darker skin")
	row.drawbacks.Finish()
	if len(r.file.Donors) != 1 || r.file.Donors[0] != (planfile.Donor{Name: "groin", Gave: 12, Drawbacks: "hair later, darker skin"}) {
		t.Fatalf("%+v", r.file.Donors)
	}
	r.donors.draft()
	r.donors.rows[1].name.SetText("wrist")
	r.donors.rows[1].name.Finish()
	r.donors.remove(0)
	if len(r.file.Donors) != 1 || r.file.Donors[0].Name != "wrist" || r.donors.rows[0].name.Text != "wrist" {
		t.Errorf("%+v, shown %q", r.file.Donors, r.donors.rows[0].name.Text)
	}
	want := "add donor site groin, donor site groin, add donor site wrist, remove donor site groin"
	if got := strings.Join(r.steps, ", "); got != want {
		t.Errorf("steps %q, want %q", got, want)
	}
}

func TestWithoutAWebOnlyTheDonorSitesAreShown(t *testing.T) {
	r := show(t, drawn())
	r.file.Webs, r.web = nil, 0
	r.again()
	if !r.nothing.Visible() || r.girths[0].Visible() || r.figures.remains.Visible() || !r.donors.heading.Visible() {
		t.Error("without a web the panel shows otherwise")
	}
}

func TestThePanelHasRoomInLightAndDark(t *testing.T) {
	f := drawn()
	f.Donors = []planfile.Donor{{Name: "Groin", Gave: 12, Drawbacks: "Hair after puberty, darker skin; the scar is hidden."}, {Name: "Hollow of the elbow", Gave: 4.5}}
	r := show(t, f)
	r.win.Resize(fyne.NewSize(340, 1660))
	shots.Keep(t, r.win, "planskin-missing")
	r.write(0, "36")
	r.girths[1].kind.Choose(width)
	r.write(1, "10.8")
	for name, variant := range map[string]fyne.ThemeVariant{"light": theme.VariantLight, "dark": theme.VariantDark} {
		fyne.CurrentApp().Settings().SetTheme(look.Theme(variant))
		for _, wide := range []float32{312, 340, 380} {
			r.win.Resize(fyne.NewSize(wide, 1660))
			if least := r.Object().MinSize(); least.Width > 312 {
				t.Errorf("the panel needs %v", least)
			}
			if end := r.girths[0].unit.Position().X + r.girths[0].unit.MinSize().Width; end > wide {
				t.Errorf("the unit ends at %v of %v", end, wide)
			}
		}
		r.win.Resize(fyne.NewSize(340, 1660))
		shots.Keep(t, r.win, "planskin-"+name)
	}
}
