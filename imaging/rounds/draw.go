package rounds

import (
	"math/rand/v2"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/norms"
)

// want is what one picture is to show: the web asked about and the finding on each
// of its figures.
type want struct {
	view  hand.View
	web   hand.Web
	place string
	width string // of no meaning for a V
	shape arch.Shape
	slope string
}

// wants draws what the pictures show so that each finding occurs as often as can
// be: every property is dealt out evenly and shuffled by itself.
func (s Setup) wants() []want {
	rng := rand.New(rand.NewPCG(s.Seed, 0x40d5))
	list := make([]want, s.Count)
	into := s.webViews()
	for i := range list {
		list[i].view = hand.Dorsal
		if i < into {
			list[i].view = hand.WebView
		}
	}
	rng.Shuffle(len(list), func(i, j int) { list[i], list[j] = list[j], list[i] })
	slopes := deal(rng, into, "too flat", "too steep", norms.WithinLimits)
	webs := deal(rng, s.Count, hand.SecondWeb, hand.ThirdWeb, hand.FourthWeb)
	places := deal(rng, s.Count-into, s.chosen(TooDeep, TooShallow)...)
	shapes := deal(rng, s.Count-into, arch.U, arch.Gothic, arch.V, arch.Round)
	for i := range list {
		w := &list[i]
		w.web = next(&webs)
		if w.view == hand.WebView {
			w.slope = next(&slopes)
			continue
		}
		w.place, w.shape = next(&places), next(&shapes)
		if !s.has(Shapes) {
			w.shape = usualShape(w.web)
		}
	}
	s.dealWidths(rng, list)
	return list
}

// dealWidths gives a width to all webs that have one.
func (s Setup) dealWidths(rng *rand.Rand, list []want) {
	var spanned []*want
	for i := range list {
		if w := &list[i]; w.view == hand.Dorsal && w.shape != arch.V {
			spanned = append(spanned, w)
		}
	}
	widths := deal(rng, len(spanned), s.chosen(TooWide, TooNarrow)...)
	for _, w := range spanned {
		w.width = next(&widths)
	}
}

// webViews is how many pictures look into a web: three in ten, and all if nothing
// but slopes is asked for.
func (s Setup) webViews() int {
	switch {
	case !s.has(Slopes):
		return 0
	case len(s.Faults) == 1:
		return s.Count
	}
	return (3*s.Count + 5) / 10
}

// chosen are the findings of the faults that may occur, and none of a fault.
func (s Setup) chosen(faults ...Fault) []string {
	var list []string
	for _, f := range faults {
		if s.has(f) {
			list = append(list, string(f))
		}
	}
	return append(list, norms.WithinLimits)
}

// usualShape is the shape that the program's phantoms have where nothing is amiss:
// second and fourth U, third pointed.
func usualShape(w hand.Web) arch.Shape {
	if w == hand.ThirdWeb {
		return arch.Gothic
	}
	return arch.U
}

// deal is n values, each as often as the others, in random order.
func deal[T any](rng *rand.Rand, n int, values ...T) []T {
	out := make([]T, n)
	for i := range out {
		out[i] = values[i%len(values)]
	}
	rng.Shuffle(n, func(i, j int) { out[i], out[j] = out[j], out[i] })
	return out
}

func next[T any](list *[]T) T {
	first := (*list)[0]
	*list = (*list)[1:]
	return first
}
