package measure

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
	"ogive/imaging/marksfile"
	"ogive/imaging/phantom"
)

// small is a hand on a smallish photograph whose ticks are just told apart, made once for all tests.
var small = sync.OnceValues(func() (phantom.Picture, error) {
	return phantom.Case{
		Seed: 3, Width: 1120, Height: 840, Size: 40,
		Webs: map[hand.Web]phantom.WebShape{
			hand.SecondWeb: {Shape: arch.U, Index: 0.5, Span: 11, Flat: 0.4},
			hand.ThirdWeb:  {Shape: arch.Gothic, Index: 0.72, Span: 9, Turn: plane.Degrees(60)},
			hand.FourthWeb: {Shape: arch.U, Index: 0.45, Span: 11, Flat: 0.4},
		},
	}.Render()
})

// laid is a folder with the small photograph and its marks, changed first.
func laid(t *testing.T, change func(*marksfile.File)) (path string, truth phantom.Truth) {
	t.Helper()
	picture, err := small()
	if err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	if err := os.WriteFile(filepath.Join(folder, "hand.jpg"), picture.JPEG, 0o600); err != nil {
		t.Fatal(err)
	}
	m, reference := picture.Truth.Marks(0.5, rand.New(rand.NewPCG(1, 2)))
	f := marksfile.File{Photograph: "hand.jpg", Marks: m, Reference: reference}
	change(&f)
	path = filepath.Join(folder, "marks.json")
	if err := f.Save(path); err != nil {
		t.Fatal(err)
	}
	return path, picture.Truth
}

func measured(t *testing.T, path string) Result {
	t.Helper()
	s, err := Defaults()
	if err != nil {
		t.Fatal(err)
	}
	r, err := File(path, s)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func asItIs(*marksfile.File) {}

func TestAMarksFileIsMeasuredAsTheHandTrulyIs(t *testing.T) {
	path, truth := laid(t, asItIs)
	r := measured(t, path).Reading
	if len(r.Webs) != len(truth.Webs) {
		t.Fatalf("%d webs are read of %d", len(r.Webs), len(truth.Webs))
	}
	for i, w := range r.Webs {
		want := truth.Webs[i]
		if w.Index == nil || !w.Index.Holds(want.Index) {
			t.Errorf("%v: index %+v, truly %v", w.Web, w.Index, want.Index)
		}
		if w.Span == nil || !w.Span.Holds(want.Span) {
			t.Errorf("%v: span %+v, truly %v", w.Web, w.Span, want.Span)
		}
		if w.Shape != want.Shape {
			t.Errorf("%v: %v, truly %v", w.Web, w.Shape, want.Shape)
		}
	}
}

func TestMeasuringTwiceGivesTheSame(t *testing.T) {
	path, _ := laid(t, asItIs)
	if diff := cmp.Diff(measured(t, path), measured(t, path)); diff != "" {
		t.Error(diff)
	}
}

func TestATracedEdgeIsMeasuredAsItLies(t *testing.T) {
	path, _ := laid(t, asItIs)
	traced := measured(t, path)
	again := filepath.Join(filepath.Dir(path), "again.json")
	if err := traced.Marks.Save(again); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(traced.Reading.Webs, measured(t, again).Reading.Webs); diff != "" {
		t.Errorf("the edges read back from a file give other figures: %s", diff)
	}
}

func TestAWebThatCannotBeTracedIsWarnedOfAndStopsNoOther(t *testing.T) {
	path, _ := laid(t, func(f *marksfile.File) {
		f.Marks.Webs[1].Seeds = []plane.PixelPoint{{X: 10, Y: 10}, {X: 12, Y: 12}, {X: 14, Y: 10}}
		f.Marks.Junctions = []hand.JunctionMarks{{
			Web:  hand.ThirdWeb,
			Line: []plane.PixelPoint{{X: 300, Y: 300}, {X: 340, Y: 340}},
			Axis: [2]plane.PixelPoint{{X: 300, Y: 300}, {X: 400, Y: 300}},
		}}
	})
	webs := measured(t, path).Reading.Webs
	if len(webs) != 3 || webs[0].Span == nil || webs[2].Span == nil {
		t.Fatalf("the other webs are not read: %+v", webs)
	}
	third := webs[1]
	if third.Web != hand.ThirdWeb || third.Span != nil || !warned(third.Warnings, "The border could not be traced") {
		t.Errorf("the third web reads %+v", third)
	}
	if third.Slope == nil {
		t.Error("the slope, which needs no border, is not given")
	}
}

func TestALengthThatTheTicksContradictIsWarnedOf(t *testing.T) {
	path, truth := laid(t, func(f *marksfile.File) {
		r := f.Reference.(scale.Ruler)
		r.Length *= 2
		f.Reference = r
	})
	if truth.Ruler == nil {
		t.Fatal("the photograph has no ruler")
	}
	if r := measured(t, path).Reading; !warned(r.Unusual(), "The ruler contradicts the length") {
		t.Errorf("warnings: %q", r.Warnings)
	}
}

func TestTheTicksOfARulerTellTheScaleWhereTheyAgreeWithItsLength(t *testing.T) {
	path, truth := laid(t, asItIs)
	r := measured(t, path).Reading
	if r.Method != scale.ByRuler || !warned(r.Warnings, "ticks found between the ends of the ruler") {
		t.Errorf("the scale was found by %v; warnings %q", r.Method, r.Warnings)
	}
	if want := truth.Plane.PerPixel(truth.Webs[1].Crown); !r.PerPixel.Holds(want) {
		t.Errorf("a pixel is %v mm, truly %v", r.PerPixel, want)
	}
	if len(r.Unusual()) > 0 {
		t.Errorf("the true length is warned of: %q", r.Warnings)
	}
}

func warned(warnings []string, of string) bool {
	return strings.Contains(strings.Join(warnings, "\n"), of)
}

func TestEveryRefusalNamesTheFileAndTheField(t *testing.T) {
	s, err := Defaults()
	if err != nil {
		t.Fatal(err)
	}
	for says, change := range map[string]func(*marksfile.File){
		"scale: is missing":                      func(f *marksfile.File) { f.Reference = nil },
		"joints.ring.mcp: is missing":            func(f *marksfile.File) { delete(f.Marks.Joints[hand.Ring], hand.MCP) },
		"photograph: none.jpg is not there":      func(f *marksfile.File) { f.Photograph = "none.jpg" },
		"photograph: marks.json is not a pict":   func(f *marksfile.File) { f.Photograph = "marks.json" },
		"webs[0].seeds[1]: [1200, 10] lies outs": func(f *marksfile.File) { f.Marks.Webs[0].Seeds[1] = plane.PixelPoint{X: 1200, Y: 10} },
	} {
		path, _ := laid(t, change)
		if _, err := File(path, s); err == nil || !strings.HasPrefix(err.Error(), path+": "+says) {
			t.Errorf("%v\nwant %s: %s", err, path, says)
		}
	}
}
