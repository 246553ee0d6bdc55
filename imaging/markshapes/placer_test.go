package markshapes

import (
	"image"
	"image/color"
	"testing"

	"pgregory.net/rapid"
)

func emptyPlacer() *Placer {
	field := BoxOf(0, 0, 400, 300)
	c := NewCover(field, 6)
	return &Placer{Field: field, Cover: c, Em: 12}
}

func TestALabelStandsAtTheRightWhereNothingHinders(t *testing.T) {
	p := emptyPlacer()
	p.Cover.Sum()
	b, cost := p.Beside(XY(100, 100), 10, 60, 14)
	if b != BoxAt(110, 93, 60, 14) || cost != 0 {
		t.Errorf("it stands at %v and costs %v", b, cost)
	}
}

func TestALabelLeavesTheArchToBeSeen(t *testing.T) {
	p := emptyPlacer()
	p.Cover.AddLine([]Spot{{120, 40}, {120, 160}}, CostOfArch)
	p.Cover.AddLine([]Spot{{60, 101}, {90, 101}}, CostOfArch)
	p.Cover.Sum()
	b, _ := p.Beside(XY(100, 100), 10, 60, 14)
	if p.Cover.Under(b) > 0 && b.Top < 105 {
		t.Errorf("it stands at %v, on a line", b)
	}
}

func TestLabelsStayApartAndInTheFieldWhereThereIsRoom(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := emptyPlacer()
		p.Cover.Sum()
		for range 4 {
			q := XY(rapid.Float64Range(0, 400).Draw(t, "x"), rapid.Float64Range(0, 300).Draw(t, "y"))
			b, cost := p.Beside(q, 10, 50, 14)
			if !b.Within(p.Field) {
				t.Fatalf("a label at %v leaves the field", b)
			}
			for _, other := range p.taken {
				if b.Meets(other) && cost < costOfLabel {
					t.Fatalf("labels at %v and %v overlap and cost %v", b, other, cost)
				}
			}
			p.Take(b)
		}
	})
}

func TestALabelGivesWayToWhatElseItWouldCost(t *testing.T) {
	p := emptyPlacer()
	p.Cover.Sum()
	p.Further = func(b Box) float64 {
		if b.Left > 100 {
			return 50
		}
		return 0
	}
	if b, _ := p.Beside(XY(100, 100), 10, 60, 14); b.Right > 100 {
		t.Errorf("it stands at %v", b)
	}
}

func TestALabelStandsNearerToItsOwnMarkThanToAnother(t *testing.T) {
	p := emptyPlacer()
	p.Cover.Sum()
	p.Keep, p.Clear = []Spot{{100, 100}, {180, 100}}, 5
	if b, _ := p.Beside(XY(100, 100), 10, 64, 14); b.Distance(XY(100, 100)) > b.Distance(XY(180, 100)) {
		t.Errorf("it stands at %v", b)
	}
}

func TestTheLabelOfALineGivesWayAlongIt(t *testing.T) {
	line := []Spot{{50, 200}, {350, 200}}
	p := emptyPlacer()
	p.Cover.AddLine(line, CostOfArch)
	p.Cover.Sum()
	b, _ := p.BesideLine(line, 8, 60, 14)
	if b.Meets(BoxOf(50, 199, 350, 201)) || b.Centre().X < 190 || b.Centre().X > 210 {
		t.Errorf("nothing hinders, and it stands at %v", b)
	}
	p.Take(BoxOf(140, 150, 260, 250))
	if b, _ = p.BesideLine(line, 8, 60, 14); b.Meets(BoxOf(140, 150, 260, 250)) || b.Meets(BoxOf(50, 199, 350, 201)) {
		t.Errorf("the middle is taken, and it stands at %v", b)
	}
}

func TestAPlaceAlongAPathIsByItsLength(t *testing.T) {
	path := []Spot{{0, 0}, {30, 0}, {30, 0}, {30, 10}}
	for share, want := range map[float64]Spot{0: {0, 0}, 0.25: {10, 0}, 0.75: {30, 0}, 1: {30, 10}} {
		if got, ok := Along(path, share); !ok || got.Sub(want).Length() > 1e-9 {
			t.Errorf("at %v of the path is %v, want %v", share, got, want)
		}
	}
	if _, ok := Along([]Spot{{3, 3}, {3, 3}}, 0.5); ok {
		t.Error("a path without length has a middle")
	}
}

func TestDetailIsWhereNumbersAreAndNotOnPlainGround(t *testing.T) {
	img := image.NewRGBA(image.Rect(0, 0, 200, 100))
	for y := range 100 {
		for x := range 200 {
			v := uint8(200 + (x*7+y*13)%9) // grain
			if x > 100 && x/3%2 == 0 {
				v = 40 // ticks
			}
			img.SetRGBA(x, y, color.RGBA{v, v, v, 255})
		}
	}
	if d := Detail(img, BoxOf(5, 5, 90, 95)); d != 0 {
		t.Errorf("grain counts as %v", d)
	}
	if d := Detail(img, BoxOf(110, 5, 190, 95)); d < 0.4 {
		t.Errorf("ticks count as %v", d)
	}
	if d := Detail(img, BoxOf(-90, -90, -5, -5)); d != 0 {
		t.Errorf("outside counts as %v", d)
	}
}
