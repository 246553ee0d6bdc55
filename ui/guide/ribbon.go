package guide

import (
	"fmt"
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
	"github.com/fogleman/gg"

	"ogive/ui/look"
	"ogive/ui/marking"
)

var steps = []marking.Step{marking.Scale, marking.Joints, marking.Webs, marking.Junction}

var stepIcons = map[marking.Step]look.IconName{
	marking.Scale: look.IconScale, marking.Joints: look.IconJoints, marking.Webs: look.IconWebs, marking.Junction: look.IconJunction,
}

func stepName(s marking.Step) string {
	switch s {
	case marking.Scale:
		return lang.L("Scale")
	case marking.Joints:
		return lang.L("Joints")
	case marking.Webs:
		return lang.L("Webs")
	}
	return lang.L("Junction")
}

// standing is how far a step has come.
type standing struct {
	open     bool // hand and view are known
	passed   bool // skipped as a whole
	done, of int
	lacking  bool // all is placed, but a length is not known
	proposed bool // all is placed, but some of it by the program
}

func (s standing) complete() bool {
	return s.of > 0 && s.done == s.of && !s.lacking && !s.proposed && !s.passed
}

// station is one step of the work as a window of an arcade: an arch that fills
// from below as the step is done.
type station struct {
	widget.BaseWidget
	step marking.Step
	standing
	current bool
	hovered bool
	onTap   func()

	arch  *canvas.Raster
	icon  *canvas.Image
	name  *canvas.Text
	count *canvas.Text
}

var (
	_ fyne.Tappable      = (*station)(nil)
	_ desktop.Hoverable  = (*station)(nil)
	_ desktop.Cursorable = (*station)(nil)
)

func newStation(step marking.Step, onTap func()) *station {
	s := &station{step: step, onTap: onTap}
	s.arch = canvas.NewRaster(s.draw)
	s.icon = canvas.NewImageFromResource(look.Icon(stepIcons[step]))
	s.icon.FillMode = canvas.ImageFillContain
	s.name = canvas.NewText(stepName(step), nil)
	s.count = canvas.NewText("", nil)
	s.name.Alignment, s.count.Alignment = fyne.TextAlignCenter, fyne.TextAlignCenter
	s.ExtendBaseWidget(s)
	s.colour()
	return s
}

func (s *station) show(now standing, current bool) {
	if s.standing == now && s.current == current {
		return
	}
	s.standing, s.current = now, current
	s.Refresh()
}

// progress is what stands under the step's name.
func (s *station) progress() string {
	switch {
	case !s.open:
		return ""
	case s.of == 0:
		return lang.L("other view")
	case s.passed:
		return lang.L("skipped")
	case s.lacking:
		return lang.L("length?")
	case s.proposed && s.done == s.of:
		return lang.L("proposed")
	case s.complete():
		return lang.L("done")
	}
	return fmt.Sprintf("%d / %d", s.done, s.of)
}

func (s *station) colour() {
	ink, second := look.Colour(theme.ColorNameForeground), look.Colour(look.SecondInk)
	s.name.Color, s.count.Color = ink, second
	s.name.TextSize, s.count.TextSize = look.Size(theme.SizeNameText), look.Size(theme.SizeNameCaptionText)
	s.name.TextStyle.Bold = s.current
	icon := look.Icon(stepIcons[s.step])
	switch {
	case s.of == 0:
		s.name.Color = second
		icon = look.ColouredIcon(stepIcons[s.step], look.SecondInk)
	case s.complete():
		icon = look.Icon(look.IconAccept)
	case s.current:
		s.name.Color = look.Colour(look.Accent)
	}
	s.icon.Resource = icon
	s.count.Text = s.progress()
}

func (s *station) Tapped(*fyne.PointEvent)             { s.onTap() }
func (s *station) MouseIn(*desktop.MouseEvent)         { s.hovered = true; s.arch.Refresh() }
func (s *station) MouseMoved(*desktop.MouseEvent)      {}
func (s *station) MouseOut()                           { s.hovered = false; s.arch.Refresh() }
func (s *station) Cursor() desktop.Cursor              { return desktop.PointerCursor }
func (s *station) CreateRenderer() fyne.WidgetRenderer { return stationRenderer{s} }

type stationRenderer struct{ s *station }

const archHeight, archWidth = 50, 48

func (r stationRenderer) MinSize() fyne.Size {
	name, count := r.s.name.MinSize(), r.s.count.MinSize()
	return fyne.NewSize(max(name.Width, count.Width, archWidth)+4, archHeight+name.Height+count.Height+8)
}

func (r stationRenderer) Layout(size fyne.Size) {
	s := r.s
	s.arch.Resize(fyne.NewSize(size.Width, archHeight+4))
	const side = 24
	s.icon.Resize(fyne.NewSquareSize(side))
	s.icon.Move(fyne.NewPos((size.Width-side)/2, 20))
	y := float32(archHeight + 6)
	for _, t := range []*canvas.Text{s.name, s.count} {
		h := t.MinSize().Height
		t.Resize(fyne.NewSize(size.Width, h))
		t.Move(fyne.NewPos(0, y))
		y += h
	}
}

func (r stationRenderer) Refresh() {
	r.s.colour()
	for _, o := range r.Objects() {
		o.Refresh()
	}
}

func (r stationRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.s.arch, r.s.icon, r.s.name, r.s.count}
}

func (r stationRenderer) Destroy() {}

// draw draws the arch on its sill; the sills of all stations meet.
func (s *station) draw(w, h int) image.Image {
	d := gg.NewContext(max(w, 1), max(h, 1))
	if s.Size().Width <= 0 {
		return d.Image()
	}
	px := float64(w) / float64(s.Size().Width)
	left, right := float64(w)/2-archWidth/2*px, float64(w)/2+archWidth/2*px
	sill, top := float64(archHeight)*px, 2*px
	shape := func() {
		spring := top + 0.42*(sill-top)
		d.MoveTo(left, sill)
		d.LineTo(left, spring)
		d.CubicTo(left, top+0.2*(sill-top), float64(w)/2-0.16*archWidth*px, top+0.08*(sill-top), float64(w)/2, top)
		d.CubicTo(float64(w)/2+0.16*archWidth*px, top+0.08*(sill-top), right, top+0.2*(sill-top), right, spring)
		d.LineTo(right, sill)
		d.ClosePath()
	}
	shape()
	d.SetColor(look.Colour(look.Card))
	d.Fill()
	if s.of > 0 {
		shape()
		d.Clip()
		part := float64(s.done) / float64(s.of)
		d.DrawRectangle(0, sill-(sill-top)*part, float64(w), sill)
		d.SetColor(look.Colour(theme.ColorNameSelection))
		d.Fill()
		d.ResetClip()
	}
	outline, width := look.Colour(look.SecondInk), 1.2
	if s.hovered {
		outline = look.Colour(theme.ColorNameForeground)
	}
	if s.current {
		outline, width = look.Colour(look.Accent), 3
	}
	d.SetColor(outline)
	d.SetLineWidth(width * px)
	if s.of == 0 {
		d.SetDash(3*px, 3*px)
	}
	shape()
	d.Stroke()
	d.SetDash()
	d.SetColor(look.Colour(look.Hairline))
	d.SetLineWidth(1.2 * px)
	d.DrawLine(0, sill, left-2*px, sill)
	d.DrawLine(right+2*px, sill, float64(w), sill)
	d.Stroke()
	return d.Image()
}
