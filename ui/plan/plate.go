package plan

import (
	"image"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/imaging/photo"
	"ogive/ui/board"
)

// plate is the photograph. Beside what a board tells it tells every click.
type plate struct {
	*board.Board
	room *Room
	size image.Point // of the photograph
	zoom float64     // screen pixels for a pixel of the photograph, 0 until it is seen
	seen bool        // it has been framed
	put  func(*photo.Photograph)
}

var (
	_ fyne.Tappable     = (*plate)(nil)
	_ desktop.Mouseable = (*plate)(nil)
)

func newPlate(r *Room) *plate {
	p := &plate{Board: board.New(), room: r}
	p.OnDragHandle, p.OnDropHandle = r.dragged, r.dropped
	p.OnPlace = func(at plane.PixelPoint) {
		if panel := r.column.panel(); panel != nil && panel.OnPlace != nil {
			panel.OnPlace(at)
		}
	}
	p.OnView = p.follow
	p.put = p.ShowPhotograph
	return p
}

// begin puts a photograph on the board.
func (p *plate) begin(photograph *photo.Photograph) {
	if photograph == nil {
		return
	}
	p.seen = p.zoom > 0 && p.size == photograph.Size()
	p.size = photograph.Size()
	p.put(photograph)
}

// follow is told the zoom.
func (p *plate) follow(zoom float64) {
	p.zoom = zoom
	if zoom > 0 && !p.seen {
		p.seen = true
		p.room.frame()
	}
	p.room.draw()
}

// Tapped is a click.
func (p *plate) Tapped(e *fyne.PointEvent) {
	p.room.pressed(e.Position)
	p.Board.Tapped(e)
}

// MouseDown takes the keys for the photograph.
func (p *plate) MouseDown(e *desktop.MouseEvent) {
	p.room.keyboard.take()
	p.Board.MouseDown(e)
}

// scale is screen pixels for a unit of Fyne's.
func (p *plate) scale() float64 {
	if c := fyne.CurrentApp().Driver().CanvasForObject(p); c != nil {
		return float64(c.Scale())
	}
	return 1
}

// pixels is a length on the screen, in units of Fyne's, on the photograph.
func (p *plate) pixels(units float64) plane.Pixel {
	if p.zoom <= 0 {
		return plane.Pixel(units)
	}
	return plane.Pixel(units * p.scale() / p.zoom)
}

// apart is how far two places of the photograph lie apart on the screen, in units
// of Fyne's.
func (p *plate) apart(a, b plane.PixelPoint) float64 {
	return float64(a.Distance(b)) / float64(p.pixels(1))
}

// reach is how close a click has to come to a handle, as the board has it.
const reach = 12

// under is the grip nearest to p within reach.
func (p *plate) under(at fyne.Position, grips []grip) (grip, bool) {
	nearest, least := grip{}, math.Inf(1)
	for _, g := range grips {
		away := p.PositionOf(g.At).Subtract(at)
		if d := math.Hypot(float64(away.X), float64(away.Y)); d < least {
			nearest, least = g, d
		}
	}
	return nearest, least <= reach
}

// within is a place moved onto the photograph.
func (p *plate) within(at plane.PixelPoint) plane.PixelPoint {
	if p.size.X <= 0 {
		return at
	}
	return plane.Pt(min(max(at.X, 0), plane.Pixel(p.size.X)), min(max(at.Y, 0), plane.Pixel(p.size.Y)))
}

// closest is the largest zoom at which a web is opened.
const closest = 4

// frame shows the web in hand large, in the middle of the board: the whole of a
// hand is too small to plan on.
func (r *Room) frame() {
	p := r.plate
	places := r.places()
	if !p.seen || len(places) == 0 {
		return
	}
	low, high := places[0], places[0]
	for _, q := range places {
		low = plane.Pt(min(low.X, q.X), min(low.Y, q.Y))
		high = plane.Pt(max(high.X, q.X), max(high.Y, q.Y))
	}
	const filled = 0.75
	room, px := p.Size(), filled*p.scale()
	zoom := min(float64(room.Width)*px/max(float64(high.X-low.X), 1), float64(room.Height)*px/max(float64(high.Y-low.Y), 1), closest)
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

// frameIfHidden shows the web in hand large if a part of it is out of sight.
func (r *Room) frameIfHidden() {
	size := r.plate.Size()
	for _, at := range r.places() {
		if p := r.plate.PositionOf(at); p.X < 0 || p.Y < 0 || p.X > size.Width || p.Y > size.Height {
			r.frame()
			return
		}
	}
}

// places are what is to be seen of the web in hand.
func (r *Room) places() []plane.PixelPoint {
	var out []plane.PixelPoint
	for _, m := range r.joints() {
		out = append(out, m.At)
	}
	if a := r.now(); a != nil && a.Arch != nil {
		out = append(out, a.Arch.Pixels...)
	}
	if w := r.kept(); w != nil && w.Join != nil && r.column.tab == zigzagTab {
		out = append(out, w.Join[:]...)
	}
	return out
}

// middle is where an arch is begun by hand: amid the joints that are marked
// beside the web, else in the middle of the photograph.
func (r *Room) middle(w hand.Web) plane.PixelPoint {
	sum, n := plane.PixelPoint{}, plane.Pixel(0)
	radial, ulnar := w.Digits()
	for _, d := range []hand.Digit{radial, ulnar} {
		for _, j := range []hand.Joint{hand.MCP, hand.PIP, hand.DIP, hand.Tip} {
			if at, ok := r.model.Here.Ground.Marks.Joint(d, j); ok {
				sum.X, sum.Y, n = sum.X+at.X, sum.Y+at.Y, n+1
			}
		}
	}
	if n == 0 {
		return plane.Pt(plane.Pixel(r.plate.size.X)/2, plane.Pixel(r.plate.size.Y)/2)
	}
	return plane.Pt(sum.X/n, sum.Y/n)
}
