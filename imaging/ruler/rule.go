package ruler

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
)

// rule is where equally spaced ticks appear along a line, in perspective: tick k
// at (start + gap u) / (1 + bend u) with u = k - origin.
type rule struct {
	origin           int
	start, gap, bend float64
}

func (r rule) at(k int) float64 {
	u := float64(k - r.origin)
	return (r.start + r.gap*u) / (1 + r.bend*u)
}

// spacing is the distance of the ticks at tick k.
func (r rule) spacing(k int) float64 {
	u := float64(k - r.origin)
	w := 1 + r.bend*u
	return (r.gap - r.bend*r.start) / (w * w)
}

// number is that of the tick nearest to x, a fraction included.
func (r rule) number(x float64) float64 {
	return float64(r.origin) + (x-r.start)/(r.gap-r.bend*x)
}

// fitRule is the rule of least squares. Numbered places that lie off it by more
// than the others allow are left out, and the rest fitted again.
func fitRule(ns []numbered, gap float64) (rule, bool) {
	kept := slices.Clone(ns)
	var r rule
	for range 4 {
		if len(kept) < 3 {
			return rule{}, false
		}
		var ok bool
		if r, ok = solveRule(kept); !ok {
			return rule{}, false
		}
		off := make([]float64, len(kept))
		for i, n := range kept {
			off[i] = math.Abs(n.at - r.at(n.number))
		}
		slices.Sort(off)
		limit := math.Max(3*1.4826*off[len(off)/2], 0.02*gap)
		before := len(kept)
		kept = slices.DeleteFunc(kept, func(n numbered) bool { return math.Abs(n.at-r.at(n.number)) > limit })
		if len(kept) == before {
			break
		}
	}
	spacing := r.spacing(r.origin)
	return r, spacing > 0 && math.Abs(math.Log(spacing/gap)) < 0.4
}

// solveRule solves x + bend u x = start + gap u, which is linear. With fewer
// than five places the row is taken without perspective, which they could not
// tell from error.
func solveRule(ns []numbered) (rule, bool) {
	r := rule{origin: ns[len(ns)/2].number}
	middle := ns[len(ns)/2].at
	terms := 3
	if len(ns) < 5 {
		terms = 2
	}
	a, b := mat.NewDense(len(ns), terms, nil), mat.NewVecDense(len(ns), nil)
	for i, n := range ns {
		u, x := float64(n.number-r.origin), n.at-middle
		a.Set(i, 0, 1)
		a.Set(i, 1, u)
		if terms == 3 {
			a.Set(i, 2, -u*x)
		}
		b.SetVec(i, x)
	}
	var x mat.VecDense
	if err := x.SolveVec(a, b); err != nil {
		return rule{}, false
	}
	r.start, r.gap = x.AtVec(0), x.AtVec(1)
	if terms == 3 {
		r.bend = x.AtVec(2)
	}
	// Back from the middle: x + middle is the place.
	r.start, r.gap = r.start+middle, r.gap+middle*r.bend
	return r, true
}
