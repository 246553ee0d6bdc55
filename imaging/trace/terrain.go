package trace

import (
	"image"
	"math"
	"runtime"
	"sync"

	"ogive/geometry/plane"
	"ogive/imaging/photo"
)

// terrain is the surroundings of the web, shrunk so far that a path through it
// is quickly found.
type terrain struct {
	frame  frame
	origin point   // of sample (0, 0)'s top-left corner
	step   float64 // pixels per sample
	w, h   int
	light  []colour // logarithmic: a change of light shifts all three channels alike
	open   []bool   // where the border may run
	drape  []float32
	// Where the border may begin, end and pass the crown, and what it costs:
	// the latter two by sample, -1 for nowhere.
	enter       []arrival
	leave, past []int32
}

const (
	samplesAlong  = 120.0 // the longer side of a terrain
	samplesInGap  = 12.0  // at least, as far as the pixels and the next limit allow
	samplesAtMost = 40000.0
	// darkest keeps the logarithm of a black pixel, which is all noise, from
	// running away.
	darkest = 0.015
)

// shrinkFor is how many pixels make one sample.
func (f frame) shrinkFor() int {
	m := f.margin()
	long := max(f.level[0], f.level[1]) + 2*m
	wide := f.side[0] - f.side[1] + 2*m
	n := min(math.Ceil(max(long, wide)/samplesAlong), math.Floor(f.gap/samplesInGap))
	n = max(n, math.Ceil(math.Sqrt(long*wide/samplesAtMost)))
	return int(max(1, n))
}

// rim is how many samples at the terrain's own edge are only looked at.
const rim = 3

// bounds is the smallest upright rectangle around the web and its margin.
func (f frame) bounds() (lo, hi point) {
	over := float64((rim + 1) * f.shrinkFor())
	m := f.margin() + over
	top := max(f.level[0], f.level[1]) + 0.5*f.slack + over
	lo, hi = f.seeds[1], f.seeds[1]
	for _, along := range []float64{-m, top} {
		for _, across := range []float64{f.side[0] + m, f.side[1] - m} {
			p := f.pointAt(along, across)
			lo = plane.Pt(min(lo.X, p.X), min(lo.Y, p.Y))
			hi = plane.Pt(max(hi.X, p.X), max(hi.Y, p.Y))
		}
	}
	return lo, hi
}

func survey(p *photo.Photograph, f frame) *terrain {
	n := f.shrinkFor()
	lo, hi := f.bounds()
	r := image.Rect(int(lo.X), int(lo.Y), int(math.Ceil(float64(hi.X))), int(math.Ceil(float64(hi.Y)))).
		Intersect(image.Rectangle{Max: p.Size()})
	t := &terrain{frame: f, origin: plane.Pt(plane.Pixel(r.Min.X), plane.Pixel(r.Min.Y)), step: float64(n), w: r.Dx() / n, h: r.Dy() / n}
	t.light = make([]colour, t.w*t.h)
	t.open = make([]bool, t.w*t.h)
	t.drape = make([]float32, t.w*t.h)
	t.sample(p, r, n)
	return t
}

// sample reads one slice of rows for every row of the terrain. Of a strongly
// shrunk picture a part of each slice will do: reading all pixels would take
// longer than all the rest, and a sample is the mean of many pixels anyway. Rows
// are shared out to the processors; each writes its own samples only.
func (t *terrain) sample(p *photo.Photograph, r image.Rectangle, n int) {
	lanes := max(1, min(runtime.GOMAXPROCS(0), t.h/16))
	var all sync.WaitGroup
	for lane := range lanes {
		all.Go(func() {
			for j := lane; j < t.h; j += lanes {
				t.sampleRow(p, r, n, j)
			}
		})
	}
	all.Wait()
}

func (t *terrain) sampleRow(p *photo.Photograph, r image.Rectangle, n, j int) {
	fine := max(1, n/8)
	per := n / fine
	y := r.Min.Y + j*n + (n-fine)/2
	slice := p.Patch(image.Rect(r.Min.X, y, r.Min.X+t.w*n, y+fine), fine)
	for i := range t.w {
		var c colour
		first := i * n / fine
		for k := first; k < first+per; k++ {
			c[0] += float64(slice.R[k])
			c[1] += float64(slice.G[k])
			c[2] += float64(slice.B[k])
		}
		for k := range c {
			c[k] = math.Log(c[k]/float64(per) + darkest)
		}
		t.light[j*t.w+i] = c
	}
}

func (t *terrain) pointAt(i, j float64) point {
	return t.origin.Add(vector{X: plane.Pixel((i + 0.5) * t.step), Y: plane.Pixel((j + 0.5) * t.step)})
}

// spread of the light that is to be expected beyond what a few samples show, as
// standard deviations of the logarithm: shadow and shading change all channels
// alike, noise and the skin's own unevenness each channel for itself.
const (
	shadeSD = 0.30
	noiseSD = 0.05
)

func lightPrior() symmetric {
	p := outer(colour{1, 1, 1}, shadeSD*shadeSD)
	for _, i := range []int{0, 3, 5} {
		p[i] += noiseSD * noiseSD
	}
	return p
}

// guess marks where the border may run and tells drape from skin by what the
// clicks alone say. It returns how far apart the two are.
func (t *terrain) guess() float64 {
	f := t.frame
	m := f.margin()
	top := 0.5*f.slack + t.step
	class := make([]int8, len(t.light))
	for j := range t.h {
		for i := range t.w {
			p := t.pointAt(float64(i), float64(j))
			along, over := f.at(p)
			k := j*t.w + i
			edge := i < rim || j < rim || i >= t.w-rim || j >= t.h-rim
			t.open[k] = !edge && f.distal(along, over) < top && along > -m && over < f.side[0]+m && over > f.side[1]-m
			switch {
			case f.inside(p) > 0.1:
				class[k] = 1
			case f.surelySkin(along, over):
				class[k] = -1
			}
		}
	}
	t.setGates()
	var d discriminant
	for round := range 3 {
		var drape, skin moments
		for k, c := range class {
			// What a first look puts clearly on the other side is taken to
			// be a stranger: a neighbouring gap, a nail, a finger's edge.
			stranger := round > 0 && float64(c)*d.of(t.light[k]) < -0.2
			switch {
			case c == 0 || stranger:
			case c > 0:
				drape.add(t.light[k])
			default:
				skin.add(t.light[k])
			}
		}
		if drape.n < 4 || skin.n < 4 {
			break
		}
		d = discriminate(drape, skin, lightPrior())
	}
	for k, c := range t.light {
		t.drape[k] = clamp(d.of(c))
	}
	return d.apart
}

// clamp limits what a single glaring or black sample can say.
func clamp(x float64) float32 { return float32(max(-1.2, min(1.2, x))) }
