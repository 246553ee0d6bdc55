package plan

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/plan"
	"ogive/geometry/plane"
	"ogive/imaging/planfile"
	"ogive/imaging/planning"
	"ogive/imaging/wording"
	"ogive/ui/choice"
	"ogive/ui/flow"
	"ogive/ui/label"
)

// archPane is the figures of the planned arch, its shape, and where a proposal
// comes from.
type archPane struct {
	room                            *Room
	card                            *card
	shape                           *choice.Choice
	none                            *line // the ways to begin, where no arch is drawn
	proposed, reasons, said, beside *widget.Label
	again                           *line
}

func newArchPane(r *Room) *archPane {
	p := &archPane{room: r, card: newCard(), proposed: label.Wrapped(""), reasons: label.Caption(""), said: label.Caption(""), beside: label.Caption("")}
	p.proposed.TextStyle.Bold = true
	var names []string
	for _, s := range arch.Shapes {
		names = append(names, wording.Sentence(wording.Term(s.String())))
	}
	p.shape = choice.New(names...)
	p.shape.OnChosen = func(i int) { r.reshape(arch.Shapes[i]) }
	p.none = newLine(widget.NewButton(lang.L("Draw an arch by hand"), r.archByHand))
	p.again = newLine(widget.NewButton(lang.L("Propose anew"), r.proposeAnew))
	write(p.said, lang.L("Drag a handle on the photograph. Tab walks the handles, arrows move one by a pixel, with Shift by ten."))
	return p
}

func (p *archPane) objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{p.card, p.shape, p.none, p.said, p.beside, p.proposed, p.reasons, p.again}
}

// show reports whether the height may have changed.
func (p *archPane) show() bool {
	a := p.room.now()
	drawn := a != nil && a.Arch != nil
	moved := flow.Visible(p.card, drawn)
	moved = flow.Visible(p.shape, drawn) || moved
	moved = flow.Visible(p.none, a != nil && !drawn) || moved
	moved = flow.Visible(p.again, a != nil) || moved
	moved = flow.Visible(p.said, drawn) || moved
	about := ""
	if drawn {
		moved = p.card.show(archFigures(*a.Arch, p.room.plan), a.Arch.Figures.Verdicts) || moved
		p.shape.Set(shapeAt(a.Arch.Arch.Shape))
		about = patterns(a.Arch.Figures)
	}
	moved = write(p.beside, about) || moved
	return p.showProposal(a != nil) || moved
}

func shapeAt(s arch.Shape) int {
	for i, one := range arch.Shapes {
		if one == s {
			return i
		}
	}
	return -1
}

// archFigures are the figures of an arch, the index first.
func archFigures(a planning.Arch, p planning.Plan) []wording.Figure {
	f := a.Figures
	var out []wording.Figure
	out = figure(out, wording.IndexName(p.View), f.Index, wording.Ratio)
	out = figure(out, wording.Depth, f.Depth, wording.Millimetres)
	out = figure(out, wording.Span, f.Span, wording.Millimetres)
	out = figure(out, wording.Rise, f.Rise, wording.Millimetres)
	out = figure(out, wording.CrownAngle, f.CrownAngle, wording.Degrees)
	return figure(out, wording.Flare, f.Flare, wording.Degrees)
}

func figure[Q plane.Measured](out []wording.Figure, name string, e *plane.Estimate[Q], write func(plane.Estimate[Q]) string) []wording.Figure {
	if e == nil {
		return out
	}
	return append(out, wording.Figure{Name: wording.Sentence(wording.Term(name)), Value: write(*e)})
}

// patterns are what sources say of shape and order, and what can't be told.
func patterns(f plan.Figures) string {
	var out []string
	for _, s := range f.Patterns {
		gaps := map[string]any{"Says": s.Says, "Source": s.Source}
		if s.Figure == "order" && f.Web != hand.ThirdWeb {
			gaps["Says"] = lang.L("third web {{.Says}}", gaps) // of which the table speaks
		}
		switch {
		case !s.Sure:
			out = append(out, lang.L("Perhaps not as “{{.Says}}” ({{.Source}}): it lies within the uncertainty.", gaps))
		case s.Agrees:
			out = append(out, "✓ "+lang.L("As “{{.Says}}” ({{.Source}}).", gaps))
		default:
			out = append(out, lang.L("Not as “{{.Says}}” ({{.Source}}).", gaps))
		}
	}
	return sentences(append(out, f.Remarks...))
}

// showProposal says what is proposed, from where, and how sure that is.
func (p *archPane) showProposal(seen bool) bool {
	title, reasons := "", ""
	got, known := p.room.proposals[p.room.web]
	switch {
	case !seen || !known:
	case got.why != "":
		title, reasons = lang.L("No arch can be proposed"), got.why
	default:
		title = originWords(got.Origin)
		reasons = sentences(append(append([]string{sureness(got.Proposal)}, got.Reasons...), got.Warnings...))
	}
	if note := p.room.notes[p.room.web]; seen && note != "" {
		reasons = strings.TrimSpace(reasons + "\n" + note)
	}
	moved := write(p.proposed, title)
	return write(p.reasons, reasons) || moved
}

func originWords(o plan.Origin) string {
	switch o {
	case plan.OtherHand:
		return lang.L("Proposed from the other hand, mirrored")
	case plan.FellowWebs:
		return lang.L("Proposed from the free webs of this hand")
	}
	return lang.L("Proposed from the table of normal values alone")
}

// sureness is how well the origin tells the proposed arch.
func sureness(p plan.Proposal) string {
	gaps := map[string]any{"Index": wording.Ratio(p.Index), "Crown": fmt.Sprintf("%.1f", float64(p.CrownU95))}
	if p.Arch.Shape == arch.V {
		return lang.L("It tells index {{.Index}} and the crown's place to within {{.Crown}} mm, in 95 of 100 such proposals.", gaps)
	}
	gaps["Span"] = wording.Millimetres(p.Span)
	return lang.L("It tells index {{.Index}}, span {{.Span}} and the crown's place to within {{.Crown}} mm, in 95 of 100 such proposals.", gaps)
}

// reshape makes the arch in hand one of another shape.
func (r *Room) reshape(s arch.Shape) {
	m := r.model.Here.Ground.Fit.Best
	r.alter(lang.L("shape {{.Shape}}", map[string]any{"Shape": wording.Term(s.String())}), func(_ *planfile.Web, a *planfile.Alternative) {
		if a.Arch != nil {
			a.Arch = planfile.ArchOn(plan.Shaped(a.Arch.On(m), s, usualSpan), m)
		}
	})
	r.keyboard.take()
}

// archByHand draws an arch into the alternative in hand, which has none.
func (r *Room) archByHand() {
	r.alter(lang.L("draw by hand"), func(_ *planfile.Web, a *planfile.Alternative) { a.Arch = r.handDrawn() })
	r.keyboard.take()
}
