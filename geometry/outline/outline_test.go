package outline

import (
	"encoding/csv"
	"math"
	"os"
	"slices"
	"strconv"
	"testing"

	"ogive/geometry/plane"
)

// Stegmann MB, Gomez DD. A brief introduction to statistical shape analysis.
// Technical University of Denmark, 2002: points 23, 33 and 43 of each of the 40
// left hands are the bottoms of the second to fourth webs, 18, 28, 38 and 48 the
// tips of the index to little fingers.
func TestWebsOfRealHandsAreFoundUntold(t *testing.T) {
	webs, tips := []int{23, 33, 43}, []int{18, 28, 38, 48}
	found, exact, extra := 0, 0, 0
	for shape, points := range hands(t) {
		valleys := Valleys(points)
		extra += len(valleys)
		for i, w := range webs {
			k := slices.IndexFunc(valleys, func(v Valley[plane.Millimetre]) bool { return near(v.At+1, w) })
			if k < 0 {
				t.Errorf("hand %d: no valley at point %d", shape+1, w)
				continue
			}
			found++
			extra--
			if valleys[k].At+1 == w {
				exact++
			}
			if got := valleys[k].Tips; !near(got[0]+1, tips[i]) || !near(got[1]+1, tips[i+1]) {
				t.Errorf("hand %d: web %d lies between tips %d and %d", shape+1, i+2, got[0]+1, got[1]+1)
			}
		}
	}
	t.Logf("found %d of 120 webs within one outline point, %d of them at the very point; %d other valleys (40 are the first webs)", found, exact, extra)
	if extra > 40 {
		t.Errorf("%d valleys are no webs", extra-40)
	}
}

func near(a, b int) bool { return a-b <= 1 && b-a <= 1 }

func TestWebsAreFoundFromAnyStartAndEitherWayRound(t *testing.T) {
	points := hands(t)[0]
	at := func(ps []plane.Position) []plane.Position {
		var out []plane.Position
		for _, v := range Valleys(ps) {
			out = append(out, ps[v.At])
		}
		slices.SortFunc(out, func(a, b plane.Position) int { return int(math.Copysign(1, float64(a.Y-b.Y))) })
		return out
	}
	want := at(points)
	for start := 0; start < len(points); start += 5 {
		turned := append(slices.Clone(points[start:]), points[:start]...)
		if got := at(turned); !slices.Equal(got, want) {
			t.Fatalf("begun at point %d: %v, want %v", start+1, got, want)
		}
		slices.Reverse(turned)
		if got := at(turned); !slices.Equal(got, want) {
			t.Fatalf("backwards from point %d: %v, want %v", start+1, got, want)
		}
	}
}

func TestWebsOfADenseOutlineLieWhereTheyLieOnASparseOne(t *testing.T) {
	for shape, points := range hands(t) {
		if shape%4 != 0 {
			continue // one outline in four is enough
		}
		var dense []plane.Position
		for i, p := range points {
			for k := range 20 {
				dense = append(dense, p.Towards(points[(i+1)%len(points)], float64(k)/20))
			}
		}
		sparse, fine := Valleys(points), Valleys(dense)
		if len(sparse) != len(fine) {
			t.Errorf("hand %d: %d valleys, on the dense outline %d", shape+1, len(sparse), len(fine))
			continue
		}
		for i, v := range sparse {
			if !near(v.At, fine[i].At/20) && !near(v.At, fine[i].At/20+1) {
				t.Errorf("hand %d: valley %d at point %d, on the dense outline at %.1f", shape+1, i+1, v.At+1, float64(fine[i].At)/20+1)
			}
		}
	}
}

func TestAnOutlineWithoutFingersHasNoWebs(t *testing.T) {
	var round, star []plane.Position
	for i := range 200 {
		s, c := math.Sincos(float64(i) * math.Pi / 100)
		round = append(round, plane.Pt(plane.Millimetre(30*c), plane.Millimetre(40*s)))
		star = append(star, plane.Pt(plane.Millimetre(1+0*c), 1))
	}
	for name, ps := range map[string][]plane.Position{"ellipse": round, "one place": star, "nothing": nil, "two points": round[:2]} {
		if got := Valleys(ps); len(got) != 0 {
			t.Errorf("%s: %v", name, got)
		}
	}
}

func hands(t *testing.T) [][]plane.Position {
	t.Helper()
	f, err := os.Open("../../testdata/reference/hands_stegmann2002.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	out := make([][]plane.Position, 40)
	for _, r := range rows[1:] {
		shape, err1 := strconv.Atoi(r[1])
		x, err2 := strconv.ParseFloat(r[3], 64)
		y, err3 := strconv.ParseFloat(r[4], 64)
		if err1 != nil || err2 != nil || err3 != nil {
			t.Fatal(r, err1, err2, err3)
		}
		out[shape-1] = append(out[shape-1], plane.Pt(plane.Millimetre(x), plane.Millimetre(y)))
	}
	return out
}
