package annotate

import (
	"math"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/geometry/scale"
)

// scene is everything that is to be drawn, with its place found.
type scene struct {
	*sheet
	marks   hand.Marks
	ref     scale.Reference
	reading reading.Reading
	webs    []drawnWeb
	labels  []label
	cards   []card
	strip   *strip
}

// drawnWeb is one web in places on the picture.
type drawnWeb struct {
	reading.Web
	border    []spot
	seeds     []spot // where no border was traced
	curve     []spot
	crown     spot
	hasCrown  bool
	springing []spot // two, or none
	distal    spot   // unit, or zero where not known
	level     []spot // radial axis, crown, ulnar axis: how the index is read
	slope     *slope
}

func newScene(s *sheet, marks hand.Marks, ref scale.Reference, r reading.Reading) *scene {
	sc := &scene{sheet: s, marks: marks, ref: ref, reading: r}
	for _, w := range r.Webs {
		sc.webs = append(sc.webs, sc.drawn(w))
	}
	lines := sc.linesCovered()
	sc.labels = sc.placeLabels(lines.summed())
	sc.cards = sc.placeCards(sc.allCovered(lines), lines.summed())
	sc.strip = sc.newStrip()
	return sc
}

// drawn finds the places of one web.
func (sc *scene) drawn(w reading.Web) drawnWeb {
	d := drawnWeb{Web: w, border: sc.spots(sc.borderOf(w)), curve: sc.spots(w.Curve)}
	if len(d.border) == 0 {
		d.seeds = sc.seedsOf(w.Web)
	}
	if w.Shape != 0 && sc.near(w.Springing[0]) && sc.near(w.Springing[1]) {
		d.springing = sc.spots(w.Springing[:])
	}
	d.hasCrown = sc.near(w.Crown) && (w.Shape != 0 || w.Crown != plane.PixelPoint{})
	d.crown = sc.at(w.Crown)
	d.distal = sc.distal(d)
	d.level = sc.level(d)
	d.slope = sc.slopeOf(w)
	return d
}

// borderOf is the traced border: as read, else as marked.
func (sc *scene) borderOf(w reading.Web) []plane.PixelPoint {
	if len(w.Edge) > 0 {
		return w.Edge
	}
	for _, m := range sc.marks.Webs {
		if m.Web == w.Web {
			return m.Edge
		}
	}
	return nil
}

// seedsOf are the three clicks from which a border is to be traced.
func (sc *scene) seedsOf(w hand.Web) []spot {
	for _, m := range sc.marks.Webs {
		if m.Web == w {
			return sc.spots(m.Seeds)
		}
	}
	return nil
}

// distal is the direction in which the web opens.
func (sc *scene) distal(d drawnWeb) spot {
	radial, ulnar := d.Web.Web.Digits()
	var sum spot
	for _, f := range []hand.Digit{radial, ulnar} {
		if mcp, pip, ok := sc.axis(f); ok {
			sum = sum.add(pip.sub(mcp).unit())
		}
	}
	if sum == (spot{}) && d.hasCrown && d.springing != nil {
		sum = d.springing[0].to(d.springing[1], 0.5).sub(d.crown)
	}
	return sum.unit()
}

// axis is the axis of a digit's proximal part, from MCP to PIP.
func (sc *scene) axis(f hand.Digit) (mcp, pip spot, ok bool) {
	a, hasMCP := sc.marks.Joint(f, hand.MCP)
	b, hasPIP := sc.marks.Joint(f, hand.PIP)
	if !hasMCP || !hasPIP || !sc.near(a) || !sc.near(b) || a == b {
		return spot{}, spot{}, false
	}
	return sc.at(a), sc.at(b), true
}

// level is the line along which the index is read: from the crown square to
// each digit's axis.
func (sc *scene) level(d drawnWeb) []spot {
	radial, ulnar := d.Web.Web.Digits()
	a, okA := sc.footOnAxis(radial, d.crown)
	b, okB := sc.footOnAxis(ulnar, d.crown)
	if !okA || !okB || !d.hasCrown || d.Index == nil {
		return nil
	}
	return []spot{a, d.crown, b}
}

func (sc *scene) footOnAxis(f hand.Digit, q spot) (spot, bool) {
	mcp, pip, ok := sc.axis(f)
	if !ok {
		return spot{}, false
	}
	u := pip.sub(mcp).unit()
	return mcp.add(u.times(q.sub(mcp).dot(u))), true
}

// What covering a thing costs, in ems of way: lines by half an em of length,
// areas by a quarter of a square em.
const (
	costOfArch  = 4.0
	costOfAxis  = 0.7
	costOfMark  = 5.0
	costOfLabel = 5.0
	costOfHand  = 0.09
)

// linesCovered is what would be lost if marks and lines were covered.
func (sc *scene) linesCovered() *cover {
	c := newCover(sc.fieldBox(), sc.em/2)
	for _, d := range sc.webs {
		c.addLine(d.curve, costOfArch)
		c.addLine(d.border, costOfArch)
		c.addLine(d.level, costOfAxis)
		for _, q := range d.springing {
			c.add(q, costOfMark)
		}
		if d.slope != nil {
			c.addLine(d.slope.line, costOfArch)
			c.addLine(d.slope.axis[:], costOfAxis)
			from, to := d.slope.angles()
			c.addLine(arc(d.slope.vertex, d.slope.reach, from, to), costOfArch)
		}
	}
	for _, f := range hand.Digits {
		if mcp, pip, ok := sc.axis(f); ok {
			c.addLine([]spot{mcp, pip}, costOfAxis)
		}
		for _, j := range hand.Joints {
			if p, ok := sc.marks.Joint(f, j); ok && sc.near(p) {
				c.add(sc.at(p), costOfMark)
			}
		}
	}
	if sc.ref != nil {
		points := sc.spots(sc.ref.Points())
		c.addLine(closed(points), costOfArch)
	}
	return c
}

// allCovered adds labels and the hand itself to lines.
func (sc *scene) allCovered(lines *cover) *cover {
	for _, l := range sc.labels {
		for _, q := range []spot{l.box.centre(), {l.box.left, l.box.top}, {l.box.right, l.box.bottom}} {
			lines.add(q, costOfLabel/3)
		}
	}
	sum := lines.summed()
	flesh := newCover(sc.fieldBox(), sc.em/2)
	for _, f := range hand.Digits {
		sc.fleshOf(flesh, f)
	}
	return sum.with(flesh.summed())
}

// fleshOf estimates where a digit and its part of the palm lie: a finger is
// some 2.3 times as long as its proximal part and half as wide (estimated on
// the outlines of adult hands; only the places of the cards depend on it).
func (sc *scene) fleshOf(c *cover, f hand.Digit) {
	mcp, pip, ok := sc.axis(f)
	if !ok {
		return
	}
	along := pip.sub(mcp)
	tip := mcp.add(along.times(2.3))
	if p, marked := sc.marks.Joint(f, hand.Tip); marked && sc.near(p) {
		tip = sc.at(p)
	}
	wide := along.length()
	c.raiseBand(mcp, pip, 0.27*wide, costOfHand)
	c.raiseBand(pip, tip.add(tip.sub(pip).unit().times(0.12*wide)), 0.24*wide, costOfHand)
	if f != hand.Thumb {
		c.raiseBand(mcp.sub(along.times(1.6)), mcp, 0.4*wide, costOfHand)
	}
}

func (sc *scene) fieldBox() box {
	return box{0, 0, float64(sc.field.Dx()), float64(sc.field.Dy())}
}

func closed(path []spot) []spot {
	if len(path) < 3 {
		return path
	}
	return append(path, path[0])
}

// draw draws everything, what matters most last.
func (sc *scene) draw() {
	sc.drawAxes()
	sc.drawReference()
	sc.drawArches()
	sc.drawSlopes()
	sc.drawJoints()
	sc.drawLeaders()
	sc.drawCrowns()
	for _, l := range sc.labels {
		sc.haloed(sc.fonts.small, paper, spot{l.box.left, l.box.top + sc.fonts.small.baseline()}, l.words)
	}
	sc.strip.draw()
	for _, c := range sc.cards {
		sc.drawCard(c)
	}
}

// finite guards against marks that lie on one another.
func finite(q spot) bool {
	return !math.IsNaN(q.x+q.y) && !math.IsInf(q.x+q.y, 0)
}
