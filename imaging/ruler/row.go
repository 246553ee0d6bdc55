package ruler

import (
	"cmp"
	"math"
	"slices"
)

// row is what a line across the strip shows: narrow dark (or light) places, and
// the distance that is most common between neighbours.
type row struct {
	line     int
	sign     float32 // -1: dark ticks, +1: light ones
	ticks    []peak
	gap      float64
	coverage float64 // share of the length in gaps of about that distance
	contrast float64
	narrow   float64 // skewness: 0 for a wave, more the narrower the ticks
	aside    float64 // samples from the line between the clicks
	score    float64
}

// peak is a local extreme, and how far it stands out.
type peak struct{ at, height float64 }

const (
	// faint is the contrast, in the square root of luminance, below which
	// nothing counts as a tick.
	faint = 0.02
	// alike is how far the distances of one row may differ, foreshortening
	// included.
	alike = 0.12
)

// likelyRows looks for the lines of the strip with the most regular ticks, the
// likeliest first, one for each distance of ticks. Between lines that are about
// as regular, the one with the closest ticks comes first: the others cross only
// the long ones.
func (s *strip) likelyRows() []row {
	var rows []row
	strongest := 0.0
	for j := 1; j+1 < len(s.lines); j += 2 {
		light := make([]float32, s.columns)
		for i := range light {
			light[i] = (s.lines[j-1][i] + s.lines[j][i] + s.lines[j+1][i]) / 3
		}
		r := readRow(light, skewness(light))
		r.line, r.aside = j, lineStep*math.Abs(float64(j-s.middle))
		rows = append(rows, r)
		strongest = math.Max(strongest, r.contrast)
	}
	for i := range rows {
		rows[i].rate(strongest)
	}
	slices.SortStableFunc(rows, func(a, b row) int { return cmp.Compare(b.score, a.score) })
	var chosen []row
	for _, r := range rows {
		if r.score < 0.2 || r.score < 0.4*rows[0].score || len(chosen) == mostRows {
			break
		}
		if !slices.ContainsFunc(chosen, r.alike) {
			chosen = append(chosen, r)
		}
	}
	slices.SortStableFunc(chosen, func(a, b row) int {
		switch {
		case a.divides(b):
			return -1
		case b.divides(a):
			return 1
		}
		return 0
	})
	return chosen
}

// mostRows is the number of distances of ticks that are tried.
const mostRows = 4

// divides reports whether the ticks of q may be some of those of r.
func (r row) divides(q row) bool {
	ways := q.gap / r.gap
	whole := math.Round(ways)
	return r.gap > 0 && whole >= 2 && whole <= 10 && math.Abs(ways-whole) < 0.05*ways
}

func (r row) alike(q row) bool { return math.Abs(math.Log(r.gap/q.gap)) < alike }

// rate scores how well a line crosses ticks: they are regular, strong, narrow
// and not far from the clicks.
func (r *row) rate(strongest float64) {
	aside := r.aside / (6 * min(max(r.gap, leastSpacing), 25))
	r.score = r.coverage * math.Sqrt(r.contrast/math.Max(strongest, 1e-9)) * (0.6 + 0.4*math.Min(r.narrow, 1)) / (1 + aside*aside)
}

// readRow finds the ticks of one line: light ones where skew is positive, else
// dark ones.
func readRow(light []float32, skew float64) row {
	r := row{sign: -1, narrow: math.Abs(skew)}
	if skew > 0 {
		r.sign = 1
	}
	r.ticks = peaks(light, r.sign)
	r.contrast = usualHeight(r.ticks)
	r.ticks = slices.DeleteFunc(r.ticks, func(p peak) bool { return p.height < 0.4*r.contrast })
	r.gap, r.coverage = commonGap(r.ticks, float64(len(light)))
	return r
}

// skewness tells dark ticks on light ground (negative) from light ones on dark:
// what takes up less room departs further from the mean. It is that of the light
// less its mean over the neighbourhood.
func skewness(light []float32) float64 {
	const reach = 40
	sum := float32(0)
	var squares, cubes float64
	n := len(light)
	for i := range min(reach, n) {
		sum += light[i]
	}
	for i := range light {
		if i+reach < n {
			sum += light[i+reach]
		}
		if i-reach-1 >= 0 {
			sum -= light[i-reach-1]
		}
		d := float64(light[i] - sum/float32(min(i+reach, n-1)-max(i-reach, 0)+1))
		squares += d * d
		cubes += d * d * d
	}
	if squares == 0 {
		return 0
	}
	variance := squares / float64(n)
	return cubes / float64(n) / (variance * math.Sqrt(variance))
}

// peaks lists the places where sign times light is largest between two places
// where it is smaller by more than faint.
func peaks(light []float32, sign float32) []peak {
	var out []peak
	at, low := -1, sign*light[0] // at is -1 while falling
	for i, l := range light {
		v := sign * l
		switch {
		case at < 0 && v < low:
			low = v
		case at < 0 && v > low+faint, at >= 0 && v > sign*light[at]:
			at = i
		case at >= 0 && v < sign*light[at]-faint:
			out = append(out, peak{summit(light, at), float64(sign*light[at] - low)})
			at, low = -1, v
		}
	}
	return out
}

// summit is the place of an extreme to a part of a column: the top of the
// parabola through it and its neighbours.
func summit(light []float32, at int) float64 {
	if at == 0 || at == len(light)-1 {
		return float64(at)
	}
	a, b, c := light[at-1], light[at], light[at+1]
	if bend := a - 2*b + c; bend != 0 {
		return float64(at) + float64(0.5*(a-c)/bend)
	}
	return float64(at)
}

func usualHeight(ps []peak) float64 {
	if len(ps) == 0 {
		return 0
	}
	h := make([]float64, len(ps))
	for i, p := range ps {
		h[i] = p.height
	}
	slices.Sort(h)
	return h[len(h)*7/10]
}

// commonGap is the distance between neighbours that, give or take a little,
// makes up most of the length.
func commonGap(ps []peak, length float64) (gap, coverage float64) {
	gaps := make([]float64, 0, len(ps))
	for i := 1; i < len(ps); i++ {
		gaps = append(gaps, ps[i].at-ps[i-1].at)
	}
	if len(gaps) < 2 {
		return 0, 0
	}
	slices.Sort(gaps)
	sum, first, most := 0.0, 0, 0.0
	for last, g := range gaps {
		sum += g
		for gaps[first] < g*(1-alike)/(1+alike)-0.01 {
			sum -= gaps[first]
			first++
		}
		if last-first >= 1 && sum > most {
			most, gap = sum, sum/float64(last-first+1)
		}
	}
	return gap, most / length
}
