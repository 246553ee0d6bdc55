package reading

import (
	"math"
	"math/rand/v2"
	"slices"

	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
)

// readJunction adds the slope of the junction between glabrous and pigmented
// skin to out: the angle between the total least squares line through its
// points and the digit's long axis, 0 along the digit, 90 across it.
func readJunction(out *Web, j hand.JunctionMarks, m hand.Marks, fit scale.Fit, table norms.Table) {
	value, ok := slope(j.Line, j.Axis, fit.Best)
	if !ok {
		out.warn("No slope: it needs two points or more along the junction and two different points on the digit's long axis.")
		return
	}
	e := plane.Estimate[plane.Angle]{Value: plane.Degrees(value), U95: plane.Degrees(slopeU95(j, m.ClickSD, fit, value))}
	out.Slope = &e
	out.Verdicts = append(out.Verdicts, table.JudgeSlope(e)...)
}

// slopeU95 moves every point by the click deviation, or by as much as the
// points stray from their line if that is more, under every likely map.
func slopeU95(j hand.JunctionMarks, sd plane.Pixel, fit scale.Fit, value float64) float64 {
	rng := rand.New(rand.NewPCG(0x51096, uint64(j.Web)))
	moved := func(p plane.PixelPoint, sd plane.Pixel) plane.PixelPoint { return p.Add(clickError(sd, rng)) }
	stray := max(sd, straying(j.Line))
	t := trial{fit: fit}
	sizes := make([]float64, 0, trials)
	for i := range trials {
		line := make([]plane.PixelPoint, len(j.Line))
		for k, p := range j.Line {
			line[k] = moved(p, stray)
		}
		axis := [2]plane.PixelPoint{moved(j.Axis[0], sd), moved(j.Axis[1], sd)}
		if v, ok := slope(line, axis, t.likelyMap(i)); ok {
			sizes = append(sizes, math.Abs(v-value))
		}
	}
	slices.Sort(sizes)
	return sizes[len(sizes)*95/100]
}

// slope is the acute angle between line and axis in degrees.
func slope(line []plane.PixelPoint, axis [2]plane.PixelPoint, m scale.Map) (float64, bool) {
	a := m.Position(axis[1]).Sub(m.Position(axis[0]))
	d, ok := principal(m.Positions(line))
	if !ok || a.Norm() == 0 {
		return 0, false
	}
	angle := a.AngleTo(d).Degrees()
	return math.Min(angle, 180-angle), true
}

// principal is the direction of the total least squares line through ps.
func principal[U plane.Unit](ps []plane.Point[U]) (plane.Vector[U], bool) {
	xx, xy, yy := moments(ps)
	if len(ps) < 2 || xx+yy == 0 {
		return plane.Vector[U]{}, false
	}
	s, c := math.Sincos(math.Atan2(2*xy, xx-yy) / 2)
	return plane.Vec(U(c), U(s)), true
}

// straying is the standard deviation of the points across their line, in
// pixels, where there are enough points to tell.
func straying(ps []plane.PixelPoint) plane.Pixel {
	if len(ps) < 3 {
		return 0
	}
	xx, xy, yy := moments(ps)
	across := (xx+yy)/2 - math.Hypot((xx-yy)/2, xy)
	return plane.Pixel(math.Sqrt(math.Max(across, 0) / float64(len(ps)-2)))
}

// moments are the second moments of ps about their centroid.
func moments[U plane.Unit](ps []plane.Point[U]) (xx, xy, yy float64) {
	var cx, cy float64
	for _, p := range ps {
		cx += float64(p.X) / float64(len(ps))
		cy += float64(p.Y) / float64(len(ps))
	}
	for _, p := range ps {
		dx, dy := float64(p.X)-cx, float64(p.Y)-cy
		xx, xy, yy = xx+dx*dx, xy+dx*dy, yy+dy*dy
	}
	return xx, xy, yy
}
