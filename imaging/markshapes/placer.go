package markshapes

import "math"

// Placer puts labels one after the other where they hide least:
//
//	cover := markshapes.NewCover(field, em/2)
//	cover.AddLine(arch, markshapes.CostOfArch)
//	cover.Sum()
//	p := markshapes.Placer{Field: field, Cover: cover, Em: em, Keep: joints, Clear: 1.4 * radius}
//	box, cost := p.Beside(joint, radius+0.3*em, width, height)
type Placer struct {
	// Field is the box in which labels stay.
	Field Box
	// Cover is what they had better not lie on, summed.
	Cover *Cover
	// Em is the size of the letters in pixels; labels stay a fifth of it apart.
	Em float64
	// Keep are places to which labels come no nearer than Clear.
	Keep  []Spot
	Clear float64
	// Further is what else a place costs; it may be nil.
	Further func(Box) float64

	taken []Box
}

// What it costs to lie on a thing: lines by half an em of their length.
const (
	CostOfArch = 4.0
	CostOfAxis = 0.7
	CostOfMark = 5.0
)

const (
	costOfLabel  = 12 // lying on another label
	costOfPlace  = 20 // lying on a place that is kept clear
	costOfLeave  = 60 // leaving the field
	costOfWay    = 0.2
	costOfFarOff = 1.5
	costOfShare  = 0.8
	costOfDoubt  = 8 // standing nearer to another place than to its own
)

// ways are where a label may stand, in order of liking.
var ways = []Spot{{1, 0}, {-1, 0}, {0, 1}, {0, -1}, {0.75, 0.75}, {-0.75, 0.75}, {0.75, -0.75}, {-0.75, -0.75}}

// Beside is the best place for a label of w by h around q, gap from it or twice
// as far, and what it costs. The place is not taken yet.
func (p *Placer) Beside(q Spot, gap, w, h float64) (Box, float64) {
	var best Box
	least := math.Inf(1)
	for far := range 2 {
		reach := gap * float64(1+far)
		for i, way := range ways {
			c := q.Add(Spot{way.X * (reach + w/2), way.Y * (reach + h/2)})
			b := BoxAt(c.X-w/2, c.Y-h/2, w, h)
			cost := costOfWay*float64(i) + costOfFarOff*float64(far)
			if cost >= least {
				continue
			}
			if cost += p.cost(b) + p.mistaken(b, q); cost < least {
				least, best = cost, b
			}
		}
	}
	return best, least
}

// shares are where along a line its label may stand, in order of liking.
var shares = []float64{0.5, 0.36, 0.64, 0.22, 0.78, 0.08, 0.92}

// BesideLine is the best place for a label of w by h near the middle of a line, gap
// from it, or farther along it where that is better, and what it costs.
func (p *Placer) BesideLine(path []Spot, gap, w, h float64) (Box, float64) {
	var best Box
	least := math.Inf(1)
	for i, share := range shares {
		q, ok := Along(path, share)
		if !ok {
			continue
		}
		if b, cost := p.Beside(q, gap, w, h); cost+costOfShare*float64(i) < least {
			best, least = b, cost+costOfShare*float64(i)
		}
	}
	return best, least
}

// Take keeps later labels off a place.
func (p *Placer) Take(b Box) { p.taken = append(p.taken, b) }

// mistaken is what it costs that a label of q may be taken for that of another of
// the places kept.
func (p *Placer) mistaken(b Box, q Spot) float64 {
	own := b.Distance(q)
	for _, k := range p.Keep {
		if k.Sub(q).Length() > 1 && b.Distance(k) < own {
			return costOfDoubt
		}
	}
	return 0
}

func (p *Placer) cost(b Box) float64 {
	wide := b.Grown(0.2 * p.Em)
	c := p.Cover.Under(wide)
	for _, t := range p.taken {
		if t.Meets(wide) {
			c += costOfLabel
		}
	}
	for _, k := range p.Keep {
		if b.Distance(k) < p.Clear {
			c += costOfPlace
		}
	}
	if !b.Within(p.Field) {
		c += costOfLeave
	}
	if p.Further != nil {
		c += p.Further(b)
	}
	return c
}
