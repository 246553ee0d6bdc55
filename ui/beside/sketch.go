package beside

import (
	"image"
	"image/color"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
	"github.com/fogleman/gg"

	"ogive/geometry/comparison"
	"ogive/geometry/plane"
	"ogive/imaging/palette"
	"ogive/ui/flow"
	"ogive/ui/look"
)

// sketchSide and sketchRise are the size of a sketch on the screen.
const sketchSide, sketchRise = 168, 126

// view is what part of a web's plane the sketches show, the same for all webs so
// that they can be compared by eye.
type view struct {
	width  plane.Millimetre
	middle plane.Millimetre // below the middle of the sketch lies the origin by so much
}

// viewWidths are the widths a view can have.
var viewWidths = []plane.Millimetre{8, 12, 18, 25, 35, 50, 70, 100, 150}

// scaleFor is the least view that shows both arches of every web.
func scaleFor(webs []comparison.Web) view {
	left, right, top, bottom := 0.0, 0.0, 0.0, 0.0
	for _, w := range webs {
		if w.Overlay == nil {
			continue
		}
		for _, line := range [][]plane.Position{w.Overlay.Operated, w.Overlay.Other} {
			for _, q := range line {
				left, right = math.Min(left, float64(q.X)), math.Max(right, float64(q.X))
				top, bottom = math.Min(top, float64(q.Y)), math.Max(bottom, float64(q.Y))
			}
		}
	}
	need := math.Max(2.3*math.Max(-left, right), 1.25*(bottom-top)*sketchSide/sketchRise)
	v := view{width: viewWidths[len(viewWidths)-1], middle: plane.Millimetre((top + bottom) / 2)}
	for _, w := range viewWidths {
		if float64(w) >= need {
			v.width = w
			break
		}
	}
	return v
}

// bar is the length of the scale's bar, 1 to 20 mm.
func (v view) bar() plane.Millimetre {
	for _, b := range []plane.Millimetre{20, 10, 5, 2} {
		if b <= v.width*0.35 {
			return b
		}
	}
	return 1
}

// drawSketch draws both arches over each other at true proportion, skin below
// the operated one.
func drawSketch(o *comparison.Overlay, v view, w, h int) image.Image {
	c := gg.NewContext(max(w, 1), max(h, 1))
	if o == nil || w <= 0 || h <= 0 || v.width <= 0 {
		return c.Image()
	}
	px, k := float64(w)/sketchSide, float64(w)/float64(v.width)
	at := func(q plane.Position) (x, y float64) {
		return float64(w)/2 + float64(q.X)*k, float64(h)/2 + float64(q.Y-v.middle)*k
	}
	path := func(line []plane.Position) {
		for _, q := range line {
			c.LineTo(at(q))
		}
	}
	c.DrawRoundedRectangle(0, 0, float64(w), float64(h), 4*px)
	c.Clip()
	if n := len(o.Operated); n > 1 {
		path([]plane.Position{onward(o.Operated[1], o.Operated[0], 2*v.width)})
		path(o.Operated)
		path([]plane.Position{onward(o.Operated[n-2], o.Operated[n-1], 2*v.width)})
		first, _ := at(o.Operated[0])
		last, _ := at(o.Operated[n-1])
		first, last = beyond(first, float64(w)), beyond(last, float64(w))
		c.LineTo(last, -float64(h))
		c.LineTo(last, 2*float64(h))
		c.LineTo(first, 2*float64(h))
		c.LineTo(first, -float64(h))
		c.ClosePath()
		c.SetColor(look.Colour(look.Skin))
		c.Fill()
	}
	stroke(c, px, palette.Cores[palette.Arch], 3.2, nil, func() { path(o.Operated) })
	stroke(c, px, palette.Ghost, 1.8, []float64{5, 5}, func() { path(o.Other) })
	drawBar(c, float64(v.bar())*k, px, float64(h))
	return c.Image()
}

// onward is the end of a straight border drawn on from a through b.
func onward(a, b plane.Position, by plane.Millimetre) plane.Position {
	return b.Add(b.Sub(a).Direction().Scale(float64(by)))
}

// beyond is outside the side of the sketch on which x lies.
func beyond(x, w float64) float64 { return x + math.Copysign(w, x-w/2) }

// stroke is a line with a light core in a dark casing, as on the photograph.
func stroke(c *gg.Context, px float64, core color.Color, width float64, dash []float64, path func()) {
	c.SetLineJoinRound()
	for i, d := range dash {
		dash[i] = d * px
	}
	c.SetDash(dash...)
	path()
	c.SetColor(look.Casing())
	c.SetLineWidth((width + 2.4) * px)
	c.StrokePreserve()
	c.SetColor(core)
	c.SetLineWidth(width * px)
	c.Stroke()
	c.SetDash()
}

func drawBar(c *gg.Context, length, px, h float64) {
	x, y := 6*px, h-6*px
	c.SetColor(look.Colour(theme.ColorNameForeground))
	c.SetLineWidth(1.5 * px)
	c.MoveTo(x, y-3*px)
	c.LineTo(x, y)
	c.LineTo(x+length, y)
	c.LineTo(x+length, y-3*px)
	c.Stroke()
}

// key tells which arch is which.
type key struct {
	widget.BaseWidget
	lines *canvas.Raster
	names [2]*canvas.Text
}

func newKey() *key {
	k := &key{}
	for i := range k.names {
		k.names[i] = canvas.NewText("", nil)
	}
	k.lines = canvas.NewRaster(k.draw)
	k.ExtendBaseWidget(k)
	return k
}

func (k *key) show(sittings bool) {
	k.names[0].Text, k.names[1].Text = lang.L("operated hand"), lang.L("other hand, mirrored")
	if sittings {
		k.names[0].Text, k.names[1].Text = lang.L("later"), lang.L("earlier")
	}
	k.Refresh()
}

const keyLine = 34

// HeightAt is called by flow.
func (k *key) HeightAt(width float32) float32 {
	x := float32(4)
	for _, t := range k.names {
		t.Color, t.TextSize = look.Colour(look.SecondInk), look.Size(theme.SizeNameCaptionText)
		flow.Put(t, x+keyLine+6, 4, width, t.MinSize().Height)
		x += keyLine + 6 + t.MinSize().Width + 18
	}
	flow.Put(k.lines, 0, 4, width, k.names[0].MinSize().Height)
	return k.names[0].MinSize().Height + 12
}

func (k *key) draw(w, h int) image.Image {
	c := gg.NewContext(max(w, 1), max(h, 1))
	if k.Size().Width <= 0 {
		return c.Image()
	}
	px := float64(w) / float64(k.Size().Width)
	for i, t := range k.names {
		x, y := float64(t.Position().X-keyLine-6)*px, float64(h)/2
		line := func() { c.MoveTo(x+4*px, y); c.LineTo(x+keyLine*px, y) }
		if i == 0 {
			stroke(c, px, palette.Cores[palette.Arch], 3.2, nil, line)
		} else {
			stroke(c, px, palette.Ghost, 1.8, []float64{5, 5}, line)
		}
	}
	return c.Image()
}

// CreateRenderer is called by Fyne.
func (k *key) CreateRenderer() fyne.WidgetRenderer {
	return flow.NewRenderer(k.HeightAt, func() { k.HeightAt(k.Size().Width) }, k.lines, k.names[0], k.names[1])
}
