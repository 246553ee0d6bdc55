package guide

import (
	"fmt"
	"image"
	"image/color"
	"math"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
	"github.com/fogleman/gg"

	"ogive/geometry/hand"
	"ogive/geometry/scale"
	"ogive/ui/look"
	"ogive/ui/marking"
)

// picture is the small drawing of the hand with the wanted point ringed.
type picture struct {
	widget.BaseWidget
	state  marking.State
	wanted *marking.Spot
	drawn  string // what the raster shows
	raster *canvas.Raster
	ring   *canvas.Circle
	pulse  *fyne.Animation
}

func newPicture() *picture {
	p := &picture{ring: canvas.NewCircle(color.Transparent)}
	p.raster = canvas.NewRaster(p.draw)
	p.ring.StrokeWidth = 3
	p.ring.Hide()
	p.ExtendBaseWidget(p)
	return p
}

func (p *picture) CreateRenderer() fyne.WidgetRenderer { return pictureRenderer{p} }

// show draws the state; a spot that was not wanted before draws the eye to
// itself once.
func (p *picture) show(s marking.State, wanted *marking.Spot) {
	moved := wanted != nil && (p.wanted == nil || *wanted != *p.wanted)
	p.state, p.wanted = s, wanted
	if now := contents(s, wanted); now != p.drawn {
		p.drawn = now
		p.raster.Refresh()
	}
	if !moved {
		return
	}
	if p.pulse != nil {
		p.pulse.Stop()
		p.pulse = nil
	}
	p.ring.Hide()
	if fyne.CurrentApp().Settings().ShowAnimations() {
		p.startPulse()
	}
}

// contents tells apart all pictures that differ: where a point lies on the
// photograph changes nothing.
func contents(s marking.State, wanted *marking.Spot) string {
	var b strings.Builder
	fmt.Fprint(&b, s.Side, s.View, s.Method)
	if wanted != nil {
		fmt.Fprintf(&b, "%+v", *wanted)
	}
	for _, spot := range s.Order() {
		_, placed := s.Points[spot]
		fmt.Fprint(&b, placed, s.Skipped[spot])
	}
	return b.String()
}

// startPulse lets a ring close in on the wanted point.
func (p *picture) startPulse() {
	p.ring.StrokeColor = look.Colour(look.Accent)
	p.ring.Show()
	p.pulse = fyne.NewAnimation(canvas.DurationStandard*2, func(done float32) {
		if p.wanted == nil || done >= 1 {
			p.ring.Hide()
			return
		}
		at := p.frame(p.Size()).at(place(p.state, *p.wanted))
		r := ringRadius + (1-done)*3*ringRadius
		p.ring.Resize(fyne.NewSquareSize(2 * r))
		p.ring.Move(fyne.NewPos(float32(at.x)-r, float32(at.y)-r))
		p.ring.Refresh()
	})
	p.pulse.Curve = fyne.AnimationEaseOut
	p.pulse.Start()
}

const ringRadius = 13

// roomForMarks is the height from which on marks are drawn at their usual size.
const roomForMarks = 170

// leastPicture is the height at which the wanted point can just be told; in a low
// window the picture gives way before the sentence does.
const leastPicture = 84

type pictureRenderer struct{ p *picture }

func (r pictureRenderer) Layout(size fyne.Size) { r.p.raster.Resize(size) }
func (r pictureRenderer) MinSize() fyne.Size    { return fyne.NewSize(200, leastPicture) }
func (r pictureRenderer) Refresh()              { r.p.raster.Refresh() }
func (r pictureRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.p.raster, r.p.ring}
}
func (r pictureRenderer) Destroy() {}

// frame maps the drawing onto a rectangle, mirrored for the hands whose thumb
// points the other way.
type frame struct {
	centre, middle spot
	k              float64
	mirrored       bool
}

func (f frame) at(p spot) spot {
	q := p.sub(f.centre).times(f.k)
	if f.mirrored {
		q.x = -q.x
	}
	return f.middle.add(q)
}

// frame shows what matters for the wanted spot: the hand, the hand and the
// reference, two fingers with their web, or the web from the side.
func (p *picture) frame(size fyne.Size) frame {
	low, high := spot{8, 0}, spot{166, 244}
	switch {
	case p.state.View == hand.WebView && (p.wanted == nil || p.wanted.Kind != marking.ScalePoint):
		low, high = spot{0, 78}, spot{230, 222}
	case p.wanted == nil:
	case p.wanted.Kind == marking.ScalePoint && p.state.Method == scale.ByCard:
		high.x = 246
	case p.wanted.Kind == marking.ScalePoint:
		high = spot{202, 238}
	case p.wanted.Kind == marking.SeedPoint:
		three := webPlaces(p.wanted.Web)
		middle := three[0].to(three[2], 0.5).to(three[1], 0.45)
		low, high = middle.add(spot{-44, -44}), middle.add(spot{44, 44})
	}
	w, h := float64(size.Width), float64(size.Height)
	extent := high.sub(low)
	return frame{
		centre:   low.to(high, 0.5),
		middle:   spot{w / 2, h / 2},
		k:        math.Min(w/extent.x, h/extent.y),
		mirrored: mirrored(p.state.Side, p.state.View),
	}
}

// mirrored reports whether the thumb lies on the right: on the back of a left
// hand and on the palm of a right one, fingers up. From the side, the back is up
// for both hands and the tips point to the thumb's other side.
func mirrored(s hand.Side, v hand.View) bool { return (s == hand.Left) != (v == hand.Palmar) }

// pen draws in the frame, in device pixels.
type pen struct {
	*gg.Context
	f  frame
	px float64 // a unit of the screen
}

func (p *picture) draw(w, h int) image.Image {
	if w <= 0 || h <= 0 || p.Size().Width <= 0 {
		return image.NewRGBA(image.Rect(0, 0, max(w, 1), max(h, 1)))
	}
	unit := float64(w) / float64(p.Size().Width)
	d := pen{gg.NewContext(w, h), p.frame(fyne.NewSize(float32(w), float32(h))), unit}
	d.SetLineCapRound()
	d.SetLineJoinRound()
	if p.state.View == hand.WebView && (p.wanted == nil || p.wanted.Kind != marking.ScalePoint) {
		d.side()
	} else {
		d.hand(p.state.View)
	}
	if p.wanted != nil && p.wanted.Kind == marking.ScalePoint {
		d.reference(p.state.Method)
	}
	d.px *= min(1, float64(p.Size().Height)/roomForMarks) // or a ring hides the hand
	d.marks(p.state, p.wanted)
	return d.Image()
}

func (d pen) trace(line []spot) {
	for i, q := range line {
		at := d.f.at(q)
		if i == 0 {
			d.MoveTo(at.x, at.y)
			continue
		}
		d.LineTo(at.x, at.y)
	}
}

func (d pen) line(width float64, line []spot) {
	d.trace(line)
	d.SetLineWidth(width * d.px)
	d.Stroke()
}

// body fills the shapes as one, with one outline around them all.
func (d pen) body(fill color.Color, shapes ...[]spot) {
	for _, s := range shapes {
		d.trace(s)
		d.ClosePath()
		d.SetColor(look.Colour(look.SkinLine))
		d.SetLineWidth(3 * d.px)
		d.Stroke()
	}
	for _, s := range shapes {
		d.trace(s)
		d.ClosePath()
		d.SetColor(fill)
		d.Fill()
	}
}

func (d pen) hand(v hand.View) {
	skin := look.Colour(look.Skin)
	if v == hand.Palmar {
		skin = look.Colour(look.PalmSkin)
	}
	shapes := [][]spot{palm, thumbRoot}
	for _, f := range hand.Digits {
		shapes = append(shapes, fingers[f].outline())
	}
	for _, w := range hand.Webs {
		radial, ulnar := w.Digits()
		shapes = append(shapes, append([]spot{fingers[radial].at(0, 0.6)}, append(webEdge(w), fingers[ulnar].at(0, -0.6))...))
	}
	d.body(skin, shapes...)
	d.SetColor(look.Colour(look.SkinLine))
	if v == hand.Palmar {
		d.creases()
		return
	}
	d.back()
}

// thumbRoot joins the thumb to the palm.
var thumbRoot = []spot{{31, 168}, {48, 154}, {70, 150}, {84, 214}, {68, 214}, {50, 198}, {36, 182}}

// back draws nails, wrinkles and knuckles.
func (d pen) back() {
	for _, digit := range hand.Digits {
		f := fingers[digit]
		d.nail(f)
		at, dip := pipAt, dipAt
		if digit == hand.Thumb {
			at, dip = pipAt, pipAt
		}
		for _, off := range []float64{-0.028, 0, 0.028} {
			d.wrinkle(f, at+off, 0.55-4*math.Abs(off), -0.012)
		}
		if dip != at {
			d.wrinkle(f, dip, 0.45, -0.008)
		}
		if digit != hand.Thumb {
			d.wrinkle(f, -0.045, 0.62, -0.05)
			d.wrinkle(f, 0.05, 0.45, 0.03)
		}
	}
}

// wrinkle is a shallow arc across a finger, bent towards the tip by bend.
func (d pen) wrinkle(f finger, t, half, bend float64) {
	var line []spot
	for i := range 9 {
		s := float64(i)/4 - 1
		line = append(line, f.at(t+bend*s*s, s*half))
	}
	d.line(0.9, line)
}

func (d pen) nail(f finger) {
	line := []spot{f.at(0.99, -0.5), f.at(0.9, -0.62), f.at(0.85, -0.5), f.at(0.83, 0), f.at(0.85, 0.5), f.at(0.9, 0.62), f.at(0.99, 0.5)}
	d.trace(smooth(line, false))
	d.SetLineWidth(1.1 * d.px)
	d.Stroke()
}

// creases draws the creases of the palm.
func (d pen) creases() {
	for _, digit := range hand.Digits {
		f := fingers[digit]
		if digit == hand.Thumb {
			d.wrinkle(f, pipAt, 0.85, 0)
			d.wrinkle(f, 0.05, 0.8, 0.02)
			continue
		}
		d.wrinkle(f, pipAt*basalCrease, 0.95, 0.015)
		d.wrinkle(f, pipAt*basalCrease+0.035, 0.7, 0.01)
		d.wrinkle(f, pipAt-0.012, 0.9, 0)
		d.wrinkle(f, pipAt+0.018, 0.75, 0)
		d.wrinkle(f, dipAt, 0.85, 0)
	}
	d.line(1.1, smooth([]spot{{145, 146}, {122, 138}, {96, 134}, {80, 124}}, false))
	d.line(1.1, smooth([]spot{{49, 150}, {72, 147}, {104, 156}, {132, 170}}, false))
	d.line(1.1, smooth([]spot{{49, 150}, {70, 158}, {86, 182}, {88, 216}}, false))
}

// side draws the web view.
func (d pen) side() {
	whole := append(append([]spot{}, sideBack...), sidePalm...)
	d.body(look.Colour(look.PalmSkin), whole)
	d.trace(append(append([]spot{}, sideBack...), reversed(sideJunction)...))
	for _, q := range []spot{{0, 112}, {0, 88}} {
		at := d.f.at(q)
		d.LineTo(at.x, at.y)
	}
	d.ClosePath()
	d.SetColor(look.Colour(look.Skin))
	d.Fill()
	d.SetColor(look.Colour(look.SkinLine))
	d.line(1.6, sideBack)
	d.SetDash(1.5*d.px, 4*d.px)
	d.line(1.2, sideJunction)
	d.SetDash()
	d.line(1.1, smooth([]spot{{190, 118}, {197, 124}, {208, 128}, {219, 130}}, false))
	for _, x := range []float64{134, 140, 146} {
		d.line(0.9, []spot{{x, 112}, {x - 1, 118}})
	}
	d.body(look.Colour(look.PalmSkin), sideNear)
	d.SetColor(look.Colour(look.SkinLine))
	d.line(1, smooth([]spot{{50, 158}, {60, 172}, {60, 192}, {50, 206}}, false))
}

func reversed(line []spot) []spot {
	out := make([]spot, len(line))
	for i, q := range line {
		out[len(line)-1-i] = q
	}
	return out
}

func (d pen) reference(m scale.Method) {
	if m == scale.ByCard {
		a, c := cardCorners[0], cardCorners[2]
		d.SetColor(look.Colour(look.Card))
		d.rounded(a, c, 7)
		d.FillPreserve()
		d.SetColor(look.Colour(theme.ColorNameForeground))
		d.SetLineWidth(1.4 * d.px)
		d.Stroke()
		d.SetDash(3*d.px, 3*d.px)
		for i, q := range cardCorners {
			next := cardCorners[(i+1)%4]
			d.line(0.8, []spot{q.to(next, -0.06), next.to(q, -0.06)})
		}
		d.SetDash()
		return
	}
	a, c := spot{174, 30}, spot{196, 228}
	d.SetColor(look.Colour(look.Card))
	d.rounded(a, c, 2)
	d.FillPreserve()
	d.SetColor(look.Colour(theme.ColorNameForeground))
	d.SetLineWidth(1.4 * d.px)
	d.Stroke()
	const ticks = 20
	for i := range ticks + 1 {
		y := rulerTicks[0].y + (rulerTicks[1].y-rulerTicks[0].y)*float64(i)/ticks
		long := 5.0
		if i%5 == 0 {
			long = 10
		}
		d.line(1, []spot{{a.x, y}, {a.x + long, y}})
	}
}

func (d pen) rounded(a, c spot, r float64) {
	p, q := d.f.at(a), d.f.at(c)
	d.DrawRoundedRectangle(math.Min(p.x, q.x), p.y, math.Abs(q.x-p.x), q.y-p.y, r*d.f.k)
}
