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
