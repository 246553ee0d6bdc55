package round

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/rounds"
	"ogive/ui/choice"
	"ogive/ui/look"
)

// question is one question with its choices. A tap takes it in hand.
type question struct {
	card
	asked   rounds.Question
	text    *widget.Label
	choices *choice.Choice // nil for a crown
	crown   *widget.Label  // how the question for a crown stands
	hold    func()
}

var _ fyne.Tappable = (*question)(nil)

func newQuestion(asked rounds.Question, hold func(), choose func(int)) *question {
	q := &question{asked: asked, text: wrapped(asked.Text), hold: hold}
	if len(asked.Choices) > 0 {
		var names []string
		for i, c := range asked.Choices {
			names = append(names, fmt.Sprintf("%d  %s", i+1, c.Words))
		}
		q.choices = choice.New(names...)
		q.choices.OnChosen = choose
		q.build([]fyne.CanvasObject{q.text, q.choices})
	} else {
		q.crown = caption("")
		q.build([]fyne.CanvasObject{q.text, q.crown})
	}
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
		q.choices.Set(n)
	} else if crown {
		q.crown.SetText("✓ " + lang.L("It is put."))
	} else {
		q.crown.SetText(lang.L("Not put yet."))
	}
	q.text.TextStyle.Bold = held
	q.text.Refresh()
	if held {
		q.mark(look.Accent, 2)
	} else {
		q.mark(look.Hairline, 1)
	}
}

// Tapped takes the question in hand.
func (q *question) Tapped(*fyne.PointEvent) { q.hold() }
