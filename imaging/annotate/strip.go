package annotate

import (
	"image/color"
	"math"
	"slices"
	"strings"

	"ogive/geometry/hand"
	"ogive/imaging/markshapes"
	"ogive/imaging/wording"
)

// strip is what is added below the photograph: words that concern the whole of
// it, and the key.
type strip struct {
	*scene
	blocks []block
	pad    float64
	top    float64
}

// block is one part of the strip, below the other.
type block struct {
	height float64
	draw   func(top float64)
}

// newStrip sets the strip and gives the cards in it their places.
func (sc *scene) newStrip() *strip {
	st := &strip{scene: sc, pad: 1.1 * sc.em, top: float64(sc.whole.Dy())}
	st.words(sc.fonts.title, ink, wording.Photograph(sc.reading.Side, sc.reading.View))
	st.words(sc.fonts.regular, ink, sc.scaleWords())
	st.key()
	st.space(0.2)
	for _, w := range sc.warnings() {
		st.warning(w)
	}
	st.words(sc.fonts.regular, faded, sc.limits())
	st.space(0.3)
	st.rule()
	st.space(0.3)
	st.words(sc.fonts.italic, ink, wording.Caution)
	return st
}

func (st *strip) height() int {
	h := 2 * st.pad
	for _, b := range st.blocks {
		h += b.height
	}
	return int(math.Ceil(h))
}

func (st *strip) draw() {
	st.Plain(ink, math.Max(0.12*st.em, 1), []spot{xy(0, st.top), xy(float64(st.whole.Dx()), st.top)})
	y := st.top + st.pad
	for _, b := range st.blocks {
		if b.draw != nil {
			b.draw(y)
		}
		y += b.height
	}
}

func (st *strip) inner() float64 { return float64(st.whole.Dx()) - 2*st.pad }

func (st *strip) space(ems float64) {
	st.blocks = append(st.blocks, block{height: ems * st.em})
}

// words adds a paragraph.
func (st *strip) words(f lettering, c color.RGBA, words string) {
	st.paragraph(f, c, words, 0)
}

func (st *strip) paragraph(f lettering, c color.RGBA, words string, indent float64) {
	for _, line := range wrapped(f, words, st.inner()-indent) {
		st.blocks = append(st.blocks, block{lineHeight(f), func(top float64) {
			st.text(f, c, xy(st.pad+indent, top+baseline(f)), line)
		}})
	}
}

// warning adds a paragraph led by a triangle with an exclamation mark.
func (st *strip) warning(words string) {
	st.blocks = append(st.blocks, block{0, func(top float64) {
		st.warningSign(xy(st.pad+0.55*st.em, top+0.62*st.em))
	}})
	st.paragraph(st.fonts.regular, ink, words, 1.6*st.em)
}

func (st *strip) warningSign(c spot) {
	r := 0.55 * st.em
	st.Fill(ink, []spot{c.Add(xy(0, -r)), c.Add(xy(r, 0.8*r)), c.Add(xy(-r, 0.8*r))})
	st.Plain(paper, 0.13*st.em, []spot{c.Add(xy(0, -0.35*r)), c.Add(xy(0, 0.2*r))})
	st.Plain(paper, 0.15*st.em, []spot{c.Add(xy(0, 0.5*r)), c.Add(xy(0, 0.51*r))})
}

func (st *strip) rule() {
	st.blocks = append(st.blocks, block{0, func(top float64) {
		st.Plain(hairln, math.Max(0.05*st.em, 1), []spot{xy(st.pad, top), xy(float64(st.whole.Dx())-st.pad, top)})
	}})
}

// scaleWords says how the photograph was scaled.
func (sc *scene) scaleWords() string {
	r := sc.reading
	if r.PerPixel.Value <= 0 {
		return "No scale: nothing is measured in millimetres."
	}
	words := wording.Scale(r.Method, r.PerPixel)
	return wording.Sentence(words) + ". Figures are stated ± their uncertainty at 95 per cent."
}

// warnings are those of the photograph, then those of the webs, each said once
// with the names of the webs that it concerns.
func (sc *scene) warnings() []string {
	var list []string
	for _, w := range sc.reading.Warnings {
		if w != "" && !slices.Contains(list, wording.Sentence(w)) {
			list = append(list, wording.Sentence(w))
		}
	}
	var said []string
	for _, web := range sc.reading.Webs {
		for _, w := range web.Warnings {
			if w != "" && !slices.Contains(said, w) {
				said = append(said, w)
				list = append(list, sc.warned(w)+". "+wording.Sentence(w))
			}
		}
	}
	return list
}

// warned names the webs that share a warning: "Second and fourth web".
func (sc *scene) warned(warning string) string {
	var names []string
	for _, web := range sc.reading.Webs {
		if slices.Contains(web.Warnings, warning) {
			names = append(names, strings.TrimSuffix(web.Web.String(), " web"))
		}
	}
	if n := len(names); n > 1 {
		names = []string{strings.Join(names[:n-1], ", ") + " and " + names[n-1]}
	}
	return wording.Sentence(names[0]) + " web"
}

// limits says what each verdict was judged by.
func (sc *scene) limits() string {
	var parts []string
	for _, w := range sc.reading.Webs {
		for _, v := range w.Verdicts {
			parts = append(parts, w.Web.String()+" "+v.Figure+" "+wording.Limit(v))
		}
	}
	if parts == nil {
		return ""
	}
	return "Limits: " + strings.Join(parts, "; ") + "."
}

// entry is one line of the key: how a thing is drawn and what it is.
type entry struct {
	words string
	wide  bool // the sign is a line
	draw  func(c spot)
}

// key adds what the marks on this photograph mean, in rows.
func (st *strip) key() {
	entries := st.entries()
	if len(entries) == 0 {
		return
	}
	height := 1.5 * st.em
	var row []entry
	x := 0.0
	end := func() {
		now := row
		st.blocks = append(st.blocks, block{height, func(top float64) { st.drawKeyRow(now, top) }})
		row, x = nil, 0
	}
	st.space(0.4)
	for _, e := range entries {
		w := st.entryWidth(e)
		if x+w > st.inner() && row != nil {
			end()
		}
		row, x = append(row, e), x+w
	}
	end()
}

func (st *strip) signWidth(e entry) float64 {
	if e.wide {
		return 2 * st.em
	}
	return 1.2 * st.em
}

func (st *strip) entryWidth(e entry) float64 {
	return st.signWidth(e) + st.fonts.regular.WidthOf(e.words) + 1.7*st.em
}

func (st *strip) drawKeyRow(row []entry, top float64) {
	x := st.pad
	for _, e := range row {
		w := st.signWidth(e)
		e.draw(xy(x+w/2, top+0.7*st.em))
		st.text(st.fonts.regular, ink, xy(x+w+0.5*st.em, top+1.05*st.em), e.words)
		x += st.entryWidth(e)
	}
}

// entries are the key's lines for what this photograph shows.
func (st *strip) entries() []entry {
	var list []entry
	across := func(sty stroke) func(spot) {
		return func(c spot) {
			half := xy(0.9*st.em, 0)
			st.Lines(sty, []spot{c.Sub(half), c.Add(half)})
		}
	}
	for _, j := range hand.Joints {
		if st.marked(j) {
			list = append(list, entry{wording.Joint(j, st.marks.View), false, func(c spot) { st.Joint(j, c, st.jointRadius()) }})
		}
	}
	var border, curve, crown, springing, level, junction bool
	for _, d := range st.webs {
		border = border || len(d.border) > 1
		curve = curve || len(d.curve) > 1
		crown = crown || d.hasCrown
		springing = springing || d.springing != nil
		level = level || d.level != nil
		junction = junction || d.slope != nil
	}
	for _, e := range []struct {
		shown bool
		entry
	}{
		{border, entry{"traced border", true, across(stroke{Core: cores[kindBorder], Width: 0.6 * st.fine(), Thin: true})}},
		{curve, entry{"fitted arch", true, across(stroke{Core: cores[kindArch], Width: st.bold()})}},
		{crown, entry{"crown", false, func(c spot) { st.Crown(c, xy(0, -1), math.Min(st.crownRadius(), 0.6*st.em)) }}},
		{springing, entry{"springing", false, func(c spot) { st.Lines(st.springingStroke(), markshapes.Bar(c, xy(0, 1), 0.5*st.pen)) }}},
		{springing, entry{"span", true, across(st.spanStroke())}},
		{level, entry{"level of the crown", true, across(st.levelStroke())}},
		{junction, entry{"junction of the skins", true, across(stroke{Core: cores[kindJunction], Width: st.bold()})}},
		{junction, entry{"digit axis", true, across(stroke{Core: cores[kindJoint], Width: st.fine()})}},
		{st.ref != nil, entry{"reference", true, across(stroke{Core: cores[kindReference], Width: 1.3 * st.fine()})}},
	} {
		if e.shown {
			list = append(list, e.entry)
		}
	}
	return list
}

// marked reports whether any digit's joint j was marked.
func (st *strip) marked(j hand.Joint) bool {
	for _, f := range hand.Digits {
		if p, ok := st.marks.Joint(f, j); ok && st.near(p) {
			return true
		}
	}
	return false
}
