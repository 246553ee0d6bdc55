package sheet

import (
	"image"

	"golang.org/x/image/draw"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/imaging/markshapes"
	"ogive/imaging/palette"
	"ogive/imaging/photo"
	"ogive/imaging/planning"
)

// clearest is the pixels across the marked photograph.
const clearest = 1700

// marked is the photograph with the plan drawn on it in the lines of the sheet:
// dark cores in a pale casing, the same dashes as on paper.
func marked(photograph *photo.Photograph, p planning.Plan, here planning.Hand) *image.RGBA {
	whole := photograph.Picture()
	view := framed(whole.Rect, p, here)
	scale := float64(clearest) / float64(view.Dx())
	img := image.NewRGBA(image.Rect(0, 0, clearest, max(1, int(scale*float64(view.Dy())))))
	draw.CatmullRom.Scale(img, img.Rect, whole, view, draw.Src, nil)
	m := marker{
		pen: markshapes.NewPen(img, 1, 2),
		to: func(q plane.PixelPoint) markshapes.Spot {
			return markshapes.XY((float64(q.X)-float64(view.Min.X))*scale, (float64(q.Y)-float64(view.Min.Y))*scale)
		},
	}
	for _, w := range p.Webs {
		m.joints(w.Web, here.Ground.Marks)
		if w.Join != nil {
			m.line(JoinLine, w.Join.Pixels[:])
		}
		for i, a := range w.Alternatives {
			if w.Chosen < 0 || w.Chosen == i {
				m.alternative(a)
			}
		}
	}
	return img
}

// marker draws on the photograph.
type marker struct {
	pen *markshapes.Pen
	to  func(plane.PixelPoint) markshapes.Spot
}

func (m marker) alternative(a planning.Alternative) {
	for _, face := range []struct {
		cut  *planning.Cut
		kind Kind
	}{{a.Palmar, PalmarZigzag}, {a.Dorsal, DorsalZigzag}} {
		if face.cut != nil {
			m.line(face.kind, face.cut.Pixels)
		}
	}
	if a.Flap != nil && len(a.Flap.Pixels) > 2 {
		last := len(a.Flap.Pixels) - 1
		m.line(BaseLine, []plane.PixelPoint{a.Flap.Pixels[last], a.Flap.Pixels[0]})
		m.line(FlapOutline, a.Flap.Pixels)
	}
	if a.Arch != nil {
		m.line(ArchLine, a.Arch.Pixels)
	}
}

// enlarged is the pixels that a millimetre of a printed line's width and dashes
// takes on the photograph.
const enlarged = 9.0

func (m marker) line(k Kind, points []plane.PixelPoint) {
	s := k.style()
	var path []markshapes.Spot
	for _, q := range points {
		path = append(path, m.to(q))
	}
	var dash []float64
	for _, d := range s.dash {
		dash = append(dash, d*enlarged)
	}
	casing := 4.0
	if !s.cut {
		casing = 1.5
	}
	m.pen.Plain(palette.Paper, s.width*enlarged+casing, path)
	m.pen.PlainDashed(s.ink, s.width*enlarged, dash, path)
}

func (m marker) joints(w hand.Web, marks hand.Marks) {
	radial, ulnar := w.Digits()
	for _, d := range []hand.Digit{radial, ulnar} {
		for _, j := range []hand.Joint{hand.MCP, hand.PIP} {
			if q, ok := marks.Joints[d][j]; ok {
				m.pen.Joint(j, m.to(q), 8)
			}
		}
	}
}

// framed is the part of the photograph that is printed: all of it, unless the
// plan would be lost in it.
func framed(whole image.Rectangle, p planning.Plan, here planning.Hand) image.Rectangle {
	var b image.Rectangle
	add := func(points ...plane.PixelPoint) {
		for _, q := range points {
			at := image.Pt(int(q.X), int(q.Y))
			b = b.Union(image.Rectangle{Min: at, Max: at.Add(image.Pt(1, 1))})
		}
	}
	for _, w := range p.Webs {
		radial, ulnar := w.Web.Digits()
		for _, d := range []hand.Digit{radial, ulnar} {
			for _, q := range here.Ground.Marks.Joints[d] {
				add(q)
			}
		}
		for _, a := range w.Alternatives {
			if a.Arch != nil {
				add(a.Arch.Pixels...)
			}
			if a.Flap != nil {
				add(a.Flap.Pixels...)
			}
		}
	}
	if b.Empty() {
		return whole
	}
	const around = 2.4 // sizes of the plan that are shown
	width := int(around * float64(max(b.Dx(), b.Dy()*4/3)))
	height := width * 3 / 4
	if width >= whole.Dx() || height >= whole.Dy() {
		return whole
	}
	corner := b.Min.Add(b.Max).Div(2).Sub(image.Pt(width/2, height/2))
	corner.X = min(max(corner.X, whole.Min.X), whole.Max.X-width)
	corner.Y = min(max(corner.Y, whole.Min.Y), whole.Max.Y-height)
	return image.Rectangle{Min: corner, Max: corner.Add(image.Pt(width, height))}
}

// keyOfPhotograph are the kinds drawn on the photograph.
func (g *gatherer) keyOfPhotograph() []Kind {
	var out []Kind
	for _, k := range kindsOf(g.content.Pieces) {
		if k != GraftOutline {
			out = append(out, k)
		}
	}
	return out
}
