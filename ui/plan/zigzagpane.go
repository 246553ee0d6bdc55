package plan

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/plane"
	"ogive/geometry/zigzag"
	"ogive/imaging/planning"
	"ogive/imaging/wording"
	"ogive/ui/choice"
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
	narrow      *notice
	notes       *widget.Label
	anew, none  *widget.Button
	draw        *line
	fromPlan    bool // the slider follows the plan, not the user
}

// Least and most of the slider for the reach.
const leastReach, mostReach = 2, 40

func newZigzagPane(r *Room) *zigzagPane {
	p := &zigzagPane{room: r, title: wrapping(), count: widget.NewLabel(""), reachName: wrapping(), card: newCard(), tips: small(), trade: small(), narrow: newNotice(), notes: small()}
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
			visible(o, false)
		}
		return true
	}
	n, drawn := p.room.number()
	moved := false
	for _, o := range []fyne.CanvasObject{p.faces, p.counting, p.reach, p.card, p.none} {
		moved = visible(o, drawn) || moved
	}
	moved = visible(p.draw, true) || moved
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
	moved = p.narrow.show(narrow) || moved
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

// cutFigures are the narrowest tip, the limb nearest to along the finger, and the
// lengths.
func cutFigures(c planning.Cut, r *Room) []wording.Figure {
	var out []wording.Figure
	if len(c.Figures.Flaps) > 0 {
		least := c.Figures.Flaps[0].TipAngle
		for _, f := range c.Figures.Flaps {
			if f.TipAngle.Value < least.Value {
				least = f.TipAngle
			}
		}
		out = append(out, wording.Figure{Name: lang.L("Narrowest tip"), Value: wording.Degrees(least)})
	}
	if len(c.Figures.Limbs) > 0 {
		steep := c.Figures.Limbs[0].Obliquity
		for _, l := range c.Figures.Limbs {
			if l.Obliquity.Value > steep.Value {
				steep = l.Obliquity
			}
		}
		out = append(out, wording.Figure{Name: lang.L("Steepest limb to the creases"), Value: wording.Degrees(steep)})
	}
	out = append(out, wording.Figure{Name: lang.L("Length of the incision"), Value: wording.Millimetres(c.Figures.Length)})
	if w := r.planned(); w != nil && w.Join != nil {
		out = append(out, wording.Figure{Name: lang.L("Length of the join"), Value: wording.Millimetres(w.Join.Length)})
	}
	return out
}

// tipWords are every tip and every limb on a face, from proximal.
func tipWords(c planning.Cut, f face) string {
	var tips, limbs []string
	for _, flap := range c.Figures.Flaps {
		tips = append(tips, wording.Degrees(flap.TipAngle))
	}
	for _, l := range c.Figures.Limbs {
		limbs = append(limbs, wording.Degrees(l.Obliquity))
	}
	name := lang.L("Back")
	if f == palmarFace {
		name = lang.L("Palm")
	}
	return lang.L("{{.Face}}, from proximal. Tips: {{.Tips}}. Limbs to the creases: {{.Limbs}}.", map[string]any{"Face": name, "Tips": strings.Join(tips, ", "), "Limbs": strings.Join(limbs, ", ")})
}

// cautions are what is said of narrow tips on both faces.
func cautions(a planning.Alternative) string {
	var out []string
	for _, f := range []face{dorsalFace, palmarFace} {
		cut := cutOf(a, f)
		if cut == nil || len(cut.Figures.Notes) == 0 {
			continue
		}
		name := lang.L("Back")
		if f == palmarFace {
			name = lang.L("Palm")
		}
		out = append(out, name+": "+strings.Join(cut.Figures.Notes, " "))
	}
	return strings.Join(out, "\n")
}
