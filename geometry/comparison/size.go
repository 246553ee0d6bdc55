package comparison

import (
	"math"
	"slices"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
)

// Measure is what of a digit was measured.
type Measure int

// The measures. ToTip runs from joint to joint, so that a digit bent sideways is
// as long as a straight one. Width is that of the middle or the ring finger
// where both webs beside it are traced; index and little finger have a web on
// one side only and no width. What neither can tell: a digit that is bent
// towards the camera or away from it looks short, and a swollen or grafted one
// wide.
const (
	ToPIP Measure = iota + 1
	ToTip
	Width
)

// Size is one measure of a digit and of its fellow on the other photograph.
type Size struct {
	Digit hand.Digit
	Of    Measure
	// From and To are the fractions of the way from MCP to PIP between which a
	// width was taken.
	From, To plane.Ratio

	Operated, Other, Difference plane.Estimate[plane.Millimetre]
	// Beyond is true where the difference lies beyond uncertainty. So that at
	// most one pair of equal hands in twenty is reminded of, and not one digit in
	// twenty, the interval is widened by three for each digit: its length, its
	// proportion and its width (Bonferroni; the two lengths of a digit say nearly
	// the same).
	Beyond bool

	// Excess is by which part the digit is larger than its fellow in proportion
	// to the other digits of its own hand: 0.1 is a tenth. It is nil where no
	// other digit has this measure. Since tilt and scale act on all digits nearly
	// alike it tells one large digit far better than the millimetres do, and says
	// nothing of a hand that is large throughout. A digit that stands out is left
	// out of the proportions of the others.
	Excess *plane.Estimate[plane.Ratio]
	// Apart is true where the excess lies beyond uncertainty.
	Apart bool
}

// Larger is 1 where the digit is larger than its fellow beyond uncertainty, -1
// where it is smaller, else 0.
func (s Size) Larger() int {
	sign := func(x float64) int {
		if x < 0 {
			return -1
		}
		return 1
	}
	switch {
	case s.Apart:
		return sign(float64(s.Excess.Value))
	case s.Beyond:
		return sign(float64(s.Difference.Value))
	}
	return 0
}

// sizes measures the digits beside the webs on both photographs.
func (p *pair) sizes(webs []Web) []Size {
	var here, there []sizing
	for _, d := range digitsOf(webs) {
		for _, of := range []Measure{ToPIP, ToTip, Width} {
			if a, b, ok := p.both(d, of); ok {
				here, there = append(here, a), append(there, b)
			}
		}
	}
	a, b := p.operated.take(here), p.other.take(there)
	out := make([]Size, len(here))
	for i, s := range here {
		out[i] = Size{Digit: s.digit, Of: s.of, From: plane.Ratio(s.from), To: plane.Ratio(s.to), Operated: a.size(i), Other: b.size(i)}
		out[i].Difference = *difference(&out[i].Operated, &out[i].Other)
	}
	stricter := bonferroni(3 * len(digitsOf(webs)))
	for i, s := range out {
		out[i].Beyond = math.Abs(float64(s.Difference.Value)) > stricter*float64(s.Difference.U95)
	}
	for _, of := range []Measure{ToPIP, ToTip, Width} {
		excesses(out, of, a, b, stricter)
	}
	return out
}

// bonferroni is by how much an interval of 95 per cent is widened so that of n
// such intervals all hold the truth in 95 per cent.
func bonferroni(n int) float64 {
	return math.Erfinv(1-0.05/float64(max(n, 1))) / math.Erfinv(0.95)
}

// both is how a size is taken from either photograph.
func (p *pair) both(d hand.Digit, of Measure) (a, b sizing, ok bool) {
	if of == Width {
		return p.widths(d)
	}
	a, okA := p.operated.length(d, of)
	b, okB := p.other.length(d, of)
	return a, b, okA && okB
}

// widths takes the width of a digit along the part known on both photographs.
func (p *pair) widths(d hand.Digit) (a, b sizing, ok bool) {
	here, okA := p.operated.flanks(d)
	there, okB := p.other.flanks(d)
	from, to := max(here.from, there.from), min(here.to, there.to)
	if !okA || !okB || to-from < leastRange {
		return a, b, false
	}
	a, okA = p.operated.width(d, here, from, to)
	b, okB = p.other.width(d, there, from, to)
	return a, b, okA && okB
}

// excesses fills in how each digit stands to the others by one measure. Digits
// that differ in millimetres, unless all do, and then by turns the one that
// stands out most are set apart, and the rest are held against each other again:
// one large digit makes all others look small.
func excesses(sizes []Size, of Measure, a, b *ensemble, stricter float64) {
	var rest, apart []int
	for i, s := range sizes {
		switch {
		case s.Of == of && s.Beyond:
			apart = append(apart, i)
		case s.Of == of:
			rest = append(rest, i)
		}
	}
	if len(rest) == 0 {
		rest, apart = apart, nil
	}
	for _, i := range apart {
		sizes[i].stand(i, rest, a, b)
	}
	for len(rest) >= 2 {
		worst, most := 0, 0.0
		for n, i := range rest {
			beyond := sizes[i].stand(i, slices.Delete(slices.Clone(rest), n, n+1), a, b)
			// Of two digits alone it can't be told which stands out: the larger
			// one is looked at.
			if beyond > most && (len(rest) > 2 || sizes[i].Excess.Value > 0) {
				worst, most = n, beyond
			}
		}
		if most <= stricter {
			return
		}
		sizes[rest[worst]].Apart = true
		rest = slices.Delete(rest, worst, worst+1)
	}
}

// stand fills in the excess over others and tells how many times its
// uncertainty it is.
func (s *Size) stand(n int, others []int, a, b *ensemble) float64 {
	va, ua := a.proportion(n, others)
	vb, ub := b.proportion(n, others)
	d, u := va-vb, math.Hypot(ua, ub)
	s.Excess = &plane.Estimate[plane.Ratio]{Value: plane.Ratio(math.Expm1(d)), U95: plane.Ratio(math.Exp(d) * u)}
	return math.Abs(d) / u
}

func digitsOf(webs []Web) []hand.Digit {
	var out []hand.Digit
	for _, w := range webs {
		radial, ulnar := w.Web.Digits()
		out = append(out, radial, ulnar)
	}
	slices.Sort(out)
	return slices.Compact(out)
}
