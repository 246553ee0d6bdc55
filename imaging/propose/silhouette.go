package propose

import (
	"image"
	"math"
	"slices"

	"ogive/geometry/plane"
	"ogive/imaging/photo"
)

// silhouette is the hand told from all else on a small copy of a photograph.
type silhouette struct {
	g    glance
	skin []float64 // logarithm of the likelihood against all else
	part []int     // number of the connected region, 0 for none
}

const (
	samplesWide = 340.0
	relearnings = 2
	// leastHand is the least part of the picture that is taken for a hand, and
	// rival the least part of the largest region for a second one.
	leastHand = 0.02
	rival     = 0.25
)

// newSilhouette begins with the split by redness that parts the picture best:
// skin of any tone is redder than most drapes. If the regions come out ragged,
// it begins again with all that is unlike the picture's edge.
func newSilhouette(p *photo.Photograph) *silhouette {
	size := p.Size()
	shrink := int(max(1, math.Round(float64(max(size.X, size.Y))/samplesWide)))
	g := look(p, image.Rectangle{Max: size}, shrink)
	red := make([]float64, len(g.seen))
	for k, c := range g.seen {
		red[k] = redness(c)
	}
	byRedness := g.silhouette(red, split(red))
	if byRedness.ragged() < smooth {
		return byRedness
	}
	byEdge := g.silhouette(g.unlikeEdge(), unlike)
	if byEdge.ragged() < byRedness.ragged() {
		return byEdge
	}
	return byRedness
}

// silhouette takes what lies above the limit for skin, then learns all the
// colours of the large regions found, and of what lies beside them.
func (g glance) silhouette(value []float64, limit float64) *silhouette {
	s := &silhouette{g: g, skin: make([]float64, len(value)), part: make([]int, len(value))}
	for k, v := range value {
		s.skin[k] = v - limit
	}
	s.regions()
	for range relearnings {
		s.relearn()
		s.regions()
	}
	return s
}

// unlike is how far a colour lies off the edge's, squared and in variances, to
// be no drape; smooth how long the outline of a hand with its fingers spread is
// at most, in square roots of its area.
const (
	unlike = 12
	smooth = 11
)

// unlikeEdge is how far each colour lies off what most of the picture's edge
// shows.
func (g glance) unlikeEdge() []float64 {
	var edge []colour
	for k, c := range g.seen {
		if i, j := k%g.w, k/g.w; i < rim || j < rim || i >= g.w-rim || j >= g.h-rim {
			edge = append(edge, c)
		}
	}
	middle := class{spread: colour{4 * shade * shade, 4 * tint * tint, 4 * tint * tint}}
	for i := range middle.mean {
		v := make([]float64, len(edge))
		for k, c := range edge {
			v[k] = c[i]
		}
		slices.Sort(v)
		middle.mean[i] = v[len(v)/2]
	}
	drape := classOf(slices.DeleteFunc(edge, func(c colour) bool { return middle.strange(c) > unlike }))
	out := make([]float64, len(g.seen))
	for k, c := range g.seen {
		out[k] = drape.strange(c)
	}
	return out
}

const rim = 4

// ragged is the length of the regions' outlines, holes among them, in square
// roots of their area.
func (s *silhouette) ragged() float64 {
	var cuts, area float64
	for k, part := range s.part {
		if part == 0 {
			continue
		}
		area++
		s.beside(k, func(o int) {
			if s.part[o] == 0 {
				cuts++
			}
		})
	}
	if area == 0 {
		return math.Inf(1)
	}
	return cuts / math.Sqrt(area*float64(s.count()))
}

func redness(c colour) float64 { return c[1] - c[2]/2 }

// split is the limit between two classes of values that makes the spread
// between the classes greatest (Otsu 1979).
func split(values []float64) float64 {
	const low, wide, bins = -2.0, 0.02, 200
	var count [bins]float64
	for _, v := range values {
		count[max(0, min(bins-1, int((v-low)/wide)))]++
	}
	var n, sum float64
	for i, c := range count {
		n += c
		sum += c * float64(i)
	}
	var below, belowSum, best float64
	at := 0
	for i, c := range count {
		below += c
		belowSum += c * float64(i)
		if below == 0 || below == n {
			continue
		}
		d := belowSum/below - (sum-belowSum)/(n-below)
		if spread := below * (n - below) * d * d; spread > best {
			best, at = spread, i
		}
	}
	return low + wide*float64(at+1)
}

// regions numbers the connected regions of skin by size, the largest first, and
// drops those too small for a hand.
func (s *silhouette) regions() {
	clear(s.part)
	var found [][]int
	seen := make([]bool, len(s.part))
	for k := range s.part {
		if seen[k] || s.skin[k] <= 0 {
			continue
		}
		seen[k] = true
		region := []int{k}
		for at := 0; at < len(region); at++ {
			s.beside(region[at], func(o int) {
				if !seen[o] && s.skin[o] > 0 {
					seen[o] = true
					region = append(region, o)
				}
			})
		}
		if float64(len(region)) > leastHand*float64(len(s.part)) {
			found = append(found, region)
		}
	}
	slices.SortStableFunc(found, func(a, b []int) int { return len(b) - len(a) })
	for i, region := range found {
		if float64(len(region)) < rival*float64(len(found[0])) {
			break
		}
		for _, k := range region {
			s.part[k] = i + 1
		}
	}
}

func (s *silhouette) beside(k int, visit func(int)) {
	i, j := k%s.g.w, k/s.g.w
	if i > 0 {
		visit(k - 1)
	}
	if i < s.g.w-1 {
		visit(k + 1)
	}
	if j > 0 {
		visit(k - s.g.w)
	}
	if j < s.g.h-1 {
		visit(k + s.g.w)
	}
}

// relearn counts how often each colour lies well inside the regions and well
// outside, and tells skin by that. Drapes are checked, rulers and cards printed:
// one normal distribution would not do.
func (s *silhouette) relearn() {
	const clearance = 2
	var in, out table
	for k, c := range s.g.seen {
		switch s.around(k, clearance) {
		case 1:
			in.add(c)
		case -1:
			out.add(c)
		}
	}
	in.spread()
	out.spread()
	for b := range in {
		in[b] = max(-certain, min(certain, math.Log((in[b]+0.2)/(out[b]+0.2))))
	}
	raw := make([]float64, len(s.skin))
	for k, c := range s.g.seen {
		raw[k] = in[binOf(c)]
	}
	w, h := s.g.w, s.g.h
	for k := range raw {
		i, j := k%w, k/w
		left, right := j*w+max(0, i-1), j*w+min(w-1, i+1)
		up, down := max(0, j-1)*w+i, min(h-1, j+1)*w+i
		s.skin[k] = (2*raw[k] + raw[left] + raw[right] + raw[up] + raw[down]) / 6
	}
}

// around is 1 if all that lies within r samples of k, along the rows and the
// columns, is in a region, -1 if none of it is, else 0.
func (s *silhouette) around(k, r int) int {
	i, j := k%s.g.w, k/s.g.w
	in := s.part[k] > 0
	for d := -r; d <= r; d++ {
		a, b := max(0, min(s.g.w-1, i+d)), max(0, min(s.g.h-1, j+d))
		if (s.part[j*s.g.w+a] > 0) != in || (s.part[b*s.g.w+i] > 0) != in {
			return 0
		}
	}
	if in {
		return 1
	}
	return -1
}

// table counts colours in bins: light by light, red by red, blue by blue.
type table [lightBins * tintBins * tintBins]float64

const (
	lightBins, lightWide = 16, 0.28
	tintBins, tintWide   = 40, 0.08
)

func binOf(c colour) int {
	bin := func(x, wide float64, bins int) int { return max(0, min(bins-1, int(x/wide))) }
	l := bin(-c[0], lightWide, lightBins)
	r := bin(c[1]+tintWide*tintBins/2, tintWide, tintBins)
	b := bin(c[2]+tintWide*tintBins/2, tintWide, tintBins)
	return (l*tintBins+r)*tintBins + b
}

func (t *table) add(c colour) { t[binOf(c)]++ }

// spread lets each bin share with its neighbours.
func (t *table) spread() {
	for _, step := range []int{1, tintBins, tintBins * tintBins} {
		before := *t
		for k := step; k < len(t)-step; k++ {
			t[k] = (before[k-step] + 2*before[k] + before[k+step]) / 4
		}
	}
}

// count is how many regions may be a hand.
func (s *silhouette) count() int { return slices.Max(s.part) }

// outline is the closed outline of a region, clockwise as seen, in pixels of the
// photograph.
func (s *silhouette) outline(number int) []point {
	in := func(i, j int) bool {
		return i >= 0 && j >= 0 && i < s.g.w && j < s.g.h && s.part[j*s.g.w+i] == number
	}
	// ahead[d] is the sample to the right of a step in direction d from a
	// corner, aside[d] the one to its left.
	steps := [4]image.Point{{X: 1}, {Y: 1}, {X: -1}, {Y: -1}}
	right := [4]image.Point{{X: 0, Y: 0}, {X: -1, Y: 0}, {X: -1, Y: -1}, {X: 0, Y: -1}}
	left := [4]image.Point{{X: 0, Y: -1}, {X: 0, Y: 0}, {X: -1, Y: 0}, {X: -1, Y: -1}}
	first := slices.Index(s.part, number)
	start := image.Pt(first%s.g.w, first/s.g.w)
	at, d := start, 0
	var line []point
	for {
		line = append(line, s.place(float64(at.X), float64(at.Y)))
		at = at.Add(steps[d])
		if at == start {
			break
		}
		for _, turn := range [3]int{1, 0, 3} {
			e := (d + turn) % 4
			if r, l := at.Add(right[e]), at.Add(left[e]); in(r.X, r.Y) && !in(l.X, l.Y) {
				d = e
				break
			}
		}
	}
	return thinned(smoothed(line, 4))
}

// place is where the corner (i, j) of the samples lies.
func (s *silhouette) place(i, j float64) point {
	return plane.Pt(plane.Pixel(float64(s.g.corner.X)+i*float64(s.g.shrink)), plane.Pixel(float64(s.g.corner.Y)+j*float64(s.g.shrink)))
}

// smoothed takes the stairs out of a closed line of steps.
func smoothed(line []point, passes int) []point {
	n := len(line)
	for range passes {
		next := make([]point, n)
		for i, p := range line {
			next[i] = line[(i+n-1)%n].Mid(line[(i+1)%n]).Mid(p)
		}
		line = next
	}
	return line
}

func thinned(line []point) []point {
	var out []point
	for i := 0; i < len(line); i += 3 {
		out = append(out, line[i])
	}
	return out
}

// holds reports whether p lies in a region.
func (s *silhouette) holds(number int, p point) bool {
	i := int(math.Floor((float64(p.X) - float64(s.g.corner.X)) / float64(s.g.shrink)))
	j := int(math.Floor((float64(p.Y) - float64(s.g.corner.Y)) / float64(s.g.shrink)))
	return i >= 0 && j >= 0 && i < s.g.w && j < s.g.h && s.part[j*s.g.w+i] == number
}
