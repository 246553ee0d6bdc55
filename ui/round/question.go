package round

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/rounds"
	"ogive/ui/look"
)

// question is one question with its choices. A tap takes it in hand.
type question struct {
	card
	asked   rounds.Question
	text    *widget.Label
	help    *widget.Label
	choices *answers      // nil for a crown
	crown   *widget.Label // how the question for a crown stands
	hold    func()
}

var _ fyne.Tappable = (*question)(nil)

func newQuestion(asked rounds.Question, hold func(), choose func(int)) *question {
	q := &question{asked: asked, text: wrapped(asked.Text), help: caption(helpWords(asked.Of)), hold: hold}
	if len(asked.Choices) > 0 {
		q.choices = newAnswers(asked, choose)
		q.build([]fyne.CanvasObject{q.text, q.help, empty(16), q.choices})
	} else {
		q.crown = strong("")
		q.build([]fyne.CanvasObject{q.text, q.help, q.crown})
	}
	q.margin, q.gap = 6, -6
	q.ExtendBaseWidget(q)
	return q
}

// show marks what was chosen and whether the question is in hand.
func (q *question) show(value string, crown, held bool) {
	if q.choices != nil {
		n := -1
		for i, c := range q.asked.Choices {
			if c.Value == value {
				n = i
			}
		}
		q.choices.choose(n)
	} else if crown {
		q.crown.SetText("✓ " + lang.L("Put"))
	} else {
		q.crown.SetText(lang.L("Not put yet"))
	}
	q.text.TextStyle.Bold = held
	q.text.Refresh()
	visible(q.help, held)
	if held {
		q.mark(look.Accent, 2)
	} else {
		q.mark(look.Hairline, 1)
	}
}

// Tapped takes the question in hand.
func (q *question) Tapped(*fyne.PointEvent) { q.hold() }

// helpWords say how a question is meant, and nothing of the picture.
func helpWords(of rounds.Asked) string {
	switch of {
	case rounds.Place:
		return lang.L("Its most proximal point, between the knuckles and the middle joints of its two fingers.")
	case rounds.Width:
		return lang.L("Its opening, where the two borders become straight.")
	case rounds.Shape:
		return lang.L("The edge of the skin at the bottom of the web, fingers up.")
	case rounds.Slope:
		return lang.L("The junction is the line on which the thick skin of the palm meets the thin skin of the back; its slope is taken against the finger's long axis. Flat runs out nearly along the finger; steep drops almost straight to the palm, as drawn.")
	}
	return lang.L("Not where it is now: where it belongs. You can click again, drag it, or move it with the arrow keys.")
}
