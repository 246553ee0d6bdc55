package trace

import (
	"math"
	"slices"
)

// edge is the model of one profile: skin on the one side, drape on the other,
// each with a slope of its own, mixed as a blurred border mixes them. Where the
// drape is a narrow gap the blur of the border opposite is part of the model.
type edge struct {
	skin, skinSlope   float64
	drape, drapeSlope float64
	at                float64 // offset of the border, in samples
	variance          float64 // of at, for noise of variance 1
	misfit            float64 // mean square of the residuals
}

func (e edge) contrast() float64 {
	return e.drape + e.drapeSlope*e.at - e.skin - e.skinSlope*e.at
}

// How far levels, slopes and offset are expected to stray from what the
// discriminant says: without this a short profile in a narrow gap could be
// explained in many ways.
const (
	levelSD  = 0.5
	slopeSD  = 0.08 // per sample
	edgeLaps = 4
)

// fitter fits edges of one common blur.
type fitter struct {
	blur     float64 // standard deviation in samples
	noise    float64 // variance of the discriminant
	half     int
	offsetSD float64 // how far the border may lie off the strip's curve
	rows     int     // on which blurs are tried
}

// fit takes a profile from -half to +half, of which what lies beyond room is not
// looked at.
func (f fitter) fit(profile []float64, start, room float64) edge {
	e := edge{skin: -1, drape: 1, at: start}
	centre := len(profile) / 2
	lo := max(-f.half, -centre)
	hi := min(f.half, centre)
	if r := int(room); r < hi {
		hi = max(1, r)
	}
	for lap := range edgeLaps {
		var m [5][5]float64
		var v [5]float64
		priors := [5]float64{f.noise / (levelSD * levelSD), f.noise / (slopeSD * slopeSD), f.noise / (levelSD * levelSD), f.noise / (slopeSD * slopeSD), f.noise / (f.offsetSD * f.offsetSD)}
		now := [5]float64{e.skin + 1, e.skinSlope, e.drape - 1, e.drapeSlope, e.at - start}
		for i := range priors {
			m[i][i] = priors[i]
			v[i] = -priors[i] * now[i]
		}
		var squares float64
		for k := lo; k <= hi; k++ {
			x := float64(k)
			near, steep := bell((x - e.at) / f.blur)
			far := 1.0
			if room < 1e5 {
				far, _ = bell((room - x) / f.blur)
			}
			p := near * far
			skin, drape := e.skin+e.skinSlope*x, e.drape+e.drapeSlope*x
			r := profile[centre+k] - skin*(1-p) - drape*p
			j := [5]float64{1 - p, x * (1 - p), p, x * p, -steep / f.blur * far * (drape - skin)}
			for a := range j {
				for b := 0; b <= a; b++ {
					m[a][b] += j[a] * j[b]
				}
				v[a] += j[a] * r
			}
			squares += r * r
		}
		e.misfit = squares / float64(hi-lo+1)
		if lap == edgeLaps-1 {
			e.variance = lastOfInverse(&m)
			break
		}
		solveFive(&m, &v)
		e.skin += v[0]
		e.skinSlope += v[1]
		e.drape += v[2]
		e.drapeSlope += v[3]
		e.at += max(-1, min(1, v[4]))
	}
	return e
}

// factor replaces the lower half of m by its Cholesky factor.
func factor(m *[5][5]float64) {
	for i := range 5 {
		for j := 0; j <= i; j++ {
			s := m[i][j]
			for k := range j {
				s -= m[i][k] * m[j][k]
			}
			if i == j {
				m[i][i] = math.Sqrt(max(s, 1e-12))
			} else {
				m[i][j] = s / m[j][j]
			}
		}
	}
}

func solveFive(m *[5][5]float64, v *[5]float64) {
	factor(m)
	for i := range 5 {
		for k := range i {
			v[i] -= m[i][k] * v[k]
		}
		v[i] /= m[i][i]
	}
	for i := 4; i >= 0; i-- {
		for k := i + 1; k < 5; k++ {
			v[i] -= m[k][i] * v[k]
		}
		v[i] /= m[i][i]
	}
}

// lastOfInverse is the last diagonal element of the inverse of m.
func lastOfInverse(m *[5][5]float64) float64 {
	factor(m)
	return 1 / (m[4][4] * m[4][4])
}

// bell is the normal distribution's integral and density at x, from a table.
func bell(x float64) (integral, density float64) {
	y := (x + bellEnd) * bellPerUnit
	if y <= 0 {
		return 0, 0
	}
	if y >= 2*bellEnd*bellPerUnit {
		return 1, 0
	}
	i := int(y)
	t := y - float64(i)
	return bells[i][0] + t*(bells[i+1][0]-bells[i][0]), bells[i][1] + t*(bells[i+1][1]-bells[i][1])
}

const (
	bellEnd     = 5
	bellPerUnit = 64
)

var bells = func() (b [2*bellEnd*bellPerUnit + 2][2]float64) {
	for i := range b {
		x := float64(i)/bellPerUnit - bellEnd
		b[i][0] = math.Erfc(-x/math.Sqrt2) / 2
		b[i][1] = math.Exp(-x*x/2) / math.Sqrt(2*math.Pi)
	}
	return b
}()

// fitAll fits every row of a strip.
func (f fitter) fitAll(s *strip) []edge {
	e := make([]edge, len(s.curve))
	for i := range e {
		e[i] = f.fit(s.row(i), 0, s.reach[i])
	}
	return e
}

// trialBlurs are tried on some rows; the blur of a picture is much the same
// along one border.
var trialBlurs = []float64{0.45, 0.6, 0.8, 1.07, 1.42, 1.9, 2.5, 3.3, 4.4}

// findBlur sets the blur that explains the strip best, and the noise.
func (f *fitter) findBlur(s *strip) {
	every := max(1, len(s.curve)/f.rows)
	misfits := make([][]float64, len(trialBlurs))
	for b, blur := range trialBlurs {
		g := fitter{blur: blur, noise: f.noise, half: f.half, offsetSD: f.offsetSD}
		for i := every / 2; i < len(s.curve); i += every {
			e := g.fit(s.row(i), 0, s.reach[i])
			misfits[b] = append(misfits[b], e.misfit)
		}
	}
	// A row's noise is what its best blur leaves; rows are compared by the
	// logarithm, so that one full of creases does not decide for all.
	score := make([]float64, len(trialBlurs))
	for b := range trialBlurs {
		for _, m := range misfits[b] {
			score[b] += math.Log(m + 1e-4)
		}
	}
	best := 0
	for b := range score {
		if score[b] < score[best] {
			best = b
		}
	}
	f.blur = trialBlurs[best]
	if best > 0 && best < len(score)-1 {
		l, m, r := score[best-1], score[best], score[best+1]
		ratio := trialBlurs[best+1] / trialBlurs[best]
		f.blur *= math.Pow(ratio, 0.5*(l-r)/(l-2*m+r))
	}
	f.noise = max(1e-4, median(misfits[best]))
}

func median(v []float64) float64 {
	v = slices.Clone(v)
	slices.Sort(v)
	return v[len(v)/2]
}
