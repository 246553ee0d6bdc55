package main

import (
	"image"
	"image/color"
	"math"

	"ogive/geometry/plane"
)

// photographed is a photograph as it is looked for on the screen: sums over its
// upper left parts give the mean colour of any rectangle at once.
type photographed struct {
	size image.Point
	sums [3][]float64
}

func newPhotographed(img image.Image) *photographed {
	b := img.Bounds()
	p := &photographed{size: b.Size()}
	line := p.size.X + 1
	for c := range p.sums {
		p.sums[c] = make([]float64, line*(p.size.Y+1))
	}
	for y := range p.size.Y {
		var row [3]float64
		for x := range p.size.X {
			r, g, bl, _ := img.At(b.Min.X+x, b.Min.Y+y).RGBA()
			for c, v := range [3]uint32{r, g, bl} {
				row[c] += float64(v >> 8)
				p.sums[c][(y+1)*line+x+1] = p.sums[c][y*line+x+1] + row[c]
			}
		}
	}
	return p
}

// mean is the mean colour of the square of the given width about (x, y).
func (p *photographed) mean(x, y, width float64) color.RGBA {
	side := max(1, int(width+0.5))
	x0 := min(max(int(x-width/2+0.5), 0), p.size.X-side)
	y0 := min(max(int(y-width/2+0.5), 0), p.size.Y-side)
	line := p.size.X + 1
	var c [3]uint8
	for i, s := range p.sums {
		sum := s[(y0+side)*line+x0+side] - s[y0*line+x0+side] - s[(y0+side)*line+x0] + s[y0*line+x0]
		c[i] = uint8(sum/float64(side*side) + 0.5)
	}
	return color.RGBA{c[0], c[1], c[2], 255}
}

// place is where a photograph lies on the screen: its middle, and how many
// screen pixels one of its own takes.
type place struct{ x, y, zoom float64 }

// screen is where a place on the photograph is seen.
func (l place) screen(p *photographed, q plane.PixelPoint) (x, y float64) {
	return l.x + (float64(q.X)-float64(p.size.X)/2)*l.zoom, l.y + (float64(q.Y)-float64(p.size.Y)/2)*l.zoom
}

// on is the inverse of screen.
func (l place) on(p *photographed, x, y float64) plane.PixelPoint {
	return plane.Pt(plane.Pixel((x-l.x)/l.zoom+float64(p.size.X)/2), plane.Pixel((y-l.y)/l.zoom+float64(p.size.Y)/2))
}

// area is the part of the screen that the photograph takes.
func (l place) area(p *photographed) image.Rectangle {
	half := func(n int) float64 { return float64(n) / 2 * l.zoom }
	return image.Rect(int(math.Ceil(l.x-half(p.size.X))), int(math.Ceil(l.y-half(p.size.Y))),
		int(l.x+half(p.size.X)), int(l.y+half(p.size.Y)))
}

// stray is the most that a sampled colour counts as wrong: what lies over the
// photograph differs by anything and must not move it.
const stray = 40

// misfit is the mean difference between the screen and the photograph at l, from
// so many samples across the photograph.
func (p *photographed) misfit(s picture, l place, across int) float64 {
	step := float64(p.size.X) / float64(across)
	var sum, n float64
	for py := step / 2; py < float64(p.size.Y); py += step {
		for px := step / 2; px < float64(p.size.X); px += step {
			x, y := l.screen(p, plane.Pt(plane.Pixel(px), plane.Pixel(py)))
			n++
			// Not at px but at what the middle of the screen's pixel shows.
			ix, iy := int(math.Floor(x)), int(math.Floor(y))
			if !(image.Point{ix, iy}).In(s.Rect) {
				sum += stray
				continue
			}
			q := l.on(p, float64(ix)+0.5, float64(iy)+0.5)
			sum += float64(min(unlike(s.RGBAAt(ix, iy), p.mean(float64(q.X), float64(q.Y), 1/l.zoom)), stray))
		}
	}
	return sum / n
}

// find looks for the whole photograph on the screen: at every size and place in
// coarse steps, then finer and finer about the best. The misfit tells how well
// it was found.
func (p *photographed) find(s picture) (place, float64) {
	best, least := p.coarse(s)
	steps := place{8, 8, best.zoom * 0.02}
	for steps.x > 0.02 {
		moved := false
		for _, by := range []place{{steps.x, 0, 0}, {-steps.x, 0, 0}, {0, steps.y, 0}, {0, -steps.y, 0}, {0, 0, steps.zoom}, {0, 0, -steps.zoom}} {
			l := place{best.x + by.x, best.y + by.y, best.zoom + by.zoom}
			if m := p.misfit(s, l, 160); m < least {
				best, least, moved = l, m, true
			}
		}
		if !moved {
			steps = place{steps.x / 2, steps.y / 2, steps.zoom / 2}
		}
	}
	return best, least
}

// coarse tries every size in steps of 4 per cent and every place in steps of 8
// pixels, on a grid of the screen's own so small that details do not mislead it.
func (p *photographed) coarse(s picture) (place, float64) {
	const cell = 8
	small := reduced(s, cell)
	bounds := small.Bounds().Size()
	best, least := place{}, math.Inf(1)
	for zoom := 0.1; zoom <= 1; zoom *= 1.04 {
		w, h := int(float64(p.size.X)*zoom/cell), int(float64(p.size.Y)*zoom/cell)
		if w < 8 || h < 8 || w > bounds.X || h > bounds.Y {
			continue
		}
		shrunk := p.shrunk(zoom/cell, w, h)
		for oy := 0; oy+h <= bounds.Y; oy++ {
			for ox := 0; ox+w <= bounds.X; ox++ {
				if m := apart(small, shrunk, ox, oy, least); m < least {
					least = m
					best = place{cell * (float64(ox) + float64(w)/2), cell * (float64(oy) + float64(h)/2), zoom}
				}
			}
		}
	}
	return best, p.misfit(s, best, 160)
}

// reduced is the screen with each cell made one pixel.
func reduced(s picture, cell int) *image.RGBA {
	whole := newPhotographed(s)
	size := image.Pt(s.Rect.Dx()/cell, s.Rect.Dy()/cell)
	return whole.shrunk(1/float64(cell), size.X, size.Y)
}

func (p *photographed) shrunk(zoom float64, w, h int) *image.RGBA {
	m := image.NewRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			m.SetRGBA(x, y, p.mean((float64(x)+0.5)/zoom, (float64(y)+0.5)/zoom, 1/zoom))
		}
	}
	return m
}

// apart is the mean difference of a and b laid on it at (ox, oy), from every
// third pixel; it gives up at enough.
func apart(a, b *image.RGBA, ox, oy int, enough float64) float64 {
	const every = 3
	w, h := b.Rect.Dx(), b.Rect.Dy()
	n := float64(((w + every - 1) / every) * ((h + every - 1) / every))
	sum := 0
	for y := 0; y < h; y += every {
		for x := 0; x < w; x += every {
			sum += min(unlike(a.RGBAAt(ox+x, oy+y), b.RGBAAt(x, y)), stray)
		}
		if float64(sum) > enough*n {
			return math.Inf(1)
		}
	}
	return float64(sum) / n
}

// covered is the largest connected part of the photograph at l that something
// lies over, as a rectangle on the screen.
func (p *photographed) covered(s picture, l place) image.Rectangle {
	const cell, different = 4, 20
	area := l.area(p).Intersect(s.Rect)
	size := image.Pt(area.Dx()/cell, area.Dy()/cell)
	over := make([]bool, size.X*size.Y)
	for i := range over {
		count := 0
		for j := range cell * cell {
			x, y := area.Min.X+(i%size.X)*cell+j%cell, area.Min.Y+(i/size.X)*cell+j/cell
			q := l.on(p, float64(x)+0.5, float64(y)+0.5)
			if unlike(s.RGBAAt(x, y), p.mean(float64(q.X), float64(q.Y), 1/l.zoom)) > different {
				count++
			}
		}
		over[i] = count > cell*cell/2
	}
	var largest image.Rectangle
	most := 0
	for i := range over {
		if box, n := flood(over, size, i); n > most {
			largest, most = box, n
		}
	}
	return image.Rectangle{largest.Min.Mul(cell), largest.Max.Mul(cell)}.Add(area.Min)
}

// flood empties the connected part of over that holds i, and gives the cells it
// had and the rectangle about them.
func flood(over []bool, size image.Point, i int) (box image.Rectangle, n int) {
	waiting := []int{i}
	for len(waiting) > 0 {
		i := waiting[len(waiting)-1]
		waiting = waiting[:len(waiting)-1]
		if !over[i] {
			continue
		}
		over[i] = false
		n++
		x, y := i%size.X, i/size.X
		box = box.Union(image.Rect(x, y, x+1, y+1))
		if x > 0 {
			waiting = append(waiting, i-1)
		}
		if x+1 < size.X {
			waiting = append(waiting, i+1)
		}
		if y > 0 {
			waiting = append(waiting, i-size.X)
		}
		if y+1 < size.Y {
			waiting = append(waiting, i+size.X)
		}
	}
	return box, n
}
