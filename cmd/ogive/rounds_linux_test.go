package main

import (
	"bytes"
	"context"
	"fmt"
	"image"
	"image/jpeg"
	"math"
	"math/rand/v2"
	"path/filepath"
	"strconv"
	"testing"
	"time"

	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
	"ogive/imaging/measure"
	"ogive/imaging/rounds"
)

func TestAResidentJudgesARoundAndMarksAnotherAndBothAreScoredRight(t *testing.T) {
	d := newDesktop(t)
	begun := time.Now()
	r := d.start()
	r.readCaution()
	r.clickOn("Take a round")
	byEye := r.judgeARound()
	judged := time.Now()
	r.leaveARoundBegun(byEye)
	r.press("Escape")
	r.markTheRoundBegun()
	t.Logf("%d clicks; a round judged %.1f s after starting the program, another marked %.1f s later", r.clicks, judged.Sub(begun).Seconds(), time.Since(judged).Seconds())
	r.quit()
}

// pupil is a round in the window, beside a twin: the same pictures, answered here
// without a window as they were there.
type pupil struct {
	shown
	path   string // of the round
	twin   *rounds.Round
	supply *rounds.Supply
	with   measure.Settings
	right  int // what the score must come to
	count  int
}

func (r *running) roundsFolder() string {
	return filepath.Join(r.folder, ".config", "fyne", details.ID, "rounds")
}

// newPupil waits until the window has begun that many rounds, and takes the last
// one.
func (r *running) newPupil(begun int) *pupil {
	r.t.Helper()
	var round *rounds.Round
	r.wait(fmt.Sprintf("round %d is on the disk", begun), func() bool {
		all, refused := rounds.List(r.roundsFolder())
		if len(refused) > 0 {
			r.t.Fatalf("a round that the program wrote is refused: %v", refused)
		}
		if len(all) == begun {
			round = all[begun-1]
		}
		return round != nil
	})
	return r.pupilOf(round)
}

func (r *running) pupilOf(round *rounds.Round) *pupil {
	r.t.Helper()
	settings, err := measure.Defaults()
	if err != nil {
		r.t.Fatal(err)
	}
	p := &pupil{shown: shown{running: r}, path: round.Path(), with: settings}
	if p.twin, err = rounds.Begin(r.t.TempDir(), round.Observer, round.Setup, settings.Norms, round.Begun); err != nil {
		r.t.Fatal(err)
	}
	p.twin.Order = round.Order
	if p.twin.Limits != round.Limits {
		r.t.Errorf("the window judges by %+v, the normal values are %+v", round.Limits, p.twin.Limits)
	}
	if p.supply, err = p.twin.Supply(context.Background(), settings, nil); err != nil {
		r.t.Fatal(err)
	}
	r.t.Cleanup(p.supply.Close)
	return p
}

// nextPicture waits until the window shows the next picture of the round, and
// knows it.
func (p *pupil) nextPicture() *rounds.Picture {
	p.t.Helper()
	picture, err := p.supply.Next(context.Background())
	if err != nil {
		p.t.Fatal(err)
	}
	img, err := jpeg.Decode(bytes.NewReader(picture.JPEG))
	if err != nil {
		p.t.Fatal(err)
	}
	done, of := p.twin.Progress()
	p.read(fmt.Sprintf("Picture %d of %d", done+1, of))
	p.photograph = newPhotographed(img)
	p.findPhotograph()
	return picture
}

// told waits until the window has kept the answer, and holds what it came to
// against what the twin says.
func (p *pupil) told(picture *rounds.Picture, same rounds.Answer) rounds.Result {
	p.t.Helper()
	want, err := p.twin.Answer(picture, same, p.with, time.Now())
	if err != nil {
		p.t.Fatal(err)
	}
	n := len(p.twin.Results)
	var kept *rounds.Round
	p.wait(fmt.Sprintf("the answer to picture %d is on the disk", n), func() bool {
		if kept, err = rounds.Load(p.path); err != nil {
			p.t.Fatal(err)
		}
		return len(kept.Results) == n
	})
	got := kept.Results[n-1]
	if len(got.Judged) != len(want.Result.Judged) {
		p.t.Fatalf("picture %d: the window kept %+v, the round comes to %+v", n, got.Judged, want.Result.Judged)
	}
	right, counted := 0, 0
	for i, j := range got.Judged {
		w := want.Result.Judged[i]
		if j.Of != w.Of || j.Web != w.Web || j.Given != w.Given || j.True != w.True || j.Counted != w.Counted || j.Right != w.Right {
			p.t.Errorf("picture %d: the window kept %+v, the round comes to %+v", n, j, w)
		}
		if (j.Off == nil) != (w.Off == nil) || j.Off != nil && max(math.Abs(float64(j.Off.Distal-w.Off.Distal)), math.Abs(float64(j.Off.Ulnar-w.Off.Ulnar))) > samePlace {
			p.t.Errorf("picture %d: the window has the crown off by %+v, the round by %+v", n, j.Off, w.Off)
		}
		if j.Counted {
			counted++
		}
		if j.Right {
			right++
		}
	}
	p.right, p.count = p.right+right, p.count+counted
	p.read(fmt.Sprintf("%d of %d right", right, counted))
	p.note(fmt.Sprintf("the truth of picture %d", n))
	return got
}

// samePlace is how far, in millimetres, the window may take a click from where it
// was found to be on the photograph: less than half a pixel of the screen.
const samePlace = 0.1

// judgeARound takes the shortest round that is offered, and answers about a third of
// the questions wrongly on purpose.
func (r *running) judgeARound() *rounds.Round {
	r.t.Helper()
	how := r.read("How many pictures?")
	r.clickIn("5", image.Rect(how.Min.X, how.Max.Y, how.Max.X, how.Max.Y+60))
	r.read("✓ 5")
	r.note("a round is offered")
	r.press("Return")
	p := r.newPupil(1)
	for !p.twin.Done() {
		p.judge(p.nextPicture())
		p.press("Return")
	}
	p.read(fmt.Sprintf("%d of %d answers right", p.right, p.count))
	p.note("how the round went")
	kept, err := rounds.Load(p.path)
	if err != nil {
		p.t.Fatal(err)
	}
	if score := kept.Summary().Score; score.Right != p.right || score.Of != p.count || p.right == 0 || p.right == p.count {
		p.t.Errorf("the round is scored %d of %d, with %d of %d answered rightly on purpose", score.Right, score.Of, p.right, p.count)
	}
	return kept
}

// judge answers one picture by keys and a click.
func (p *pupil) judge(picture *rounds.Picture) {
	p.t.Helper()
	truth := p.truth(picture)
	n := len(p.twin.Results)
	answer := rounds.Answer{Choices: map[rounds.Asked]string{}}
	meant := map[rounds.Asked]bool{}
	for i, q := range picture.Questions {
		meant[q.Of] = (n+i)%3 != 1
		if len(q.Choices) == 0 {
			answer.Crown = p.putCrown(picture, meant[q.Of])
			continue
		}
		choice := 0
		for k, c := range q.Choices {
			if c.Value == truth[q.Of] {
				choice = k
			}
		}
		if !meant[q.Of] {
			choice = (choice + 1) % len(q.Choices)
		}
		answer.Choices[q.Of] = q.Choices[choice].Value
		p.press(strconv.Itoa(choice + 1))
	}
	p.read("Compare with the truth")
	p.press("Return")
	for _, j := range p.told(picture, answer).Judged {
		if j.Counted && j.Right != meant[j.Of] {
			p.t.Errorf("picture %d: the %s was answered to be right: %v, and is scored right: %v (said %q, true %q)", n+1, j.Of, meant[j.Of], j.Right, j.Given, j.True)
		}
	}
}

// truth is what is true of the web that is asked about, out of the phantom's figures
// and the table of normal values. The width of a V has no truth.
func (p *pupil) truth(picture *rounds.Picture) map[rounds.Asked]string {
	p.t.Helper()
	web, known := picture.Truth.Web(picture.Web)
	if !known {
		p.t.Fatalf("nothing is known of the web that is asked about, %v", picture.Web)
	}
	truth := map[rounds.Asked]string{rounds.Shape: web.Shape.String()}
	if web.Index != nil {
		for _, v := range p.with.Norms.JudgeIndex(picture.Truth.View, *web.Index) {
			truth[rounds.Place] = v.Finding
		}
	}
	if web.Slope != nil {
		for _, v := range p.with.Norms.JudgeSlope(*web.Slope) {
			truth[rounds.Slope] = v.Finding
		}
	}
	var spans []norms.WebSpan
	for _, w := range picture.Truth.Webs {
		if w.Span != nil {
			spans = append(spans, norms.WebSpan{Web: w.Web, Span: *w.Span})
		}
	}
	for i, verdicts := range p.with.Norms.JudgeSpans(spans) {
		for _, v := range verdicts {
			if spans[i].Web == web.Web {
				truth[rounds.Width] = v.Finding
			}
		}
	}
	return truth
}

// putCrown clicks in the middle of where a normal crown may lie, or well proximal
// of it, and gives the place on the photograph that was clicked.
func (p *pupil) putCrown(picture *rounds.Picture, right bool) *plane.PixelPoint {
	p.t.Helper()
	band := p.twin.Limits.Index
	index := (band[0] + band[1]) / 2
	if !right {
		index = band[0] - 0.15
	}
	radial, ulnar := picture.Web.Digits()
	a, b := picture.Truth.Joints[radial], picture.Truth.Joints[ulnar]
	at := a[hand.MCP].Towards(a[hand.PIP], index).Mid(b[hand.MCP].Towards(b[hand.PIP], index))
	x, y := p.place.screen(p.photograph, at)
	x, y = math.Round(x), math.Round(y)
	p.click(int(x), int(y))
	p.aside()
	clicked := p.place.on(p.photograph, x, y)
	return &clicked
}

// leaveARoundBegun puts a round into the folder as it is left on the day before,
// with nothing marked yet: one picture, fewer than the window offers, so that the
// test is short.
func (r *running) leaveARoundBegun(today *rounds.Round) {
	r.t.Helper()
	setup := rounds.Setup{Kind: rounds.Blind, Count: 1, Difficulty: rounds.Clear, Seed: 2,
		Faults: []rounds.Fault{rounds.TooDeep, rounds.TooShallow, rounds.TooWide, rounds.TooNarrow, rounds.Shapes}}
	settings, err := measure.Defaults()
	if err != nil {
		r.t.Fatal(err)
	}
	if _, err := rounds.Begin(r.roundsFolder(), today.Observer, setup, settings.Norms, today.Begun.AddDate(0, 0, -1)); err != nil {
		r.t.Fatal(err)
	}
}

// markTheRoundBegun goes on with the round of the day before and marks all of its
// picture.
func (r *running) markTheRoundBegun() {
	r.t.Helper()
	r.read("Begun and not finished")
	r.note("a round to go on with")
	all, refused := rounds.List(r.roundsFolder())
	if len(all) != 2 || len(refused) > 0 {
		r.t.Fatalf("%d rounds are on the disk of 2, refused %v", len(all), refused)
	}
	r.clickOn("Go on")
	p := r.pupilOf(all[0])
	picture := p.nextPicture()
	p.kept = p.path[:len(p.path)-len(".round.json")] + "-1.draft.json"
	p.markAll(picture.Truth)
	p.aside()
	p.read("Done: compare with the truth")
	p.note("all is marked")
	marks := p.marks()
	p.press("Return")
	p.compareBlind(p.told(picture, rounds.Answer{Marks: &marks}))
	p.press("Return")
	p.read(fmt.Sprintf("%d of %d answers right", p.right, p.count))
	p.note("how the marking went")
}

// tremor is the standard deviation of where the resident clicks, on top of the
// screen's own pixels.
const tremor plane.Pixel = 0.5

func (p *pupil) markAll(truth rounds.Truth) {
	p.t.Helper()
	rng := rand.New(rand.NewPCG(20, 6))
	mark := func(at plane.PixelPoint) {
		p.mark(at.Add(plane.Vec(tremor*plane.Pixel(rng.NormFloat64()), tremor*plane.Pixel(rng.NormFloat64()))))
	}
	for _, at := range p.lengthOn(truth) {
		mark(at)
	}
	p.read("How many millimetres lie between the two points?")
	p.write(fmt.Sprint(float64(apart50)))
	p.press("Return")
	p.wait("the length is told", func() bool {
		ruler, marked := p.marks().Reference.(scale.Ruler)
		return marked && ruler.Length == apart50
	})
	p.findPhotograph()
	for _, digit := range hand.Digits[1:] {
		for _, joint := range []hand.Joint{hand.MCP, hand.PIP} {
			mark(truth.Joints[digit][joint])
		}
	}
	for _, web := range truth.Webs {
		for _, seed := range seeds(web) {
			mark(seed)
		}
	}
}

// apart50 is the length that the scale is marked on.
const apart50 plane.Millimetre = 50

// lengthOn are two points on the back of the hand that are so far apart, proximal of
// the knuckles where nothing else is marked. The truth of a round does not tell
// where the ruler lies, but it tells every length.
func (p *pupil) lengthOn(truth rounds.Truth) [2]plane.PixelPoint {
	p.t.Helper()
	at := func(d hand.Digit, j hand.Joint) plane.Position {
		return truth.Plane.Position(truth.Joints[d][j])
	}
	knuckles := at(hand.IndexFinger, hand.MCP).Mid(at(hand.Little, hand.MCP))
	across := at(hand.Little, hand.MCP).Sub(at(hand.IndexFinger, hand.MCP)).Direction().Scale(float64(apart50) / 2)
	proximal := at(hand.Middle, hand.MCP).Sub(at(hand.Middle, hand.PIP)).Direction().Scale(12)
	middle := knuckles.Add(proximal)
	return [2]plane.PixelPoint{truth.Plane.Pixel(middle.Add(across.Scale(-1))), truth.Plane.Pixel(middle.Add(across))}
}

// seeds are the three points by which a web is marked: on the border well beyond
// one springing, at the crown, and beyond the other springing.
func seeds(web rounds.WebTruth) [3]plane.PixelPoint {
	part := len(web.Border) / 10
	return [3]plane.PixelPoint{web.Border[part], web.Crown, web.Border[len(web.Border)-1-part]}
}

// compareBlind holds what marks on the truth came to against the truth.
func (p *pupil) compareBlind(got rounds.Result) {
	p.t.Helper()
	for _, j := range got.Judged {
		if j.Counted && !j.Right {
			p.t.Errorf("%v: the %s is marked as it is, and scored wrong: %q, true %q", j.Web, j.Of, j.Given, j.True)
		}
	}
	if want := 8 + 3; len(got.Landmarks) != want {
		p.t.Errorf("%d points are held against the truth of %d", len(got.Landmarks), want)
	}
	farthest := 0.0
	for _, l := range got.Landmarks {
		farthest = max(farthest, float64(l.Size()))
		if l.Size() > 0.5 {
			p.t.Errorf("%s of the %s: marked %.2f mm from where it is", l.Kind, l.Of, float64(l.Size()))
		}
	}
	for _, f := range got.Figures {
		if off := math.Abs(f.Got - f.True); f.Figure == "index" && off > 0.02 || f.Figure == "span" && off > 0.5 {
			p.t.Errorf("%v: %s %.3f, the truth is %.3f", f.Web, f.Figure, f.Got, f.True)
		}
		p.t.Logf("%v: %s %.3f (true %.3f)", f.Web, f.Figure, f.Got, f.True)
	}
	p.t.Logf("marks lie up to %.2f mm from the truth", farthest)
}
