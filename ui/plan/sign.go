package plan

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
	"github.com/fogleman/gg"

	"ogive/geometry/norms"
	"ogive/imaging/wording"
	"ogive/ui/flow"
	"ogive/ui/look"
)

// state is how a verdict is shown, each by a shape, a cut of letters and a colour
// of its own.
type state int

// The states.
const (
	amiss    state = iota + 1 // a solid flag, bold
	doubtful                  // a dashed outline, slanted
	well                      // a tick, plain
	equal                     // two strokes, plain
)

func stateOf(v norms.Verdict) state {
	switch {
	case v.Finding == norms.NoDifference:
		return equal
	case !v.Certain:
		return doubtful
	case v.Finding == norms.WithinLimits:
		return well
	}
	return amiss
}

var inkOf = map[state]fyne.ThemeColorName{amiss: look.OnAmiss, doubtful: look.Doubtful, well: look.Well, equal: look.SecondInk}

// verdictWords is the finding and how sure it is. That no difference can be told
// is never surer than that.
func verdictWords(v norms.Verdict) string {
	if v.Finding == norms.NoDifference {
		return wording.Term(v.Figure) + ": " + wording.Term(v.Finding)
	}
	return wording.VerdictOf(v)
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
	s.Hide()
	return s
}

// show reports whether the height may have changed: a sign has always two lines.
func (s *sign) show(v norms.Verdict) bool {
	if s.verdict == v {
		return false
	}
	before := stateOf(s.verdict)
	first := s.verdict == norms.Verdict{}
	s.verdict = v
	writeText(s.words, verdictWords(v))
	writeText(s.limit, lang.L("limit {{.Limit}}", map[string]any{"Limit": wording.Limit(v)}))
	if before != stateOf(v) && s.Size().Width > 0 {
		s.HeightAt(s.Size().Width)
		s.Refresh()
	}
	return first
}

func (s *sign) colour() {
	st := stateOf(s.verdict)
	ink := look.Colour(inkOf[st])
	s.words.Color, s.limit.Color = ink, ink
	s.words.TextSize, s.limit.TextSize = look.Size(theme.SizeNameText), look.Size(theme.SizeNameCaptionText)
	s.words.TextStyle = fyne.TextStyle{Bold: st == amiss, Italic: st == doubtful}
	s.limit.TextStyle = fyne.TextStyle{Italic: st == doubtful}
}

// HeightAt is called by flow.
func (s *sign) HeightAt(width float32) float32 {
	s.colour()
	const pad, indent = 4, 12
	x, y := float32(indent), float32(pad)
	if st := stateOf(s.verdict); st == well || st == equal {
		x = 24
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
	flow.Put(s.ground, 0, 0, width, y+pad)
	return y + pad
}

// CreateRenderer is called by Fyne.
func (s *sign) CreateRenderer() fyne.WidgetRenderer {
	return parts{s.HeightAt, s.colour, []fyne.CanvasObject{s.ground, s.words, s.limit}}
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
	case amiss:
		c.MoveTo(0, 0)
		c.LineTo(right, 0)
		c.LineTo(right-9*px, bottom/2)
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
		c.DrawLine(4*px, 11*px, 16*px, 11*px)
		c.DrawLine(4*px, 16*px, 16*px, 16*px)
		c.Stroke()
	case well:
		c.SetLineCapRound()
		c.SetLineJoinRound()
		c.MoveTo(3*px, 14*px)
		c.LineTo(8*px, 19*px)
		c.LineTo(16*px, 8*px)
		c.SetColor(look.Colour(look.Well))
		c.SetLineWidth(2.4 * px)
		c.Stroke()
	}
	return c.Image()
}
