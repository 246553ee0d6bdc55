package trace

import "math"

// knots is at how many places along a path the colours are learnt anew, so that
// light and drape may change from one finger to the other.
const knots = 5

// lore is a discriminant that changes along a border.
type lore [knots]discriminant

// at is the discriminant at the fraction t of the way.
func (l lore) at(t float64) discriminant {
	i, r := knotBefore(t)
	return l[i].between(l[i+1], r)
}

// knotBefore is the last knot before the fraction t of the way, and the
// fraction of the way from it to the next.
func knotBefore(t float64) (int, float64) {
	x := max(0, min(1, t)) * (knots - 1)
	i := min(int(x), knots-2)
	return i, x - float64(i)
}

// classes gathers samples on either side along a border.
type classes struct{ drape, skin [knots]moments }

// add counts samples at the fraction t of the way to the two nearest knots.
func (c *classes) add(t float64, drape, skin moments) {
	i, r := knotBefore(t)
	c.drape[i] = c.drape[i].with(drape, 1-r)
	c.skin[i] = c.skin[i].with(skin, 1-r)
	c.drape[i+1] = c.drape[i+1].with(drape, r)
	c.skin[i+1] = c.skin[i+1].with(skin, r)
}

// fromElsewhere is the weight a knot gives to samples of the whole border.
const fromElsewhere = 0.1

// learn makes a discriminant at every knot. It fails when one side has no sample
// at all.
func (c *classes) learn(prior func(drape, skin colour) symmetric) (lore, bool) {
	var drape, skin moments
	for i := range knots {
		drape = drape.with(c.drape[i], 1)
		skin = skin.with(c.skin[i], 1)
	}
	if drape.n == 0 || skin.n == 0 {
		return lore{}, false
	}
	var l lore
	for i := range l {
		d := c.drape[i].with(drape, fromElsewhere/knots)
		s := c.skin[i].with(skin, fromElsewhere/knots)
		l[i] = discriminate(d, s, prior(d.mean(), s.mean()))
	}
	return l, true
}

// relearn tells drape from skin anew by the bands beside a path.
func (t *terrain) relearn(way []int) bool {
	nearest := t.nearest(way)
	band := max(2, min(8, t.frame.gap/t.step/6))
	drape, skin := make([]moments, len(way)), make([]moments, len(way))
	for k, m := range nearest {
		if m < 0 {
			continue
		}
		aside := t.aside(way, int(m), k)
		if off := math.Abs(aside); off >= 1.5 && off <= 1.5+band {
			if aside > 0 {
				drape[m].add(t.light[k])
			} else {
				skin[m].add(t.light[k])
			}
		}
	}
	var c classes
	last := float64(max(1, len(way)-1))
	for m := range way {
		c.add(float64(m)/last, drape[m], skin[m])
	}
	l, ok := c.learn(func(colour, colour) symmetric { return lightPrior() })
	if !ok {
		return false
	}
	steps := make([]discriminant, len(way))
	for m := range steps {
		steps[m] = l.at(float64(m) / last)
	}
	for k, m := range nearest {
		if m >= 0 {
			t.drape[k] = clamp(steps[m].of(t.light[k]))
		}
	}
	return true
}

// aside is how far sample k lies from the path at its m-th sample, in samples,
// positive towards the drape.
func (t *terrain) aside(way []int, m, k int) float64 {
	a, b := way[max(0, m-3)], way[min(len(way)-1, m+3)]
	tx, ty := float64(b%t.w-a%t.w), float64(b/t.w-a/t.w)
	vx, vy := float64(k%t.w-way[m]%t.w), float64(k/t.w-way[m]/t.w)
	return math.Copysign(math.Hypot(vx, vy), t.frame.turn*(tx*vy-ty*vx))
}

// nearest gives for every sample the path's sample it was reached from first,
// all spreading evenly.
func (t *terrain) nearest(way []int) []int32 {
	n := make([]int32, len(t.light))
	for k := range n {
		n[k] = -1
	}
	queue := make([]int32, 0, len(n))
	for m, k := range way {
		if n[k] < 0 {
			n[k] = int32(m)
			queue = append(queue, int32(k))
		}
	}
	for at := 0; at < len(queue); at++ {
		k := int(queue[at])
		x, y := k%t.w, k/t.w
		for _, v := range [4][2]int{{1, 0}, {0, 1}, {-1, 0}, {0, -1}} {
			i, j := x+v[0], y+v[1]
			if i < 0 || j < 0 || i >= t.w || j >= t.h || n[j*t.w+i] >= 0 {
				continue
			}
			n[j*t.w+i] = n[k]
			queue = append(queue, int32(j*t.w+i))
		}
	}
	return n
}
