package phantom

import "math"

// field is a smooth quantity sampled once each cell by cell pixels.
type field struct {
	w, h, cell int
	v          []float64
}

func newField(width, height, cell int) *field {
	w, h := (width+cell-1)/cell, (height+cell-1)/cell
	return &field{w, h, cell, make([]float64, w*h)}
}

// fill sets every sample; value is called for the pixel coordinates of its
// middle.
func (f *field) fill(value func(i int, x, y float64) float64) {
	eachRow(0, f.h, func(j int) {
		for i := range f.w {
			k := j*f.w + i
			f.v[k] = value(k, (float64(i)+0.5)*float64(f.cell), (float64(j)+0.5)*float64(f.cell))
		}
	})
}

func (f *field) sample(i, j int) float64 {
	return f.v[min(max(j, 0), f.h-1)*f.w+min(max(i, 0), f.w-1)]
}

// at is the value at a pixel position, by linear interpolation.
func (f *field) at(x, y float64) float64 {
	x, y = x/float64(f.cell)-0.5, y/float64(f.cell)-0.5
	fx, fy := math.Floor(x), math.Floor(y)
	i, j, u, v := int(fx), int(fy), x-fx, y-fy
	top := f.sample(i, j)*(1-u) + f.sample(i+1, j)*u
	bottom := f.sample(i, j+1)*(1-u) + f.sample(i+1, j+1)*u
	return top*(1-v) + bottom*v
}

// smooth is the value and the slope per pixel, by cubic B-splines.
func (f *field) smooth(x, y float64) (value, dx, dy float64) {
	x, y = x/float64(f.cell)-0.5, y/float64(f.cell)-0.5
	fx, fy := math.Floor(x), math.Floor(y)
	i, j := int(fx), int(fy)
	wx, sx := spline(x - fx)
	wy, sy := spline(y - fy)
	for b := range 4 {
		var row, slope float64
		for a := range 4 {
			s := f.sample(i-1+a, j-1+b)
			row += wx[a] * s
			slope += sx[a] * s
		}
		value += wy[b] * row
		dx += wy[b] * slope
		dy += sy[b] * row
	}
	return value, dx / float64(f.cell), dy / float64(f.cell)
}

// spline is the weights of the uniform cubic B-spline and their slopes.
func spline(t float64) (w, s [4]float64) {
	r := 1 - t
	w = [4]float64{r * r * r / 6, (4 - 6*t*t + 3*t*t*t) / 6, (1 + 3*t + 3*t*t - 3*t*t*t) / 6, t * t * t / 6}
	s = [4]float64{-r * r / 2, (3*t*t - 4*t) / 2, (1 + 2*t - 3*t*t) / 2, t * t / 2}
	return w, s
}

// soften replaces f by its mean over a bell of sd cells.
func (f *field) soften(sd float64) {
	k := gaussian(sd)
	r := len(k) / 2
	out := make([]float64, len(f.v))
	for pass := range 2 {
		eachRow(0, f.h, func(j int) {
			for i := range f.w {
				sum := 0.0
				for n, weight := range k {
					if pass == 0 {
						sum += weight * f.sample(i+n-r, j)
					} else {
						sum += weight * f.sample(i, j+n-r)
					}
				}
				out[j*f.w+i] = sum
			}
		})
		f.v, out = out, f.v
	}
}

// shrunk is the mean of a coverage over each cell.
func shrunk(c coverage, cell int) *field {
	f := newField(c.w, c.h, cell)
	eachRow(0, f.h, func(j int) {
		for i := range f.w {
			sum, n := 0.0, 0
			for y := j * cell; y < min((j+1)*cell, c.h); y++ {
				for x := i * cell; x < min((i+1)*cell, c.w); x++ {
					sum += c.part[y*c.w+x]
					n++
				}
			}
			f.v[j*f.w+i] = sum / float64(n)
		}
	})
	return f
}

// inflated is the square of the height of a silhouette blown up like a glove:
// the solution of the screened Poisson equation, which gives narrow parts a
// round section and lets broad ones flatten out at about 1.4 times thick (both
// in cells).
func inflated(mask *field, thick float64) *field {
	u := newField(mask.w*mask.cell, mask.h*mask.cell, mask.cell)
	w, h := u.w, u.h
	screen := make([]float64, w*h)
	for k, m := range mask.v {
		screen[k] = m / (m*(4+1/(thick*thick)) + 6*(1-m))
	}
	relax := 2 / (1 + math.Pi/(2.2*thick+6))
	for range int(3*thick) + 30 {
		for colour := range 2 {
			eachRow(0, h, func(j int) {
				up, down := max(j-1, 0)*w, min(j+1, h-1)*w
				for i := (j + colour) & 1; i < w; i += 2 {
					k := j*w + i
					if mask.v[k] == 0 {
						continue
					}
					around := u.v[up+i] + u.v[down+i] + u.v[j*w+max(i-1, 0)] + u.v[j*w+min(i+1, w-1)]
					u.v[k] += relax * ((around+2)*screen[k] - u.v[k])
				}
			})
		}
	}
	return u
}
