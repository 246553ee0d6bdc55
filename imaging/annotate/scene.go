package annotate

import (
	"math"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/geometry/scale"
	"ogive/imaging/markshapes"
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
	leaders [][]spot
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
	sc.findWebs()
	sc.cards = sc.newCards()
	sc.frame(sc.layOutCards())
	sc.findWebs() // again, now that the photograph has its place
	sc.labels = sc.placeLabels()
	sc.strip = sc.newStrip()
	sc.whole.Max.Y += sc.strip.height()
	sc.leaders = sc.newLeaders()
	return sc
}

func (sc *scene) findWebs() {
	sc.webs = nil
	for _, w := range sc.reading.Webs {
		sc.webs = append(sc.webs, sc.drawn(w))
	}
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
			sum = sum.Add(pip.Sub(mcp).Unit())
		}
	}
	if sum == (spot{}) && d.hasCrown && d.springing != nil {
		sum = d.springing[0].To(d.springing[1], 0.5).Sub(d.crown)
	}
	return sum.Unit()
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
	u := pip.Sub(mcp).Unit()
	return mcp.Add(u.Times(q.Sub(mcp).Dot(u))), true
}

// costOfLabel is what half an em of a label's length costs a leader.
const costOfLabel = 1.5

// markCover is where joints, axes and the reference are drawn.
func (sc *scene) markCover() *markshapes.Cover {
	c := markshapes.NewCover(sc.fieldBox(), sc.em/2)
	for _, f := range hand.Digits {
		if mcp, pip, ok := sc.axis(f); ok {
			c.AddLine([]spot{mcp, pip}, markshapes.CostOfAxis)
		}
		for _, j := range hand.Joints {
			if p, ok := sc.marks.Joint(f, j); ok && sc.near(p) {
				c.Add(sc.at(p), markshapes.CostOfMark)
			}
		}
	}
	if sc.ref != nil {
		c.AddLine(markshapes.Closed(sc.spots(sc.ref.Points())), markshapes.CostOfArch)
	}
	return c
}

// labelCover is what labels had better not lie on: all marks and lines.
func (sc *scene) labelCover() *markshapes.Cover {
	c := sc.markCover()
	for _, d := range sc.webs {
		c.AddLine(d.curve, markshapes.CostOfArch)
		c.AddLine(d.border, markshapes.CostOfArch)
		c.AddLine(d.level, markshapes.CostOfAxis)
		for _, q := range d.springing {
			c.Add(q, markshapes.CostOfMark)
		}
		if d.slope != nil {
			from, to := d.slope.angles()
			c.AddLine(markshapes.Arc(d.slope.vertex, d.slope.reach, from, to), markshapes.CostOfArch)
			c.AddLine(d.slope.line, markshapes.CostOfArch)
			c.AddLine(d.slope.axis[:], markshapes.CostOfAxis)
		}
	}
	c.Sum()
	return c
}

// leaderCover is what leaders had better not run over: joints, axes, labels. An
// arch does not count: a leader has to enter it.
func (sc *scene) leaderCover() *markshapes.Cover {
	c := sc.markCover()
	for _, l := range sc.labels {
		y := l.box.Centre().Y
		c.AddLine([]spot{xy(l.box.Left, y), xy(l.box.Right, y)}, costOfLabel)
	}
	c.Sum()
	return c
}

// draw draws everything, what matters most last.
func (sc *scene) draw() {
	sc.drawAxes()
	sc.drawReference()
	sc.drawArches()
	sc.drawSlopes()
	sc.drawJoints()
	sc.drawFrame()
	sc.Lines(stroke{Core: paper, Width: sc.fine()}, sc.leaders...)
	sc.drawCrowns()
	for _, l := range sc.labels {
		markshapes.WriteCased(sc.img, sc.fonts.small, paper, xy(l.box.Left, l.box.Top+baseline(sc.fonts.small)), l.words)
	}
	for _, c := range sc.cards {
		sc.drawCard(c)
	}
	sc.strip.draw()
}

// drawFrame draws a line where the photograph ends and a margin begins.
func (sc *scene) drawFrame() {
	f, w := sc.fieldBox(), math.Max(0.12*sc.em, 1)
	corners := []spot{xy(f.Left, f.Top), xy(f.Right, f.Top), xy(f.Right, f.Bottom), xy(f.Left, f.Bottom)}
	for i, outer := range []bool{f.Top > 0, int(f.Right) < sc.whole.Max.X, true, f.Left > 0} {
		if outer {
			sc.Plain(ink, w, []spot{corners[i], corners[(i+1)%4]})
		}
	}
}

// finite guards against marks that lie on one another.
func finite(q spot) bool {
	return !math.IsNaN(q.X+q.Y) && !math.IsInf(q.X+q.Y, 0)
}
