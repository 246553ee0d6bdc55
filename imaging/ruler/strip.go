package ruler

import (
	"image"
	"math"

	"ogive/geometry/plane"
	"ogive/imaging/photo"
)

// strip is the part of the photograph on both sides of the line between the two
// clicks, turned so that this line runs along its columns: column i lies at
// i - before samples from the first click, line j at (j - middle) * lineStep
// beside it. It holds the square root of the luminance, in which the contrast of
// a tick differs less between light and shade.
type strip struct {
	from          plane.PixelPoint
	along, beside plane.Vector[plane.Pixel]
	shrink        float64 // pixels to a sample
	before        int     // columns before the first click
	length        float64 // samples between the clicks
	middle        int
	columns       int
	lines         [][]float32
}

const (
	lineStep    = 2
	mostSamples = 1000 // about, between the clicks
)

func newStrip(p *photo.Photograph, from, to plane.PixelPoint) *strip {
	distance := float64(from.Distance(to))
	s := &strip{from: from, along: to.Sub(from).Direction(), shrink: math.Max(1, math.Floor(distance/mostSamples))}
	s.beside = s.along.Left().Scale(-1)
	s.length = distance / s.shrink
	s.before = int(min(max(0.15*s.length, 15), 60))
	s.columns = 2*s.before + int(math.Ceil(s.length))
	s.middle = int(min(max(0.22*s.length, 40), 110)) / lineStep
	s.lines = make([][]float32, 2*s.middle+1)
	all := make([]float32, len(s.lines)*s.columns)
	for j := range s.lines {
		s.lines[j] = all[j*s.columns : (j+1)*s.columns]
	}
	// In pieces, as the box around a whole slanting strip would be large.
	const piece = 128
	for i := 0; i < s.columns; i += piece {
		s.fill(p, i, min(i+piece, s.columns))
	}
	return s
}

// pixel is where column i and line j, fractions included, lie.
func (s *strip) pixel(i, j float64) plane.PixelPoint {
	return s.from.Add(s.along.Scale((i - float64(s.before)) * s.shrink)).Add(s.beside.Scale((j - float64(s.middle)) * lineStep * s.shrink))
}

// fill samples the columns from i0 to i1.
func (s *strip) fill(p *photo.Photograph, i0, i1 int) {
	last := float64(len(s.lines) - 1)
	corners := [4]plane.PixelPoint{s.pixel(float64(i0), 0), s.pixel(float64(i1), 0), s.pixel(float64(i0), last), s.pixel(float64(i1), last)}
	low, high := corners[0], corners[0]
	for _, c := range corners {
		low = plane.Pt(min(low.X, c.X), min(low.Y, c.Y))
		high = plane.Pt(max(high.X, c.X), max(high.Y, c.Y))
	}
	pad := plane.Pixel(s.shrink) + 1
	part := p.Patch(image.Rect(int(low.X-pad), int(low.Y-pad), int(high.X+pad)+1, int(high.Y+pad)+1), int(s.shrink))
	if part.W < 2 || part.H < 2 {
		return
	}
	light := make([]float32, part.W*part.H)
	for k := range light {
		light[k] = float32(math.Sqrt(float64(0.2126*part.R[k] + 0.7152*part.G[k] + 0.0722*part.B[k])))
	}
	dx, dy := float64(s.along.X), float64(s.along.Y)
	for j, line := range s.lines {
		x, y := part.SampleAt(s.pixel(float64(i0), float64(j)))
		for i := i0; i < i1; i++ {
			line[i] = between(light, part.W, part.H, x, y)
			x += dx
			y += dy
		}
	}
}

// between is the light at a place between four samples; beyond the edge of the
// photograph it is that of the edge.
func between(light []float32, w, h int, x, y float64) float32 {
	x, y = min(max(x, 0), float64(w-1)-1e-6), min(max(y, 0), float64(h-1)-1e-6)
	i, j := int(x), int(y)
	u, v := float32(x-float64(i)), float32(y-float64(j))
	top, low := light[j*w+i:j*w+i+2], light[(j+1)*w+i:(j+1)*w+i+2]
	return (1-v)*(top[0]+u*(top[1]-top[0])) + v*(low[0]+u*(low[1]-low[0]))
}

// at is the light at column x and line y of the strip.
func (s *strip) at(x, y float64) float32 {
	x, y = min(max(x, 0), float64(s.columns-1)-1e-6), min(max(y, 0), float64(len(s.lines)-1)-1e-6)
	i, j := int(x), int(y)
	u, v := float32(x-float64(i)), float32(y-float64(j))
	top, low := s.lines[j][i:i+2], s.lines[j+1][i:i+2]
	return (1-v)*(top[0]+u*(top[1]-top[0])) + v*(low[0]+u*(low[1]-low[0]))
}

// course is a line across the ticks: at the column x it runs at the line
// start + slope x of the strip, and it is half wide lines to either side. The
// ticks lean: at dy lines beside the course they are lean * dy columns further.
type course struct{ start, slope, half, lean float64 }

func (c course) at(x float64) float64 { return c.start + c.slope*x }

// near reports whether two courses differ by less than half a line over that
// many columns.
func (c course) near(d course, columns float64) bool {
	return math.Abs(c.at(0)-d.at(0)) < 0.5 && math.Abs(c.at(columns)-d.at(columns)) < 0.5
}

// profile is the mean light along a course, over its width.
func (s *strip) profile(c course) []float32 {
	out := make([]float32, s.columns)
	n := max(1, int(math.Round(2*c.half))+1)
	most := float64(len(s.lines)-1) - 1e-6
	for k := range n {
		dy := 0.0
		if n > 1 {
			dy = c.half * (2*float64(k)/float64(n-1) - 1)
		}
		// All columns are shifted by the same part of one.
		shift := int(math.Floor(c.lean * dy))
		u := float32(c.lean*dy - float64(shift))
		for i := range out {
			x := min(max(i+shift, 0), s.columns-2)
			y := min(max(c.at(float64(i))+dy, 0), most)
			j := int(y)
			v := float32(y - float64(j))
			top, low := s.lines[j], s.lines[j+1]
			out[i] += (1-v)*(top[x]+u*(top[x+1]-top[x])) + v*(low[x]+u*(low[x+1]-low[x]))
		}
	}
	for i := range out {
		out[i] /= float32(n)
	}
	return out
}
