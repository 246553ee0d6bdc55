package skincolour

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"
)

// rows reads the numbers of a reference file, its header left out.
func rows(t *testing.T, name string) [][]float64 {
	t.Helper()
	file, err := os.Open("../../testdata/reference/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	records, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out [][]float64
	for _, record := range records[1:] {
		var row []float64
		for _, field := range record {
			x, err := strconv.ParseFloat(field, 64)
			if err != nil {
				t.Fatal(err)
			}
			row = append(row, x)
		}
		out = append(out, row)
	}
	return out
}

// Sharma G, Wu W, Dalal EN. The CIEDE2000 color-difference formula:
// implementation notes, supplementary test data, and mathematical observations.
// Color Res Appl 2005;30:21-30. The table gives four decimals.
func TestTheDifferenceOfSharmasPairs(t *testing.T) {
	pairs := rows(t, "ciede2000_sharma2005.csv")
	if len(pairs) != 34 {
		t.Fatalf("%d pairs, want 34", len(pairs))
	}
	worst := 0.0
	for _, p := range pairs {
		a, b := Lab{p[1], p[2], p[3]}, Lab{p[4], p[5], p[6]}
		for _, got := range []float64{CIEDE2000(a, b), CIEDE2000(b, a)} {
			miss := math.Abs(got - p[7])
			worst = math.Max(worst, miss)
			if !(miss <= 1e-4) {
				t.Errorf("pair %g: %.6f, want %.4f", p[0], got, p[7])
			}
		}
	}
	t.Logf("largest miss over 34 pairs, both ways: %.2g", worst)
}

// scikit-image 0.19.3 rgb2lab, illuminant D65, 2 degree observer.
func TestLightBecomesTheCIELABOfScikitImage(t *testing.T) {
	colours := rows(t, "srgb_to_lab_d65_scikit-image.csv")
	if len(colours) != 300 {
		t.Fatalf("%d colours, want 300", len(colours))
	}
	worst := 0.0
	for _, c := range colours {
		got := Light{linear(c[0]), linear(c[1]), linear(c[2])}.Lab()
		miss := math.Max(math.Abs(got.L-c[3]), math.Max(math.Abs(got.A-c[4]), math.Abs(got.B-c[5])))
		worst = math.Max(worst, miss)
		if !(miss <= 0.05) {
			t.Errorf("sRGB %v: %v, want %v", c[:3], got, c[3:])
		}
	}
	t.Logf("largest miss over 300 colours: %.2g", worst)
}

// linear is the linear light of an 8-bit sRGB value (IEC 61966-2-1).
func linear(v float64) float64 {
	v /= 255
	if v <= 0.04045 {
		return v / 12.92
	}
	return math.Pow((v+0.055)/1.055, 2.4)
}
