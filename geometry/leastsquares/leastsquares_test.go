package leastsquares

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"
)

// NIST Statistical Reference Datasets, nonlinear regression, Misra1a:
// y = b1 (1 - exp(-b2 x)), certified values and both published starts.
func TestCertifiedNISTValuesAreReachedFromBothStarts(t *testing.T) {
	x, y := misra1a(t)
	model := func(b, r, jac []float64) {
		for i := range x {
			e := math.Exp(-b[1] * x[i])
			r[i] = b[0]*(1-e) - y[i]
			if jac != nil {
				jac[2*i], jac[2*i+1] = 1-e, b[0]*x[i]*e
			}
		}
	}
	for _, start := range [][]float64{{500, 0.0001}, {250, 0.0005}} {
		fit, err := Fit(model, len(x), start, Options{})
		if err != nil {
			t.Fatal(err)
		}
		near(t, "b1", fit.Params[0], 238.94212918, 1e-8)
		near(t, "b2", fit.Params[1], 5.5015643181e-4, 1e-8)
		sd := math.Sqrt(fit.Loss / float64(len(x)-2))
		near(t, "residual SD", sd, 0.10187876330, 1e-8)
		cov, err := fit.Covariance()
		if err != nil {
			t.Fatal(err)
		}
		// Certified standard deviations of the estimates (from memory).
		near(t, "SD of b1", sd*math.Sqrt(cov.At(0, 0)), 2.7070075241, 1e-6)
		near(t, "SD of b2", sd*math.Sqrt(cov.At(1, 1)), 7.2668688436e-6, 1e-6)
	}
}

func TestAStrayPointDoesNotMoveARobustLine(t *testing.T) {
	xs := []float64{0, 1, 2, 3, 4, 5, 6, 7, 8, 9}
	ys := []float64{1, 3.1, 4.9, 7, 9.1, 60, 13, 14.9, 17.1, 19}
	line := func(b, r, jac []float64) {
		for i := range xs {
			r[i] = b[0] + b[1]*xs[i] - ys[i]
			if jac != nil {
				jac[2*i], jac[2*i+1] = 1, xs[i]
			}
		}
	}
	fit, err := Fit(line, len(xs), []float64{1, 2.2}, Options{Scale: 0.3})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "slope", fit.Params[1], 2, 0.01)
	near(t, "intercept", fit.Params[0], 1, 0.06)
}

func TestTooFewPointsAreRefused(t *testing.T) {
	f := func(b, r, jac []float64) {}
	if _, err := Fit(f, 1, []float64{0, 0}, Options{}); err != ErrDegenerate {
		t.Errorf("one point for two parameters gave %v, want ErrDegenerate", err)
	}
}

func misra1a(t *testing.T) (x, y []float64) {
	t.Helper()
	f, err := os.Open("../../testdata/reference/nist_strd_misra1a.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range rows[1:] {
		a, errA := strconv.ParseFloat(row[0], 64)
		b, errB := strconv.ParseFloat(row[1], 64)
		if errA != nil || errB != nil {
			t.Fatalf("row %v is not two numbers", row)
		}
		x, y = append(x, a), append(y, b)
	}
	return x, y
}

func near(t *testing.T, what string, got, want, relative float64) {
	t.Helper()
	if math.Abs(got-want) > relative*math.Abs(want) {
		t.Errorf("%s is %.12g, want %.12g", what, got, want)
	}
}
