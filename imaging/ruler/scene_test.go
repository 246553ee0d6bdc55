package ruler

import (
	"image"
	"image/color"
	"math"
	"math/rand/v2"

	"ogive/geometry/plane"
	"ogive/imaging/photo"
)

// scene is a drawn ruler: the plane coordinates u run along its edge, v away
// from it, in millimetres, and the first marked tick lies at u = 0.
type scene struct {
	perMM          float64 // pixels to a millimetre, about
	turn           float64 // radians
	tilt, around   float64 // radians, of the plane
	step           float64 // mm
	every          []int   // ranks of longer ticks
	spaces         int
	short          float64 // mm, the shortest ticks
	ground, ink    float64 // linear light
	cloth          float64
	width          float64 // of a tick, mm
	blur           float64 // px
	noise          float64 // sRGB steps
	scratches      int     // light or dark lines along the ruler
	hidden         float64 // share of the length under blots and glare
	figures        bool
	missSD, spread float64 // clicks: px along the ruler; mm along the tick
	seed           uint64
}

// drawn is the photograph of a scene, where its ticks truly are, and two clicks.
type drawn struct {
	photograph *photo.Photograph
	at         func(u, v float64) plane.PixelPoint
	along      func(p plane.PixelPoint) float64 // u of a place, mm
	from, to   plane.PixelPoint
}

// focal is the focal length with which scenes are drawn, in pixels.
const focal = 3500.0

// millimetreRuler is a ruler of 2 to 13 centimetres with everything about it
// drawn at random.
func millimetreRuler(seed uint64) scene {
	rng := rand.New(rand.NewPCG(seed, 77))
	between := func(a, b float64) float64 { return a + (b-a)*rng.Float64() }
	s := scene{
		perMM: 6 * math.Pow(10, rng.Float64()), turn: between(-math.Pi, math.Pi),
		tilt: between(0, 12) * math.Pi / 180, around: between(-math.Pi, math.Pi),
		step: 1, every: []int{5, 10}, short: between(2, 4), width: between(0.12, 0.25),
		ground: between(0.45, 0.9), ink: between(0.01, 0.1), cloth: between(0.02, 0.7),
		blur: between(0.6, 1.6), noise: between(0.5, 4), figures: true,
		missSD: 2, spread: 1, seed: seed,
	}
	s.spaces = 10 * max(1, int(between(20, 130)/10))
	for float64(s.spaces)*s.perMM > 1300 && s.spaces > 20 {
		s.spaces -= 10
	}
	return s
}

func (s scene) length() float64 { return float64(s.spaces) * s.step }

// draw paints the part of the photograph that holds the ruler.
func (s scene) draw() drawn {
	rng := rand.New(rand.NewPCG(s.seed, 78))
	distance := focal / s.perMM
	nx, ny := math.Sin(s.tilt)*math.Cos(s.around), math.Sin(s.tilt)*math.Sin(s.around)
	nz := math.Cos(s.tilt)
	// Two unit vectors in the plane: the picture's axes turned with the normal.
	e1 := [3]float64{1 - nx*nx/(1+nz), -nx * ny / (1 + nz), -nx}
	e2 := [3]float64{-nx * ny / (1 + nz), 1 - ny*ny/(1+nz), -ny}
	sin, cos := math.Sincos(s.turn)
	project := func(u, v float64) (x, y float64) {
		u -= s.length() / 2
		a, b := u*cos-v*sin, u*sin+v*cos
		z := distance + a*e1[2] + b*e2[2]
		return focal * (a*e1[0] + b*e2[0]) / z, focal * (a*e1[1] + b*e2[1]) / z
	}
	low, high := [2]float64{1e9, 1e9}, [2]float64{-1e9, -1e9}
	for _, u := range []float64{-5, s.length() + 5} {
		for _, v := range []float64{-2.5, 9} {
			x, y := project(u, v)
			low[0], low[1] = math.Min(low[0], x), math.Min(low[1], y)
			high[0], high[1] = math.Max(high[0], x), math.Max(high[1], y)
		}
	}
	plan := func(x, y float64) (u, v float64) {
		// The ray (x, y, focal) meets the plane through (0, 0, distance).
		k := distance * nz / (x*nx + y*ny + focal*nz)
		px, py, pz := k*x, k*y, k*focal-distance
		a, b := px*e1[0]+py*e1[1]+pz*e1[2], px*e2[0]+py*e2[1]+pz*e2[2]
		return a*cos + b*sin + s.length()/2, -a*sin + b*cos
	}
	blots := s.blots(rng)
	scratches := make([][2]float64, s.scratches)
	for i := range scratches {
		scratches[i] = [2]float64{6 * rng.Float64(), 0.15 * rng.NormFloat64()}
	}
	img := image.NewRGBA(image.Rect(0, 0, int(high[0]-low[0])+1, int(high[1]-low[1])+1))
	for j := range img.Rect.Dy() {
		for i := range img.Rect.Dx() {
			u, v := plan(float64(i)+0.5+low[0], float64(j)+0.5+low[1])
			if v < -2.5 || v > 9 || u < -5 || u > s.length()+5 {
				continue
			}
			l := s.light(u, v)
			for k, sc := range scratches {
				if d := math.Abs(v - sc[0] - 0.01*u*float64(k%2)); d < 0.08 {
					l = math.Max(0, l+sc[1])
				}
			}
			for _, b := range blots {
				l += (b.light - l) * soft((b.radius-math.Hypot(u-b.u, v-b.v))*s.perMM/3)
			}
			g := 255*encoded(l) + s.noise*rng.NormFloat64()
			q := uint8(min(max(g, 0), 255))
			img.SetRGBA(i, j, color.RGBA{q, q, q, 255})
		}
	}
	d := drawn{photograph: photo.From(img)}
	d.at = func(u, v float64) plane.PixelPoint {
		x, y := project(u, v)
		return plane.Pt(plane.Pixel(x-low[0]), plane.Pixel(y-low[1]))
	}
	d.along = func(p plane.PixelPoint) float64 {
		u, _ := plan(float64(p.X)+low[0], float64(p.Y)+low[1])
		return u
	}
	click := func(u float64) plane.PixelPoint {
		p := d.at(u, 0.3+s.spread*s.short*rng.Float64())
		axis := d.at(u+1, 1).Sub(d.at(u, 1)).Direction()
		return p.Add(axis.Scale(s.missSD * rng.NormFloat64()))
	}
	d.from, d.to = click(0), click(s.length())
	return d
}

type blot struct{ u, v, radius, light float64 }

// blots are glare, stains and figures that hide ticks.
func (s scene) blots(rng *rand.Rand) []blot {
	var out []blot
	for covered := 0.0; covered < s.hidden*s.length(); {
		r := 0.5 + 1.5*rng.Float64()
		out = append(out, blot{s.length() * (0.06 + 0.88*rng.Float64()), 4 * rng.Float64(), r, []float64{1.2, 0.02, 0.3}[rng.IntN(3)]})
		covered += 2 * r
	}
	return out
}

// light is that of the ruler and the cloth below it, blurred by the lens.
func (s scene) light(u, v float64) float64 {
	sd := s.blur / s.perMM
	ground := s.ground * (1 + 0.1*math.Sin(u/17))
	k := math.Round(u / s.step)
	long := s.short
	for i, every := range s.every {
		if int(k)%every == 0 {
			long = s.short * (1.4 + 0.4*float64(i))
		}
	}
	l := ground
	if d := math.Abs(u - k*s.step); d < s.width/2+4*sd && v < long+4*sd {
		within := edge(d+s.width/2, sd) - edge(d-s.width/2, sd)
		l += (s.ink - ground) * within * (edge(v-0.15, sd) - edge(v-long, sd))
	}
	if s.figures {
		x := math.Abs(u - 10*s.step*math.Round(u/(10*s.step)))
		if x < 1.1 && v > 2.4*s.short && v < 2.4*s.short+3 && math.Mod(v*1.7+x*2.3, 1.3) < 0.6 {
			l = s.ink
		}
	}
	if v > 4*sd {
		return l
	}
	cloth := s.cloth * (1 + 0.15*math.Sin(u*9)*math.Sin(v*9))
	return cloth + (l-cloth)*edge(v, sd)
}

// edge is a step blurred with a bell of that standard deviation.
func edge(x, sd float64) float64 { return 0.5 * math.Erfc(-x/sd/math.Sqrt2) }

func soft(x float64) float64 { return 1 / (1 + math.Exp(-x)) }

// encoded is the sRGB value of linear light (IEC 61966-2-1).
func encoded(l float64) float64 {
	l = min(max(l, 0), 1)
	if l <= 0.0031308 {
		return 12.92 * l
	}
	return 1.055*math.Pow(l, 1/2.4) - 0.055
}
