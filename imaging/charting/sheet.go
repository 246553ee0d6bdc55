package charting

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"math"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font"
	vgfont "gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
)

// sheet lets a drawing be drawn on a page of a PDF. The canvas of gonum/plot
// knows only the letters of Western Europe, and states the time.
type sheet struct {
	doc    *fpdf.Fpdf
	now    state
	stack  []state
	images int
}

// state is a map from the drawing to the page, whose y runs down, and how wide
// lines are.
type state struct {
	xx, xy, yx, yy, x, y float64
	width                vg.Length
	ink                  color.Color
}

var _ vg.Canvas = (*sheet)(nil)

func newSheet(doc *fpdf.Fpdf, height vg.Length) *sheet {
	s := &sheet{doc: doc, now: state{xx: 1, yy: -1, y: height.Points()}}
	vg.Initialize(s)
	return s
}

func (s *sheet) place(p vg.Point) (x, y float64) {
	m, px, py := s.now, p.X.Points(), p.Y.Points()
	return m.xx*px + m.xy*py + m.x, m.yx*px + m.yy*py + m.y
}

// scale is how much larger the page shows a length.
func (s *sheet) scale() float64 { return math.Hypot(s.now.xx, s.now.yx) }

// SetLineWidth is called by gonum/plot, as the other methods are.
func (s *sheet) SetLineWidth(w vg.Length) {
	s.now.width = w
	s.doc.SetLineWidth(w.Points() * s.scale())
}

// SetLineDash sets the dashes of lines, none for a whole line.
func (s *sheet) SetLineDash(pattern []vg.Length, offset vg.Length) {
	dashes := make([]float64, len(pattern))
	for i, d := range pattern {
		dashes[i] = d.Points() * s.scale()
	}
	s.doc.SetDashPattern(dashes, offset.Points()*s.scale())
}

// SetColor sets the colour of lines, grounds and letters.
func (s *sheet) SetColor(c color.Color) {
	if c == nil {
		c = color.Black
	}
	s.now.ink = c
	n := color.NRGBAModel.Convert(c).(color.NRGBA)
	r, g, b := int(n.R), int(n.G), int(n.B)
	s.doc.SetFillColor(r, g, b)
	s.doc.SetDrawColor(r, g, b)
	s.doc.SetTextColor(r, g, b)
	s.doc.SetAlpha(float64(n.A)/0xff, "Normal")
}

// Rotate turns what follows against the clock, in radians.
func (s *sheet) Rotate(rad float64) {
	sin, cos := math.Sincos(rad)
	m := s.now
	s.now.xx, s.now.xy = m.xx*cos+m.xy*sin, m.xy*cos-m.xx*sin
	s.now.yx, s.now.yy = m.yx*cos+m.yy*sin, m.yy*cos-m.yx*sin
}

// Translate moves what follows.
func (s *sheet) Translate(p vg.Point) { s.now.x, s.now.y = s.place(p) }

// Scale enlarges what follows.
func (s *sheet) Scale(x, y float64) {
	s.now.xx, s.now.yx = s.now.xx*x, s.now.yx*x
	s.now.xy, s.now.yy = s.now.xy*y, s.now.yy*y
}

// Push keeps the state as it is.
func (s *sheet) Push() { s.stack = append(s.stack, s.now) }

// Pop takes the state that was kept last.
func (s *sheet) Pop() {
	last := len(s.stack) - 1
	s.now, s.stack = s.stack[last], s.stack[:last]
	s.SetColor(s.now.ink)
	s.SetLineWidth(s.now.width)
}

// Stroke draws a path.
func (s *sheet) Stroke(p vg.Path) {
	if s.now.width > 0 {
		s.path(p, "D")
	}
}

// Fill fills a path.
func (s *sheet) Fill(p vg.Path) { s.path(p, "F") }

func (s *sheet) path(p vg.Path, style string) {
	for _, c := range p {
		switch c.Type {
		case vg.MoveComp:
			s.doc.MoveTo(s.place(c.Pos))
		case vg.LineComp:
			s.doc.LineTo(s.place(c.Pos))
		case vg.ArcComp:
			s.arc(c)
		case vg.CurveComp:
			s.curve(c)
		case vg.CloseComp:
			s.doc.ClosePath()
		}
	}
	s.doc.DrawPath(style)
}

// arc draws an arc by its chords, of at most ten degrees: on the small circles of
// a chart no eye can tell.
func (s *sheet) arc(c vg.PathComp) {
	n := max(int(math.Ceil(math.Abs(c.Angle)/(math.Pi/18))), 1)
	for i := range n + 1 {
		sin, cos := math.Sincos(c.Start + c.Angle*float64(i)/float64(n))
		s.doc.LineTo(s.place(vg.Point{X: c.Pos.X + c.Radius*vg.Length(cos), Y: c.Pos.Y + c.Radius*vg.Length(sin)}))
	}
}

func (s *sheet) curve(c vg.PathComp) {
	x, y := s.place(c.Pos)
	ax, ay := s.place(c.Control[0])
	if len(c.Control) == 1 {
		s.doc.CurveTo(ax, ay, x, y)
		return
	}
	bx, by := s.place(c.Control[1])
	s.doc.CurveBezierCubicTo(ax, ay, bx, by, x, y)
}

// FillString writes a text from its left end on the line.
func (s *sheet) FillString(f vgfont.Face, p vg.Point, text string) {
	style := ""
	if f.Font.Weight == font.WeightBold {
		style = "B"
	}
	s.doc.SetFont(face, style, f.Font.Size.Points()*s.scale())
	x, y := s.place(p)
	turn := math.Atan2(-s.now.yx, s.now.xx) * 180 / math.Pi
	if turn == 0 {
		s.doc.Text(x, y, text)
		return
	}
	s.doc.TransformBegin()
	s.doc.TransformRotate(turn, x, y)
	s.doc.Text(x, y, text)
	s.doc.TransformEnd()
}

// DrawImage draws an image upright into a rectangle.
func (s *sheet) DrawImage(r vg.Rectangle, img image.Image) {
	var data bytes.Buffer
	if err := png.Encode(&data, img); err != nil {
		s.doc.SetError(fmt.Errorf("an image can't be drawn: %w", err))
		return
	}
	s.images++
	name := fmt.Sprint("image ", s.images)
	as := fpdf.ImageOptions{ImageType: "png"}
	s.doc.RegisterImageOptionsReader(name, as, &data)
	x, bottom := s.place(r.Min)
	right, y := s.place(r.Max)
	s.doc.SetAlpha(1, "Normal")
	s.doc.ImageOptions(name, x, y, right-x, bottom-y, false, as, 0, "")
	s.SetColor(s.now.ink)
}
