package round

import (
	"fyne.io/fyne/v2"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
)

// closest is the largest zoom at which a web is opened.
const closest = 4

// frame shows those places as large as they fit, in the middle of the board.
func (p *photograph) frame(places []plane.PixelPoint) {
	canvas := fyne.CurrentApp().Driver().CanvasForObject(p)
	if len(places) == 0 || canvas == nil || p.zoom <= 0 {
		return
	}
	low, high := places[0], places[0]
	for _, q := range places {
		low = plane.Pt(min(low.X, q.X), min(low.Y, q.Y))
		high = plane.Pt(max(high.X, q.X), max(high.Y, q.Y))
	}
	const filled = 0.75
	room, px := p.Size(), filled*float64(canvas.Scale())
	zoom := min(float64(room.Width)*px/max(float64(high.X-low.X), 1), float64(room.Height)*px/max(float64(high.Y-low.Y), 1), closest)
	p.MouseOut() // magnify about the web, not about the pointer
	p.Fit()
	if zoom <= p.zoom {
		return
	}
	// Far in, what is revealed comes to lie in the middle, and stays there on the
	// way out.
	p.ZoomBy(50)
	p.Reveal(low.Mid(high))
	p.ZoomBy(zoom / p.zoom)
}

// framed are the places that a look at the truth is about: by eye the web that was
// asked about with its joints, blind all webs.
func (t *taking) framed() []plane.PixelPoint {
	var places []plane.PixelPoint
	for _, w := range t.feedback.Drawing.Webs {
		places = append(append(append(places, w.Arch...), w.Junction...), w.Axis...)
		for _, d := range digitsOf(w.Web) {
			for _, j := range []hand.Joint{hand.MCP, hand.PIP} {
				if at, ok := t.picture.Truth.Joints[d][j]; ok {
					places = append(places, at)
				}
			}
		}
	}
	if t.crown != nil {
		places = append(places, *t.crown)
	}
	return places
}

func digitsOf(w hand.Web) []hand.Digit {
	radial, ulnar := w.Digits()
	return []hand.Digit{radial, ulnar}
}
