package scale

import (
	"math"
	"slices"

	"ogive/geometry/plane"
)

// tickLine is the line through the ticks: its foot is the point nearest to the
// principal point, and each tick has a distance along it from there and a
// distance off it, in pixels.
type tickLine struct {
	foot       plane.PixelPoint
	direction  plane.Vector[plane.Pixel]
	offCentre  float64 // of the foot from the principal point, along direction turned from x to y
	along, off []float64
}

// throughPoints is the line with the least squares of the distances square to
// it, running from the first point towards the last.
func throughPoints(ps []plane.PixelPoint, centre plane.PixelPoint) tickLine {
	var mean plane.Vector[plane.Pixel]
	for _, p := range ps {
		mean = mean.Add(p.Sub(centre).Scale(1 / float64(len(ps))))
	}
	middle := centre.Add(mean)
	var xx, xy, yy float64
	for _, p := range ps {
		d := p.Sub(middle)
		xx += float64(d.X * d.X)
		xy += float64(d.X * d.Y)
		yy += float64(d.Y * d.Y)
	}
	u := plane.Vec[plane.Pixel](1, 0).Turned(plane.Radians(math.Atan2(2*xy, xx-yy) / 2))
	if ps[len(ps)-1].Sub(ps[0]).Dot(u) < 0 {
		u = u.Scale(-1)
	}
	line := tickLine{foot: middle.Add(u.Scale(-float64(mean.Dot(u)))), direction: u, offCentre: float64(u.Cross(mean))}
	for _, p := range ps {
		line.along = append(line.along, float64(p.Sub(line.foot).Dot(u)))
		line.off = append(line.off, float64(u.Cross(p.Sub(line.foot))))
	}
	return line
}

func (l tickLine) at(s float64) plane.PixelPoint { return l.foot.Add(l.direction.Scale(s)) }

// slant is the tilt of a plane on which the line is foreshortened by shrink and
// which has the slope across square to it. A length on the line at s is divided
// by n.r, r being the ray there, in proportion to 1 + shrink s.
func (l tickLine) slant(v lens, shrink, across float64) slant {
	along := shrink * (v.focal + across*l.offCentre)
	u := l.direction
	return slant{
		along*float64(u.X) - across*float64(u.Y),
		along*float64(u.Y) + across*float64(u.X),
	}
}

// placingSD is the standard deviation of a tick: the scatter of the gaps where
// there are enough of them and it is less than the error of placing a point.
func placingSD(along []float64, sd float64) float64 {
	if len(along) < enoughTicks {
		return sd
	}
	off := make([]float64, len(along)-1)
	for i := range off {
		off[i] = math.Abs(along[i+1] - along[i] - usualGap(along, i+1))
	}
	slices.Sort(off)
	return max(leastTickSD, min(sd, 1.4826*off[len(off)/2]/math.Sqrt2))
}

// usualGap is the median of up to four gaps on either side of the one that ends
// at tick i, that one left out.
func usualGap(along []float64, i int) float64 {
	var gaps []float64
	for k := max(1, i-4); k <= min(len(along)-1, i+4); k++ {
		if k != i {
			gaps = append(gaps, along[k]-along[k-1])
		}
	}
	slices.Sort(gaps)
	n := len(gaps)
	return (gaps[(n-1)/2] + gaps[n/2]) / 2
}
