package plan

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/plane"
	"ogive/geometry/zigzag"
	"ogive/ui/choice"
	"ogive/ui/column"
	"ogive/ui/flow"
	"ogive/ui/label"
)

// zigzagPane is how many flaps the incisions have, how far they reach, and what
// their tips and limbs are like.
type zigzagPane struct {
	room        *Room
	title       *widget.Label
	faces       *choice.Choice
	fewer, more *widget.Button
	count       *widget.Label
	counting    *line
	reachName   *widget.Label
	reach       *widget.Slider
	card        *card
	tips, trade *widget.Label
	narrow      *column.Notice
	notes       *widget.Label
	anew, none  *widget.Button
	draw        *line
	fromPlan    bool // the slider follows the plan, not the user
}

// Least and most of the slider for the reach.
const leastReach, mostReach = 2, 40

func newZigzagPane(r *Room) *zigzagPane {
	p := &zigzagPane{room: r, title: label.Wrapped(""), count: widget.NewLabel(""), reachName: label.Wrapped(""), card: newCard(), tips: label.Caption(""), trade: label.Caption(""), narrow: column.NewNotice(""), notes: label.Caption("")}
	p.title.TextStyle.Bold = true
	p.faces = choice.New(lang.L("Both faces"), lang.L("Back"), lang.L("Palm"))
	p.faces.OnChosen = func(i int) { r.turn(face(i)) }
	p.fewer = widget.NewButtonWithIcon("", theme.ContentRemoveIcon(), func() { r.count(-1) })
	p.more = widget.NewButtonWithIcon("", theme.ContentAddIcon(), func() { r.count(1) })
	p.counting = newLine(p.fewer, p.count, p.more)
	p.reach = widget.NewSlider(leastReach, mostReach)
	p.reach.Step = 0.5
	p.reach.OnChanged = func(mm float64) {
		if !p.fromPlan {
			r.stretch(plane.Millimetre(mm))
		}
	}
	p.reach.OnChangeEnded = func(float64) { r.drop() }
	p.anew = widget.NewButton(lang.L("Draw evenly anew"), r.drawEvenly)
	p.none = widget.NewButtonWithIcon(lang.L("No zigzags"), theme.DeleteIcon(), r.removeZigzag)
	p.none.Importance = widget.LowImportance
	p.draw = newLine(p.anew, p.none)
	return p
}

func (p *zigzagPane) objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{p.title, p.faces, p.counting, p.reachName, p.reach, p.narrow, p.card, p.tips, p.notes, p.trade, p.draw}
}

// show reports whether the height may have changed.
func (p *zigzagPane) show() bool {
	a := p.room.now()
	if a == nil {
		for _, o := range p.objects() {
			flow.Visible(o, false)
		}
		return true
	}
	n, drawn := p.room.number()
	moved := false
	for _, o := range []fyne.CanvasObject{p.faces, p.counting, p.reach, p.card, p.none} {
		moved = flow.Visible(o, drawn) || moved
	}
	moved = flow.Visible(p.draw, true) || moved
	title := lang.L("Zigzag incisions")
	if !drawn {
		title = lang.L("No zigzags are drawn")
	}
	moved = write(p.title, title) || moved
	reach, tips, narrow, notes := "", "", "", ""
	if drawn {
		p.faces.Set(int(p.room.face))
		p.showNumbers(n)
		reach = lang.L("Reach from side to side, set to {{.Millimetres}} mm", map[string]any{"Millimetres": fmt.Sprintf("%.1f", float64(n.reach))})
		near := p.room.near()
		if cut := cutOf(*a, near); cut != nil {
			moved = p.card.show(cutFigures(*cut, p.room), nil) || moved
			tips = tipWords(*cut, near)
		}
		narrow, notes = cautions(*a), sentences(a.Notes)
	}
	moved = write(p.reachName, reach) || moved
	moved = write(p.tips, tips) || moved
	moved = p.narrow.Set(narrow) || moved
	moved = write(p.notes, notes) || moved
	return write(p.trade, zigzag.Trade) || moved
}

func (p *zigzagPane) showNumbers(n numbers) {
	text := lang.L("{{.Number}} flaps", map[string]any{"Number": n.flaps})
	if n.flaps == 1 {
		text = lang.L("1 flap")
	}
	if p.count.Text != text {
		p.count.SetText(text)
		p.counting.Refresh()
	}
	enable(p.fewer, n.flaps > 1)
	enable(p.more, n.flaps < zigzag.MostFlaps)
	if p.reach.Value != float64(n.reach) && p.room.drag == nil {
		p.fromPlan = true
		p.reach.Max = max(mostReach, float64(n.reach))
		p.reach.Value = float64(n.reach)
		p.reach.Refresh()
		p.fromPlan = false
	}
}
