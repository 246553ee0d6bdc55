package plane

import "math"

// Pulled is the line with the point nearest to from moved to to, and its
// neighbours along with it the less the further along the line they are:
// (1 - (s/reach)²)² of the movement at the distance s, reach being three times
// the movement and at least a twelfth of the line's length.
func Pulled[U Unit](line []Point[U], from, to Point[U]) []Point[U] {
	if len(line) == 0 {
		return nil
	}
	along := make([]float64, len(line))
	nearest := 0
	for i, p := range line {
		if i > 0 {
			along[i] = along[i-1] + float64(p.Distance(line[i-1]))
		}
		if p.Distance(from) < line[nearest].Distance(from) {
			nearest = i
		}
	}
	by := to.Sub(line[nearest])
	reach := math.Max(3*float64(by.Norm()), along[len(along)-1]/12)
	out := make([]Point[U], len(line))
	for i, p := range line {
		out[i] = p
		if s := math.Abs(along[i]-along[nearest]) / reach; s < 1 {
			out[i] = p.Add(by.Scale((1 - s*s) * (1 - s*s)))
		}
	}
	return out
}
