package round

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/rounds"
)

// begun lists the observer's rounds: those to go on with first, then those that
// are done, the latest first.
type begun struct {
	room    *Room
	object  *fyne.Container
	buttons []*widget.Button
	shown   []*rounds.Round
}

// mostDone is how many finished rounds are listed; the curve has all of them.
const mostDone = 6

func newBegun(r *Room) *begun { return &begun{room: r, object: container.NewVBox()} }

func (b *begun) show(own []*rounds.Round) {
	defer b.object.Refresh()
	b.object.RemoveAll()
	b.buttons, b.shown = nil, own
	var open, done []*rounds.Round
	for i := len(own) - 1; i >= 0; i-- {
		if own[i].Done() {
			done = append(done, own[i])
		} else {
			open = append(open, own[i])
		}
	}
	if len(open) > 0 {
		b.object.Add(heading(lang.L("Begun and not finished")))
		for _, round := range open {
			b.row(round, progressWords(round),
				quiet(lang.L("Remove…"), func() { b.askRemove(round) }),
				widget.NewButton(lang.L("Go on"), func() { b.room.goOn(round) }))
		}
	}
	if len(done) == 0 {
		b.object.Add(howItGoes())
		return
	}
	b.object.Add(heading(lang.L("Finished")))
	for _, round := range done[:min(len(done), mostDone)] {
		b.row(round, scoreWords(round),
			widget.NewButton(lang.L("Look"), func() { b.room.conclude(round) }),
			widget.NewButton(lang.L("Again"), func() { b.room.again(round) }))
	}
}

// howItGoes tells those who have never taken a round what will happen.
func howItGoes() fyne.CanvasObject {
	c := newCard(
		wrapped(lang.L("1   A photograph of a hand is shown. It is artificial, so its truth is known exactly.")),
		wrapped(lang.L("2   You say what you see, or mark it. No figure is shown before you have answered.")),
		wrapped(lang.L("3   The truth is drawn over your answer, with how far you are off and one thing to look for.")),
		wrapped(lang.L("4   At the end you are told which way to correct your eye. Your score stands here from round to round.")),
		caption(lang.L("Nobody else sees it, and nothing can be broken. You can stop at any picture and go on another day.")))
	return container.NewVBox(heading(lang.L("How a round goes")), c)
}

func (b *begun) row(round *rounds.Round, said string, buttons ...*widget.Button) {
	row := container.NewHBox()
	for _, button := range buttons {
		row.Add(button)
		b.buttons = append(b.buttons, button)
	}
	title := widget.NewLabel(titleOf(round))
	title.Truncation = fyne.TextTruncateEllipsis
	second := caption(said)
	second.Wrapping, second.Truncation = fyne.TextWrapOff, fyne.TextTruncateEllipsis
	b.object.Add(container.NewBorder(nil, nil, nil, container.NewCenter(row), container.New(layout.NewCustomPaddedVBoxLayout(-14), title, second)))
}

// askRemove asks before a round that was begun is gone for good.
func (b *begun) askRemove(round *rounds.Round) {
	dialog.ShowConfirm(lang.L("Remove this round?"), lang.L("{{.Round}}: what was answered in it is gone for good.", map[string]any{"Round": titleOf(round)}), func(yes bool) {
		if yes {
			b.remove(round)
		}
		b.room.keyboard.take()
	}, b.room.win)
}

func (b *begun) remove(round *rounds.Round) {
	if err := round.Remove(); err != nil {
		b.room.tellProblem(err)
	}
	b.room.reread(b.room.start.show)
}

func (b *begun) waiting(on bool) {
	for _, button := range b.buttons {
		able(button, !on)
	}
}

// titleOf is a round's day and kind.
func titleOf(r *rounds.Round) string {
	return r.Begun.Local().Format("2 Jan 15:04") + " · " + kindWords(r.Setup.Kind)
}

func progressWords(r *rounds.Round) string {
	done, of := r.Progress()
	return picturesWords(r.Setup) + ", " + lang.L("{{.Done}} of {{.All}} pictures answered", map[string]any{"Done": done, "All": of})
}

func scoreWords(r *rounds.Round) string {
	text := picturesWords(r.Setup) + ", " + share(r.Summary().Score)
	if r.Repeats != "" {
		text += ", " + lang.L("seen before")
	}
	return text
}
