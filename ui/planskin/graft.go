package planskin

import (
	"fmt"
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"github.com/fogleman/gg"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/skinbudget"
	"ogive/imaging/planning"
	"ogive/imaging/wording"
	"ogive/ui/column"
	"ogive/ui/flow"
	"ogive/ui/look"
)

// graft is the templates of the graft, drawn to one scale.
type graft struct {
	heading, note *column.Text
	drawing       *column.Block
	raster        *canvas.Raster
	names         []*canvas.Text
	bar           *canvas.Text
	shapes        []shape
}

// shape is an outline whose length lies along x, with what it is.
type shape struct {
	name          string
	length, width plane.Millimetre
	outline       []plane.Position // within length and width, from the top left corner
	at            float32          // where its top lies in the drawing
}

// mostShapes are two patches and the spindle.
const mostShapes = 3

func newGraft() *graft {
	g := &graft{heading: column.Heading(lang.L("The graft, to scale")), bar: canvas.NewText("10 mm", nil)}
	g.note = column.Remark(lang.L("Templates to begin cutting from: cut the graft to the bed as it lies, with darts where it must bend. They are at true size on the sheet, not on the screen."))
	g.raster = canvas.NewRaster(g.draw)
	parts := []fyne.CanvasObject{g.raster, g.bar}
	for range mostShapes {
		t := canvas.NewText("", nil)
		g.names, parts = append(g.names, t), append(parts, t)
	}
	g.drawing = column.NewBlock(g.stand, g.paint, parts...)
	return g
}

func (g *graft) objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{g.heading, g.drawing, g.note}
}

func (g *graft) show(web hand.Web, s *planning.Skin) {
	g.shapes = nil
	if s != nil {
		g.shapes = shapes(web, *s)
	}
	for _, o := range g.objects() {
		flow.Visible(o, len(g.shapes) > 0)
	}
	g.drawing.Refresh()
}

// shapes are both patches lying on their sides, and the spindle.
func shapes(web hand.Web, s planning.Skin) []shape {
	var out []shape
	radial, ulnar := web.Digits()
	for _, p := range s.Patches {
		d := ulnar
		if p.Radial {
			d = radial
		}
		lying := shape{name: patchName(d, p), length: p.Length, width: p.Width}
		for _, q := range p.Outline {
			lying.outline = append(lying.outline, plane.Position{X: q.Y, Y: q.X})
		}
		out = append(out, lying)
	}
	if len(s.Spindle.Outline) == 0 {
		return out
	}
	corner := plane.Vec(s.Spindle.Length/2, s.Spindle.Width/2)
	whole := shape{length: s.Spindle.Length, width: s.Spindle.Width,
		name: lang.L("Spindle that holds both: {{.Length}} × {{.Width}} mm", size(s.Spindle.Length, s.Spindle.Width))}
	for _, q := range s.Spindle.Outline {
		whole.outline = append(whole.outline, q.Add(corner))
	}
	return append(out, whole)
}

func patchName(d hand.Digit, p skinbudget.Patch) string {
	gaps := size(p.Length, p.Width)
	gaps["Digit"] = wording.Sentence(wording.Finger(d))
	return lang.L("{{.Digit}}: {{.Length}} × {{.Width}} mm", gaps)
}

func size(length, width plane.Millimetre) map[string]any {
	return map[string]any{"Length": fmt.Sprintf("%.1f", float64(length)), "Width": fmt.Sprintf("%.1f", float64(width))}
}

// bar is the length of the bar of the scale.
const bar plane.Millimetre = 10

// scale is how many of Fyne's units a millimetre is long in a drawing of that
// width.
func (g *graft) scale(room float32) float32 {
	longest := 4 * bar
	for _, s := range g.shapes {
		longest = max(longest, s.length)
	}
	return (room - 2) / float32(longest)
}

func (g *graft) paint() {
	for _, t := range append([]*canvas.Text{g.bar}, g.names...) {
		t.Color, t.TextSize = look.Colour(theme.ColorNameForeground), look.Size(theme.SizeNameCaptionText)
	}
}

func (g *graft) stand(room float32) float32 {
	if len(g.shapes) == 0 {
		return 0
	}
	const gap = 12
	k, y := g.scale(room), float32(0)
	for i, t := range g.names {
		flow.Visible(t, i < len(g.shapes))
		if i >= len(g.shapes) {
			continue
		}
		t.Text = g.shapes[i].name
		h := t.MinSize().Height
		flow.Put(t, 0, y, room, h)
		g.shapes[i].at = y + h + 3
		y = g.shapes[i].at + k*float32(g.shapes[i].width) + gap
	}
	h := g.bar.MinSize().Height
	flow.Put(g.bar, k*float32(bar)+8, y, 60, h)
	y += h
	flow.Put(g.raster, 0, 0, room, y)
	return y + gap
}

// draw draws the outlines and the bar.
func (g *graft) draw(w, h int) image.Image {
	c := gg.NewContext(max(w, 1), max(h, 1))
	room := g.raster.Size()
	if room.Width <= 0 {
		return c.Image()
	}
	px := float64(w) / float64(room.Width)
	k := float64(g.scale(room.Width)) * px
	for _, s := range g.shapes {
		for _, q := range s.outline {
			c.LineTo(px+float64(q.X)*k, float64(s.at)*px+float64(q.Y)*k)
		}
		c.ClosePath()
		c.SetColor(look.Colour(look.PalmSkin))
		c.FillPreserve()
		c.SetColor(look.Colour(theme.ColorNameForeground))
		c.SetLineWidth(1.4 * px)
		c.Stroke()
	}
	y, tick := float64(h)-float64(g.bar.MinSize().Height)*px/2, 4*px
	for _, x := range []float64{px, px + float64(bar)*k} {
		c.DrawLine(x, y-tick, x, y+tick)
	}
	c.DrawLine(px, y, px+float64(bar)*k, y)
	c.SetColor(look.Colour(theme.ColorNameForeground))
	c.SetLineWidth(1.6 * px)
	c.Stroke()
	return c.Image()
}
