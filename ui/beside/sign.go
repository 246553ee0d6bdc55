package beside

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
	"github.com/fogleman/gg"

	"ogive/geometry/norms"
	"ogive/ui/flow"
	"ogive/ui/look"
)

// state is how a verdict is shown, each by a shape, a cut of letters and a colour
// of its own.
type state int

// The states.
const (
	certain  state = iota + 1 // a solid flag, bold
	doubtful                  // a dashed outline, slanted
	equal                     // two strokes, plain
)

func stateOf(v norms.Verdict) state {
	switch {
	case v.Finding == norms.NoDifference:
		return equal
	case v.Certain:
		return certain
	}
	return doubtful
}

// sign is one verdict with its limit.
type sign struct {
	widget.BaseWidget
	verdict      norms.Verdict
	ground       *canvas.Raster
	words, limit *canvas.Text
}

func newSign() *sign {
	s := &sign{words: canvas.NewText("", nil), limit: canvas.NewText("", nil)}
	s.ground = canvas.NewRaster(s.draw)
	s.ExtendBaseWidget(s)
	return s
}

func (s *sign) show(v norms.Verdict) {
	s.verdict = v
	s.words.Text, s.limit.Text = verdictWords(v), limitWords(v)
	s.Refresh()
}

func (s *sign) colour() {
	ink := map[state]fyne.ThemeColorName{certain: look.OnAmiss, doubtful: look.Doubtful, equal: look.SecondInk}[stateOf(s.verdict)]
	s.words.Color, s.limit.Color = look.Colour(ink), look.Colour(ink)
	s.words.TextSize, s.limit.TextSize = look.Size(theme.SizeNameText), look.Size(theme.SizeNameCaptionText)
	if stateOf(s.verdict) == equal {
		s.words.TextSize = look.Size(theme.SizeNameCaptionText)
	}
	s.words.TextStyle = fyne.TextStyle{Bold: stateOf(s.verdict) == certain, Italic: stateOf(s.verdict) == doubtful}
	s.limit.TextStyle = fyne.TextStyle{Italic: stateOf(s.verdict) == doubtful}
}

// HeightAt is called by flow.
func (s *sign) HeightAt(width float32) float32 {
	s.colour()
	const pad, indent = 4, 12
	x, y, below := float32(indent), float32(pad), float32(pad)
	if stateOf(s.verdict) == equal {
		x, y, below = 22, 0, 0
	}
	for _, t := range []*canvas.Text{s.words, s.limit} {
		// A long limit is written smaller rather than over the edge.
		if w, room := t.MinSize().Width, width-x-indent; w > room && room > 0 {
			t.TextSize *= room / w
		}
		h := t.MinSize().Height
		flow.Put(t, x, y, width-x, h)
		y += h
	}
	flow.Put(s.ground, 0, 0, width, y+below)
	return y + below
}

// CreateRenderer is called by Fyne.
func (s *sign) CreateRenderer() fyne.WidgetRenderer {
	return parts{func(size fyne.Size) { s.HeightAt(size.Width) }, func() { s.HeightAt(s.Size().Width) }, []fyne.CanvasObject{s.ground, s.words, s.limit}}
}

// draw draws the shape of the state.
func (s *sign) draw(w, h int) image.Image {
	c := gg.NewContext(max(w, 1), max(h, 1))
	if s.Size().Width <= 0 {
		return c.Image()
	}
	px := float64(w) / float64(s.Size().Width)
	right, bottom := float64(w), float64(h)
	switch stateOf(s.verdict) {
	case certain:
		notch := 9 * px
		c.MoveTo(0, 0)
		c.LineTo(right, 0)
		c.LineTo(right-notch, bottom/2)
		c.LineTo(right, bottom)
		c.LineTo(0, bottom)
		c.ClosePath()
		c.SetColor(look.Colour(look.Amiss))
		c.Fill()
	case doubtful:
		c.SetDash(6*px, 4*px)
		c.DrawRoundedRectangle(px, px, right-2*px, bottom-2*px, 5*px)
		c.SetColor(look.Colour(look.Doubtful))
		c.SetLineWidth(1.5 * px)
		c.Stroke()
	case equal:
		c.SetColor(look.Colour(look.SecondInk))
		c.SetLineWidth(1.6 * px)
		c.DrawLine(2*px, 7*px, 14*px, 7*px)
		c.DrawLine(2*px, 12*px, 14*px, 12*px)
		c.Stroke()
	}
	return c.Image()
}
