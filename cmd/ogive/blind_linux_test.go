package main

import (
	"fmt"
	"math"
	"math/rand/v2"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
	"ogive/imaging/measure"
	"ogive/imaging/rounds"
)

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
	p.write(fmt.Sprint(float64(onScale)))
	p.press("Return")
	p.wait("the length is told", func() bool {
		ruler, there := p.marks().Reference.(scale.Ruler)
		return there && ruler.Length == onScale
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

// onScale is the length that the scale is marked on.
const onScale plane.Millimetre = 50

// lengthOn are two points on the back of the hand that are so far apart, proximal of
// the knuckles where nothing else is marked. The truth of a round does not tell
// where the ruler lies, but it tells every length.
func (p *pupil) lengthOn(truth rounds.Truth) [2]plane.PixelPoint {
	p.t.Helper()
	at := func(d hand.Digit, j hand.Joint) plane.Position {
		return truth.Plane.Position(truth.Joints[d][j])
	}
	knuckles := at(hand.IndexFinger, hand.MCP).Mid(at(hand.Little, hand.MCP))
	across := at(hand.Little, hand.MCP).Sub(at(hand.IndexFinger, hand.MCP)).Direction().Scale(float64(onScale) / 2)
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
