package annotate

import (
	"math"

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
	inStrip    bool // there was no room for it on the photograph
	names      float64
}

// Measures of a card, in ems.
const (
	cardPad    = 0.6
	cardGap    = 0.7 // between names and values
	flagHeight = 1.5
	flagGap    = 0.25
	cardSketch = 2.7
)

// placeCards sets the cards and finds their places.
func (sc *scene) placeCards(busy, lines *cover) []card {
	g := grounds{field: sc.fieldBox(), em: sc.em, busy: busy, lines: lines}
	var cards []card
	var notes []note
	for _, d := range sc.webs {
		c := sc.newCard(d)
		cards = append(cards, c)
		notes = append(notes, note{c.box.width(), c.box.height(), c.anchor, d.distal})
		if c.anchored {
			g.keep = append(g.keep, c.anchor)
		}
	}
	g.spare = sc.spare()
	for i, p := range g.arrange(notes) {
		if p.found {
			cards[i].box = p.box
		} else {
			cards[i].inStrip = true
		}
	}
	return cards
}

// spare is what cards leave free if they can: labels, joints, the marked points
// of the reference.
func (sc *scene) spare() []box {
	var list []box
	for _, l := range sc.labels {
		list = append(list, l.box.grown(0.15*sc.em))
	}
	mark := func(q spot) { list = append(list, box{q.x, q.y, q.x, q.y}.grown(0.8*sc.em)) }
	for _, f := range hand.Digits {
		for _, j := range hand.Joints {
			if p, ok := sc.marks.Joint(f, j); ok && sc.near(p) {
				mark(sc.at(p))
			}
		}
	}
	if sc.ref != nil {
		for _, q := range sc.spots(sc.ref.Points()) {
			mark(q)
		}
	}
	return list
}

// newCard sets a card; its box has the right size and no place yet.
func (sc *scene) newCard(d drawnWeb) card {
	c := card{web: d.Web, title: wording.WebName(d.Web.Web), sub: wording.WebDigits(d.Web.Web), rows: cardRows(d.Web, sc.reading.View)}
	c.anchor, c.anchored = sc.anchor(d)
	width := math.Max(sc.fonts.title.widthOf(c.title), sc.fonts.regular.widthOf(c.sub)) + (cardSketch+0.8)*sc.em
	values := 0.0
	for _, r := range c.rows {
		c.names = math.Max(c.names, sc.fonts.regular.widthOf(r.Name))
		values = math.Max(values, sc.fonts.bold.widthOf(r.Value))
	}
	width = math.Max(width, c.names+cardGap*sc.em+values)
	for _, v := range d.Verdicts {
		width = math.Max(width, sc.flagFont(v).widthOf(wording.VerdictOf(v))+1.7*sc.em)
	}
	height := sc.fonts.title.lineHeight() + sc.fonts.regular.lineHeight() + 0.3*sc.em +
		float64(len(c.rows))*sc.fonts.regular.lineHeight() +
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
	return sc.fieldBox().centre(), false
}

// cardRows are the figures that a card shows.
func cardRows(w reading.Web, v hand.View) []wording.Figure {
	var rows []wording.Figure
	shown := map[string]bool{wording.IndexName(v): true, wording.Span: true, wording.CrownAngle: true, wording.Slope: true}
	for _, f := range wording.Figures(w, v) {
		if shown[f.Name] {
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
	sc.gg.DrawRoundedRectangle(c.box.left, c.box.top, c.box.width(), c.box.height(), 0.35*sc.em)
	sc.gg.SetColor(paper)
	sc.gg.FillPreserve()
	sc.gg.SetColor(ink)
	sc.gg.SetLineWidth(math.Max(0.07*sc.em, 1))
	sc.gg.Stroke()

	x, y := c.box.left+cardPad*sc.em, c.box.top+cardPad*sc.em
	sc.drawSketch(c)
	sc.text(sc.fonts.title, ink, spot{x, y + sc.fonts.title.baseline()}, c.title)
	y += sc.fonts.title.lineHeight()
	sc.text(sc.fonts.regular, faded, spot{x, y + sc.fonts.regular.baseline()}, c.sub)
	y += sc.fonts.regular.lineHeight() + 0.3*sc.em
	for _, r := range c.rows {
		base := y + sc.fonts.regular.baseline()
		sc.text(sc.fonts.regular, faded, spot{x, base}, r.Name)
		sc.text(sc.fonts.bold, ink, spot{x + c.names + cardGap*sc.em, base}, r.Value)
		y += sc.fonts.regular.lineHeight()
	}
	y += flagGap * sc.em
	for _, v := range c.web.Verdicts {
		sc.drawFlag(v, boxAt(x, y, c.box.width()-2*cardPad*sc.em, flagHeight*sc.em))
		y += (flagHeight + flagGap) * sc.em
	}
}

// drawSketch draws the arch at its true proportion in the card's corner.
func (sc *scene) drawSketch(c card) {
	side := cardSketch * sc.em
	b := boxAt(c.box.right-cardPad*sc.em-side, c.box.top+cardPad*sc.em, side, side)
	if curve, ok := sketched(c.web, b); ok {
		sc.plainLine(ink, 0.16*sc.em, curve...)
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
	start := spot{b.left + 0.5*sc.em, b.top + (flagHeight*sc.em-f.size)/2 + 0.84*f.size}
	switch {
	case !v.Certain:
		sc.gg.SetDash(0.35*sc.em, 0.3*sc.em)
		sc.gg.DrawRoundedRectangle(b.left, b.top, b.width(), b.height(), 0.3*sc.em)
		sc.gg.SetColor(ink)
		sc.gg.SetLineWidth(math.Max(0.08*sc.em, 1))
		sc.gg.Stroke()
		sc.gg.SetDash()
		sc.text(f, ink, start, words)
	case within(v):
		tick := []spot{{0, 0}, {0.25, 0.28}, {0.75, -0.4}}
		for i, q := range tick {
			tick[i] = spot{b.left + 0.1*sc.em, b.centre().y}.add(q.times(sc.em))
		}
		sc.plainLine(ink, 0.14*sc.em, tick...)
		sc.text(f, ink, start.add(spot{0.65 * sc.em, 0}), words)
	default:
		sc.trace(pennant(b))
		sc.gg.ClosePath()
		sc.gg.SetColor(ink)
		sc.gg.Fill()
		sc.text(f, paper, start, words)
	}
}

// pennant is a flag with a notch at its flying end.
func pennant(b box) []spot {
	notch := 0.28 * b.height()
	return []spot{{b.left, b.top}, {b.right, b.top}, {b.right - notch, b.centre().y}, {b.right, b.bottom}, {b.left, b.bottom}}
}

// drawLeaders draws a line from each card towards its web.
func (sc *scene) drawLeaders() {
	var paths [][]spot
	for _, c := range sc.cards {
		if !c.anchored {
			continue
		}
		from := c.box.nearest(c.anchor)
		d := c.anchor.sub(from)
		if stop := d.length() - 1.25*sc.crownRadius(); stop > 0 {
			paths = append(paths, []spot{from, from.add(d.unit().times(stop))})
		}
	}
	sc.lines(stroke{core: paper, width: sc.fine()}, paths...)
}
