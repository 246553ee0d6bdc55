package annotate

import (
	"math"
	"slices"
)

func clamp(x, low, high float64) float64 { return math.Min(math.Max(x, low), high) }

// side is the side of the photograph along which the cards stand.
type side int

const (
	above side = iota
	below
	leftOf
	rightOf
)

// sideTowards is the side that lies in direction v, above where v is zero.
func sideTowards(v spot) side {
	switch {
	case math.Abs(v.X) > math.Abs(v.Y) && v.X < 0:
		return leftOf
	case math.Abs(v.X) > math.Abs(v.Y):
		return rightOf
	case v.Y > 0:
		return below
	}
	return above
}

// row reports whether the cards stand beside each other, not below each other.
func (s side) row() bool { return s == above || s == below }

// margins is what is added to the photograph so that the cards find room, and
// where the cards stand on the whole picture.
type margins struct {
	left, top, right, bottom float64
	cards                    []box
}

// size is the width and height of a card.
type size struct{ w, h float64 }

// layOut sets cards of the given sizes in one row or column along a side of a
// photograph of w by h: in the order of their anchors and each as close to its
// own as the others allow. Anchors are places on the photograph.
func layOut(w, h float64, along side, sizes []size, anchors []spot, gap float64) margins {
	if len(sizes) == 0 {
		return margins{}
	}
	length, depth := 0.0, 0.0
	var lengths, wants []float64
	for i, s := range sizes {
		l, d, want := s.w, s.h, anchors[i].X
		if !along.row() {
			l, d, want = s.h, s.w, anchors[i].Y
		}
		lengths, wants = append(lengths, l), append(wants, want)
		length, depth = length+l+gap, math.Max(depth, d)
	}
	length += gap
	room := w
	if !along.row() {
		room = h
	}
	extra := math.Max(0, length-room)
	for i := range wants {
		wants[i] += extra / 2
	}
	starts := spread(wants, lengths, gap, room+extra)
	depth += 2 * gap
	m := margins{}
	switch along {
	case above:
		m.top = depth
	case below:
		m.bottom = depth
	case leftOf:
		m.left = depth
	case rightOf:
		m.right = depth
	}
	if along.row() {
		m.left, m.right = extra/2, extra/2
	} else {
		m.top, m.bottom = extra/2, extra/2
	}
	for i, s := range sizes {
		m.cards = append(m.cards, m.cardAt(w, h, along, s, starts[i], gap))
	}
	return m
}

// cardAt is the box of a card that starts at the given place along its side,
// close to the photograph.
func (m margins) cardAt(w, h float64, along side, s size, start, gap float64) box {
	switch along {
	case above:
		return boxAt(start, m.top-gap-s.h, s.w, s.h)
	case below:
		return boxAt(start, m.top+h+gap, s.w, s.h)
	case leftOf:
		return boxAt(m.left-gap-s.w, start, s.w, s.h)
	}
	return boxAt(m.left+w+gap, start, s.w, s.h)
}

// spread places intervals of the given lengths on a line from 0 to room, gap
// apart, in the order of the middles they want, so that the sum of the squared
// distances from the wanted middles is least (pooling of adjacent violators).
// They must fit.
func spread(wants, lengths []float64, gap, room float64) []float64 {
	order := make([]int, len(wants))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		switch {
		case wants[a] < wants[b]:
			return -1
		case wants[a] > wants[b]:
			return 1
		}
		return 0
	})
	type block struct{ start, weight float64 }
	var blocks []block
	before := gap
	offsets := make([]float64, len(wants))
	for _, i := range order {
		offsets[i] = before
		b := block{wants[i] - lengths[i]/2 - before, 1}
		for n := len(blocks); n > 0 && blocks[n-1].start > b.start; n = len(blocks) {
			last := blocks[n-1]
			sum := last.weight + b.weight
			b = block{(last.start*last.weight + b.start*b.weight) / sum, sum}
			blocks = blocks[:n-1]
		}
		blocks = append(blocks, b)
		before += lengths[i] + gap
	}
	starts := make([]float64, len(wants))
	k := 0
	for _, b := range blocks {
		for range int(b.weight) {
			i := order[k]
			starts[i] = offsets[i] + clamp(b.start, 0, math.Max(0, room-before))
			k++
		}
	}
	return starts
}

// distanceToLine is the distance from q to the straight line between a and b.
func distanceToLine(q, a, b spot) float64 {
	d := b.Sub(a)
	t := 0.0
	if dd := d.Dot(d); dd > 0 {
		t = clamp(q.Sub(a).Dot(d)/dd, 0, 1)
	}
	return q.Sub(a.To(b, t)).Length()
}

// cross reports whether the lines ab and cd cross.
func cross(a, b, c, d spot) bool {
	turn := func(p, q, r spot) float64 { return q.Sub(p).Square().Dot(r.Sub(p)) }
	return turn(a, b, c)*turn(a, b, d) < 0 && turn(c, d, a)*turn(c, d, b) < 0
}
