package scale

import (
	"math"
	"math/rand/v2"
	"testing"

	"ogive/geometry/plane"
)

// scene is a plane seen by a pinhole camera, and the truth of it: positions on
// the plane in millimetres, with the camera above the point (0, 0).
type scene struct {
	camera   Camera
	focal    float64
	normal   slant
	distance float64
}

// newScene is a hand-held photograph from above: a tilt of up to maxTilt degrees
// in any direction, a focal length between that of a telephone and that of a
// short telephoto.
func newScene(rng *rand.Rand, maxTilt float64) scene {
	s := scene{camera: Camera{Width: 4000, Height: 3000}}
	s.focal = 5000 * 0.6 * math.Pow(1.6/0.6, rng.Float64())
	tilt, around := math.Tan(maxTilt*rng.Float64()*math.Pi/180), 2*math.Pi*rng.Float64()
	s.normal = slant{tilt * math.Cos(around), tilt * math.Sin(around)}
	s.distance = s.focal / (15 + 7*rng.Float64())
	return s
}

// seen is where a position of the plane appears: by the pinhole's projection,
// written out in three dimensions.
func (s scene) seen(x, y float64) plane.PixelPoint {
	n := math.Sqrt(1 + s.normal.x*s.normal.x + s.normal.y*s.normal.y)
	nx, ny, nz := s.normal.x/n, s.normal.y/n, 1/n
	// Two unit vectors in the plane, by Gram and Schmidt.
	ax, ay, az := 1-nx*nx, -nx*ny, -nx*nz
	a := math.Sqrt(ax*ax + ay*ay + az*az)
	ax, ay, az = ax/a, ay/a, az/a
	bx, by, bz := ny*az-nz*ay, nz*ax-nx*az, nx*ay-ny*ax
	px, py, pz := x*ax+y*bx, x*ay+y*by, s.distance+x*az+y*bz
	return plane.Pt(
		s.camera.Width/2+plane.Pixel(s.focal*px/pz),
		s.camera.Height/2+plane.Pixel(s.focal*py/pz),
	)
}

// stretch is a straight line on the plane.
type stretch struct{ x, y, dx, dy float64 }

func (s stretch) at(k float64) (x, y float64) { return s.x + k*s.dx, s.y + k*s.dy }

// near is a ruler on one side of the picture, and a length of 5 to 25 mm that
// lies 60 to 100 mm away from it, in any direction.
func near(rng *rand.Rand) (ruler, measured stretch) {
	turn, away := 2*math.Pi*rng.Float64(), 60+40*rng.Float64()
	s, c := math.Sincos(turn)
	at := func(u, v, du, dv float64) stretch {
		return stretch{c*u - s*v, s*u + c*v, c*du - s*dv, s*du + c*dv}
	}
	ruler = at(-25+10*rng.NormFloat64(), 40, 50, 4*rng.NormFloat64())
	length, way := 5+20*rng.Float64(), 2*math.Pi*rng.Float64()
	measured = at(10*rng.NormFloat64(), 40-away, length*math.Cos(way), length*math.Sin(way))
	return ruler, measured
}

// coverage is the share of lengths whose 95 per cent interval holds the truth,
// and the median half width of that interval against the length.
func coverage(t *testing.T, name string, scenes int, fit func(*rand.Rand, scene, stretch) (Fit, error), wantLow, wantHigh float64) {
	t.Helper()
	rng := rand.New(rand.NewPCG(2, 26))
	held, width, off := 0, 0.0, 0.0
	for range scenes {
		s := newScene(rng, 12)
		ruler, measured := near(rng)
		f, err := fit(rng, s, ruler)
		if err != nil {
			t.Fatal(name, err)
		}
		a, b := s.seen(measured.x, measured.y), s.seen(measured.at(1))
		truth := math.Hypot(measured.dx, measured.dy)
		length := func(m Map) float64 { return float64(m.Position(a).Distance(m.Position(b))) }
		best := length(f.Best)
		var offs []float64
		for _, m := range f.Likely {
			offs = append(offs, math.Abs(length(m)-best))
		}
		u95 := upper95(offs)
		width += u95 / truth / float64(scenes)
		off += math.Abs(best-truth) / truth / float64(scenes)
		if math.Abs(best-truth) <= u95 {
			held++
		}
	}
	share := float64(held) / float64(scenes)
	t.Logf("%-32s truth held in %.1f %% of %d lengths; u95 %.2f %%, error %.2f %% of the length, on average", name, 100*share, scenes, 100*width, 100*off)
	if share < wantLow || share > wantHigh {
		t.Errorf("%s: the truth is held in %.1f %% of lengths", name, 100*share)
	}
}

func clicked(rng *rand.Rand, s scene, x, y, sd float64) plane.PixelPoint {
	p := s.seen(x, y)
	return plane.Pt(p.X+plane.Pixel(sd*rng.NormFloat64()), p.Y+plane.Pixel(sd*rng.NormFloat64()))
}

// The truth of a length is held by its interval about as often as it claims, in
// scenes with a tilt of up to 12 degrees, though the ruler knows of 10 only.
func TestLengthsAreHeldByTheirIntervals(t *testing.T) {
	const scenes = 600
	byRuler := func(known bool) func(*rand.Rand, scene, stretch) (Fit, error) {
		return func(rng *rand.Rand, s scene, r stretch) (Fit, error) {
			c := s.camera
			if known {
				c.Focal = plane.Pixel(s.focal)
			}
			x, y := r.at(1)
			return Ruler{clicked(rng, s, r.x, r.y, 2), clicked(rng, s, x, y, 2), plane.Millimetre(math.Hypot(r.dx, r.dy))}.Fit(c, 2)
		}
	}
	byTicks := func(n int, sd float64, known bool) func(*rand.Rand, scene, stretch) (Fit, error) {
		return func(rng *rand.Rand, s scene, r stretch) (Fit, error) {
			c := s.camera
			if known {
				c.Focal = plane.Pixel(s.focal)
			}
			ticks := Ticks{Step: plane.Millimetre(math.Hypot(r.dx, r.dy) / float64(n-1))}
			for i := range n {
				x, y := r.at(float64(i) / float64(n-1))
				ticks.At = append(ticks.At, clicked(rng, s, x, y, sd))
			}
			return ticks.Fit(c, 2)
		}
	}
	byCard := func(rng *rand.Rand, s scene, r stretch) (Fit, error) {
		l := math.Hypot(r.dx, r.dy)
		ux, uy := r.dx/l, r.dy/l
		card := Card{Width: 85.6, Height: 53.98}
		for i, c := range [4][2]float64{{0, 0}, {85.6, 0}, {85.6, 53.98}, {0, 53.98}} {
			card.Corners[i] = clicked(rng, s, r.x+c[0]*ux-c[1]*uy, r.y+c[0]*uy+c[1]*ux, 2)
		}
		return card.Fit(s.camera, 2)
	}
	coverage(t, "ruler", scenes, byRuler(false), 0.92, 0.99)
	coverage(t, "ruler, focal length known", scenes, byRuler(true), 0.92, 0.99)
	coverage(t, "3 ticks clicked", scenes, byTicks(3, 2, false), 0.92, 0.99)
	coverage(t, "6 ticks clicked", scenes, byTicks(6, 2, false), 0.92, 0.99)
	coverage(t, "51 ticks found", scenes, byTicks(51, 0.15, false), 0.92, 0.99)
	coverage(t, "51 ticks found, focal known", scenes, byTicks(51, 0.15, true), 0.92, 0.99)
	coverage(t, "card", scenes, byCard, 0.92, 0.99)
}
