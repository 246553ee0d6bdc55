package round

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/rounds"
)

// ownClick offers the observer's own click deviation for readings.
type ownClick struct {
	card
	room *Room
	said *widget.Label
	use  *widget.Button
	own  rounds.Click
}

func newOwnClick(r *Room) *ownClick {
	o := &ownClick{room: r, said: wrapped("")}
	o.use = widget.NewButton(lang.L("Use it in my readings"), o.take)
	o.build([]fyne.CanvasObject{strong(lang.L("How widely your clicks scatter")), o.said, o.use})
	o.ground, o.gap = theme.ColorNameBackground, -4 // on which a button is seen
	o.ExtendBaseWidget(o)
	return o
}

// show offers it where the round was marked blind and there are clicks enough.
func (o *ownClick) show(of *rounds.Round) {
	own, enough := rounds.Repeatability(o.room.all, of.Observer)
	o.own = own
	visible(o, of.Setup.Kind == rounds.Blind && o.room.OnRepeatability != nil)
	visible(o.use, enough)
	switch {
	case enough:
		o.said.SetText(lang.L("By {{.SD}} px each way on pictures {{.Width}} px wide, told from {{.Clicks}} clicks in blind rounds; on larger photographs by as many times more. What you miss by habit is not in it.", map[string]any{
			"SD": fixed(float64(own.SD), 1), "Width": fixed(float64(own.Longer), 0), "Clicks": own.Clicks}))
	default:
		o.said.SetText(lang.L("{{.Clicks}} of your clicks are known so far; it takes some more blind pictures to tell how widely they scatter.", map[string]any{"Clicks": own.Clicks}))
	}
	o.room.result.home.arrange()
}

func (o *ownClick) take() {
	o.room.OnRepeatability(o.own)
	o.use.Hide()
	o.said.SetText(lang.L("Readings use your own click deviation from now on."))
	o.room.result.home.arrange()
	o.room.keyboard.take()
}
