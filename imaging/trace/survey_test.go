package trace

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

var skins = map[string]colour{
	"fair":   {0.72, 0.50, 0.40},
	"tan":    {0.48, 0.28, 0.18},
	"dark":   {0.16, 0.085, 0.055},
	"deep":   {0.06, 0.032, 0.022},
	"purple": {0.30, 0.20, 0.20},
}

var drapes = map[string]colour{
	"white": {0.85, 0.86, 0.84},
	"green": {0.06, 0.28, 0.18},
	"blue":  {0.07, 0.20, 0.45},
	"grey":  {0.35, 0.35, 0.36},
	"black": {0.02, 0.022, 0.03},
	"sky":   {0.35, 0.55, 0.75},
}

var (
	skinNames  = []string{"fair", "tan", "dark", "deep", "purple"}
	drapeNames = []string{"white", "green", "blue", "grey", "black", "sky"}
	shapeNames = []string{"V", "gothic", "round", "U"}
)

// randomScene is a web of the given kind; everything else is drawn by lot.
func randomScene(rng *rand.Rand, skin, drape, shape string, gap float64) scene {
	between := func(a, b float64) float64 { return a + (b-a)*rng.Float64() }
	s := scene{shape: shape, skin: skins[skin], drape: plain(drapes[drape]), gain: 1, turn: between(0, 360)}
	for k := range s.skin {
		s.skin[k] *= between(0.85, 1.15)
	}
	s.flare = between(0, 12)
	a := gap / 2
	switch shape {
	case "V":
		s.flare, s.meet = between(8, 22), 0
		s.meet = s.flare
		s.shaft = a / math.Tan(rad(s.flare))
	case "gothic":
		s.meet = between(45, 75)
		s.radius = a / (math.Cos(rad(s.flare)) - math.Cos(rad(s.meet)))
	case "round":
		s.meet = 90
		s.radius = a / math.Cos(rad(s.flare))
	case "U":
		s.meet = 90
		s.flat = between(0.25, 0.6) * gap
		s.radius = (a - s.flat/2) / math.Cos(rad(s.flare))
	}
	if shape != "V" {
		s.shaft = between(0.4, 1.2) * gap
	}
	s.finger = between(0.9, 1.8) * gap
	s.shadow, s.shadowFar = between(0, 0.6), between(0.05, 0.3)*gap
	s.shade, s.shadeFar = between(0, 0.5), between(0.05, 0.3)*gap
	s.creases = between(0, 0.4)
	s.blur = between(0.5, math.Min(2.5, gap/12))
	s.noise = between(0.003, 0.03)
	s.quality = 75 + rng.IntN(21)
	return s
}

// figures sums up how far traced borders lie off the true ones.
type figures struct {
	off, bias, worst []float64
	failed           int
}

func (f *figures) add(d drawn, b Border, err error) {
	if err != nil {
		f.failed++
		return
	}
	off := d.off(b.Points)
	var abs []float64
	for _, x := range off {
		abs = append(abs, math.Abs(x))
	}
	f.off = append(f.off, median(abs))
	f.bias = append(f.bias, median(off))
	f.worst = append(f.worst, quantile(abs, 0.95))
}

func (f figures) String() string {
	if len(f.off) == 0 {
		return fmt.Sprintf("failed %d", f.failed)
	}
	return fmt.Sprintf("n %3d failed %d | median off %.3f, 90%% %.3f | bias %+.3f | 95%% of points within: median %.3f, 90%% %.3f, worst %.2f",
		len(f.off), f.failed, median(f.off), quantile(f.off, 0.9), median(f.bias), median(f.worst), quantile(f.worst, 0.9), quantile(f.worst, 1))
}

// BenchmarkSurvey prints, on demand, how far borders traced on drawn scenes lie
// off the true ones, by skin, drape, shape and size.
func BenchmarkSurvey(b *testing.B) {
	for b.Loop() {
		by := map[string]*figures{}
		var order []string
		count := func(name string) *figures {
			if by[name] == nil {
				by[name] = &figures{}
				order = append(order, name)
			}
			return by[name]
		}
		count("all")
		for _, names := range [][]string{skinNames, drapeNames, shapeNames} {
			for _, n := range names {
				count(n)
			}
		}
		rng := rand.New(rand.NewPCG(2, 3))
		for _, skin := range skinNames {
			for _, drape := range drapeNames {
				for _, shape := range shapeNames {
					gap := []float64{10, 16, 28, 50, 90}[rng.IntN(5)]
					s := randomScene(rng, skin, drape, shape, gap)
					d := s.draw(rng.Uint64())
					border, err := Web(d.photograph, d.seeds(rng, 2))
					for _, name := range []string{"all", skin, drape, shape, fmt.Sprintf("gap %.0f", gap)} {
						count(name).add(d, border, err)
					}
					if err != nil || by["all"].worst[len(by["all"].worst)-1] > 1.5 {
						fmt.Printf("bad: %s on %s %s gap %.0f blur %.1f noise %.3f shadow %.2f contrast %.1f sd %.2f %v %v\n", skin, drape, shape, gap, s.blur, s.noise, s.shadow, border.Contrast, border.SD, border.Warnings, err)
					}
				}
			}
		}
		for _, name := range order {
			fmt.Printf("%-8s %s\n", name, by[name])
		}
	}
}

func quantile(v []float64, q float64) float64 {
	return sortedCopy(v)[int(q*float64(len(v)-1)+0.5)]
}

func sortedCopy(v []float64) []float64 {
	v = slices.Clone(v)
	slices.Sort(v)
	return v
}
