package planfamily

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"

	"ogive/geometry/hand"
	"ogive/imaging/family"
	"ogive/imaging/planfile"
	"ogive/imaging/planning"
	"ogive/imaging/wording"
	"ogive/ui/look"
	"ogive/ui/shots"
)

// room stands for the room: it makes steps and shows what follows from them.
type room struct {
	*Panel
	t     *testing.T
	win   fyne.Window
	file  planfile.File
	steps []string
}

func show(t *testing.T) *room {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(look.Theme(theme.VariantLight))
	r := &room{t: t, file: planfile.File{Photograph: "hand.jpg", Side: hand.Left, View: hand.Dorsal}}
	r.win = test.NewTempWindow(t, nil)
	r.Panel = New(r.win)
	r.OnChange = func(name string, by func(*planfile.File)) {
		by(&r.file)
		r.steps = append(r.steps, name)
		if _, err := r.file.Encode(); err != nil {
			t.Errorf("after %q the plan can't be kept: %v", name, err)
		}
		r.again()
	}
	r.win.SetContent(r.Object())
	r.win.Resize(fyne.NewSize(340, 900))
	r.again()
	return r
}

func (r *room) again() { r.Show(r.file, planning.Plan{File: r.file}, hand.ThirdWeb) }

func (r *room) tickOf(key string) int {
	return slices.IndexFunc(family.Findings(), func(p family.Point) bool { return p.Key == key })
}

func (r *room) point(key string) *point {
	return r.points[slices.IndexFunc(r.points, func(p *point) bool { return p.draft.Key == key })]
}

func (r *room) write(key, text string) {
	f := r.point(key).field
	f.SetText(text)
	f.Finish()
}

func TestATickedFindingIsToldAndAnUntickedOneIsNot(t *testing.T) {
	r := show(t)
	if r.point(family.JoinedNails).Visible() || !r.point(family.Opening).Visible() || !r.state.Visible() {
		t.Error("before anything is ticked the panel shows otherwise")
	}
	test.Tap(r.ticks[r.tickOf(family.JoinedNails)])
	if !r.point(family.JoinedNails).Visible() || r.state.Visible() || !slices.Equal(r.file.Family.Findings, []string{family.JoinedNails}) {
		t.Errorf("%+v", r.file.Family)
	}
	test.Tap(r.ticks[r.tickOf(family.JoinedNails)])
	if len(r.file.Family.Findings) != 0 || r.point(family.JoinedNails).Visible() {
		t.Errorf("%+v", r.file.Family)
	}
	if got := strings.Join(r.steps, ", "); got != "tick: The nails are joined, untick: The nails are joined" {
		t.Errorf("steps %q", got)
	}
}

func TestUndoShowsThePlanWithoutMakingAStep(t *testing.T) {
	r := show(t)
	before := r.file
	test.Tap(r.ticks[r.tickOf(family.Stiffness)])
	r.write(family.Opening, "Our own words.")
	steps := len(r.steps)
	r.file = before
	r.again()
	draft, _ := family.Default(family.Opening)
	if len(r.steps) != steps || r.ticks[r.tickOf(family.Stiffness)].Checked || r.point(family.Opening).field.Text != draft.Text {
		t.Errorf("steps %q, it reads %q", r.steps, r.point(family.Opening).field.Text)
	}
}

func TestOwnWordsTakeThePlaceOfTheDraftUntilItIsRestored(t *testing.T) {
	r := show(t)
	draft, _ := family.Default(family.AfterOperation)
	r.write(family.AfterOperation, "  Our own words on scars.  ")
	pt := r.point(family.AfterOperation)
	if pt.state.Words() != "your own words" || !pt.restore.Visible() || !strings.Contains(text(r.Points()), "Our own words on scars.\n") {
		t.Errorf("%q: %s", pt.state.Words(), text(r.Points()))
	}
	pt.back()
	if len(r.file.Family.Texts) != 0 || pt.field.Text != draft.Text || pt.restore.Visible() || pt.state.Words() != "draft" {
		t.Errorf("%+v, it reads %q", r.file.Family, pt.field.Text)
	}
	r.write(family.AfterOperation, "Other words.")
	r.write(family.AfterOperation, draft.Text)
	if len(r.file.Family.Texts) != 0 {
		t.Errorf("the draft is kept as one's own words: %+v", r.file.Family.Texts)
	}
}

func TestAnEmptiedTextIsLeftOutAndThatIsSaid(t *testing.T) {
	r := show(t)
	r.write(family.Closing, "")
	draft, _ := family.Default(family.Closing)
	if got := text(r.Points()); strings.Contains(got, draft.Title) || r.point(family.Closing).state.Words() != "left out of the page" {
		t.Errorf("%q: %s", r.point(family.Closing).state.Words(), got)
	}
}

func TestTheCopiedTextIsThePageWithTheCaution(t *testing.T) {
	r := show(t)
	test.Tap(r.ticks[r.tickOf(family.Rotation)])
	r.copy()
	got := fyne.CurrentApp().Clipboard().Content()
	rotation, _ := family.Default(family.Rotation)
	if !strings.HasPrefix(got, family.Title+"\n\n") || !strings.Contains(got, rotation.Title+"\n"+rotation.Text+"\n\n") || !strings.HasSuffix(got, wording.Caution+"\n") || !r.said.Visible() {
		t.Errorf("copied:\n%s", got)
	}
}

func TestThePageIsSeenOverTheWindowInLargeLetters(t *testing.T) {
	r := show(t)
	r.write(family.Opening, "Words that are still fresh.")
	r.win.Resize(fyne.NewSize(1024, 700))
	test.Tap(r.ticks[r.tickOf(family.Deviation)])
	r.see()
	if r.win.Canvas().Overlays().Top() == nil {
		t.Fatal("no page is seen")
	}
	shots.Keep(t, r.win, "planfamily-page-light")
	r.win.Canvas().Overlays().Top().Hide()
	fyne.CurrentApp().Settings().SetTheme(look.Theme(theme.VariantDark))
	r.see()
	shots.Keep(t, r.win, "planfamily-page-dark")
}

func TestThePanelHasRoomInLightAndDark(t *testing.T) {
	r := show(t)
	test.Tap(r.ticks[r.tickOf(family.MissingPhalanx)])
	test.Tap(r.ticks[r.tickOf(family.JoinedNails)])
	r.write(family.JoinedNails, "The nails are joined. Each can be narrow later.")
	for name, variant := range map[string]fyne.ThemeVariant{"light": theme.VariantLight, "dark": theme.VariantDark} {
		fyne.CurrentApp().Settings().SetTheme(look.Theme(variant))
		for _, wide := range []float32{380, 340, 312} {
			r.win.Resize(fyne.NewSize(wide, 2000))
			if least := r.Object().MinSize(); least.Width > 312 {
				t.Errorf("the panel needs %v", least)
			}
			for _, tick := range r.ticks {
				if least := tick.MinSize().Width; least > wide {
					t.Errorf("%q needs %v of %v", tick.Text, least, wide)
				}
			}
		}
		shots.Keep(t, r.win, "planfamily-"+name)
	}
}
