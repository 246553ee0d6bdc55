package crowd

import (
	"bytes"
	"image"
	"image/color"
	"image/jpeg"
	"math/rand/v2"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
	"ogive/imaging/marksfile"
	"ogive/imaging/measure"
	"ogive/imaging/photo"
)

// distinct is how many hands differ in their webs; more only repeat them.
const distinct = 20

const (
	width, height = 300, 220 // pixels
	perPixel      = 0.2      // mm
)

// palette is the hands and the pictures that the crowd is made of.
type palette struct {
	with  measure.Settings
	ready map[kind]measure.Result
	marks map[kind]marksfile.File
	skin  *image.RGBA
}

// kind is one of the hands, on one side.
type kind struct {
	n    int
	side hand.Side
}

func hands() (*palette, error) {
	with, err := measure.Defaults()
	return &palette{with: with, ready: map[kind]measure.Result{}, marks: map[kind]marksfile.File{}, skin: skin()}, err
}

// skin is a picture with as much detail as skin has, so that the files are of a
// usual size for their pixels.
func skin() *image.RGBA {
	m := image.NewRGBA(image.Rect(0, 0, width, height))
	rng := rand.New(rand.NewPCG(3, 5))
	for y := range height {
		for x := range width {
			g := uint8(rng.IntN(24))
			m.SetRGBA(x, y, color.RGBA{205 + g, 160 + g, 135 + g, 255})
		}
	}
	return m
}

// picture is a photograph in whose corner squares spell its number.
func (p *palette) picture(n int) []byte {
	m := *p.skin
	m.Pix = bytes.Clone(p.skin.Pix)
	for i := range 24 {
		if n>>i&1 == 1 {
			for k := range 64 {
				m.SetRGBA(i%6*8+k%8, i/6*8+k/8, color.RGBA{40, 110, 90, 255})
			}
		}
	}
	var out bytes.Buffer
	if err := jpeg.Encode(&out, &m, nil); err != nil {
		panic(err) // a buffer takes all
	}
	return out.Bytes()
}

// hand is the marks on photograph n and what they come to.
func (p *palette) hand(n int, side hand.Side) (marksfile.File, measure.Result, error) {
	k := kind{n % distinct, side}
	if r, ok := p.ready[k]; ok {
		return p.marks[k], r, nil
	}
	picture, err := photo.Decode(p.picture(n))
	if err != nil {
		return marksfile.File{}, measure.Result{}, err
	}
	f := marked(k)
	r, err := measure.Subject{Marks: f, Photograph: picture}.Measure(p.with)
	p.marks[k], p.ready[k] = f, r
	return f, r, err
}

// marked is three digits, 30 mm from MCP to PIP, and the two webs between them.
func marked(k kind) marksfile.File {
	f := marksfile.File{Photograph: "a.jpg", Reference: scale.Ruler{From: plane.Pt[plane.Pixel](50, 215), To: plane.Pt[plane.Pixel](250, 215), Length: 200 * perPixel}}
	m := &f.Marks
	m.Side, m.View, m.ClickSD = k.side, hand.Dorsal, 1
	m.Joints = map[hand.Digit]map[hand.Joint]plane.PixelPoint{}
	digits := []hand.Digit{hand.IndexFinger, hand.Middle, hand.Ring}
	webs := []hand.Web{hand.SecondWeb, hand.ThirdWeb}
	at := func(i int) plane.Pixel { // from the radial side
		if k.side == hand.Left {
			return plane.Pixel(250 - 100*i)
		}
		return plane.Pixel(50 + 100*i)
	}
	for i, d := range digits {
		m.Joints[d] = map[hand.Joint]plane.PixelPoint{hand.MCP: plane.Pt(at(i), 200), hand.PIP: plane.Pt(at(i), 50)}
	}
	for i, w := range webs {
		m.Webs = append(m.Webs, hand.WebMarks{Web: w, Edge: border((at(i)+at(i+1))/2, 0.45+0.01*float64((k.n+7*i)%distinct))})
	}
	return f
}

// border is a round arch with its crown at that index.
func border(x plane.Pixel, index float64) []plane.PixelPoint {
	crown := plane.Pt(plane.Millimetre(x)*perPixel, plane.Millimetre(200-150*index)*perPixel)
	a := arch.Arch{Shape: arch.Round, Crown: crown, Axis: plane.Vec[plane.Millimetre](0, -1), Flare: plane.Degrees(6), Turn: plane.RightAngle, Radius: 4}
	var out []plane.PixelPoint
	for _, p := range a.Polyline(5, 0.3) {
		out = append(out, plane.Pt(plane.Pixel(p.X)/perPixel, plane.Pixel(p.Y)/perPixel))
	}
	return out
}
