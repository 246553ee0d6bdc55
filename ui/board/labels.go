package board

import (
	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/imaging/markshapes"
	"ogive/ui/marking"
)

// labels names what is marked, in few words: each digit once, its joints by
// their letters, the mark that is selected or under the pointer in full. Where
// marks crowd only these are named.
func (b *Board) labels(p *pen, at map[marking.Spot]plane.PixelPoint) {
	w := writer{Placer: b.placer(p, at), board: b, pen: p}
	b.nameOfSelected = markshapes.Box{}
	for _, h := range b.scene.Handles {
		w.write(p.at(h.At), h.Label, 12*b.scale, true)
	}
	for _, l := range b.scene.Lines {
		w.writeAlong(p.guestPath(l), l.Label, 7*b.scale)
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
			box := w.write(p.at(m.At), b.label(m.Spot), b.gap(p, m.Spot), full)
			if b.selected(m.Spot) {
				b.nameOfSelected = box
			}
			w.Further = nil
		}
	}
}

// costOfDetail is what it costs to lie on or close to nothing but sharp edges, such
// as the ticks and numbers of a ruler.
const costOfDetail = 50

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
		line(axis, 3*markshapes.CostOfAxis)
	}
	for _, l := range b.scene.Lines {
		line(p.guestPath(l), markshapes.CostOfArch)
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

// inFull reports whether a mark is named in full. While a point is wanted the
// pointer is about to place it, and what lies under it needs no name.
func (b *Board) inFull(s marking.Spot) bool {
	return b.selected(s) || (b.pointer.over != nil && *b.pointer.over == s && b.scene.Wanted == nil)
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
