package round

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/imaging/rounds"
	"ogive/imaging/wording"
	"ogive/ui/marking"
)

// answerAll answers the picture in hand by keys and a click: rightly but where
// wrong says otherwise, with the crown at that index.
func (s *scene) answerAll(wrong rounds.Asked, index float64) {
	s.t.Helper()
	truth := s.truth()
	for _, q := range s.taking.picture.Questions {
		if q.Of == rounds.Crown {
			s.click(middle(s.taking.picture, index))
			continue
		}
		k := key(q, truth[q.Of])
		if k == 0 || q.Of == wrong { // the width of a V has no truth
			k = '1' + (k-'1'+1)%3
			if k < '1' {
				k = '1'
			}
		}
		s.keyboard.TypedRune(k)
	}
}

// begun begins a round as the page is set, of so many pictures.
func (s *scene) begun(kind rounds.Kind, pictures int) {
	s.t.Helper()
	s.start.choose(kind)
	setup := s.start.setup()
	setup.Count = pictures
	s.begin(setup)
	s.came()
	if s.page != judging && s.page != placing {
		s.t.Fatalf("the round has not begun: %q", s.start.notice.label.Text)
	}
}

func TestARoundJudgedByKeysIsScoredAsTheRoundSays(t *testing.T) {
	folder := t.TempDir()
	s := newScene(t, folder, theme.VariantLight, small())
	s.start.counts.Set(0)
	s.press(fyne.KeyReturn)
	s.came()
	right, all := 0, 0
	for n := 1; ; n++ {
		s.answerAll(rounds.Place, 0.3)
		for _, q := range s.taking.picture.Questions {
			if q.Of == rounds.Width && s.truth()[rounds.Width] == "" {
				continue
			}
			all++
			if q.Of != rounds.Place && q.Of != rounds.Crown {
				right++
			}
		}
		s.press(fyne.KeyReturn)
		s.came()
		if s.page != telling {
			t.Fatalf("picture %d: the truth is not shown: %q", n, s.table.notice.label.Text)
		}
		s.press(fyne.KeyReturn)
		s.came()
		if s.page == concluding {
			break
		}
	}
	kept, refused := rounds.List(folder)
	if len(kept) != 1 || len(refused) > 0 || !kept[0].Done() {
		t.Fatalf("kept %d rounds, refused %v", len(kept), refused)
	}
	sum := kept[0].Summary()
	if sum.Score.Right != right || sum.Score.Of != all {
		t.Errorf("scored %d of %d, expected %d of %d", sum.Score.Right, sum.Score.Of, right, all)
	}
	text := s.result.text()
	for _, want := range append(sum.Sentences, share(sum.Score), wording.Caution, "Round by round") {
		if !strings.Contains(text, want) {
			t.Errorf("the text lacks %q:\n%s", want, text)
		}
	}
	if !strings.Contains(strings.Join(sum.Sentences, " "), "distally: ") {
		t.Errorf("crowns at index 0.3 are not told to go distally: %q", sum.Sentences)
	}
}

// joints and webs of the picture in hand, as one marks who sees the truth.
func (s *scene) place(spot marking.Spot) plane.PixelPoint {
	s.t.Helper()
	p := s.taking.picture
	switch spot.Kind {
	case marking.ScalePoint:
		return plane.Pt[plane.Pixel](300, 100+plane.Pixel(spot.N)*700)
	case marking.JointPoint:
		return p.Truth.Joints[spot.Digit][spot.Joint]
	case marking.SeedPoint:
		web, _ := p.Truth.Web(spot.Web)
		ends := [2]plane.PixelPoint{web.Border[0], web.Border[len(web.Border)-1]}
		radial, _ := spot.Web.Digits()
		if pip := p.Truth.Joints[radial][hand.PIP]; ends[1].Distance(pip) < ends[0].Distance(pip) {
			ends[0], ends[1] = ends[1], ends[0]
		}
		return [3]plane.PixelPoint{ends[0], web.Crown, ends[1]}[spot.N]
	case marking.AxisPoint:
		web, _ := p.Truth.Web(spot.Web)
		return web.Axis[spot.N]
	}
	web, _ := p.Truth.Web(spot.Web)
	last := len(web.Junction) - 1
	return web.Junction[spot.N*last/3]
}

// markAll places every spot that is asked for by clicks, and types the length.
func (s *scene) markAll() { s.markAllBut(marking.Spot{}) }

// markAllBut skips one spot by its key.
func (s *scene) markAllBut(skipped marking.Spot) {
	s.t.Helper()
	for range 40 {
		spot, more := s.table.marking.wanted()
		if s.taking.work.State().LacksLength() {
			of := s.taking.picture.Truth.Plane
			a, b := s.place(marking.Spot{Kind: marking.ScalePoint}), s.place(marking.Spot{Kind: marking.ScalePoint, N: 1})
			s.lookedAt("mark-length")
			if s.win.Canvas().Focused() != s.table.marking.scale.length {
				s.t.Fatal("the length is asked for, and the keys go elsewhere")
			}
			test.Type(s.table.marking.scale.length, fixed(float64(of.Position(a).Distance(of.Position(b))), 2))
			s.table.marking.scale.length.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
			continue
		}
		if !more {
			return
		}
		if spot == skipped {
			s.keyboard.TypedRune('s')
			continue
		}
		s.click(s.place(spot))
		if _, there := s.taking.work.State().Points[spot]; !there {
			s.t.Fatalf("a click at %v has not placed %s", s.place(spot), spot.Name(hand.Dorsal))
		}
	}
	s.t.Fatal("the marks never come to an end")
}

func TestARoundMarkedBlindIsScoredAsTheRoundSays(t *testing.T) {
	folder := t.TempDir()
	s := newScene(t, folder, theme.VariantLight, small())
	var own []rounds.Click
	s.OnRepeatability = func(c rounds.Click) { own = append(own, c) }
	s.start.faults.SetSelected(s.start.faults.Options[:5]) // no slopes: every picture has joints
	s.begun(rounds.Blind, 4)
	s.lookedAt("mark-begin")
	for {
		s.markAll()
		s.came()
		s.lookedAt("marked-" + fixed(float64(len(s.taking.round.Results)), 0))
		s.press(fyne.KeyReturn)
		s.came()
		if s.page != telling {
			t.Fatalf("the truth is not shown: %q", s.table.notice.label.Text)
		}
		s.lookedAt("blind-told-" + fixed(float64(len(s.taking.round.Results)), 0))
		s.press(fyne.KeyReturn)
		s.came()
		if s.page == concluding {
			break
		}
	}
	s.lookedAt("blind-result")
	sum := s.result.round.Summary()
	if sum.Score.Value < 0.9 {
		t.Errorf("marks on the truth score %+v", sum.Score)
	}
	for _, l := range sum.Landmarks {
		if l.Error > 0.3 {
			t.Errorf("%s: marks on the truth are %.2f mm off", l.Of, l.Error)
		}
	}
	if !s.result.own.Visible() {
		t.Fatal("how widely the clicks scatter is not told")
	}
	test.Tap(s.result.own.use)
	if len(own) != 1 || own[0].Clicks < 40 {
		t.Errorf("offered %+v", own)
	}
}

func TestASlopeMarkedBlindBelongsToTheWebOfThePicture(t *testing.T) {
	s := newScene(t, t.TempDir(), theme.VariantLight, small())
	s.start.faults.SetSelected(s.start.faults.Options[5:])
	s.begun(rounds.Blind, 3)
	for s.taking.picture.Web == hand.ThirdWeb {
		s.markAll()
		s.press(fyne.KeyReturn)
		s.came()
		s.press(fyne.KeyReturn)
		s.came()
	}
	s.markAll()
	s.lookedAt("marked-slope")
	s.press(fyne.KeyReturn)
	test.Tap(s.head.back)
	if s.page != placing {
		t.Error("the round is left while an answer is on its way to the disk")
	}
	s.came()
	f := s.taking.feedback
	if s.page != telling || len(f.Lines) != 1 || !f.Lines[0].Right || f.Lines[0].Web == hand.ThirdWeb {
		t.Errorf("page %v, %+v", s.page, f.Lines)
	}
}

func TestAJointThatIsSkippedCountsAsWrongAndTheScaleIsNotSkipped(t *testing.T) {
	s := newScene(t, t.TempDir(), theme.VariantLight, small())
	s.start.faults.SetSelected(s.start.faults.Options[:2])
	s.begun(rounds.Blind, 1)
	s.keyboard.TypedRune('s')
	if spot, _ := s.table.marking.wanted(); spot.Kind != marking.ScalePoint || spot.N != 0 || !s.table.notice.object.Visible() {
		t.Errorf("after skipping the scale %+v is wanted", spot)
	}
	skipped := marking.Spot{Kind: marking.JointPoint, Digit: hand.Little, Joint: hand.PIP}
	s.markAllBut(skipped)
	s.came()
	s.press(fyne.KeyReturn)
	s.came()
	if s.page != telling {
		t.Fatalf("said %q", s.table.notice.label.Text)
	}
	for _, l := range s.taking.feedback.Lines {
		if wrong := l.Of == rounds.Place && l.Web == hand.FourthWeb; wrong == l.Right {
			t.Errorf("without the little finger's PIP: %+v", l)
		}
	}
}

func TestNoFigureIsSeenBeforeTheAnswer(t *testing.T) {
	s := newScene(t, t.TempDir(), theme.VariantLight, small())
	s.begun(rounds.Blind, 1)
	s.markAll()
	if s.taking.feedback.Drawing.Webs != nil {
		t.Error("the truth is at hand before the answer")
	}
	if s.table.told.object.Visible() {
		t.Error("the column of the truth is seen")
	}
	s.leave()
	s.came()
	s.begun(rounds.ByEye, 1)
	scene := s.table.judging.scene()
	if len(scene.Lines) > 0 || len(scene.Handles) > 0 || len(scene.Placed) > 0 || len(scene.Reading.Webs) > 0 {
		t.Errorf("drawn over the picture: %+v", scene)
	}
}

func TestARoundThatIsLeftGoesOnWithTheSamePictureAndItsMarks(t *testing.T) {
	folder := t.TempDir()
	s := newScene(t, folder, theme.VariantLight, small())
	s.begun(rounds.Blind, 1)
	s.click(plane.Pt[plane.Pixel](400, 300))
	number := s.taking.picture.Number
	test.Tap(s.head.back)
	s.came()
	if s.page != starting || !strings.Contains(s.start.notice.label.Text, "0 of 1") {
		t.Fatalf("page %v, said %q", s.page, s.start.notice.label.Text)
	}
	test.Tap(s.start.begun.buttons[1])
	s.came()
	at, there := s.taking.work.State().Points[marking.Spot{Kind: marking.ScalePoint}]
	if s.page != placing || s.taking.picture.Number != number || !there || math.Abs(float64(at.X)-400) > 0.5 {
		t.Errorf("page %v, picture %d (was %d), the mark lies at %v, there %v", s.page, s.taking.picture.Number, number, at, there)
	}
}

func TestEnterGoesToAQuestionWithoutAnAnswerAndNeverPastIt(t *testing.T) {
	s := newScene(t, t.TempDir(), theme.VariantLight, small())
	s.begun(rounds.ByEye, 1)
	q := s.table.judging
	for range 3 {
		s.press(fyne.KeyReturn)
	}
	if s.page != judging || s.busy {
		t.Fatal("a picture without answers was scored")
	}
	s.keyboard.TypedRune('1')
	if len(q.rows) > 1 && q.at != 1 {
		t.Errorf("after the first answer question %d is in hand", q.at)
	}
	s.keyboard.TypedRune('9') // no such answer
	s.press(fyne.KeyTab)
	if len(s.taking.answers) != 1 {
		t.Errorf("answers %v", s.taking.answers)
	}
}

func TestTheResultIsSavedWholeAndFailuresAreSaid(t *testing.T) {
	folder := t.TempDir()
	s := newScene(t, folder, theme.VariantLight, small())
	judgedBefore(t, folder, s)
	s.Show(folder, "AB", s.settings)
	s.came()
	test.Tap(s.start.begun.buttons[2]) // look at the latest that is done
	s.came()
	path := filepath.Join(t.TempDir(), "result")
	s.result.save(path)
	data, err := os.ReadFile(path + ".txt")
	if err != nil || !strings.Contains(string(data), wording.Caution) || !strings.Contains(string(data), "too deep\t0\t10\t0") {
		t.Errorf("%v, saved:\n%s", err, data)
	}
	s.result.save(filepath.Join(path, "none", "x.txt"))
	if !strings.Contains(s.result.notice.label.Text, "not saved") {
		t.Errorf("it says %q", s.result.notice.label.Text)
	}
	s.result.copy()
	if fyne.CurrentApp().Clipboard().Content() != string(data) {
		t.Error("what is copied is not what is saved")
	}
}

func TestAgainShowsTheSamePicturesInAnotherOrder(t *testing.T) {
	folder := t.TempDir()
	s := newScene(t, folder, theme.VariantLight, small())
	judgedBefore(t, folder, s)
	s.Show(folder, "AB", s.settings)
	s.came()
	of := s.start.begun.shown[2]
	test.Tap(s.start.begun.buttons[3])
	s.came()
	if s.page != judging || s.taking.round.Setup.Seed != of.Setup.Seed || s.taking.round.Repeats != of.ID || s.taking.picture.Number == of.Order[0] && s.taking.round.Order[1] == of.Order[1] && s.taking.round.Order[2] == of.Order[2] {
		t.Errorf("page %v, round %+v of %v", s.page, s.taking.round.Order, of.Order)
	}
}

func TestNothingBeginsWithoutSomebodyWhoTakesIt(t *testing.T) {
	s := newScene(t, t.TempDir(), theme.VariantLight, small())
	s.start.who.SetText("  ")
	s.press(fyne.KeyReturn)
	if s.busy || !s.start.begins.Disabled() || !strings.Contains(s.start.begins.Text, "who takes") {
		t.Errorf("busy %v, the button says %q", s.busy, s.start.begins.Text)
	}
}

func TestARoundThatWasBegunCanBeRemoved(t *testing.T) {
	folder := t.TempDir()
	s := newScene(t, folder, theme.VariantLight, small())
	judgedBefore(t, folder, s)
	s.Show(folder, "AB", s.settings)
	s.came()
	test.Tap(s.start.begun.buttons[0])
	if s.win.Canvas().Overlays().Top() == nil || len(s.all) != 4 {
		t.Fatal("it is removed without a question")
	}
	s.start.begun.remove(s.all[3])
	s.came()
	if len(s.all) != 3 || !s.all[2].Done() {
		t.Errorf("%d rounds are left", len(s.all))
	}
}

// A key that is held down is reported again and again.
func TestEnterHeldDownDoesNotRunPastTheTruth(t *testing.T) {
	s := newScene(t, t.TempDir(), theme.VariantLight, small())
	s.begun(rounds.ByEye, 2)
	s.answerAll("", 0.5)
	enter := &fyne.KeyEvent{Name: fyne.KeyReturn}
	s.keyboard.KeyDown(enter)
	for range 5 {
		s.keyboard.TypedKey(enter)
		s.came()
	}
	if s.page != telling || len(s.taking.round.Results) != 1 {
		t.Errorf("page %v after %d answers", s.page, len(s.taking.round.Results))
	}
	s.keyboard.KeyUp(enter)
	s.keyboard.KeyDown(enter)
	s.keyboard.TypedKey(enter)
	s.came()
	if s.page != judging {
		t.Errorf("the next press of Enter does not go on: page %v", s.page)
	}
}

func TestABorderIsPulledAsAMarkAndTheRestOfTheReadingIsNotKept(t *testing.T) {
	s := newScene(t, t.TempDir(), theme.VariantLight, small())
	s.start.faults.SetSelected(s.start.faults.Options[:2])
	s.begun(rounds.Blind, 1)
	s.markAll()
	s.came()
	m := s.table.marking
	edge := m.borders.edges[hand.ThirdWeb]
	if len(edge) < 10 {
		t.Fatalf("the third web is traced in %d points", len(edge))
	}
	from := edge[len(edge)/2]
	m.dragEdge(hand.ThirdWeb, from, from.Add(plane.Vec[plane.Pixel](0, 6)))
	m.dropEdge(hand.ThirdWeb)
	s.came()
	if len(s.taking.work.State().Edges[hand.ThirdWeb]) == 0 {
		t.Error("the pulled border is no mark")
	}
	test.Tap(s.head.undo)
	s.came()
	if len(s.taking.work.State().Edges[hand.ThirdWeb]) != 0 {
		t.Error("undoing does not give the border back to the tracing")
	}
}

func TestWhatWasChosenOnAPictureIsThereAgainWhenTheRoundGoesOn(t *testing.T) {
	s := newScene(t, t.TempDir(), theme.VariantLight, small())
	s.start.faults.SetSelected(s.start.faults.Options[:5])
	s.begun(rounds.ByEye, 1)
	s.keyboard.TypedRune('2')
	s.click(plane.Pt[plane.Pixel](500, 400)) // no crown: another question is in hand
	if s.taking.crown != nil {
		t.Error("a click puts the crown while another question is in hand")
	}
	test.Tap(s.head.back)
	s.came()
	s.goOn(s.all[0])
	s.came()
	if len(s.taking.answers) != 1 || s.table.judging.rows[0].choices.cells[1].chosen != true {
		t.Errorf("answers %v", s.taking.answers)
	}
}
