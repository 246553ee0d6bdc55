package trace

import (
	"bytes"
	"image"
	"image/color"
	"image/jpeg"
	"math"
	"math/rand/v2"
	"slices"

	"ogive/geometry/plane"
	"ogive/imaging/photo"
)

// scene is a drawn web whose border is known exactly. Colours are linear light.
type scene struct {
	// The arch, in pixels and degrees (design: the arch).
	shape             string
	radius, flat      float64
	flare, meet       float64 // angles phi and psi
	shaft             float64 // length of the straight borders
	turn              float64 // of the whole, degrees
	skin              colour
	drape             func(x, y float64) colour
	finger            float64 // width of a finger
	shadow, shadowFar float64 // how much light it takes, how far it reaches
	shade, shadeFar   float64 // darkening of the skin towards its border
	creases           float64
	blur, noise       float64
	gain              float64 // over-exposure
	quality           int     // JPEG, 0 for none
}

func plain(c colour) func(x, y float64) colour { return func(x, y float64) colour { return c } }

func (s scene) rise() float64 {
	return s.radius * (math.Sin(rad(s.meet)) - math.Sin(rad(s.flare)))
}

func (s scene) halfSpan() float64 {
	return s.flat/2 + s.radius*(math.Cos(rad(s.flare))-math.Cos(rad(s.meet)))
}

func rad(d float64) float64 { return d * math.Pi / 180 }

// halfWidth is half the gap at a height over the crown.
func (s scene) halfWidth(y float64) float64 {
	a, rise := s.halfSpan(), s.rise()
	if y >= rise {
		return a + (y-rise)*math.Tan(rad(s.flare))
	}
	if y < 0 {
		return -1
	}
	v := (rise + s.radius*math.Sin(rad(s.flare)) - y) / s.radius
	return a - s.radius*math.Cos(rad(s.flare)) + s.radius*math.Sqrt(math.Max(0, 1-v*v))
}

func (s scene) top() float64 { return s.rise() + s.shaft }

// outline is the border in the arch's own frame, from the right to the left.
func (s scene) outline() [][2]float64 {
	var right [][2]float64
	top := s.top() + 30
	for y := top; y > s.rise(); y -= 0.25 {
		right = append(right, [2]float64{s.halfWidth(y), y})
	}
	a, rise := s.halfSpan(), s.rise()
	xc, yc := a-s.radius*math.Cos(rad(s.flare)), rise+s.radius*math.Sin(rad(s.flare))
	if s.radius > 0 {
		n := int(s.radius*rad(s.meet-s.flare)/0.25) + 2
		for i := range n + 1 {
			th := rad(s.flare + (s.meet-s.flare)*float64(i)/float64(n))
			right = append(right, [2]float64{xc + s.radius*math.Cos(th), yc - s.radius*math.Sin(th)})
		}
	}
	for x := s.flat / 2; x > 0; x -= 0.25 {
		right = append(right, [2]float64{x, 0})
	}
	right = append(right, [2]float64{0, 0})
	left := slices.Clone(right)
	slices.Reverse(left)
	for _, p := range left[1:] {
		right = append(right, [2]float64{-p[0], p[1]})
	}
	return right
}

type drawn struct {
	photograph *photo.Photograph
	border     []point // dense
	toPage     func(x, y float64) point
	toFrame    func(p point) (x, y float64)
	scene      scene
}

// draw paints the scene: sharp at three times the size, then blurred, noised,
// encoded as sRGB and, if wished, as JPEG.
func (s scene) draw(seed uint64) drawn {
	rng := rand.New(rand.NewPCG(seed, 7))
	wide := 2*s.halfWidth(s.top()) + 0.9*s.finger*2
	high := s.top() + 25 + 0.6*wide
	size := int(math.Hypot(wide, high)*0.85) + 30
	cx, cy := float64(size)/2+rng.Float64(), float64(size)/2+rng.Float64()
	sin, cos := math.Sincos(rad(s.turn))
	mid := s.top()*0.5 - 0.1*wide
	d := drawn{scene: s}
	d.toPage = func(x, y float64) point {
		u, v := x, -(y - mid)
		return plane.Pt(plane.Pixel(cx+u*cos-v*sin), plane.Pixel(cy+u*sin+v*cos))
	}
	d.toFrame = func(p point) (x, y float64) {
		u, v := float64(p.X)-cx, float64(p.Y)-cy
		return u*cos + v*sin, -(-u*sin + v*cos) + mid
	}
	for _, q := range s.outline() {
		d.border = append(d.border, d.toPage(q[0], q[1]))
	}
	light := s.paint(d, size)
	for k := range light {
		light[k] = blurred(light[k], size, s.blur)
	}
	img := image.NewRGBA(image.Rect(0, 0, size, size))
	for y := range size {
		for x := range size {
			var out [3]uint8
			for k := range out {
				v := light[k][y*size+x] * s.gain
				if s.noise > 0 {
					v += s.noise * math.Sqrt(math.Max(v, 0.01)) * rng.NormFloat64()
				}
				out[k] = encode(v)
			}
			img.SetRGBA(x, y, color.RGBA{out[0], out[1], out[2], 255})
		}
	}
	if s.quality == 0 {
		d.photograph = photo.From(img)
		return d
	}
	var b bytes.Buffer
	if err := jpeg.Encode(&b, img, &jpeg.Options{Quality: s.quality}); err != nil {
		panic(err)
	}
	decoded, err := jpeg.Decode(&b)
	if err != nil {
		panic(err)
	}
	d.photograph = photo.From(decoded)
	return d
}

func encode(v float64) uint8 {
	v = math.Max(0, math.Min(1, v))
	if v <= 0.0031308 {
		v *= 12.92
	} else {
		v = 1.055*math.Pow(v, 1/2.4) - 0.055
	}
	return uint8(v*255 + 0.5)
}

func (s scene) paint(d drawn, size int) [3][]float64 {
	const fine = 3
	var out [3][]float64
	for k := range out {
		out[k] = make([]float64, size*size)
	}
	for y := range size {
		for x := range size {
			far := distanceTo(d.border, plane.Pt(plane.Pixel(x)+0.5, plane.Pixel(y)+0.5), 4)
			for v := range fine {
				for u := range fine {
					p := plane.Pt(plane.Pixel(float64(x)+(float64(u)+0.5)/fine), plane.Pixel(float64(y)+(float64(v)+0.5)/fine))
					fx, fy := d.toFrame(p)
					c := s.colourAt(fx, fy, float64(p.X), float64(p.Y), far)
					for k := range out {
						out[k][y*size+x] += c[k] / (fine * fine)
					}
				}
			}
		}
	}
	return out
}

func (s scene) colourAt(fx, fy, px, py, far float64) colour {
	half := s.halfWidth(fy)
	outer := half + s.finger
	onDrape := fy >= 0 && math.Abs(fx) < half || fy > -0.1*s.finger && math.Abs(fx) > outer && half > 0
	if onDrape {
		c := s.drape(px, py)
		k := 1 - s.shadow*math.Exp(-far/math.Max(0.1, s.shadowFar))
		if s.shadowFar > 0 && fx > 0 && far < 1.6*s.shadowFar {
			// The half that lies away from the lamp has a shadow with an
			// edge of its own.
			k *= 1 - 0.6*s.shadow/(1+math.Exp((far-1.2*s.shadowFar)/(0.12*s.shadowFar)))
		}
		return colour{c[0] * k, c[1] * k, c[2] * k}
	}
	k := 1 - s.shade*math.Exp(-far/math.Max(0.1, s.shadeFar))
	if s.creases > 0 {
		k *= 1 - s.creases*math.Pow(math.Max(0, math.Sin(fy/2.5+math.Sin(fx/9))), 6)*math.Exp(-math.Pow((fy-0.6*s.top())/(0.12*s.top()+3), 2))
		k *= 1 - s.creases*math.Exp(-math.Pow((math.Abs(fx)-half-0.3*s.finger-0.1*fy)/1.5, 2))
	}
	return colour{s.skin[0] * k, s.skin[1] * k, s.skin[2] * k}
}

func blurred(v []float64, size int, sd float64) []float64 {
	if sd <= 0 {
		return v
	}
	n := int(3*sd) + 1
	kernel := make([]float64, 2*n+1)
	var sum float64
	for i := range kernel {
		x := float64(i-n) / sd
		kernel[i] = math.Exp(-x * x / 2)
		sum += kernel[i]
	}
	pass := func(in []float64, dx, dy int) []float64 {
		out := make([]float64, len(in))
		for y := range size {
			for x := range size {
				var t float64
				for i, k := range kernel {
					u, w := clampInt(x+(i-n)*dx, 0, size-1), clampInt(y+(i-n)*dy, 0, size-1)
					t += k * in[w*size+u]
				}
				out[y*size+x] = t / sum
			}
		}
		return out
	}
	return pass(pass(v, 1, 0), 0, 1)
}

// distanceTo is the distance from p to a dense line of points, looking at every
// n-th first.
func distanceTo(line []point, p point, n int) float64 {
	best, at := math.Inf(1), 0
	for i := 0; i < len(line); i += n {
		v := line[i].Sub(p)
		if d := float64(v.Dot(v)); d < best {
			best, at = d, i
		}
	}
	for i := max(1, at-n); i < min(len(line), at+n+1); i++ {
		a, ab := line[i-1], line[i].Sub(line[i-1])
		t := float64(p.Sub(a).Dot(ab)) / float64(ab.Dot(ab)+1e-12)
		q := a.Add(ab.Scale(math.Max(0, math.Min(1, t))))
		v := q.Sub(p)
		best = math.Min(best, float64(v.Dot(v)))
	}
	return math.Sqrt(best)
}

// seeds are three clicks, each off by so many pixels.
func (d drawn) seeds(rng *rand.Rand, sd float64) [3]point {
	s := d.scene
	right, left := s.top()*(0.75+0.25*rng.Float64()), s.top()*(0.75+0.25*rng.Float64())
	out := [3]point{d.toPage(s.halfWidth(right), right), d.toPage(0, 0), d.toPage(-s.halfWidth(left), left)}
	if rng.IntN(2) == 1 {
		out[0], out[2] = out[2], out[0]
	}
	for i := range out {
		out[i].X += plane.Pixel(sd * rng.NormFloat64())
		out[i].Y += plane.Pixel(sd * rng.NormFloat64())
	}
	return out
}

// off is the distance of every traced point from the true border, positive where
// it lies on the drape.
func (d drawn) off(traced []point) []float64 {
	out := make([]float64, len(traced))
	for i, p := range traced {
		x, y := d.toFrame(p)
		out[i] = distanceTo(d.border, p, 8)
		if y < 0 || math.Abs(x) > d.scene.halfWidth(y) {
			out[i] = -out[i]
		}
	}
	return out
}
