package planskin

import (
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/skinbudget"
	"ogive/imaging/planfile"
	"ogive/imaging/wording"
	"ogive/ui/choice"
	"ogive/ui/column"
	"ogive/ui/flow"
	"ogive/ui/look"
)

// girth is where the girth of one digit is given: taped, or its width.
type girth struct {
	*column.Block
	panel  *Panel
	radial bool

	title   *column.Text
	kind    *choice.Choice
	field   *column.Field
	unit    *canvas.Text
	problem *column.Notice
	kept    planfile.Girth
}

// The kinds of figures, in the order in which they are offered.
const (
	taped = iota
	width
)

// A plan file takes no digit larger than this.
const (
	mostGirth plane.Millimetre = 200
	mostWidth plane.Millimetre = 60
)

func newGirth(p *Panel, radial bool) *girth {
	g := &girth{panel: p, radial: radial, title: column.Title(lang.L("Digit")), unit: canvas.NewText("mm", nil), problem: column.NewNotice("")}
	g.kind = choice.New(lang.L("Girth"), lang.L("Width"))
	g.kind.Set(taped)
	g.kind.OnChosen = func(int) { g.another() }
	g.field = column.NewNumber("")
	g.field.OnDone = g.give
	g.Block = column.NewBlock(g.stand, g.paint, g.title, g.kind, g.field, g.unit, g.problem)
	return g
}

func (g *girth) digit() hand.Digit {
	radial, ulnar := g.panel.web.Digits()
	if g.radial {
		return radial
	}
	return ulnar
}

func (g *girth) show(kept planfile.Girth) {
	g.title.Set(wording.Sentence(wording.Finger(g.digit())))
	g.kept = kept
	g.problem.Set("")
	switch {
	case fromWidth(kept):
		g.kind.Set(width)
		g.problem.Set(skinbudget.WidthWarning)
		g.field.Fill(column.Plain(float64(kept.Width)))
	case kept.Taped > 0:
		g.kind.Set(taped)
		g.field.Fill(column.Plain(float64(kept.Taped)))
	default:
		g.field.Fill("")
	}
}

// another is the other kind of figure: the number does not hold for it.
func (g *girth) another() {
	g.field.Fill("")
	g.problem.Set("")
	if g.kept != (planfile.Girth{}) {
		g.set(planfile.Girth{})
	}
	g.panel.page.Arrange()
}

func (g *girth) give(text string) {
	v, given, ok := column.Number(text)
	size := plane.Millimetre(v)
	most := mostGirth
	if g.kind.Chosen == width {
		most = mostWidth
	}
	switch {
	case !ok:
		g.refuse(lang.L("“{{.Text}}” is no length: give millimetres, such as 36.", map[string]any{"Text": text}))
	case given && size > most:
		g.refuse(lang.L("No digit is so thick: give millimetres, at most {{.Most}}.", map[string]any{"Most": int(most)}))
	case g.kind.Chosen == width:
		g.set(planfile.Girth{Width: size})
	default:
		g.set(planfile.Girth{Taped: size})
	}
}

// refuse leaves the plan as it is.
func (g *girth) refuse(why string) {
	g.problem.Set(why)
	g.panel.page.Arrange()
}

func (g *girth) set(to planfile.Girth) {
	web, radial := g.panel.web, g.radial
	g.panel.change(g.step(), func(f *planfile.File) {
		w := f.Web(web)
		if w == nil {
			return
		}
		var both planfile.Girths
		if w.Girths != nil {
			both = *w.Girths
		}
		if radial {
			both.Radial = to
		} else {
			both.Ulnar = to
		}
		w.Girths = &both
		if both == (planfile.Girths{}) {
			w.Girths = nil
		}
	})
}

func (g *girth) step() string {
	digit := map[string]any{"Digit": wording.Finger(g.digit())}
	if g.kind.Chosen == width {
		return lang.L("width of the {{.Digit}}", digit)
	}
	return lang.L("girth of the {{.Digit}}", digit)
}

func (g *girth) paint() {
	g.unit.Color, g.unit.TextSize = look.Colour(theme.ColorNameForeground), look.Size(theme.SizeNameText)
}

func (g *girth) stand(room float32) float32 {
	const unit, field, gap, below = 28, 92, 8, 8
	y := g.title.HeightAt(room)
	flow.Put(g.title, 0, 0, room, y)
	y += 2
	kinds := room - unit - field - 2*gap
	h := g.kind.HeightAt(kinds)
	flow.Put(g.kind, 0, y, kinds, h)
	high := g.field.MinSize().Height
	flow.Put(g.field, kinds+gap, y, field, high)
	flow.Put(g.unit, kinds+field+2*gap, y+(high-g.unit.MinSize().Height)/2, unit, g.unit.MinSize().Height)
	y += max(h, high) + below
	h = g.problem.HeightAt(room)
	flow.Put(g.problem, 0, y, room, h)
	return y + h
}
