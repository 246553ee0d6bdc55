package plan

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/flap"
	"ogive/imaging/planfile"
	"ogive/imaging/planning"
	"ogive/imaging/wording"
	"ogive/ui/column"
	"ogive/ui/flow"
	"ogive/ui/label"
)

// flapPane is the figures of the flap and the ways to draw it.
type flapPane struct {
	room               *Room
	title              *widget.Label
	card               *card
	withdrawn          *column.Notice
	notes, hint        *widget.Label
	thirds, arch, none *widget.Button
	hourglass          *widget.Check
	draw               *line
}

func newFlapPane(r *Room) *flapPane {
	p := &flapPane{room: r, title: label.Wrapped(""), card: newCard(), withdrawn: column.NewNotice(""), notes: label.Caption(""), hint: label.Caption("")}
	p.title.TextStyle.Bold = true
	p.hourglass = widget.NewCheck(lang.L("hourglass"), nil)
	p.thirds = widget.NewButton(lang.L("Dorsal, by thirds"), func() { r.drawDorsal(p.hourglass.Checked) })
	p.arch = widget.NewButton(lang.L("Palmar, from the arch"), r.drawPalmar)
	p.none = widget.NewButtonWithIcon(lang.L("No flap"), theme.DeleteIcon(), r.removeFlap)
	p.none.Importance = widget.LowImportance
	p.draw = newLine(p.thirds, p.hourglass, p.arch, p.none)
	return p
}

func (p *flapPane) objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{p.title, p.card, p.notes, p.withdrawn, p.draw, p.hint}
}

// show reports whether the height may have changed.
func (p *flapPane) show() bool {
	a, w := p.room.now(), p.room.planned()
	if a == nil {
		for _, o := range p.objects() {
			flow.Visible(o, false)
		}
		return true
	}
	drawn := a.Flap != nil
	moved := write(p.title, flapTitle(*a))
	moved = flow.Visible(p.card, drawn) || moved
	notes := ""
	if drawn {
		moved = p.card.show(flapFigures(a.Flap.Figures), nil) || moved
		notes = sentences(a.Flap.Figures.Notes)
	}
	moved = write(p.notes, notes) || moved
	moved = p.withdrawn.Set(wording.Sentence(w.ThirdsRule)) || moved
	enable(p.thirds, w.ThirdsRule == "" && a.Arch != nil)
	enable(p.arch, a.Arch != nil)
	flow.Visible(p.none, drawn)
	moved = flow.Visible(p.draw, true) || moved
	return write(p.hint, flapHint(*a)) || moved
}

func flapTitle(a planning.Alternative) string {
	switch {
	case a.Flap == nil:
		return lang.L("No flap is drawn")
	case a.Flap.Flap.Kind == flap.DorsalFlap:
		return lang.L("Dorsal flap")
	}
	return lang.L("Palmar flap")
}

func flapHint(a planning.Alternative) string {
	switch {
	case a.Arch == nil:
		return lang.L("A flap is drawn from the planned arch. Draw the arch first.")
	case a.Flap == nil:
		return lang.L("By thirds: from a base near the MCP joints to two thirds of the way to the PIP joints, as wide as the planned span. From the arch: distal from it, turned about.")
	}
	return lang.L("Drag a point, or a plus to add one; Delete removes the selected point. The base, between the two diamonds, is not cut. Drawing anew takes the arch as it is now.")
}

func flapFigures(f flap.Figures) []wording.Figure {
	var out []wording.Figure
	out = append(out, wording.Figure{Name: lang.L("Length"), Value: wording.Millimetres(f.Length)})
	out = append(out, wording.Figure{Name: lang.L("Width at its base"), Value: wording.Millimetres(f.Base)})
	out = append(out, wording.Figure{Name: lang.L("at half its length"), Value: wording.Millimetres(f.Middle)})
	out = append(out, wording.Figure{Name: lang.L("near its tip"), Value: wording.Millimetres(f.Tip)})
	out = append(out, wording.Figure{Name: wording.Sentence(wording.Term(wording.Area)), Value: wording.SquareMillimetres(f.Area)})
	return append(out, wording.Figure{Name: lang.L("Length to base width"), Value: wording.Ratio(f.LengthToBase)})
}

func (r *Room) drawDorsal(hourglass bool) {
	h := r.model.Here
	r.alter(lang.L("draw the flap by thirds"), func(w *planfile.Web, a *planfile.Alternative) {
		if a.Arch != nil {
			a.Flap, _ = h.BeginFlap(w.Web, a.Arch.On(h.Ground.Fit.Best), hourglass, w.Girths)
		}
	})
	r.keyboard.take()
}

func (r *Room) drawPalmar() {
	h := r.model.Here
	r.alter(lang.L("draw the flap from the arch"), func(w *planfile.Web, a *planfile.Alternative) {
		if a.Arch != nil {
			a.Flap = h.BeginPalmarFlap(a.Arch.On(h.Ground.Fit.Best), w.Girths)
		}
	})
	r.keyboard.take()
}

func (r *Room) removeFlap() {
	r.alter(lang.L("take the flap away"), func(_ *planfile.Web, a *planfile.Alternative) { a.Flap = nil })
	r.keyboard.take()
}
