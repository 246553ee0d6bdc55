package round

import (
	"context"
	"errors"

	"fyne.io/fyne/v2/lang"

	"ogive/geometry/plane"
	"ogive/imaging/measure"
	"ogive/imaging/rounds"
	"ogive/ui/marking"
)

// taking is a round under way, at one of its pictures.
type taking struct {
	round   *rounds.Round
	supply  *rounds.Supply
	picture *rounds.Picture
	// answers and crown are what is said of it by eye so far.
	answers map[rounds.Asked]string
	crown   *plane.PixelPoint
	// work is its blind marks, nil by eye.
	work *marking.Work
	// feedback is what the answer came to, once it is given.
	feedback rounds.Feedback
}

// fetched is the next picture with what was marked on it before.
type fetched struct {
	picture *rounds.Picture
	work    *marking.Work
}

// begin makes a new round of the setup and shows its first picture.
func (r *Room) begin(s rounds.Setup) {
	folder, observer, settings, at := r.folder, r.observer, r.settings, r.now()
	s.Seed = rounds.FreshSeed(r.all)
	first := r.first
	r.first = nil
	r.take(s, func() (*rounds.Round, error) {
		round, err := rounds.Begin(folder, observer, s, settings.Norms, at)
		if err == nil {
			round.Use(first)
		}
		return round, err
	})
}

// makeFirst makes the first picture of the round that the start page is set to, while
// it is looked at; set otherwise, the round makes its own.
func (r *Room) makeFirst() {
	if r.page != starting || r.busy || r.start.lacks() != "" || r.start.fromCasebook() {
		return
	}
	s := r.start.setup()
	s.Seed = rounds.FreshSeed(r.all)
	r.first = r.making(s, r.settings)
}

// goOn takes a round up again where it was left.
func (r *Room) goOn(round *rounds.Round) {
	r.take(round.Setup, func() (*rounds.Round, error) { return round, nil })
}

// again shows the pictures of a round in another order, as a round of its own.
func (r *Room) again(round *rounds.Round) {
	at := r.now()
	r.take(round.Setup, func() (*rounds.Round, error) { return round.Again(at) })
}

// take makes a round ready beside the window and shows its next picture.
func (r *Room) take(of rounds.Setup, make func() (*rounds.Round, error)) {
	if r.busy {
		return
	}
	r.stop()
	r.busy = true
	r.start.waiting(true)
	r.result.waiting(true)
	turn, settings, library := r.turn, r.settings, r.library(of)
	r.beside(func() func() {
		t := &taking{}
		var next fetched
		var err error
		if t.round, err = make(); err == nil {
			t.supply, err = t.round.Supply(context.Background(), settings, library)
		}
		if err == nil {
			next, err = fetch(t, settings)
		}
		return func() { r.taken(turn, t, next, err) }
	})
}

func (r *Room) taken(turn int, t *taking, next fetched, err error) {
	if turn != r.turn || err != nil {
		if t.supply != nil {
			t.supply.Close()
		}
		if turn == r.turn {
			r.busy = false
			r.start.waiting(false)
			r.result.waiting(false)
			r.tellProblem(err)
		}
		return
	}
	r.taking = t
	r.adopt(next)
}

// fetch waits for the next picture of a round; it is called beside the window.
func fetch(t *taking, settings measure.Settings) (fetched, error) {
	picture, err := t.supply.Next(context.Background())
	if err != nil || t.round.Setup.Kind != rounds.Blind {
		return fetched{picture: picture}, err
	}
	work, err := marking.KeptBy("picture.jpg", t.round.Draft(), picture.Photograph, settings)
	return fetched{picture, work}, err
}

// adopt shows a picture that is to be answered.
func (r *Room) adopt(next fetched) {
	r.busy = false
	r.start.waiting(false)
	r.result.waiting(false)
	t := r.taking
	t.picture, t.work = next.picture, next.work
	t.answers, t.crown, t.feedback = map[rounds.Asked]string{}, nil, rounds.Feedback{}
	if t.work == nil {
		r.restore()
		r.turnTo(judging)
		r.table.judge()
		return
	}
	r.turnTo(placing)
	r.table.mark()
}

// answer holds what was said of the picture against the truth.
func (r *Room) answer(a rounds.Answer) {
	if r.busy {
		return
	}
	r.busy = true
	r.table.scoring(true)
	turn, t, settings, at := r.turn, r.taking, r.settings, r.now()
	r.beside(func() func() {
		f, err := t.round.Answer(t.picture, a, settings, at)
		return func() {
			if turn == r.turn {
				r.busy = false
				r.table.scoring(false)
				r.answered(f, err)
			}
		}
	})
}

func (r *Room) answered(f rounds.Feedback, err error) {
	if err != nil {
		r.tellProblem(err)
		return
	}
	r.taking.feedback = f
	r.turnTo(telling)
	r.table.tell()
}

// next shows the next picture, or what the round came to.
func (r *Room) next() {
	if r.busy {
		return
	}
	t := r.taking
	if t.round.Done() {
		r.conclude(t.round)
		return
	}
	r.busy = true
	r.table.told.waiting(true)
	turn, settings := r.turn, r.settings
	r.beside(func() func() {
		next, err := fetch(t, settings)
		return func() {
			if turn != r.turn {
				return
			}
			r.table.told.waiting(false)
			if err != nil {
				r.busy = false
				r.tellProblem(err)
				return
			}
			r.adopt(next)
		}
	})
}

// conclude shows what a round came to, among all rounds of its observer.
func (r *Room) conclude(round *rounds.Round) {
	r.stop()
	r.result.show(round)
	r.turnTo(concluding)
	r.reread(func() { r.result.show(round) })
}

// tellProblem says what went wrong on the page that is shown.
func (r *Room) tellProblem(err error) {
	text := lang.L("{{.Problem}}.", map[string]any{"Problem": sentenceOf(err)})
	switch r.page {
	case starting:
		r.start.say(text)
	case concluding:
		r.result.say(text)
	default:
		r.table.say(text)
	}
}

// sentenceOf is an error as the beginning of a sentence, without its end.
func sentenceOf(err error) string {
	if errors.Is(err, rounds.ErrNoMore) {
		return lang.L("The round has no further picture")
	}
	text := []rune(err.Error())
	if len(text) > 0 && text[0] >= 'a' && text[0] <= 'z' {
		text[0] += 'A' - 'a'
	}
	return string(text)
}
