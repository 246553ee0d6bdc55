package trace

import (
	"image"
	"math"

	"ogive/imaging/photo"
)

// cells reads a photograph piece by piece, only where it is looked at.
type cells struct {
	photograph *photo.Photograph
	origin     image.Point
	shrink     int
	w, h       int
	patches    []*photo.Patch
	limit      image.Point // of the whole picture, in samples
}

const cellSize = 16

func newCells(p *photo.Photograph, lo, hi point, shrink int) *cells {
	size := p.Size()
	c := &cells{photograph: p, shrink: shrink}
	c.origin = image.Pt(clampInt(int(lo.X), 0, size.X-1)/shrink*shrink, clampInt(int(lo.Y), 0, size.Y-1)/shrink*shrink)
	c.w = (clampInt(int(hi.X)+1, 0, size.X)-c.origin.X)/(shrink*cellSize) + 1
	c.h = (clampInt(int(hi.Y)+1, 0, size.Y)-c.origin.Y)/(shrink*cellSize) + 1
	c.limit = image.Pt((size.X-c.origin.X)/shrink, (size.Y-c.origin.Y)/shrink)
	c.patches = make([]*photo.Patch, c.w*c.h)
	return c
}

func clampInt(x, lo, hi int) int { return max(lo, min(hi, x)) }

func (c *cells) cell(i, j int) *photo.Patch {
	k := &c.patches[j*c.w+i]
	if *k == nil {
		side := cellSize * c.shrink
		at := c.origin.Add(image.Pt(i*side, j*side))
		over := cellSize + 1
		r := image.Rectangle{Min: at, Max: at.Add(image.Pt(over*c.shrink, over*c.shrink))}
		whole := image.Rectangle{Min: c.origin, Max: c.origin.Add(c.limit.Mul(c.shrink))}
		p := c.photograph.Patch(r.Intersect(whole), c.shrink)
		*k = &p
	}
	return *k
}

// at is the light at a position, interpolated; beyond the picture's edge it is
// that of the edge.
func (c *cells) at(p point) colour {
	n := float64(c.shrink)
	x := (float64(p.X)-float64(c.origin.X))/n - 0.5
	y := (float64(p.Y)-float64(c.origin.Y))/n - 0.5
	x = max(0, min(x, float64(min(c.limit.X, c.w*cellSize)-1)-1e-9))
	y = max(0, min(y, float64(min(c.limit.Y, c.h*cellSize)-1)-1e-9))
	i, j := int(x), int(y)
	fx, fy := x-float64(i), y-float64(j)
	q := c.cell(i/cellSize, j/cellSize)
	k := j%cellSize*q.W + i%cellSize
	right, below := 1, q.W
	if i%cellSize+1 >= q.W {
		right = 0
	}
	if j%cellSize+1 >= q.H {
		below = 0
	}
	mix := func(v []float32) float64 {
		top := float64(v[k]) + fx*float64(v[k+right]-v[k])
		low := float64(v[k+below]) + fx*float64(v[k+below+right]-v[k+below])
		return top + fy*(low-top)
	}
	return colour{mix(q.R), mix(q.G), mix(q.B)}
}

// strip is the photograph along a curve, straightened: row i is the profile at
// the curve's i-th point from the skin (offset -half) to the drape (+half), in
// samples of so many pixels.
type strip struct {
	curve   curve
	normals []vector
	reach   []float64 // in samples
	half    int
	step    float64
	light   []colour
	drape   []float64
	// What the colours along the strip have been found to mean.
	lore   lore
	scales [knots]scale
}

func newStrip(c *cells, line curve, turn float64, half int) *strip {
	s := &strip{curve: line, normals: line.normals(turn), half: half, step: float64(c.shrink)}
	s.reach = line.reach(s.normals, 1e6)
	for i := range s.reach {
		s.reach[i] /= s.step
	}
	w := s.width()
	s.light = make([]colour, len(line)*w)
	s.drape = make([]float64, len(line)*w)
	for i, p := range line {
		for k := range w {
			off := float64(k-half) * s.step
			s.light[i*w+k] = split(c.at(p.Add(s.normals[i].Scale(off))))
		}
	}
	return s
}

func (s *strip) width() int { return 2*s.half + 1 }

func (s *strip) row(i int) []float64 { return s.drape[i*s.width() : (i+1)*s.width()] }

// learn tells drape from skin in linear light, where a blurred border is a true
// mean of its two sides, by the bands from near to far samples off the curve.
func (s *strip) learn(near, far float64, d doubt) bool {
	w := s.width()
	var c classes
	last := float64(len(s.curve) - 1)
	for i := range s.curve {
		room := min(far, max(near+1, s.reach[i]/2))
		var drape, skin moments
		for k := max(0, s.half-int(far)); k <= s.half-int(math.Ceil(near)); k++ {
			skin.add(s.light[i*w+k])
		}
		for k := s.half + int(math.Ceil(near)); k <= min(w-1, s.half+int(room)); k++ {
			drape.add(s.light[i*w+k])
		}
		c.add(float64(i)/last, drape, skin)
	}
	l, ok := c.learn(d.prior)
	if !ok {
		return false
	}
	s.lore = l
	for i := range s.scales {
		s.scales[i] = newScale(l[i], c.skin[i], c.drape[i])
	}
	for i := range s.curve {
		d := l.at(float64(i) / last)
		j, r := knotBefore(float64(i) / last)
		for k := i * w; k < (i+1)*w; k++ {
			x := d.of(s.light[k])
			s.drape[k] = (1-r)*s.scales[j].at(x) + r*s.scales[j+1].at(x)
		}
	}
	return true
}

// split is a colour in linear light taken apart as a JPEG file (ITU-T T.871)
// and nearly every other holds it: lightness, here again in linear light so that
// a blurred border is a true mean of its two sides, and two differences of
// colour, which are kept for blocks of pixels only and are less exact in place.
func split(c colour) colour {
	r, g, b := math.Sqrt(max(0, c[0])), math.Sqrt(max(0, c[1])), math.Sqrt(max(0, c[2]))
	y := 0.299*r + 0.587*g + 0.114*b
	return colour{y * y, r - y, b - y}
}

// doubt is how far light and colour are distrusted, as variances: light by
// its own size, colour by the step in colour.
type doubt struct{ shaded, smeared, bent float64 }

// share is how much of a colour in linear light is drape, 0 to 1, by what is
// known half way along the strip.
func (s *strip) share(c colour) float64 {
	x := s.scales[knots/2].at(s.lore[knots/2].of(split(c)))
	return max(0, min(1, (x+1)/2))
}

// prior is the variation to be expected: shading, which changes the differences
// of colour half as much as the light, smeared colour, and noise. The step in
// colour is displaced the more, the greater the step in light that goes with it.
func (d doubt) prior(drape, skin colour) symmetric {
	const noise = 0.0002
	step := math.Log((drape[0] + 0.01) / (skin[0] + 0.01))
	smear := colour{0, drape[1] - skin[1], drape[2] - skin[2]}
	p := outer(shading(drape), d.shaded).plus(outer(shading(skin), d.shaded), 1).plus(outer(smear, d.smeared+d.bent*step*step), 1)
	for _, i := range []int{0, 3, 5} {
		p[i] += noise
	}
	return p
}

func shading(c colour) colour { return colour{c[0], c[1] / 2, c[2] / 2} }

// blended averages neighbouring profiles, which follow the curve side by side.
func (s *strip) blended(passes int) {
	w := s.width()
	for range passes {
		before := append([]float64(nil), s.drape[:w]...)
		for i := 1; i < len(s.curve)-1; i++ {
			for k := range w {
				here := s.drape[i*w+k]
				s.drape[i*w+k] = (before[k] + 2*here + s.drape[(i+1)*w+k]) / 4
				before[k] = here
			}
		}
	}
}

// ridge is the offset of the border in every row, in whole samples: the line of
// strongest steps from skin to drape that is nowhere torn.
func (s *strip) ridge() []float64 {
	const wide, tear = 3, 0.15
	n, w := len(s.curve), s.width()
	score := make([]float64, w)
	best := make([]float64, w)
	back := make([]int8, n*w)
	for i := range n {
		row := s.row(i)
		for k := range w {
			score[k] = -1
			if k < wide || k >= w-wide {
				continue
			}
			far := wide
			if s.reach[i] < 2*wide {
				far = max(1, int(s.reach[i]/2))
			}
			var d, e float64
			for m := 1; m <= far; m++ {
				d += float64(clamp(row[k+m]))
			}
			for m := 1; m <= wide; m++ {
				e += float64(clamp(row[k-m]))
			}
			score[k] = d/float64(far) - e/wide - 0.02*math.Abs(float64(k-s.half))/float64(s.half)
		}
		if i == 0 {
			copy(best, score)
			continue
		}
		old := append([]float64(nil), best...)
		for k := range w {
			from, top := 0, old[k]
			for _, m := range []int{-1, 1} {
				if q := k + m; q >= 0 && q < w && old[q]-tear > top {
					from, top = m, old[q]-tear
				}
			}
			back[i*w+k] = int8(from)
			best[k] = top + score[k]
		}
	}
	at := 0
	for k := range best {
		if best[k] > best[at] {
			at = k
		}
	}
	out := make([]float64, n)
	for i := n - 1; i >= 0; i-- {
		out[i] = float64(at-s.half) * s.step
		at += int(back[i*w+at])
	}
	return out
}
