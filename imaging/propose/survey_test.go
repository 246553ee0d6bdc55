package propose

import (
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/imaging/phantom"
	"ogive/imaging/photo"
	"ogive/imaging/trace"
)

var (
	surveyed = flag.Int("surveyed", 44, "phantoms in the survey (go test -bench Survey)")
	kept     = flag.String("kept", "", "folder in which phantoms are kept from one survey to the next")
)

// BenchmarkSurvey prints, on demand, what becomes of proposals on drawn
// phantoms, with the joints marked and without.
func BenchmarkSurvey(b *testing.B) {
	for b.Loop() {
		var with, without, clicked tally
		for seed := 1; seed <= *surveyed; seed++ {
			c := phantom.Random(uint64(seed))
			p, truth := picture(b, c, seed)
			name := fmt.Sprintf("%2d %v %v, skin %v on drape %v", seed, truth.Side, truth.View, c.Skin, c.Drape)
			with.add(name+", with joints", p, truth, Webs(p, hand.Marks{Side: truth.Side, View: truth.View, Joints: truth.Joints}))
			clicked.add(name+", clicked", p, truth, clicks(truth, uint64(seed)))
			without.add(name+", without", p, truth, Webs(p, hand.Marks{Side: truth.Side, View: truth.View}))
		}
		fmt.Printf("with joints:    %v\nwithout joints: %v\nclicked:        %v\n", with, without, clicked)
	}
}

// clicks are the seeds that an observer would have clicked, for comparison.
func clicks(truth phantom.Truth, seed uint64) map[hand.Web][3]plane.PixelPoint {
	m, _ := truth.Marks(2, rand.New(rand.NewPCG(seed, 1)))
	seeds := map[hand.Web][3]plane.PixelPoint{}
	for _, w := range m.Webs {
		seeds[w.Web] = [3]plane.PixelPoint(w.Seeds)
	}
	return seeds
}

// picture is the photograph of a phantom.
func picture(tb testing.TB, c phantom.Case, seed int) (*photo.Photograph, phantom.Truth) {
	tb.Helper()
	truth, err := c.Truth()
	if err != nil {
		tb.Fatal(err)
	}
	path := filepath.Join(*kept, fmt.Sprintf("%d.jpg", seed))
	data, err := os.ReadFile(path)
	if *kept == "" || err != nil {
		pic, err := c.Render()
		if err != nil {
			tb.Fatal(err)
		}
		data = pic.JPEG
		if *kept != "" {
			if err := os.WriteFile(path, data, 0o644); err != nil {
				tb.Fatal(err)
			}
		}
	}
	p, err := photo.Decode(data)
	if err != nil {
		tb.Fatal(err)
	}
	return p, truth
}

// tally counts what became of proposals. A proposal is right if tracing it gives
// the true border within 1.5 px at the median and a crown within 0.3 mm along
// the web's axis; false if the crown lies more than 1 mm off or nothing can be
// traced; else poor.
type tally struct{ webs, proposed, right, mistaken int }

func (t *tally) add(name string, p *photo.Photograph, truth phantom.Truth, got map[hand.Web][3]plane.PixelPoint) {
	for _, w := range truth.Webs {
		t.webs++
		seeds, ok := got[w.Web]
		if !ok {
			fmt.Printf("%s: %v (%v) left out\n", name, w.Web, w.Shape)
			continue
		}
		t.proposed++
		o := judge(p, truth, w, seeds)
		switch {
		case o.right():
			t.right++
			continue
		case o.wrong():
			t.mistaken++
		}
		fmt.Printf("%s: %v (%v) %v\n", name, w.Web, w.Shape, o)
	}
}

func (t tally) String() string {
	per := func(n, of int) float64 { return 100 * float64(n) / math.Max(1, float64(of)) }
	return fmt.Sprintf("%d webs, %.1f %% proposed; of the proposals %.1f %% right, %.1f %% false",
		t.webs, per(t.proposed, t.webs), per(t.right, t.proposed), per(t.mistaken, t.proposed))
}

// outcome is how far a traced proposal lies off the truth.
type outcome struct {
	err         error
	border      float64 // median, pixels
	crown, seed float64 // along the web's axis, mm; of the trace and of the seed
	warnings    []string
}

func (o outcome) right() bool { return o.err == nil && o.border <= 1.5 && math.Abs(o.crown) <= 0.3 }
func (o outcome) wrong() bool { return o.err != nil || math.Abs(o.crown) > 1 || o.border > 5 }

func (o outcome) String() string {
	if o.err != nil {
		return fmt.Sprintf("FALSE: seed's crown %+.2f mm off, %v", o.seed, o.err)
	}
	name := "poor"
	if o.wrong() {
		name = "FALSE"
	}
	return fmt.Sprintf("%s: border %.2f px, crown %+.2f mm off (seed %+.2f) %s", name, o.border, o.crown, o.seed, strings.Join(o.warnings, "; "))
}

func judge(p *photo.Photograph, truth phantom.Truth, w phantom.WebTruth, seeds [3]plane.PixelPoint) outcome {
	axis := axisOf(truth, w.Web)
	distal := func(q plane.PixelPoint) float64 {
		return float64(truth.Plane.Position(q).Sub(truth.Plane.Position(w.Crown)).Dot(axis))
	}
	o := outcome{seed: distal(seeds[1])}
	border, err := trace.Web(p, seeds)
	if err != nil {
		o.err = err
		return o
	}
	o.crown, o.warnings = math.Inf(1), border.Warnings
	var off []float64
	for _, q := range border.Points {
		o.crown = min(o.crown, distal(q))
		if d, ok := fromLine(w.Border, q); ok {
			off = append(off, d)
		}
	}
	if len(off) == 0 {
		o.err = fmt.Errorf("no point of the trace lies beside the true border")
		return o
	}
	slices.Sort(off)
	o.border = off[len(off)/2]
	return o
}

func axisOf(truth phantom.Truth, w hand.Web) plane.Vector[plane.Millimetre] {
	var sum plane.Vector[plane.Millimetre]
	radial, ulnar := w.Digits()
	for _, d := range []hand.Digit{radial, ulnar} {
		j := truth.Joints[d]
		sum = sum.Add(truth.Plane.Position(j[hand.PIP]).Sub(truth.Plane.Position(j[hand.MCP])).Direction())
	}
	return sum.Direction()
}

// fromLine is the distance of p from a line whose points lie less than a pixel
// apart; false beyond its ends.
func fromLine(line []plane.PixelPoint, p plane.PixelPoint) (float64, bool) {
	best, at := math.Inf(1), 0
	for i := 1; i < len(line); i++ {
		ab := line[i].Sub(line[i-1])
		k := max(0, min(1, float64(p.Sub(line[i-1]).Dot(ab)/max(1e-9, ab.Dot(ab)))))
		if d := float64(p.Distance(line[i-1].Towards(line[i], k))); d < best {
			best, at = d, i
		}
	}
	return best, at > 1 && at < len(line)-1
}
