package timeline

import (
	"bytes"
	"errors"
	"image"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"

	"ogive/assets"
	"ogive/geometry/followup"
	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
	"ogive/imaging/phantom"
	"ogive/ui/look"
	"ogive/ui/shots"
)

func at(photograph int64, day string, index, u95 plane.Ratio) followup.Sitting {
	d, err := followup.ParseDay(day)
	if err != nil {
		panic(err)
	}
	return followup.Sitting{
		Photograph: photograph, Day: d, Index: plane.Estimate[plane.Ratio]{Value: index, U95: u95},
		Method: scale.ByRuler, View: hand.Dorsal, Observer: "AB", Feel: followup.Soft,
	}
}

// web is a web of a left hand over three years that ends at the given index.
func web(t testing.TB, which hand.Web, end plane.Ratio) Web {
	t.Helper()
	d, err := followup.ParseDay("2023-02-14")
	if err != nil {
		t.Fatal(err)
	}
	before := at(1, "2023-01-20", 0.93, 0.02)
	before.Before = true
	card := at(4, "2024-02-20", 0.47+(end-0.47)/2, 0.02)
	card.Method = scale.ByCard
	return Web{hand.Left, which, followup.Follow(followup.History{
		Operated: d,
		Sittings: []followup.Sitting{before, at(2, "2023-02-14", 0.47, 0.02), at(3, "2023-05-16", 0.48, 0.02), card, at(5, "2026-02-10", end, 0.02)},
		Other:    []followup.Sitting{at(11, "2023-01-20", 0.49, 0.02), at(13, "2023-05-16", 0.50, 0.02), at(15, "2026-02-10", 0.49, 0.02)},
	})}
}

func model(t testing.TB) Model {
	t.Helper()
	table, err := norms.Parse(assets.NormalValues)
	if err != nil {
		t.Fatal(err)
	}
	return Model{
		Code: "S-012", Norms: table,
		Webs: []Web{web(t, hand.ThirdWeb, 0.66), web(t, hand.FourthWeb, 0.48)},
		Appraisal: func(w Web, p followup.Point) []string {
			if p.Photograph != 5 {
				return nil
			}
			return []string{"How the web feels: soft, as normal", "Colour of the graft: darker than the skin around it"}
		},
	}
}

// room is a room on a case, in a window of the given size, that works at once.
func room(t *testing.T, m Model, width, height float32) (*Room, fyne.Window) {
	t.Helper()
	w := test.NewTempWindow(t, nil)
	r := New(w)
	r.beside = func(work func() func()) {
		if then := work(); then != nil {
			then()
		}
	}
	w.SetContent(r.Object())
	w.Resize(fyne.NewSize(width, height))
	r.Show(m)
	return r, w
}

func app(t *testing.T, v fyne.ThemeVariant) {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(look.Theme(v))
}

func TestTheRoomOpensAtTheLatestSittingOfTheFirstWeb(t *testing.T) {
	app(t, theme.VariantLight)
	r, _ := room(t, model(t), 1024, 700)
	if r.panel.date.Text != "2026-02-10" || r.panel.figure.Text != "0.66 ± 0.02" {
		t.Errorf("the panel shows %s, %s", r.panel.date.Text, r.panel.figure.Text)
	}
	if got := r.panel.creep.Text; !strings.HasPrefix(got, "Creep 0.36 ± 0.05\nGrade 3? (doubtful: 2 to 3)") {
		t.Errorf("the creep reads %q", got)
	}
	if !strings.Contains(r.panel.found.Text, "darker than the skin") {
		t.Errorf("the appraisal reads %q", r.panel.found.Text)
	}
	if len(r.plot.spots) != 5 || !r.plot.ring.Visible() {
		t.Errorf("%d points are placed on the chart, the ring is visible: %v", len(r.plot.spots), r.plot.ring.Visible())
	}
}

func TestThePointerOnAPointShowsItsSitting(t *testing.T) {
	app(t, theme.VariantLight)
	r, _ := room(t, model(t), 1024, 700)
	r.plot.MouseMoved(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: r.plot.spots[3].AddXY(6, -5)}})
	if r.panel.date.Text != "2024-02-20" {
		t.Errorf("over the fourth point the panel shows %s", r.panel.date.Text)
	}
	if got := r.panel.caution.label.Text; !r.panel.caution.object.Visible() || !strings.HasPrefix(got, "Other scale than at the baseline") {
		t.Errorf("another scale is warned of by %q", got)
	}
	r.plot.MouseMoved(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(2, 2)}})
	if r.panel.date.Text != "2024-02-20" {
		t.Error("the panel does not keep the sitting last pointed at")
	}
}

func TestTheKeysGoFromSittingToSittingAndOpenOne(t *testing.T) {
	app(t, theme.VariantLight)
	r, w := room(t, model(t), 1024, 700)
	var opened int64
	r.OnOpen = func(id int64) { opened = id }
	w.Canvas().Focus(r.plot)
	press := func(k fyne.KeyName) { r.plot.TypedKey(&fyne.KeyEvent{Name: k}) }
	press(fyne.KeyHome)
	if r.panel.creep.Text != "Before the release: no creep is told." {
		t.Errorf("the first sitting says %q", r.panel.creep.Text)
	}
	press(fyne.KeyLeft)
	press(fyne.KeyRight)
	if r.panel.creep.Text != "The baseline: creep is measured from here." {
		t.Errorf("the second sitting says %q", r.panel.creep.Text)
	}
	press(fyne.KeyReturn)
	if opened != 2 {
		t.Errorf("Enter opens photograph %d", opened)
	}
	press(fyne.KeyEnd)
	press(fyne.KeyRight)
	if r.chosen != 4 {
		t.Errorf("after the last sitting comes %d", r.chosen)
	}
}

func TestAClickOnAPointOpensItsPhotograph(t *testing.T) {
	app(t, theme.VariantLight)
	r, _ := room(t, model(t), 1024, 700)
	var opened []int64
	r.OnOpen = func(id int64) { opened = append(opened, id) }
	r.plot.Tapped(&fyne.PointEvent{Position: r.plot.spots[2]})
	r.plot.Tapped(&fyne.PointEvent{Position: fyne.NewPos(1, 1)})
	test.Tap(r.panel.open)
	if len(opened) != 2 || opened[0] != 3 || opened[1] != 3 {
		t.Errorf("opened are %v, want photograph 3 by the click and again by the button", opened)
	}
}

func TestTheWebsAreChosenByTheirLatestCreep(t *testing.T) {
	app(t, theme.VariantLight)
	r, _ := room(t, model(t), 1024, 700)
	name, creep := r.chooser.tiles[1].words()
	if name != "Left hand, fourth web" || !strings.HasPrefix(creep, "No creep that can be told") {
		t.Errorf("the second tile says %q, %q", name, creep)
	}
	test.Tap(r.chooser.tiles[1])
	if r.web != 1 || !r.chooser.tiles[1].chosen || r.chooser.tiles[0].chosen || r.panel.figure.Text != "0.48 ± 0.02" {
		t.Errorf("tapped, web %d is shown at %s", r.web, r.panel.figure.Text)
	}
	r.Show(model(t))
	if r.web != 1 {
		t.Error("the same case shown again does not stay at its web")
	}
}

func TestWhatComesLateForAnotherSittingIsDropped(t *testing.T) {
	app(t, theme.VariantLight)
	m := model(t)
	m.Thumbnail = func(id int64) (image.Image, error) {
		return image.NewGray(image.Rect(0, 0, int(id), 1)), nil
	}
	r, _ := room(t, m, 1024, 700)
	var late []func()
	r.beside = func(work func() func()) { late = append(late, work()) }
	r.point(0)
	r.point(1)
	late[1]()
	late[0]()
	if got := r.panel.picture.Image.Bounds().Dx(); got != 2 {
		t.Errorf("the picture is that of photograph %d", got)
	}
}

func TestAPhotographThatCannotBeShownIsSaid(t *testing.T) {
	app(t, theme.VariantLight)
	m := model(t)
	m.Thumbnail = func(int64) (image.Image, error) { return nil, errors.New("the file is gone") }
	r, _ := room(t, m, 1024, 700)
	if !strings.Contains(r.panel.gone.Text, "the file is gone") {
		t.Errorf("instead of the picture stands %q", r.panel.gone.Text)
	}
}

func TestACaseWithNothingToFollowSaysHowToBegin(t *testing.T) {
	app(t, theme.VariantLight)
	r, _ := room(t, Model{}, 800, 600)
	if !r.empty.Visible() || r.full.Visible() {
		t.Error("an empty case does not say how to begin")
	}
	m := model(t)
	m.Webs = []Web{{Side: hand.Left, Web: hand.SecondWeb, Series: followup.Follow(followup.History{})}}
	r.Show(m)
	r.plot.TypedKey(&fyne.KeyEvent{Name: fyne.KeyRight})
	r.plot.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if !r.panel.none.Visible() || r.panel.words.Visible() || r.chosen != -1 {
		t.Errorf("a web never measured shows point %d", r.chosen)
	}
}

func TestTheChartIsSavedWholeUnderAnHonestName(t *testing.T) {
	app(t, theme.VariantLight)
	r, _ := room(t, model(t), 1024, 700)
	c := r.chart()
	if got := pngFile.name(c); got != "S-012-left-third-web.png" {
		t.Errorf("the name proposed is %s", got)
	}
	folder := t.TempDir()
	r.write(c, pngFile, filepath.Join(folder, "a.png"))
	r.write(c, svgFile, filepath.Join(folder, "b.svg"))
	data, err := os.ReadFile(filepath.Join(folder, "a.png"))
	if err != nil {
		t.Fatal(err)
	}
	if _, err := png.Decode(bytes.NewReader(data)); err != nil {
		t.Errorf("the picture can't be read: %v", err)
	}
	if data, err = os.ReadFile(filepath.Join(folder, "b.svg")); err != nil || !bytes.Contains(data, []byte("</svg>")) {
		t.Errorf("the drawing is not whole: %v", err)
	}
	r.write(c, pngFile, filepath.Join(folder, "none", "c.png"))
	if !strings.Contains(r.saved.Text, "not saved") {
		t.Errorf("what can't be written is told as %q", r.saved.Text)
	}
}

func TestTheRoomInLightAndDark(t *testing.T) {
	small := phantom.Examples()[2].Case
	small.Width, small.Height = 480, 360
	picture, err := small.Render()
	if err != nil {
		t.Fatal(err)
	}
	m := model(t)
	m.Thumbnail = func(int64) (image.Image, error) { return picture.Image, nil }
	for name, v := range map[string]fyne.ThemeVariant{"light": theme.VariantLight, "dark": theme.VariantDark} {
		for size, dims := range map[string]fyne.Size{"small": {Width: 1024, Height: 700}, "large": {Width: 1600, Height: 1000}} {
			app(t, v)
			r, w := room(t, m, dims.Width, dims.Height)
			r.OnLeave = func() {}
			r.Show(m)
			shots.Keep(t, w, name+"-"+size)
			r.point(3)
			w.Canvas().Focus(r.plot)
			shots.Keep(t, w, name+"-"+size+"-scale")
			if r.plot.drawn.size.X < 500 {
				t.Errorf("%s %s: the chart is only %v large", name, size, r.plot.drawn.size)
			}
		}
	}
}
