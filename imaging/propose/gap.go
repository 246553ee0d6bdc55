package propose

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/imaging/photo"
)

// How the field between two phalanges is looked at, in parts of a phalanx from
// PIP (0) to MCP (1), and across from axis to axis (0 to 1).
const (
	above, below = -0.35, 1.35 // levels of the whole field
	onFinger     = 0.08        // surely on the finger
	samplesAlong = 100.0       // of a phalanx on the first look
	samplesFine  = 150.0       // of the window of the second look
	leastStrange = 9.0         // of a gap's colour among the skin's, squared
)

// Where the border seeds lie distal of the crown: in widths of the gap there,
// and at least in parts of a phalanx.
const (
	seedWidths   = 1.2
	seedLevels   = 0.2
	pastPIP      = 0.6 // widths short of which the PIP level may be passed
	narrowestGap = 5.0 // pixels
	// A narrower gap for its depth is a groove between joined fingers.
	leastOpening = 0.06
)

// around reads what all fields need.
func around(p *photo.Photograph, known map[hand.Web]phalanges) glance {
	var corners []point
	shortest := math.Inf(1)
	for _, w := range measured {
		if f, ok := known[w]; ok {
			corners = append(corners, f.at(above, 0), f.at(above, 1), f.at(below, 0), f.at(below, 1))
			shortest = min(shortest, f.length())
		}
	}
	if len(corners) == 0 {
		return glance{shrink: 1}
	}
	return look(p, bounds(corners...), int(max(1, shortest/samplesAlong)))
}

// seeds are the border of the radial digit, the crown and the border of the
// ulnar digit, false where no gap between the fingers is clearly seen.
func (f phalanges) seeds(p *photo.Photograph, coarse glance) ([3]point, bool) {
	first := newGrid(f, window{above, below, 0, 1}, coarse)
	in, ok := first.firstLook()
	if !ok {
		return [3]point{}, false
	}
	g, ok := first.gap(in, false)
	if !ok {
		return [3]point{}, false
	}
	w := g.surroundings()
	step := float64(f.at(w.distal, g.crownPart).Distance(f.at(w.proximal, g.crownPart))) / samplesFine
	near := look(p, bounds(f.at(w.distal, w.radial), f.at(w.distal, w.ulnar), f.at(w.proximal, w.radial), f.at(w.proximal, w.ulnar)), int(max(1, step)))
	second := newGrid(f, w, near)
	if in, ok = second.secondLook(first, in); !ok {
		return [3]point{}, false
	}
	if g, ok = second.gap(in, true); !ok {
		return [3]point{}, false
	}
	return g.seeds(), true
}

// firstLook learns skin along the axes and drape half way between them at the
// PIP level, and floods the gap from there.
func (m *grid) firstLook() ([]bool, bool) {
	skin := m.where(func(level, part float64, _ int) bool {
		return level > 0 && level < 1.15 && (part < onFinger || part > 1-onFinger)
	})
	if len(skin) < 20 {
		return nil, false
	}
	s := classOf(skin)
	var from []int
	var drape []colour
	var apart []float64
	for i := m.row(-0.3); i <= m.row(0.08); i++ {
		k := m.strangest(s, i)
		if k < 0 {
			continue
		}
		from = append(from, k)
		drape = append(drape, m.seen[k])
		apart = append(apart, s.strange(m.seen[k]))
	}
	if len(from) < 4 {
		return nil, false
	}
	slices.Sort(apart)
	if apart[len(apart)/2] < leastStrange {
		return nil, false
	}
	d := classOf(drape)
	var in []bool
	for range 2 {
		m.tell(d, s)
		in = m.flood(from)
		drape = m.where(func(_, _ float64, k int) bool { return in[k] })
		if len(drape) < 8 {
			return nil, false
		}
		d = classOf(drape)
	}
	return in, true
}

// strangest is the cell of row i, not far from half way, that is least like
// skin with both its neighbours; -1 if there is none.
func (m *grid) strangest(skin class, i int) int {
	best, most := -1, 0.0
	for j := m.cols * 3 / 10; j < m.cols*7/10; j++ {
		k := i*m.cols + j
		if !m.known[k-1] || !m.known[k] || !m.known[k+1] {
			continue
		}
		d := min(skin.strange(m.seen[k-1]), skin.strange(m.seen[k]), skin.strange(m.seen[k+1]))
		if d > most {
			best, most = k, d
		}
	}
	return best
}

// secondLook learns from what the first look told apart, and floods the gap
// from the distal end.
func (m *grid) secondLook(first *grid, in []bool) ([]bool, bool) {
	inside := func(level, part float64) float64 {
		i := first.row(level)
		j := int((part - first.window.radial) / (first.window.ulnar - first.window.radial) * float64(first.cols))
		k := i*first.cols + max(0, min(first.cols-1, j))
		if in[k] {
			return first.drape[k]
		}
		return min(0, first.drape[k])
	}
	drape := m.where(func(level, part float64, _ int) bool { return inside(level, part) > certain/2 })
	skin := m.where(func(level, part float64, _ int) bool { return inside(level, part) < -certain/4 })
	if len(drape) < 8 || len(skin) < 20 {
		return nil, false
	}
	d, s := classOf(drape), classOf(skin)
	var out []bool
	for range 2 {
		m.tell(d, s)
		var from []int
		for k := range m.rows / 3 * m.cols {
			if inside(m.level(float64(k/m.cols)), m.part(float64(k%m.cols))) > certain/2 {
				from = append(from, k)
			}
		}
		out = m.flood(from)
		drape = m.where(func(_, _ float64, k int) bool { return out[k] && m.drape[k] > certain/4 })
		if len(drape) < 8 {
			return nil, false
		}
		d = classOf(drape)
	}
	return out, !d.groove(s)
}

// gap is the drape between two fingers as found on a grid: where the crown and
// the two borders lie.
type gap struct {
	f          phalanges
	crownLevel float64
	crownPart  float64
	seedLevel  float64
	seedParts  [2]float64
}

// gap goes from the most proximal flooded row back to where the border seeds
// lie.
func (m *grid) gap(in []bool, closely bool) (gap, bool) {
	bottom := -1
	for i := m.rows - 1; i >= 0 && bottom < 0; i-- {
		if _, _, ok := m.run(in, i); ok {
			bottom = i
		}
	}
	if bottom < 0 || bottom > m.rows-3 {
		return gap{}, false
	}
	end, mid := m.bottom(in, bottom)
	if closely {
		end, mid = m.apex(in, bottom)
	}
	g := gap{f: m.f, crownLevel: m.level(end), crownPart: m.part(mid)}
	crown := m.at(end, mid)
	for i := bottom - 1; i >= 0; i-- {
		from, to, ok := m.run(in, i)
		if !ok {
			return gap{}, false
		}
		a, b := m.at(float64(i), from), m.at(float64(i), to)
		wide, off := float64(a.Distance(b)), float64(a.Mid(b).Distance(crown))
		level := m.level(float64(i))
		far := off >= seedWidths*wide && wide >= 1.5*narrowestGap && g.crownLevel-level >= seedLevels
		if far || level < 0.05 && off > pastPIP*wide || i == 0 {
			g.seedLevel, g.seedParts = level, [2]float64{m.part(from), m.part(to)}
			return g, wide >= max(narrowestGap, leastOpening*off) && off > pastPIP/2*wide && from > 0 && to < float64(m.cols-1)
		}
	}
	return gap{}, false
}

// bottom is the row and the column of the proximal end of the gap.
func (m *grid) bottom(in []bool, last int) (row, column float64) {
	from, to, _ := m.run(in, last)
	return float64(last) + 0.5, (from + to) / 2
}

// apex is the row and the column where the gap that ends in the given row would
// end if its sides ran on: blur hides the end of a narrow gap. A gap with a wide
// bottom ends where it ends.
func (m *grid) apex(in []bool, bottom int) (row, column float64) {
	row, column = m.bottom(in, bottom)
	var x, wide, middle []float64
	for i := bottom; i >= 0; i-- {
		from, to, ok := m.run(in, i)
		if !ok || to-from > narrow {
			break
		}
		if from, to, ok = m.halfWay(i, from, to); ok && to-from > unclear {
			x, wide, middle = append(x, float64(i)), append(wide, to-from), append(middle, (from+to)/2)
		}
	}
	if len(x) < 6 {
		return row, column
	}
	a, b := stat.LinearRegression(x, wide, nil, false)
	end := -a / b
	hidden := a + b*row
	if b >= 0 || end < x[0] || hidden > min(mostHidden, hiddenPart*slices.Max(wide)) {
		return row, column
	}
	// The further the sides were followed, the better is known where they meet.
	end = min(end, row+(x[0]-x[len(x)-1])/3)
	c, d := stat.LinearRegression(x, middle, nil, false)
	return end, c + d*end
}

// How wide a gap is, in columns, where its sides are looked at to see where they
// meet; and how wide it may still be where it was lost.
const (
	unclear, narrow = 6, 30
	mostHidden      = 8
	hiddenPart      = 0.4 // of the width where it is looked at
)

// halfWay is where row i is half way, in light, between the skin beside the gap
// and the drape in its middle. The likelihood of colours turns somewhat beside
// that, as much as the blur is wide.
func (m *grid) halfWay(i int, from, to float64) (a, b float64, ok bool) {
	row := m.seen[i*m.cols : (i+1)*m.cols]
	level := func(first, last float64) (mean [3]float64, ok bool) {
		lo, hi := int(math.Round(first)), int(math.Round(last))
		if lo < 0 || hi >= m.cols || lo > hi {
			return mean, false
		}
		for _, c := range row[lo : hi+1] {
			for k, x := range c.light() {
				mean[k] += x / float64(hi-lo+1)
			}
		}
		return mean, true
	}
	third := (to - from) / 3
	drape, _ := level(from+third, to-third)
	cross := func(edge, out float64) (float64, bool) {
		skin, ok := level(min(edge+3*out, edge+6*out), max(edge+3*out, edge+6*out))
		if !ok {
			return 0, false
		}
		part := func(j int) float64 {
			var along, whole float64
			for k, x := range row[j].light() {
				along += (x - skin[k]) * (drape[k] - skin[k])
				whole += (drape[k] - skin[k]) * (drape[k] - skin[k])
			}
			return along/whole - 0.5
		}
		last := part(int(math.Round(edge - 3*out)))
		for d := -2.0; d <= 3; d++ {
			j := int(math.Round(edge + d*out))
			next := part(j)
			if last > 0 && next <= 0 {
				return float64(j) - out*next/(next-last), true
			}
			last = next
		}
		return 0, false
	}
	a, okA := cross(from, -1)
	b, okB := cross(to, 1)
	return a, b, okA && okB
}

// surroundings is the part of the field to look at more closely.
func (g gap) surroundings() window {
	aside := 0.35*(g.seedParts[1]-g.seedParts[0]) + 0.06
	return window{
		distal:   g.seedLevel - 0.06,
		proximal: g.crownLevel + 0.18,
		radial:   max(0.02, min(g.seedParts[0], g.crownPart)-aside),
		ulnar:    min(0.98, max(g.seedParts[1], g.crownPart)+aside),
	}
}

func (g gap) seeds() [3]plane.PixelPoint {
	return [3]plane.PixelPoint{
		g.f.at(g.seedLevel, g.seedParts[0]),
		g.f.at(g.crownLevel, g.crownPart),
		g.f.at(g.seedLevel, g.seedParts[1]),
	}
}
