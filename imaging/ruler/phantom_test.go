package ruler

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"ogive/geometry/plane"
	"ogive/imaging/phantom"
	"ogive/imaging/photo"
)

func TestTicksOfPhantomsAreFoundWhereTheyAre(t *testing.T) {
	onPhantoms(t, 2)
}

// BenchmarkPhantoms prints, on demand, how well ticks are found on 20 phantoms:
//
//	go test -run NONE -bench Phantoms -benchtime 1x ./imaging/ruler
func BenchmarkPhantoms(b *testing.B) {
	for b.Loop() {
		onPhantoms(b, 20)
	}
}

// onPhantoms finds the ticks of random phantoms, both ends clicked with an error
// of 2 px each way.
func onPhantoms(t testing.TB, rulers int) {
	t.Helper()
	var all []float64
	for seed := uint64(1); rulers > 0; seed++ {
		c := phantom.Random(seed)
		if c.Reference == phantom.IDCard {
			continue
		}
		rulers--
		picture, err := c.Render()
		if err != nil {
			t.Fatal(seed, err)
		}
		photograph, err := photo.Decode(picture.JPEG)
		if err != nil {
			t.Fatal(seed, err)
		}
		off, err := offPhantom(photograph, picture.Truth, rand.New(rand.NewPCG(seed, 5)))
		if err != nil {
			t.Errorf("phantom %d: %v", seed, err)
			continue
		}
		slices.Sort(off)
		if off[len(off)/2] > 0.2 {
			t.Errorf("phantom %d: the ticks are off by %.2f px at the median", seed, off[len(off)/2])
		}
		all = append(all, off...)
	}
	slices.Sort(all)
	if len(all) == 0 {
		t.Fatal("no ticks at all")
	}
	t.Logf("%d ticks, off by %.3f px at the median, %.3f px at the 95th percentile, %.3f px at worst",
		len(all), all[len(all)/2], all[len(all)*95/100], all[len(all)-1])
}

// offPhantom is how far each tick found lies from the true one along the ruler,
// in pixels.
func offPhantom(p *photo.Photograph, truth phantom.Truth, rng *rand.Rand) ([]float64, error) {
	r := truth.Ruler
	click := func(q plane.PixelPoint) plane.PixelPoint {
		return q.Add(plane.Vec(plane.Pixel(2*rng.NormFloat64()), plane.Pixel(2*rng.NormFloat64())))
	}
	f, err := FindTicks(p, click(r.From), click(r.To))
	if err != nil {
		return nil, err
	}
	if len(f.Ticks) != len(r.Ticks) {
		return nil, fmt.Errorf("%d ticks found, not %d", len(f.Ticks), len(r.Ticks))
	}
	if w := Check(f, r.Length); w != "" {
		return nil, fmt.Errorf("false warning: %s", w)
	}
	zero := truth.Plane.Position(r.From)
	along := truth.Plane.Position(r.To).Sub(zero).Direction()
	off := make([]float64, len(f.Ticks))
	for i, q := range f.Ticks {
		u := truth.Plane.Position(q).Sub(zero).Dot(along)
		off[i] = math.Abs(float64(u-r.Step*plane.Millimetre(i)) / float64(truth.Plane.PerPixel(q)))
	}
	return off, nil
}
