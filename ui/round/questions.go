package round

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/plane"
	"ogive/imaging/rounds"
	"ogive/imaging/wording"
	"ogive/ui/board"
	"ogive/ui/marking"
)

// questions is the column that asks about a picture by eye. All questions are to
// be seen; one of them is in hand, and the keys 1 to 4 answer it.
type questions struct {
	room   *Room
	which  *widget.Label // the web that is asked about
	seen   *widget.Label
	list   *pile
	hint   *widget.Label
	done   *widget.Button
	object *fyne.Container

	rows []*question
	at   int // the question in hand
}

func newQuestions(r *Room) *questions {
	q := &questions{room: r, which: heading(""), seen: caption(""), hint: caption("")}
	q.list = newPile()
	q.done = widget.NewButton("", q.enter)
	q.done.Importance = widget.HighImportance
	q.object = newTower(1, closely(q.which, q.seen), q.list.object, q.hint, q.done)
	return q
}

// begin asks the questions of the picture in hand.
func (q *questions) begin() {
	p := q.room.taking.picture
	q.which.SetText(lang.L("The {{.Web}}: {{.Digits}}", map[string]any{"Web": wording.Web(p.Web), "Digits": wording.WebDigits(p.Web)}))
	q.seen.SetText(wording.Photograph(p.Truth.Side, p.Truth.View))
	q.rows, q.at = nil, 0
	q.list.clear()
	for i, asked := range p.Questions {
		row := newQuestion(asked, func() { q.hold(i) }, func(c int) { q.choose(i, c) })
		q.rows = append(q.rows, row)
		q.list.add(row, empty(4))
	}
	q.list.top()
	q.show()
}

// hold takes a question in hand.
func (q *questions) hold(i int) {
	q.at = i
	q.show()
	q.room.keyboard.take()
}

// walk goes to the next question, or the one before.
func (q *questions) walk(by int) {
	if n := len(q.rows); n > 0 {
		q.hold((q.at + by + n) % n)
	}
}

// pick answers the question in hand with its n-th choice.
func (q *questions) pick(n int) {
	if q.at < len(q.rows) && n < len(q.rows[q.at].asked.Choices) {
		q.choose(q.at, n)
	}
}

// choose answers a question and goes on to the next one without an answer.
func (q *questions) choose(i, n int) {
	if q.room.busy {
		return
	}
	asked := q.rows[i].asked
	q.room.taking.answers[asked.Of] = asked.Choices[n].Value
	q.at = i
	if open, any := q.open(); any {
		q.at = open
	}
	q.show()
	q.room.keyboard.take()
}

// putCrown answers the question for the crown.
func (q *questions) putCrown(at plane.PixelPoint) {
	if q.room.busy {
		return
	}
	q.room.taking.crown = &at
	q.show()
}

// nudge moves the crown that was put.
func (q *questions) nudge(by plane.Vector[plane.Pixel]) {
	if c := q.room.taking.crown; c != nil && q.wantsCrown() {
		q.putCrown(c.Add(by))
	}
}

func (q *questions) wantsCrown() bool {
	return q.at < len(q.rows) && q.rows[q.at].asked.Of == rounds.Crown
}

func (q *questions) answered(i int) bool {
	asked := q.rows[i].asked
	if asked.Of == rounds.Crown {
		return q.room.taking.crown != nil
	}
	return q.room.taking.answers[asked.Of] != ""
}

// open is the next question without an answer, from the one in hand on.
func (q *questions) open() (int, bool) {
	for i := range q.rows {
		if at := (q.at + i) % len(q.rows); !q.answered(at) {
			return at, true
		}
	}
	return 0, false
}

// enter gives the answers, or goes to a question that lacks one.
func (q *questions) enter() {
	if open, any := q.open(); any {
		q.hold(open)
		return
	}
	t := q.room.taking
	q.room.answer(rounds.Answer{Choices: t.answers, Crown: t.crown})
}

func (q *questions) scoring(on bool) { able(q.done, !on) }

// show brings the column and the photograph up to date with the answers.
func (q *questions) show() {
	t := q.room.taking
	left := 0
	for i, row := range q.rows {
		if !q.answered(i) {
			left++
		}
		row.show(t.answers[row.asked.Of], t.crown != nil, i == q.at)
	}
	q.list.arrange()
	if left == 0 {
		q.done.SetText(withKey(lang.L("Compare with the truth"), lang.L("Enter")))
		q.hint.SetText(lang.L("Every answer can still be changed."))
	} else {
		q.done.SetText(lang.L("{{.Number}} left to answer", map[string]any{"Number": left}))
		q.hint.SetText(q.hintFor())
	}
	q.done.Importance = widget.MediumImportance
	if left == 0 {
		q.done.Importance = widget.HighImportance
	}
	q.done.Refresh()
	q.object.Refresh() // the words may need more lines or fewer
	q.room.table.board.Draw(q.scene())
}

func (q *questions) hintFor() string {
	if q.wantsCrown() {
		return lang.L("Click on the photograph; the wheel magnifies.")
	}
	return lang.L("Keys: 1 to {{.Last}} choose, Tab goes to the next question.", map[string]any{"Last": max(2, len(q.rows[q.at].asked.Choices))})
}

// scene is the photograph with nothing but the crown that was put.
func (q *questions) scene() board.Scene {
	t := q.room.taking
	s := board.Scene{View: t.picture.Truth.View, Blind: true}
	if q.wantsCrown() {
		s.Wanted = &marking.Spot{}
	}
	if t.crown != nil {
		s.Handles = []board.Handle{{ID: "crown", At: *t.crown, Label: lang.L("your crown")}}
	}
	return s
}
