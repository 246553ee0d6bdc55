package annotate

import (
	"math"
	"slices"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/reading"
	"ogive/imaging/wording"
)

// card is the callout of one web.
type card struct {
	web        reading.Web
	title, sub string
	rows       []wording.Figure
	box        box
	anchor     spot
	anchored   bool
	names      float64 // width of the column of names
}

// Measures of a card, in ems.
const (
	cardPad    = 0.6
	columnGap  = 0.7 // between names and values
	flagHeight = 1.5
	flagGap    = 0.25
	cardSketch = 2.7
	// between cards
	leastCardGap = 0.3
	mostCardGap  = 0.8
)

// newCards sets the cards, which have no place yet.
func (sc *scene) newCards() []card {
	var cards []card
	for _, d := range sc.webs {
		cards = append(cards, sc.newCard(d))
	}
	return cards
}

// layOutCards gives the cards their places on the side to which the fingers
// point, where the lines to the webs run between the fingers.
func (sc *scene) layOutCards() margins {
	var largest size
	var anchors []spot
	var distal spot
	for i, c := range sc.cards {
		largest = size{math.Max(largest.w, c.box.Width()), math.Max(largest.h, c.box.Height())}
		anchors = append(anchors, c.anchor)
		distal = distal.Add(sc.webs[i].distal)
	}
	w, h, along := float64(sc.field.Dx()), float64(sc.field.Dy()), sideTowards(distal)
	n := float64(len(sc.cards))
	spare := w - n*largest.w
	if !along.row() {
		spare = h - n*largest.h
	}
	gap := clamp(spare/(n+1), leastCardGap*sc.em, mostCardGap*sc.em)
	m := layOut(w, h, along, slices.Repeat([]size{largest}, len(sc.cards)), anchors, gap)
	for i := range m.cards {
		sc.cards[i].box = m.cards[i]
	}
	return m
}

// newCard sets a card; its box has the right size and no place yet.
func (sc *scene) newCard(d drawnWeb) card {
	c := card{web: d.Web, title: wording.WebName(d.Web.Web), sub: wording.WebDigits(d.Web.Web), rows: cardRows(d.Web, sc.reading.View)}
	c.anchor, c.anchored = sc.anchor(d)
	width := math.Max(sc.fonts.title.WidthOf(c.title), sc.fonts.regular.WidthOf(c.sub)) + (cardSketch+0.8)*sc.em
	values := 0.0
	for _, r := range c.rows {
		c.names = math.Max(c.names, sc.fonts.regular.WidthOf(r.Name))
		values = math.Max(values, sc.fonts.bold.WidthOf(r.Value))
	}
	width = math.Max(width, c.names+columnGap*sc.em+values)
	for _, v := range d.Verdicts {
		width = math.Max(width, sc.flagFont(v).WidthOf(wording.VerdictOf(v))+1.7*sc.em)
	}
	height := lineHeight(sc.fonts.title) + lineHeight(sc.fonts.regular) + 0.3*sc.em +
		float64(len(c.rows))*lineHeight(sc.fonts.regular) +
		float64(len(d.Verdicts))*(flagHeight+flagGap)*sc.em
	if len(d.Verdicts) > 0 {
		height += flagGap * sc.em
	}
	c.box = boxAt(0, 0, width+2*cardPad*sc.em, height+2*cardPad*sc.em)
	return c
}

// anchor is what a card points at: the crown, else the slope's angle, else the
// middle of the border, else the click on the crown.
func (sc *scene) anchor(d drawnWeb) (spot, bool) {
	switch {
	case d.hasCrown:
		return d.crown, true
	case d.slope != nil:
		return d.slope.vertex, true
	case len(d.border) > 0:
		return d.border[len(d.border)/2], true
	case len(d.seeds) == 3:
		return d.seeds[1], true
	}
	return sc.fieldBox().Centre(), false
}

// cardRows are the figures that a card shows. A V has no span: its 0 is no
// measurement.
func cardRows(w reading.Web, v hand.View) []wording.Figure {
	var rows []wording.Figure
	shown := map[string]bool{wording.IndexName(v): true, wording.Span: true, wording.CrownAngle: true, wording.Slope: true}
	for _, f := range wording.Figures(w, v) {
		if shown[f.Name] && (f.Name != wording.Span || w.Shape != arch.V) {
			rows = append(rows, f)
		}
	}
	if shape := wording.Shape(w); shape != "" {
		rows = append(rows, wording.Figure{Name: "shape", Value: shape})
	}
	if len(rows) == 0 {
		rows = []wording.Figure{{Name: "no figure", Value: "see below"}}
	}
	return rows
}

func (sc *scene) drawCard(c card) {
	sc.gg.DrawRoundedRectangle(c.box.Left, c.box.Top, c.box.Width(), c.box.Height(), 0.35*sc.em)
	sc.gg.SetColor(paper)
	sc.gg.FillPreserve()
	sc.gg.SetColor(ink)
	sc.gg.SetLineWidth(math.Max(0.07*sc.em, 1))
	sc.gg.Stroke()

	x, y := c.box.Left+cardPad*sc.em, c.box.Top+cardPad*sc.em
	sc.drawSketch(c)
	sc.text(sc.fonts.title, ink, xy(x, y+baseline(sc.fonts.title)), c.title)
	y += lineHeight(sc.fonts.title)
	sc.text(sc.fonts.regular, faded, xy(x, y+baseline(sc.fonts.regular)), c.sub)
	y += lineHeight(sc.fonts.regular) + 0.3*sc.em
	for _, r := range c.rows {
		base := y + baseline(sc.fonts.regular)
		sc.text(sc.fonts.regular, faded, xy(x, base), r.Name)
		sc.text(sc.fonts.bold, ink, xy(x+c.names+columnGap*sc.em, base), r.Value)
		y += lineHeight(sc.fonts.regular)
	}
	y += flagGap * sc.em
	for _, v := range c.web.Verdicts {
		sc.drawFlag(v, boxAt(x, y, c.box.Width()-2*cardPad*sc.em, flagHeight*sc.em))
		y += (flagHeight + flagGap) * sc.em
	}
}

// drawSketch draws the arch at its true proportion in the card's corner.
func (sc *scene) drawSketch(c card) {
	side := cardSketch * sc.em
	b := boxAt(c.box.Right-cardPad*sc.em-side, c.box.Top+cardPad*sc.em, side, side)
	if curve, ok := sketched(c.web, b); ok {
		sc.Plain(ink, 0.16*sc.em, curve)
	}
}

// within reports whether the verdict finds nothing amiss.
func within(v norms.Verdict) bool { return v.Finding == "within limits" }

func (sc *scene) flagFont(v norms.Verdict) lettering {
	switch {
	case !v.Certain:
		return sc.fonts.italic
	case within(v):
		return sc.fonts.regular
	}
	return sc.fonts.bold
}

// drawFlag draws a verdict: a solid flag with light bold words where it is
// certain that something is amiss, a dashed outline with slanted words where it
// is doubtful, a tick and plain words where all is certainly well.
func (sc *scene) drawFlag(v norms.Verdict, b box) {
	words, f := wording.VerdictOf(v), sc.flagFont(v)
	start := xy(b.Left+0.5*sc.em, b.Top+(flagHeight*sc.em-f.Size)/2+0.84*f.Size)
	switch {
	case !v.Certain:
		sc.gg.SetDash(0.35*sc.em, 0.3*sc.em)
		sc.gg.DrawRoundedRectangle(b.Left, b.Top, b.Width(), b.Height(), 0.3*sc.em)
		sc.gg.SetColor(ink)
		sc.gg.SetLineWidth(math.Max(0.08*sc.em, 1))
		sc.gg.Stroke()
		sc.gg.SetDash()
		sc.text(f, ink, start, words)
	case within(v):
		tick := []spot{xy(0, 0), xy(0.25, 0.28), xy(0.75, -0.4)}
		for i, q := range tick {
			tick[i] = xy(b.Left+0.1*sc.em, b.Centre().Y).Add(q.Times(sc.em))
		}
		sc.Plain(ink, 0.14*sc.em, tick)
		sc.text(f, ink, start.Add(xy(0.65*sc.em, 0)), words)
	default:
		sc.Fill(ink, pennant(b))
		sc.text(f, paper, start, words)
	}
}

// pennant is a flag with a notch at its flying end.
func pennant(b box) []spot {
	notch := 0.28 * b.Height()
	return []spot{xy(b.Left, b.Top), xy(b.Right, b.Top), xy(b.Right-notch, b.Centre().Y), xy(b.Right, b.Bottom), xy(b.Left, b.Bottom)}
}

// newLeaders finds a line from each card to its web: from that place of the
// card's edge from which it runs over the least.
func (sc *scene) newLeaders() [][]spot {
	lines := sc.leaderCover()
	var leaders [][]spot
	for i, c := range sc.cards {
		if !c.anchored {
			continue
		}
		target, stop := sc.target(sc.webs[i])
		least, best := math.Inf(1), spot{}
		for _, from := range c.edge(sc.fieldBox(), sc.em) {
			cost := 0.6*from.Sub(target).Length()/sc.em + lines.Along(target, from, sc.em)
			for _, l := range leaders {
				if cross(from, target, l[0], l[1]) {
					cost += costOfCrossing
				}
			}
			if cost < least {
				least, best = cost, from
			}
		}
		d := target.Sub(best)
		if reach := d.Length() - stop; reach > 0 {
			leaders = append(leaders, []spot{best, best.Add(d.Unit().Times(reach))})
		}
	}
	return leaders
}

// target is where a leader ends, and how far before it: in the mouth of the
// arch, so that nothing of the arch is hidden, else short of the card's anchor.
func (sc *scene) target(d drawnWeb) (q spot, before float64) {
	if n := len(d.curve); n > 1 {
		return d.curve[0].To(d.curve[n-1], 0.5), 0
	}
	q, _ = sc.anchor(d)
	return q, 1.25 * sc.crownRadius()
}

// costOfCrossing keeps leaders from crossing.
const costOfCrossing = 100

// edge is a row of places on the edge of the card that faces the photograph.
func (c card) edge(field box, em float64) []spot {
	a, b := xy(c.box.Left+em, c.box.Bottom), xy(c.box.Right-em, c.box.Bottom)
	switch {
	case c.box.Top >= field.Bottom:
		a.Y, b.Y = c.box.Top, c.box.Top
	case c.box.Right <= field.Left:
		a, b = xy(c.box.Right, c.box.Top+em), xy(c.box.Right, c.box.Bottom-em)
	case c.box.Left >= field.Right:
		a, b = xy(c.box.Left, c.box.Top+em), xy(c.box.Left, c.box.Bottom-em)
	}
	const n = 16
	out := make([]spot, n+1)
	for i := range out {
		out[i] = a.To(b, float64(i)/n)
	}
	return out
}
