package main

import (
	"fmt"
	"image"
	"math"
	"strconv"
	"testing"
	"time"

	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
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
