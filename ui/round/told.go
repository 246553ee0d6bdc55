package round

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/rounds"
	"ogive/imaging/wording"
	"ogive/ui/look"
)

// told is the column that says what is true: how many answers are right, what to
// look for, then answer by answer, and what the lines on the photograph mean.
type told struct {
	room   *Room
	score  *widget.Label
	look   *widget.Label
	advice *card
	list   *pile
	legend *legend
	next   *widget.Button
	object *fyne.Container
}

func newTold(r *Room) *told {
	t := &told{room: r, score: heading(""), look: wrapped(""), legend: newLegend()}
	t.advice = newCard(strong(lang.L("What to look for")), t.look)
	t.advice.ground, t.advice.edge, t.advice.gap = look.Notice, "", -12
	t.list = newPile()
	t.next = widget.NewButton("", r.next)
	t.next.Importance = widget.HighImportance
	t.object = newTower(1, t.score, t.list.object, t.legend.object, t.next)
	return t
}

// show tells what the answer to the picture in hand came to.
func (t *told) show() {
	f := t.room.taking.feedback
	right, counted := 0, 0
	for _, l := range f.Lines {
		if l.Counted {
			counted++
		}
		if l.Counted && l.Right {
			right++
		}
	}
	t.score.SetText(lang.L("{{.Right}} of {{.All}} right", map[string]any{"Right": right, "All": counted}))
	t.look.SetText(f.Look)
	visible(t.advice, f.Look != "")
	t.list.clear()
	t.list.add(t.advice, empty(8))
	for _, l := range inOrder(f.Lines, t.room.taking.work != nil) {
		t.list.add(newVerdict(l), empty(6))
	}
	if misses := missWords(f.Result); misses != "" {
		t.list.add(strong(lang.L("How far your joints lie from the true ones")), caption(misses))
	}
	t.list.top()
	t.legend.show(t.room.taking)
	t.object.Refresh()
	t.waiting(false)
}

// inOrder are the answers as they were asked; of the many of blind marks those that
// are wrong stand first.
func inOrder(lines []rounds.Line, blind bool) []rounds.Line {
	if !blind {
		return lines
	}
	rank := func(l rounds.Line) int {
		switch {
		case l.Counted && !l.Right:
			return 0
		case l.Counted:
			return 1
		}
		return 2
	}
	return slices.SortedStableFunc(slices.Values(lines), func(a, b rounds.Line) int { return rank(a) - rank(b) })
}

// waiting says that the next picture is still being made.
func (t *told) waiting(on bool) {
	able(t.next, !on)
	switch {
	case on:
		t.next.SetText(lang.L("The next picture is being made…"))
	case t.room.taking != nil && t.room.taking.round.Done():
		t.next.SetText(withKey(lang.L("See how the round went"), lang.L("Enter")))
	default:
		t.next.SetText(withKey(lang.L("Next picture"), lang.L("Enter")))
	}
}

// scroll moves the column by so many steps.
func (t *told) scroll(by float32) {
	s := t.list.object
	room := max(0, s.Content.MinSize().Height-s.Size().Height)
	s.ScrollToOffset(fyne.NewPos(0, min(max(0, s.Offset.Y+by*60), room)))
}

// newVerdict is one answer: right or wrong by a word, then the truth.
func newVerdict(l rounds.Line) *card {
	text, ink := "– "+lang.L("Not counted"), widget.LowImportance
	switch {
	case l.Counted && l.Right:
		text, ink = "✓ "+lang.L("Right"), widget.SuccessImportance
	case l.Counted:
		text, ink = "× "+lang.L("Wrong"), widget.DangerImportance
	}
	sign := strong(text + " · " + askedWords(l.Of))
	sign.Importance = ink
	c := newCard(sign, wrapped(l.Words))
	c.margin, c.gap = 3, -12
	return c
}

// missWords are how far the joints are off, joint by joint.
func missWords(r rounds.Result) string {
	text := ""
	for _, l := range r.Landmarks {
		if l.Kind == "crown" {
			continue // the crowns have lines of their own
		}
		if text != "" {
			text += "\n"
		}
		text += lang.L("{{.Joint}}: {{.Off}}", map[string]any{"Joint": wording.Sentence(l.Of + " " + l.Kind), "Off": l.Words()})
	}
	return text
}
