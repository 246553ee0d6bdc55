package look

import (
	"bytes"
	"fmt"
	"math"
	"strings"

	"github.com/fyne-io/oksvg"
	"golang.org/x/image/math/fixed"
)

// Fyne gives a themed icon its colour by the fill of its shapes and leaves
// strokes as they are. Icons are drawn with round strokes, so each is turned
// into the shapes that its strokes cover. What is filled says stroke-width="0".

// outlined is the drawing with every stroke as filled shapes.
func outlined(svg []byte) ([]byte, error) {
	icon, err := oksvg.ReadIconStream(bytes.NewReader(svg), oksvg.StrictErrorMode)
	if err != nil {
		return nil, err
	}
	var out strings.Builder
	fmt.Fprintf(&out, `<svg xmlns="http://www.w3.org/2000/svg" width="%[1]g" height="%[2]g" viewBox="0 0 %[1]g %[2]g">`, icon.ViewBox.W, icon.ViewBox.H)
	for _, p := range icon.SVGPaths {
		var f flattener
		p.Path.AddTo(&f)
		var shape strings.Builder
		for _, line := range f.lines {
			if p.LineWidth == 0 {
				writePolygon(&shape, line)
				continue
			}
			for i := 1; i < len(line); i++ {
				writeCapsule(&shape, line[i-1], line[i], p.LineWidth/2)
			}
		}
		fmt.Fprintf(&out, `<path fill="#000000" d="%s"/>`, shape.String())
	}
	out.WriteString("</svg>")
	return []byte(out.String()), nil
}

type at struct{ x, y float64 }

func writePolygon(w *strings.Builder, line []at) {
	for i, p := range line {
		command := 'L'
		if i == 0 {
			command = 'M'
		}
		fmt.Fprintf(w, "%c%.3f %.3f", command, p.x, p.y)
	}
	w.WriteString("z")
}

// writeCapsule is the ground that a round pen covers from a to b. All capsules
// run the same way round, so that they unite under the non-zero rule.
func writeCapsule(w *strings.Builder, a, b at, half float64) {
	const steps = 10
	along := math.Atan2(b.y-a.y, b.x-a.x)
	var line []at
	for end, p := range []at{a, b} {
		for i := range steps + 1 {
			sin, cos := math.Sincos(along + math.Pi*(0.5+float64(end)+float64(i)/steps))
			line = append(line, at{p.x + half*cos, p.y + half*sin})
		}
	}
	writePolygon(w, line)
}

// flattener takes a path as straight lines.
type flattener struct{ lines [][]at }

const curveSteps = 12

func (f *flattener) last() *[]at { return &f.lines[len(f.lines)-1] }

func (f *flattener) add(p at) { *f.last() = append(*f.last(), p) }

func (f *flattener) from() at { l := *f.last(); return l[len(l)-1] }

func (f *flattener) Start(a fixed.Point26_6) { f.lines = append(f.lines, []at{unfixed(a)}) }
func (f *flattener) Line(b fixed.Point26_6)  { f.add(unfixed(b)) }

func (f *flattener) QuadBezier(b, c fixed.Point26_6) {
	p, q, r := f.from(), unfixed(b), unfixed(c)
	third := func(a at) at { return at{a.x + (q.x-a.x)*2/3, a.y + (q.y-a.y)*2/3} }
	f.cube(p, third(p), third(r), r)
}

func (f *flattener) CubeBezier(b, c, d fixed.Point26_6) {
	f.cube(f.from(), unfixed(b), unfixed(c), unfixed(d))
}

func (f *flattener) cube(p, q, r, s at) {
	for i := 1; i <= curveSteps; i++ {
		t := float64(i) / curveSteps
		u := 1 - t
		a, b, c, d := u*u*u, 3*u*u*t, 3*u*t*t, t*t*t
		f.add(at{a*p.x + b*q.x + c*r.x + d*s.x, a*p.y + b*q.y + c*r.y + d*s.y})
	}
}

func (f *flattener) Stop(closed bool) {
	if closed {
		f.add((*f.last())[0])
	}
}

func unfixed(p fixed.Point26_6) at { return at{float64(p.X) / 64, float64(p.Y) / 64} }
