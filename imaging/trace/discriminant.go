package trace

import "math"

// colour is one sample's three channels, in whatever encoding its user chose.
type colour [3]float64

func (c colour) dot(d colour) float64 { return c[0]*d[0] + c[1]*d[1] + c[2]*d[2] }

// symmetric is a symmetric 3 by 3 matrix: xx, xy, xz, yy, yz, zz.
type symmetric [6]float64

// outer is k times the outer product of c with itself.
func outer(c colour, k float64) symmetric {
	return symmetric{k * c[0] * c[0], k * c[0] * c[1], k * c[0] * c[2], k * c[1] * c[1], k * c[1] * c[2], k * c[2] * c[2]}
}

func (m symmetric) plus(n symmetric, k float64) symmetric {
	for i := range m {
		m[i] += k * n[i]
	}
	return m
}

// solve is the x for which m x = y. The matrix must be positive definite.
func (m symmetric) solve(y colour) colour {
	a := m[3]*m[5] - m[4]*m[4]
	b := m[2]*m[4] - m[1]*m[5]
	c := m[1]*m[4] - m[2]*m[3]
	det := m[0]*a + m[1]*b + m[2]*c
	d := m[0]*m[5] - m[2]*m[2]
	e := m[1]*m[2] - m[0]*m[4]
	f := m[0]*m[3] - m[1]*m[1]
	return colour{
		(a*y[0] + b*y[1] + c*y[2]) / det,
		(b*y[0] + d*y[1] + e*y[2]) / det,
		(c*y[0] + e*y[1] + f*y[2]) / det,
	}
}

// moments are the sums of a class of samples.
type moments struct {
	n float64
	s colour
	q symmetric
}

func (m *moments) add(c colour) {
	m.n++
	m.s[0] += c[0]
	m.s[1] += c[1]
	m.s[2] += c[2]
	m.q[0] += c[0] * c[0]
	m.q[1] += c[0] * c[1]
	m.q[2] += c[0] * c[2]
	m.q[3] += c[1] * c[1]
	m.q[4] += c[1] * c[2]
	m.q[5] += c[2] * c[2]
}

// with is m and k times o pooled.
func (m moments) with(o moments, k float64) moments {
	m.n += k * o.n
	for i := range m.s {
		m.s[i] += k * o.s[i]
	}
	m.q = m.q.plus(o.q, k)
	return m
}

func (m moments) mean() colour { return colour{m.s[0] / m.n, m.s[1] / m.n, m.s[2] / m.n} }

func (m moments) covariance() symmetric {
	var c symmetric
	return c.plus(m.q, 1/m.n).plus(outer(m.mean(), 1), -1)
}

// discriminant tells drape from skin by colour: +1 at the mean of the drape, -1
// at the mean of the skin, 0 half way (Fisher 1936, linear discriminant with
// pooled covariance).
type discriminant struct {
	along colour
	shift float64
	// apart is the distance of the two means in pooled standard deviations.
	apart float64
}

// discriminate learns a discriminant. The prior is added to the pooled
// covariance: variation that is to be expected though the samples may not show
// it, such as noise and a change of light.
func discriminate(drape, skin moments, prior symmetric) discriminant {
	d, s := drape.mean(), skin.mean()
	delta := colour{d[0] - s[0], d[1] - s[1], d[2] - s[2]}
	within := prior.plus(drape.covariance(), 0.5).plus(skin.covariance(), 0.5)
	w := within.solve(delta)
	half := w.dot(delta) / 2
	if half < 1e-12 {
		return discriminant{}
	}
	for i := range w {
		w[i] /= half
	}
	return discriminant{along: w, shift: (w.dot(d) + w.dot(s)) / 2, apart: math.Sqrt(2 * half)}
}

func (d discriminant) of(c colour) float64 { return d.along.dot(c) - d.shift }

// between is the discriminant a fraction t of the way from d to e.
func (d discriminant) between(e discriminant, t float64) discriminant {
	for i := range d.along {
		d.along[i] += t * (e.along[i] - d.along[i])
	}
	d.shift += t * (e.shift - d.shift)
	d.apart += t * (e.apart - d.apart)
	return d
}
