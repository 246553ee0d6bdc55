package sheet

import (
	"math"
	"testing"
)

// farthest is by how much a printed outline or bar may miss its place or length,
// in millimetres.
const farthest = 0.1

func TestEveryOutlineOfThePDFIsTrueToSize(t *testing.T) {
	for _, paper := range []Paper{A4, Letter} {
		c := example()
		c.Photograph = nil
		r := page(t, made(t, c, paper), 2)
		wide, high := paper.size()
		if miss := math.Hypot(float64(r.w)/dpi*25.4-wide, float64(r.h)/dpi*25.4-high); miss > 0.1 {
			t.Errorf("%s: the page is out by %.2f mm", paper.name(), miss)
		}
		w := newWriter(c, paper)
		pages := pack(c.Pieces, paper.window(), w.wordsHeight)
		if len(pages) != 1 {
			t.Fatalf("%s: %d pages of outlines, want 1", paper.name(), len(pages))
		}
		seenAll(t, paper.name(), r, pages[0])
		x, y := paper.levelBar()
		u, v := paper.uprightBar()
		bars(t, paper.name(), r, x, y, u, v, 1.8)
	}
}

// seenAll checks the lines of all pieces that show one line, the others' being
// crossed by one another.
func seenAll(t *testing.T, name string, r raster, page []placed) {
	t.Helper()
	checked := 0
	for _, p := range page {
		if p.piece.Together {
			continue
		}
		for _, o := range p.piece.Outlines {
			worst, n := r.misses(o, p.x, p.y)
			t.Logf("%s, %s, %v: farthest %.3f mm from its place, at %d places", name, p.piece.Name, o.Kind, worst, n)
			if worst > farthest || n < 5 {
				t.Errorf("%s: %s is out by %.3f mm at one of %d places", name, p.piece.Name, worst, n)
			}
			checked++
		}
	}
	if checked < 6 {
		t.Errorf("%s: only %d outlines checked", name, checked)
	}
}

// bars checks both bars by their end strokes, off their own lines.
func bars(t *testing.T, name string, r raster, x, y, u, v, off float64) {
	t.Helper()
	left, okLeft := r.line(x, y+off, 1, 0, 0.6)
	right, okRight := r.line(x+50, y+off, 1, 0, 0.6)
	top, okTop := r.line(u+off, v, 0, 1, 0.6)
	bottom, okBottom := r.line(u+off, v+50, 0, 1, 0.6)
	if !okLeft || !okRight || !okTop || !okBottom {
		t.Fatalf("%s: a check bar has no end stroke", name)
	}
	level, upright := 50+right-left, 50+bottom-top
	t.Logf("%s: the bars measure %.3f mm across and %.3f mm down", name, level, upright)
	if math.Abs(level-50) > farthest || math.Abs(upright-50) > farthest {
		t.Errorf("%s: the bars measure %.3f mm across and %.3f mm down, want 50", name, level, upright)
	}
}

func TestEveryOutlineOfTheSVGIsTrueToSize(t *testing.T) {
	c := example()
	r := drawing(t, cut(t, c))
	pages := pack(c.cutPieces(), svgWindow(c), svgWords)
	if len(pages) != 1 {
		t.Fatalf("%d pages, want one drawing", len(pages))
	}
	seenAll(t, "svg", r, pages[0])
	bars(t, "svg", r, 12, 8, 12, 8, -1.2)
	for _, p := range pages[0] {
		// Areas by plane geometry: a trapezium of 12 and 9 by 21 mm, and 6.3 by
		// 17.8 mm. They are counted in the picture, whose lines are 0.1 mm wide.
		var want, round float64
		switch p.piece.Name {
		case "Third web: dorsal flap":
			want, round = (12.0+9.0)/2*21, 12+9+2*math.Hypot(1.5, 21)
		case "Third web: graft, middle finger":
			want, round = 6.3*17.8, 2*(6.3+17.8)
		default:
			continue
		}
		b := p.piece.bounds()
		got := r.enclosed(p.x+(b.left+b.right)/2, p.y+(b.top+b.bottom)/2) + round*0.05
		t.Logf("%s: %.1f mm² counted, %.1f mm² by its sides", p.piece.Name, got, want)
		if math.Abs(got-want) > 0.01*want {
			t.Errorf("%s: %.1f mm², want %.1f", p.piece.Name, got, want)
		}
	}
}

// A piece larger than the paper lies on several pages that overlap; every part
// of it is on one of them, true to size.
func TestAPieceLargerThanThePageIsPutTogetherFromParts(t *testing.T) {
	long := Outline{Kind: GraftOutline}
	for i := range 61 {
		long.Points = append(long.Points, at(4*float64(i), 120*math.Sin(float64(i)/9)))
	}
	c := Content{Pieces: []Piece{{Name: "Large", Outlines: []Outline{long}}}}
	w := newWriter(c, A4)
	pages := pack(c.Pieces, A4.window(), w.wordsHeight)
	if len(pages) != 4 {
		t.Fatalf("%d pages, want 4", len(pages))
	}
	pdf := made(t, c, A4)
	window := tileWindow(A4.window())
	there := make([]int, len(long.Points))
	for i, parts := range pages {
		p := parts[0]
		var seen raster
		if i == 1 || i == 2 {
			seen = page(t, pdf, i+2)
		}
		for k := 1; k < len(long.Points); k++ {
			a, b := long.Points[k-1], long.Points[k]
			m := a.Mid(b)
			x, y := p.x+float64(m.X), p.y+float64(m.Y)
			if x < window.left || x > window.right || y < window.top || y > window.bottom {
				continue
			}
			there[k]++
			inside := x > window.left+1 && x < window.right-1 && y > window.top+1 && y < window.bottom-1
			if seen.w == 0 || !inside {
				continue
			}
			v := b.Sub(a).Direction()
			miss, ok := seen.line(x, y, float64(v.Y), -float64(v.X), 0.4)
			if !ok || math.Abs(miss) > farthest {
				t.Errorf("page %d, point %d: out by %.3f mm, drawn %v", i, k, miss, ok)
			}
		}
	}
	for k, n := range there[1:] {
		if n == 0 {
			t.Errorf("the line near point %d is on no page", k+1)
		}
	}
}
