package phantom

import (
	"image"
	"math"
	"math/rand/v2"
	"runtime"
	"sync"

	"ogive/geometry/plane"
)

// rgb is a colour in linear light, 1 being white.
type rgb [3]float64

func (c rgb) scaled(k float64) rgb { return rgb{c[0] * k, c[1] * k, c[2] * k} }
func (c rgb) mixed(d rgb, t float64) rgb {
	return rgb{c[0] + (d[0]-c[0])*t, c[1] + (d[1]-c[1])*t, c[2] + (d[2]-c[2])*t}
}

// canvas is a picture in linear light, three channels a pixel.
type canvas struct {
	w, h int
	rgb  []float64
}

func newCanvas(w, h int) *canvas { return &canvas{w, h, make([]float64, 3*w*h)} }

// paint sets every pixel; colour is called for the pixel's column and row.
func (c *canvas) paint(colour func(x, y int) rgb) {
	eachRow(0, c.h, func(y int) {
		row := c.rgb[3*y*c.w : 3*(y+1)*c.w]
		for x := range c.w {
			v := colour(x, y)
			row[3*x], row[3*x+1], row[3*x+2] = v[0], v[1], v[2]
		}
	})
}

// lay puts a shape over what is there; colour is called where the shape is.
func (c *canvas) lay(shape coverage, colour func(x, y int) rgb) {
	eachRow(shape.y0, shape.y1, func(y int) {
		for x, part := range shape.part[y*c.w : (y+1)*c.w] {
			if part < 1e-9 {
				continue
			}
			v := colour(x, y)
			at := c.rgb[3*(y*c.w+x):]
			for i := range 3 {
				at[i] += (v[i] - at[i]) * part
			}
		}
	})
}

// blur spreads light as a lens with a Gaussian spot does.
func (c *canvas) blur(sd plane.Pixel) {
	if sd == 0 {
		return
	}
	k := gaussian(float64(sd))
	r := len(k) / 2
	out := make([]float64, len(c.rgb))
	eachRow(0, c.h, func(y int) {
		row, to := c.rgb[3*y*c.w:3*(y+1)*c.w], out[3*y*c.w:3*(y+1)*c.w]
		for i, weight := range k {
			shift := i - r
			for x := range c.w {
				from := 3 * min(max(x+shift, 0), c.w-1)
				to[3*x] += weight * row[from]
				to[3*x+1] += weight * row[from+1]
				to[3*x+2] += weight * row[from+2]
			}
		}
	})
	n := 3 * c.w
	eachRow(0, c.h, func(y int) {
		to := c.rgb[y*n : (y+1)*n]
		clear(to)
		for i, weight := range k {
			from := min(max(y+i-r, 0), c.h-1)
			for x, v := range out[from*n : (from+1)*n] {
				to[x] += weight * v
			}
		}
	})
}

// gaussian integrates the bell over each pixel, so that narrow ones are right.
func gaussian(sd float64) []float64 {
	r := int(math.Ceil(3.5 * sd))
	k := make([]float64, 2*r+1)
	sum := 0.0
	for i := range k {
		x := float64(i - r)
		k[i] = math.Erf((x+0.5)/(sd*math.Sqrt2)) - math.Erf((x-0.5)/(sd*math.Sqrt2))
		sum += k[i]
	}
	for i := range k {
		k[i] /= sum
	}
	return k
}

// develop is the 8-bit picture, with the sensor's noise: noiseSD steps of 255 in
// mid-grey, from the electronics and from the light itself.
func (c *canvas) develop(seed uint64, noiseSD float64) *image.RGBA {
	img := image.NewRGBA(image.Rect(0, 0, c.w, c.h))
	slope := encodedSlope(midGrey)
	read := noiseSD / 255 / slope * 0.5
	shot := noiseSD / 255 / slope * 0.866 / math.Sqrt(midGrey)
	eachRow(0, c.h, func(y int) {
		rng := rand.New(rand.NewPCG(seed, uint64(y)+1<<32))
		from, to := c.rgb[3*y*c.w:3*(y+1)*c.w], img.Pix[y*img.Stride:]
		for x := range c.w {
			for i := range 3 {
				v := from[3*x+i]
				if noiseSD > 0 {
					v += rng.NormFloat64() * math.Sqrt(read*read+shot*shot*math.Max(v, 0))
				}
				to[4*x+i] = encoded(v)
			}
			to[4*x+3] = 255
		}
	})
	return img
}

// eachRow calls do for every row from y0 to before y1, on all cores: rows must
// not depend on one another.
func eachRow(y0, y1 int, do func(y int)) {
	workers := min(runtime.GOMAXPROCS(0), 8)
	const band = 16
	var wg sync.WaitGroup
	for n := range workers {
		wg.Go(func() {
			for start := y0 + n*band; start < y1; start += workers * band {
				for y := start; y < min(start+band, y1); y++ {
					do(y)
				}
			}
		})
	}
	wg.Wait()
}
