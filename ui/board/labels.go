package board

import (
	"image"
	"math"

	"golang.org/x/image/draw"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/imaging/markshapes"
	"ogive/imaging/palette"
	"ogive/ui/marking"
)

// letterSize is the size of labels in units of Fyne's.
const letterSize = 12.5

// lettering makes pictures of words and keeps them.
type lettering struct {
	face markshapes.Face
	made map[string]*image.RGBA
}

func newLettering() *lettering { return &lettering{} }

// words is a picture of light letters in a dark casing, legible on any ground,
// in letters of size screen pixels.
func (l *lettering) words(text string, size float64) *image.RGBA {
	if l.face.Size != size {
		l.face, l.made = markshapes.Bold(size), map[string]*image.RGBA{}
	}
	img, ok := l.made[text]
	if !ok {
		rim, m := math.Ceil(l.face.Casing())+1, l.face.Metrics()
		img = image.NewRGBA(image.Rect(0, 0, int(math.Ceil(l.face.WidthOf(text))+2*rim), (m.Ascent+m.Descent).Ceil()+2*int(rim)))
		markshapes.WriteCased(img, l.face, palette.Paper, xy(rim, rim+float64(m.Ascent)/64), text)
		l.made[text] = img
	}
	return img
}

// What a label may cost that may also be left out: it may touch a line, and not
// hide a mark, an arch or another label.
const dearest = 9

// labels names what is marked, in few words: each digit once, its joints by
// their letters, the mark that is selected or under the pointer in full. Where
// marks crowd only these are named.
func (b *Board) labels(p *pen, at map[marking.Spot]plane.PixelPoint) {
	w := writer{Placer: b.placer(p, at), board: b, pen: p}
	for _, h := range b.scene.Handles {
		w.write(p.at(h.At), h.Label, 12*b.scale, true)
	}
	for _, l := range b.scene.Lines {
		if q, ok := markshapes.Middle(p.path(l.Points)); ok {
			w.write(q, l.Label, 7*b.scale, true)
		}
	}
	if b.scene.Quiet {
		return
	}
	for _, full := range []bool{true, false} {
		for _, m := range b.scene.Placed {
			if b.inFull(m.Spot) != full || (!full && p.room[m.Spot] < leastLabels) {
				continue
			}
			if m.Spot.Kind == marking.ScalePoint {
				w.Further = func(box markshapes.Box) float64 { return costOfDetail * markshapes.Detail(p.img, box.Grown(8*b.scale)) }
			}
			w.write(p.at(m.At), b.label(m.Spot), b.gap(p, m.Spot), full)
			w.Further = nil
		}
	}
}

// costOfDetail is what it costs to lie on or close to nothing but sharp edges, such
// as the ticks and numbers of a ruler.
const costOfDetail = 50

// writer writes labels on a frame.
type writer struct {
	markshapes.Placer
	board *Board
	pen   *pen
}

// write puts a label beside q, unless it would hide more than it tells.
func (w *writer) write(q spot, text string, gap float64, must bool) {
	if text == "" || !w.pen.sees(q, 0) {
		return
	}
	words := w.board.letters.words(text, letterSize*w.board.scale)
	size := words.Rect.Size()
	box, cost := w.Beside(q, gap, float64(size.X), float64(size.Y))
	if cost > dearest && !must {
		return
	}
	w.Take(box)
	corner := image.Pt(int(math.Round(box.Left)), int(math.Round(box.Top)))
	draw.Draw(w.pen.img, image.Rectangle{corner, corner.Add(size)}, words, image.Point{}, draw.Over)
}

// placer knows what labels had better not hide.
func (b *Board) placer(p *pen, at map[marking.Spot]plane.PixelPoint) markshapes.Placer {
	em := letterSize * b.scale
	field := markshapes.BoxOf(0, 0, float64(p.img.Rect.Dx()), float64(p.img.Rect.Dy()))
	c := markshapes.NewCover(field, em/2)
	out := markshapes.Placer{Field: field, Cover: c, Em: em, Clear: 7 * b.scale}
	line := func(path []spot, cost float64) {
		for _, run := range p.Seen(path) {
			c.AddLine(run, cost)
		}
	}
	for _, m := range b.scene.Placed {
		if q := p.at(m.At); p.sees(q, 30) {
			out.Keep = append(out.Keep, q)
		}
	}
	for _, h := range b.scene.Handles {
		if q := p.at(h.At); p.sees(q, 30) {
			out.Keep = append(out.Keep, q)
		}
	}
	for _, web := range hand.Webs {
		line(p.path(b.scene.Reading.Edges[web]), markshapes.CostOfArch)
	}
	if !b.scene.Blind {
		for _, w := range b.scene.Reading.Webs {
			b.coverArch(p, w, line)
		}
	}
	for _, axis := range p.axesOf(at) {
		line(axis, 2*markshapes.CostOfAxis)
	}
	for _, l := range b.scene.Lines {
		line(p.path(l.Points), markshapes.CostOfArch)
	}
	c.Sum()
	return out
}

// coverArch keeps labels off a fitted arch and the darts at its crown.
func (b *Board) coverArch(p *pen, w reading.Web, line func([]spot, float64)) {
	if w.Shape == 0 {
		return
	}
	line(p.path(w.Curve), markshapes.CostOfArch)
	a, z, crown := p.at(w.Springing[0]), p.at(w.Springing[1]), p.at(w.Crown)
	dart := a.To(z, 0.5).Sub(crown).Unit().Times(crownReach * p.roomOf(w) * b.scale)
	line([]spot{crown.Sub(dart), crown.Add(dart)}, markshapes.CostOfMark)
}

// inFull reports whether a mark is named in full.
func (b *Board) inFull(s marking.Spot) bool {
	return b.selected(s) || (b.pointer.over != nil && *b.pointer.over == s)
}

func (b *Board) selected(s marking.Spot) bool {
	return b.scene.Selected != nil && *b.scene.Selected == s
}

// gap is how far from a mark its label stands.
func (b *Board) gap(p *pen, s marking.Spot) float64 {
	if b.selected(s) || s.Kind == marking.ScalePoint {
		return (bracketReach + 4) * b.scale
	}
	return (3 + 7*p.room[s]) * b.scale
}

// label is what stands beside a mark.
func (b *Board) label(s marking.Spot) string {
	view := b.scene.View
	if b.inFull(s) {
		return s.Name(view)
	}
	return s.Label(view)
}
