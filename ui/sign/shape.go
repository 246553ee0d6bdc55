package sign

import (
	"image"

	"github.com/fogleman/gg"

	"ogive/ui/look"
)

// draw draws the shape of the state, as on the saved picture.
func (s *Sign) draw(w, h int) image.Image {
	c := gg.NewContext(max(w, 1), max(h, 1))
	if s.Size().Width <= 0 {
		return c.Image()
	}
	px := float64(w) / float64(s.Size().Width)
	right, bottom := float64(w), float64(h)
	switch s.State() {
	case Amiss:
		notch := 9 * px
		c.MoveTo(0, 0)
		c.LineTo(right, 0)
		c.LineTo(right-notch, bottom/2)
		c.LineTo(right, bottom)
		c.LineTo(0, bottom)
		c.ClosePath()
		c.SetColor(look.Colour(look.Amiss))
		c.Fill()
	case Doubtful:
		c.SetDash(6*px, 4*px)
		c.DrawRoundedRectangle(px, px, right-2*px, bottom-2*px, 5*px)
		c.SetColor(look.Colour(look.Doubtful))
		c.SetLineWidth(1.5 * px)
		c.Stroke()
	case Well:
		c.SetLineCapRound()
		c.SetLineJoinRound()
		c.MoveTo(3*px, 14*px)
		c.LineTo(7*px, 19*px)
		c.LineTo(15*px, 8*px)
		c.SetColor(look.Colour(look.Well))
		c.SetLineWidth(2.4 * px)
		c.Stroke()
	case Equal:
		upper, lower := (float64(s.rim())+7)*px, (float64(s.rim())+12)*px
		c.SetColor(look.Colour(look.SecondInk))
		c.SetLineWidth(1.6 * px)
		c.DrawLine(3*px, upper, 15*px, upper)
		c.DrawLine(3*px, lower, 15*px, lower)
		c.Stroke()
	}
	return c.Image()
}
