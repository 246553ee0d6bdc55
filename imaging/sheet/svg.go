package sheet

import (
	"encoding/xml"
	"fmt"
	"math"
	"slices"
	"strings"
)

// svgWidth is how wide the drawing for a cutter may become before pieces are put
// below each other, in millimetres.
const svgWidth = 280.0

// SVG is the outlines at true size for a cutter, one unit being one millimetre.
// Every kind of line is a group of its own with its own colour, named by its id:
// arch, flap, zigzag-dorsal, zigzag-palmar and graft are to be cut; base, join,
// check (two bars of 50 mm), landmarks and words are to be drawn or left out. It
// fails on a piece that no hand has.
func (c Content) SVG() ([]byte, error) {
	if err := c.check(); err != nil {
		return nil, err
	}
	d := svgDrawing{layers: map[string]*strings.Builder{}}
	d.bars()
	for _, page := range pack(c.cutPieces(), svgWindow(c), svgWords) {
		for _, p := range page {
			d.piece(p)
		}
	}
	return d.written(c), nil
}

// cutPieces are the pieces that a cutter gets.
func (c Content) cutPieces() []Piece {
	return slices.DeleteFunc(slices.Clone(c.Pieces), func(p Piece) bool { return p.Together })
}

// svgWindow is where pieces may lie: below the level bar, beside the upright
// one, as wide as the widest piece and as long as it takes.
func svgWindow(c Content) box {
	width := svgWidth
	for _, p := range c.cutPieces() {
		width = max(width, p.bounds().width())
	}
	return box{8 + barSide, 16, 8 + barSide + width, math.MaxInt32}
}

func svgWords(Piece, float64) float64 { return 6 }

// svgDrawing gathers a drawing by its layers.
type svgDrawing struct {
	layers        map[string]*strings.Builder
	right, bottom float64
}

func (d *svgDrawing) layer(id string) *strings.Builder {
	if d.layers[id] == nil {
		d.layers[id] = &strings.Builder{}
	}
	return d.layers[id]
}

func (d *svgDrawing) reach(x, y float64) { d.right, d.bottom = max(d.right, x), max(d.bottom, y) }

// bars are two check bars from the upper left corner, each from the middle of
// one end stroke to that of the other.
func (d *svgDrawing) bars() {
	const x, y = 12.0, 8.0
	fmt.Fprintf(d.layer("check"), `<path d="M%[1]g %[2]gh50M%[1]g %[2]gv50`, x, y)
	for _, s := range []float64{0, barLength} {
		fmt.Fprintf(d.layer("check"), "M%g %gv4M%g %gh4", x+s, y-2, x-2, y+s)
	}
	d.layer("check").WriteString("\"/>\n")
	d.write(x+barLength+3, y+1, "50 mm both ways: measure before cutting")
	d.reach(x+barLength+70, y+barLength+4)
}

func (d *svgDrawing) write(x, y float64, text string) {
	fmt.Fprintf(d.layer("words"), `<text x="%s" y="%s">`, mm(x), mm(y))
	// Text may hold what a mark-up language takes for its own.
	if err := xml.EscapeText(d.layer("words"), []byte(plain(text))); err != nil {
		panic("sheet: writing to memory failed: " + err.Error())
	}
	d.layer("words").WriteString("</text>\n")
}

func (d *svgDrawing) piece(p placed) {
	d.write(p.cell.left, p.cell.top+3, p.piece.Name)
	for _, o := range p.piece.Outlines {
		if len(o.Points) < 2 {
			continue
		}
		to := d.layer(o.Kind.style().id)
		to.WriteString(`<path d="`)
		for i, q := range o.Points {
			sign := "L"
			if i == 0 {
				sign = "M"
			}
			fmt.Fprintf(to, "%s%s %s", sign, mm(p.x+float64(q.X)), mm(p.y+float64(q.Y)))
		}
		if o.Closed {
			to.WriteString("Z")
		}
		to.WriteString("\"/>\n")
	}
	for _, l := range p.piece.Landmarks {
		x, y := p.x+float64(l.At.X), p.y+float64(l.At.Y)
		fmt.Fprintf(d.layer("landmarks"), `<path d="M%s %sh3M%s %sv3"/>`+"\n", mm(x-1.5), mm(y), mm(x), mm(y-1.5))
		d.write(x+1, y+3, l.Name)
	}
	d.reach(p.cell.right+8, p.cell.bottom+8)
}

// mm is a length in millimetres, to a thousandth.
func mm(x float64) string { return fmt.Sprintf("%.3f", x) }

func (d *svgDrawing) written(c Content) []byte {
	var out strings.Builder
	fmt.Fprintf(&out, `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" width="%[1]smm" height="%[2]smm" viewBox="0 0 %[1]s %[2]s" fill="none" stroke-width="0.1" stroke-linejoin="round">
<title>Plan, true size</title>
<desc>`, mm(d.right), mm(d.bottom))
	for i, line := range []string{c.codeLine(), c.Scale, c.Caution, "One unit is one millimetre. Cut the groups arch, flap, zigzag-dorsal, zigzag-palmar and graft; draw or leave out the others."} {
		if i > 0 {
			out.WriteString("\n")
		}
		if err := xml.EscapeText(&out, []byte(plain(line))); err != nil {
			panic("sheet: writing to memory failed: " + err.Error())
		}
	}
	out.WriteString("</desc>\n")
	for _, k := range kinds {
		s := k.style()
		d.group(&out, s.id, fmt.Sprintf(`stroke="#%02x%02x%02x"`, s.ink.R, s.ink.G, s.ink.B))
	}
	d.group(&out, "check", `stroke="#000000"`)
	d.group(&out, "landmarks", `stroke="#5a6068"`)
	d.group(&out, "words", `fill="#5a6068" font-family="sans-serif" font-size="3"`)
	out.WriteString("</svg>\n")
	return []byte(out.String())
}

func (d *svgDrawing) group(to *strings.Builder, id, look string) {
	if l := d.layers[id]; l != nil {
		fmt.Fprintf(to, "<g id=%q %s>\n%s</g>\n", id, look, l.String())
	}
}
