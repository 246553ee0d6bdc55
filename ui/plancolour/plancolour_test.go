package plancolour

import (
	"errors"
	"image"
	"image/color"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"

	"ogive/assets"
	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/geometry/skincolour"
	"ogive/imaging/photo"
	"ogive/imaging/planfile"
	"ogive/imaging/planning"
	"ogive/imaging/skin"
	"ogive/ui/column"
	"ogive/ui/look"
	"ogive/ui/shots"
)

// room stands for the room: it makes steps and shows what follows from them.
type room struct {
	*Panel
	t      *testing.T
	win    fyne.Window
	file   planfile.File
	steps  []string
	opened []string
	wanted []string
}

func show(t *testing.T, others ...Other) *room {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(look.Theme(theme.VariantLight))
	r := &room{t: t, file: planfile.File{Photograph: "back.jpg", Side: hand.Left, View: hand.Dorsal}}
	r.win = test.NewTempWindow(t, nil)
	r.Panel = New(r.win)
	r.apart, r.do = func(work func()) { work() }, func(work func()) { work() }
	r.OnChange = r.change
	r.OnPlace = func(name string) { r.wanted = append(r.wanted, name) }
	r.win.SetContent(r.Object())
	r.win.Resize(fyne.NewSize(340, 900))
	table, err := norms.Parse(assets.NormalValues)
	if err != nil {
		t.Fatal(err)
	}
	r.Use(table, r.photograph, others...)
	r.again()
	return r
}

func (r *room) change(name string, by func(*planfile.File)) {
	by(&r.file)
	r.steps = append(r.steps, name)
	if _, err := r.file.Encode(); err != nil {
		r.t.Errorf("after %q the plan can't be kept: %v", name, err)
	}
	r.again()
}

func (r *room) again() {
	r.Show(r.file, planning.Plan{File: r.file, PerPixel: plane.Estimate[plane.Millimetre]{Value: 0.1, U95: 0.002}}, hand.ThirdWeb)
}

// photograph is one of two: the back of a hand at the left, in yellowish light, a
// grey card at the right, and a highlight below; or a palm in the same places.
func (r *room) photograph(name string) (*photo.Photograph, error) {
	r.opened = append(r.opened, name)
	skins := map[string]color.RGBA{"": {150, 105, 60, 255}, "palm.jpg": {190, 150, 130, 255}}
	greys := map[string]color.RGBA{"": {120, 110, 80, 255}, "palm.jpg": {120, 120, 120, 255}}
	if _, known := skins[name]; !known {
		return nil, errors.New(name + " is not there; check the folder")
	}
	img := image.NewRGBA(image.Rect(0, 0, 400, 300))
	for y := range 300 {
		for x := range 400 {
			switch {
			case y >= 200:
				img.Set(x, y, color.RGBA{255, 255, 255, 255})
			case x < 200:
				img.Set(x, y, skins[name])
			default:
				img.Set(x, y, greys[name])
			}
		}
	}
	return photo.From(img), nil
}

var (
	onSkin  = plane.Pt[plane.Pixel](80, 90)
	onGrey  = plane.Pt[plane.Pixel](300, 90)
	onShine = plane.Pt[plane.Pixel](80, 250)
)

func (r *room) place(name string, at plane.PixelPoint) {
	r.t.Helper()
	r.Ask(name)
	if !r.Wants() {
		r.t.Fatal("no click is wanted")
	}
	r.Place(at)
}

func TestAClickPlacesThePatchThatWasAskedForAndOnlyOnce(t *testing.T) {
	r := show(t)
	r.Place(onSkin)
	if len(r.steps) != 0 {
		t.Fatalf("a click that nobody wanted made the steps %q", r.steps)
	}
	r.place("back", onSkin)
	r.Place(onGrey)
	want := planfile.Patch{Name: "back", Centre: onSkin, Radius: 25}
	if len(r.file.Patches) != 1 || r.file.Patches[0] != want || strings.Join(r.wanted, ",") != "back," {
		t.Errorf("patches %+v, wanted %q", r.file.Patches, r.wanted)
	}
	r.place("back", onSkin.Add(plane.Vec[plane.Pixel](10, 0)))
	if len(r.file.Patches) != 1 || r.file.Patches[0].Centre.X != 90 || strings.Join(r.steps, ", ") != "place patch: back of the hand, move patch: back of the hand" {
		t.Errorf("patches %+v, steps %q", r.file.Patches, r.steps)
	}
}

func TestAClickThatIsWantedCanBeGivenUp(t *testing.T) {
	r := show(t)
	r.Ask("palm")
	palm := r.rows[rowKey{place: skincolour.Palm}]
	if palm.put.Text != "Cancel" || r.rows[rowKey{place: skincolour.Back}].put.Text != "Place…" {
		t.Errorf("the buttons read %q and %q", palm.put.Text, r.rows[rowKey{place: skincolour.Back}].put.Text)
	}
	test.Tap(palm.put)
	r.Place(onSkin)
	if r.Wants() || len(r.steps) != 0 || palm.put.Text != "Place…" || strings.Join(r.wanted, ",") != "palm," {
		t.Errorf("steps %q, wanted %q", r.steps, r.wanted)
	}
}

func TestASampleIsToldWithToneAndWithoutANeutralPatchThatIsSaid(t *testing.T) {
	r := show(t)
	r.place("back", onSkin)
	if !strings.HasSuffix(r.results.light.Words(), skin.NoNeutral) || len(r.results.tones.Parts()) != 1 {
		t.Errorf("it says %q and shows %d samples", r.results.light.Words(), len(r.results.tones.Parts()))
	}
	r.place(skin.GreyPatch, onGrey)
	if r.results.light.Visible() {
		t.Errorf("with a grey patch it says %q", r.results.light.Words())
	}
}

func TestAClippedHighlightIsRefusedInWords(t *testing.T) {
	r := show(t)
	r.place("back", onShine)
	if got := r.results.refused.Words(); !strings.Contains(got, "is clipped") || !strings.Contains(got, "move it off the highlight") || len(r.results.tones.Parts()) != 0 {
		t.Errorf("it says %q", got)
	}
}

func TestBackAndPalmAreComparedAndTheChoiceIsLeft(t *testing.T) {
	r := show(t, Other{"palm.jpg", "Palm, at operation"})
	r.place("back", onSkin)
	r.place(skin.GreyPatch, onGrey)
	r.PlaceOn("palm.jpg", "palm", onSkin, 20)
	if got := r.results.light.Words(); !strings.HasPrefix(got, "Without a neutral patch: Palm, at operation. ") || !strings.HasSuffix(got, skin.NoNeutral) {
		t.Errorf("the palm's photograph has no neutral patch, and it says %q", got)
	}
	r.PlaceOn("palm.jpg", skin.GreyPatch, onGrey, 20)
	if r.results.light.Visible() || len(r.results.tones.Parts()) != 2 || len(r.results.pairs.Parts()) != 1 {
		t.Fatalf("%d samples, %d pairs, it says %q", len(r.results.tones.Parts()), len(r.results.pairs.Parts()), r.results.light.Words())
	}
	samples, _ := skin.OfPlan(r.file.Patches, r.photograph)
	because := skincolour.Reasoning(samples[0].Sample, samples[1].Sample).Because
	if !strings.Contains(r.results.reason.Words(), because) || !r.results.yours.Visible() || strings.Contains(r.results.notes.Words(), because) {
		t.Errorf("the reasoning reads %q", r.results.reason.Words())
	}
	var titles []string
	for _, key := range r.keys() {
		titles = append(titles, r.rows[key].title.Words())
	}
	if want := "White or grey: this photograph|White or grey: Palm, at operation|Back of the hand|Palm|"; !strings.HasPrefix(strings.Join(titles, "|"), want) {
		t.Errorf("rows %q", titles)
	}
}

func TestAPhotographIsOpenedOnceAndReadOnlyWhenPatchesChange(t *testing.T) {
	r := show(t)
	r.place("back", onSkin)
	before := r.asked
	r.again()
	r.place("palm", onSkin.Add(plane.Vec[plane.Pixel](0, 60)))
	if len(r.opened) != 1 || r.asked != before+1 {
		t.Errorf("opened %q, sampled %d times", r.opened, r.asked-before)
	}
}

// What is still being opened for one plan must not be taken for a photograph of
// the next: both call their own photograph "".
func TestAPhotographOfAnotherPlanIsNotSampled(t *testing.T) {
	r := show(t)
	var late []func()
	r.apart = func(f func()) { late = append(late, f) }
	r.place("back", onSkin)
	before := r.source
	r.Use(r.table, func(string) (*photo.Photograph, error) { return r.photograph("palm.jpg") })
	r.again()
	for _, f := range late {
		f()
	}
	if r.source == before || len(r.source.opened) != 1 {
		t.Fatalf("%d photographs are open", len(r.source.opened))
	}
	own, _ := skin.OfPlan(r.file.Patches, func(string) (*photo.Photograph, error) { return r.photograph("palm.jpg") })
	if want := lab(own[0]); !strings.Contains(strings.Join(texts(r.results.tones), "\n"), want) {
		t.Errorf("it tells %q, want %q", texts(r.results.tones), want)
	}
}

// texts are all words within a block.
func texts(b *column.Block) []string {
	var out []string
	for _, o := range b.Parts() {
		switch o := o.(type) {
		case *column.Text:
			out = append(out, o.Words())
		case *column.Block:
			out = append(out, texts(o)...)
		}
	}
	return out
}

func TestWhatWasReadForEarlierPatchesIsDropped(t *testing.T) {
	r := show(t)
	var late []func()
	r.do = func(f func()) { late = append(late, f) }
	r.place("back", onSkin)
	r.place("palm", onSkin)
	for i := len(late) - 1; i >= 0; i-- {
		late[i]()
	}
	if got := len(r.results.tones.Parts()); got != 2 {
		t.Errorf("%d samples are shown, want the latest 2", got)
	}
}

func TestAPhotographThatCannotBeOpenedIsNamed(t *testing.T) {
	r := show(t)
	r.PlaceOn("gone.jpg", "palm", onSkin, 20)
	if got := r.results.refused.Words(); !strings.Contains(got, "gone.jpg is not there; check the folder") {
		t.Errorf("it says %q", got)
	}
}

func TestAPatchIsDraggedAndSizedOnThePhotographInOneStepEach(t *testing.T) {
	r := show(t)
	r.place("back", onSkin)
	handles := r.Handles()
	if len(handles) != 1 || len(r.Lines()) != 1 || handles[0].Label != "Back of the hand" {
		t.Fatalf("%+v", handles)
	}
	steps := len(r.steps)
	for _, x := range []plane.Pixel{82, 85, 88} {
		r.DragHandle(handles[0].ID, plane.Pt(x, 90))
	}
	if got := r.Handles()[0].At.X; got != 88 || r.file.Patches[0].Centre.X != 80 {
		t.Errorf("while it is dragged it lies at %v, in the plan at %v", got, r.file.Patches[0].Centre)
	}
	r.DropHandle(handles[0].ID)
	back := r.rows[rowKey{place: skincolour.Back}]
	back.size.OnChanged(30)
	far := r.Lines()[0].Points[0].Distance(r.file.Patches[0].Centre)
	back.size.OnChangeEnded(30)
	if len(r.steps) != steps+2 || r.file.Patches[0].Centre.X != 88 || r.file.Patches[0].Radius != 30 || far < 29.99 || far > 30.01 {
		t.Errorf("steps %q, %+v, drawn with a radius of %v", r.steps, r.file.Patches, far)
	}
	if back.radius.Text != "radius about 3.0 mm" {
		t.Errorf("30 px of 0.1 mm read %q", back.radius.Text)
	}
}

func TestARemovedPatchLeavesNothingBehind(t *testing.T) {
	r := show(t)
	r.place("back", onSkin)
	r.place(skin.GreyPatch, onGrey)
	r.remove(rowKey{})
	r.remove(rowKey{place: skincolour.Back})
	if len(r.file.Patches) != 0 || len(r.results.tones.Parts()) != 0 || !strings.Contains(r.results.state.Words(), "place a patch") || len(r.Handles()) != 0 {
		t.Errorf("%+v, it says %q", r.file.Patches, r.results.state.Words())
	}
}

func TestWhitePaperTakesThePlaceOfTheGreyCard(t *testing.T) {
	r := show(t)
	r.place(skin.GreyPatch, onGrey)
	r.rows[rowKey{}].kind.Choose(1)
	if len(r.file.Patches) != 1 || r.file.Patches[0].Name != skin.WhitePatch {
		t.Errorf("%+v", r.file.Patches)
	}
	r.place(skin.WhitePatch, onGrey.Add(plane.Vec[plane.Pixel](5, 0)))
	if len(r.file.Patches) != 1 || r.file.Patches[0].Centre.X != 305 {
		t.Errorf("%+v", r.file.Patches)
	}
}

func TestAPatchIsPlacedOnAnotherPhotographOverTheWindow(t *testing.T) {
	r := show(t, Other{"palm.jpg", "Palm, at operation"})
	r.win.Resize(fyne.NewSize(900, 700))
	r.elsewhere("palm", r.others[0])
	shots.Keep(t, r.win, "plancolour-elsewhere")
	if r.win.Canvas().Overlays().Top() == nil || r.opened[0] != "palm.jpg" {
		t.Errorf("opened %q", r.opened)
	}
}

func TestThePanelHasRoomInLightAndDark(t *testing.T) {
	r := show(t, Other{"palm.jpg", "Palm, at operation"})
	r.win.Resize(fyne.NewSize(340, 1700))
	r.Ask("back")
	shots.Keep(t, r.win, "plancolour-empty")
	r.Place(onSkin)
	r.place("donor", onShine)
	r.place(skin.GreyPatch, onGrey)
	r.PlaceOn("palm.jpg", "palm", onSkin, 20)
	r.PlaceOn("palm.jpg", "graft", onSkin.Add(plane.Vec[plane.Pixel](30, 0)), 20)
	for name, variant := range map[string]fyne.ThemeVariant{"light": theme.VariantLight, "dark": theme.VariantDark} {
		fyne.CurrentApp().Settings().SetTheme(look.Theme(variant))
		for _, wide := range []float32{312, 340, 380} {
			r.win.Resize(fyne.NewSize(wide, 2700))
			if least := r.Object().MinSize(); least.Width > 312 {
				t.Errorf("the panel needs %v", least)
			}
			for _, row := range r.rows {
				if end := row.put.Position().X + row.put.Size().Width; end > wide {
					t.Errorf("a button ends at %v of %v", end, wide)
				}
			}
		}
		r.win.Resize(fyne.NewSize(340, 2700))
		shots.Keep(t, r.win, "plancolour-"+name)
	}
}
