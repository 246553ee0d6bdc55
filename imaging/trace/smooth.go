package trace

import "math"

// smooth is the offsets that lie close to the measured ones and bend little: it
// minimises the weighted squares of the distances plus stiff times the squares
// of the second differences. Strangers are given less and less weight (Tukey's
// biweight).
func smooth(measured, weights []float64, stiff float64) []float64 {
	const laps = 4
	w := append([]float64(nil), weights...)
	var out []float64
	for lap := range laps {
		out = solveSmooth(measured, w, stiff)
		if lap == laps-1 {
			break
		}
		r := make([]float64, len(out))
		for i := range out {
			r[i] = math.Abs(out[i] - measured[i])
		}
		limit := max(0.3, 4.5*1.4826*median(r))
		for i := range w {
			u := r[i] / limit
			w[i] = 0
			if u < 1 {
				w[i] = weights[i] * (1 - u*u) * (1 - u*u)
			}
			w[i] += 1e-6
		}
	}
	return out
}

// solveSmooth solves the normal equations, a band of five diagonals, by
// Cholesky's factorisation.
func solveSmooth(y, w []float64, stiff float64) []float64 {
	n := len(y)
	main := make([]float64, n)
	first := make([]float64, n)  // element (i, i-1)
	second := make([]float64, n) // element (i, i-2)
	x := make([]float64, n)
	for i := range n {
		main[i] = w[i]
		x[i] = w[i] * y[i]
	}
	for i := 2; i < n; i++ {
		main[i] += stiff
		main[i-1] += 4 * stiff
		main[i-2] += stiff
		first[i] -= 2 * stiff
		first[i-1] -= 2 * stiff
		second[i] += stiff
	}
	for i := range n {
		if i >= 2 {
			second[i] /= main[i-2]
			first[i] -= second[i] * first[i-1]
		}
		if i >= 1 {
			first[i] /= main[i-1]
			main[i] -= first[i] * first[i]
		}
		if i >= 2 {
			main[i] -= second[i] * second[i]
		}
		main[i] = math.Sqrt(max(main[i], 1e-12))
		if i >= 1 {
			x[i] -= first[i] * x[i-1]
		}
		if i >= 2 {
			x[i] -= second[i] * x[i-2]
		}
		x[i] /= main[i]
	}
	for i := n - 1; i >= 0; i-- {
		if i+1 < n {
			x[i] -= first[i+1] * x[i+1]
		}
		if i+2 < n {
			x[i] -= second[i+2] * x[i+2]
		}
		x[i] /= main[i]
	}
	return x
}
