package sheet

import (
	"image"
	"image/color"
	"math"
	"testing"

	"ogive/geometry/plane"
	"ogive/imaging/family"
	"ogive/imaging/wording"
)

// anArch is an equilateral arch of that span with its borders, crown at the
// origin, opening upwards.
func anArch(span float64) []plane.Position {
	var out []plane.Position
	rise := span * math.Sqrt(3) / 2
	border := span * 0.6
	out = append(out, at(-span/2, -rise-border))
	for i := range 41 {
		a := math.Pi/3*float64(i)/40 + math.Pi
		out = append(out, at(span/2+span*math.Cos(a), -rise-span*math.Sin(a)))
	}
	for i := len(out) - 2; i >= 0; i-- {
		out = append(out, at(-float64(out[i].X), float64(out[i].Y)))
	}
	return out
}

func at(x, y float64) plane.Position { return plane.Pt(plane.Millimetre(x), plane.Millimetre(y)) }

func moved(line []plane.Position, x, y float64) []plane.Position {
	var out []plane.Position
	for _, q := range line {
		out = append(out, at(float64(q.X)+x, float64(q.Y)+y))
	}
	return out
}

// aFlap is 12 mm wide at its base, 9 mm at its tip and 21 mm long: 220.5 mm².
func aFlap() []plane.Position {
	return []plane.Position{at(-6, 0), at(-4.5, -21), at(4.5, -21), at(6, 0)}
}

func aZigzag(side float64) []plane.Position {
	var out []plane.Position
	for i := range 7 {
		out = append(out, at(side*4.5, -5.5*float64(i)))
		side = -side
	}
	return out
}

// aGraft is 6.3 by 17.8 mm: 112.14 mm².
func aGraft() []plane.Position {
	return []plane.Position{at(0, 0), at(6.3, 0), at(6.3, 17.8), at(0, 17.8)}
}

func examplePieces() []Piece {
	join := Outline{Kind: JoinLine, Points: []plane.Position{at(0, 8), at(0, -38)}}
	return []Piece{
		{Name: "Third web: as on the photograph", Note: "Planned arch, flap and zigzag in their places. Lay MCP and PIP on the joints.", Together: true,
			Outlines:  []Outline{join, {Kind: ArchLine, Points: anArch(9)}, {Kind: FlapOutline, Points: moved(aFlap(), 0, 12)}, {Kind: BaseLine, Points: []plane.Position{at(6, 12), at(-6, 12)}}, {Kind: DorsalZigzag, Points: moved(aZigzag(1), 0, -6)}},
			Landmarks: []Landmark{{"middle MCP", at(-11, 14)}, {"ring MCP", at(11, 16)}, {"middle PIP", at(-10, -30)}, {"ring PIP", at(10, -27)}}},
		{Name: "Third web: planned arch", Outlines: []Outline{{Kind: ArchLine, Points: anArch(9)}}},
		{Name: "Third web: dorsal flap", Note: "Length 21.0 ± 0.8 mm, base 12.0 ± 0.5 mm, area 220 ± 12 mm².", Outlines: []Outline{{Kind: FlapOutline, Points: aFlap()}, {Kind: BaseLine, Points: []plane.Position{at(6, 0), at(-6, 0)}}}},
		{Name: "Third web: zigzag, back of the hand", Outlines: []Outline{{Kind: DorsalZigzag, Points: aZigzag(1)}}},
		{Name: "Third web: zigzag, palm", Note: "As it lies when you look at the palm.", Outlines: []Outline{{Kind: PalmarZigzag, Points: aZigzag(-1)}}},
		{Name: "Third web: graft, middle finger", Note: "6.3 by 17.8 mm. A template to begin cutting from.", Outlines: []Outline{{Kind: GraftOutline, Points: aGraft(), Closed: true}}},
	}
}

// example is an invented case.
func example() Content {
	img := image.NewRGBA(image.Rect(0, 0, 800, 600))
	for y := range 600 {
		for x := range 800 {
			img.SetRGBA(x, y, color.RGBA{uint8(x / 4), uint8(120 + y/8), 110, 255})
		}
	}
	points := family.Points([]string{family.Rotation, family.Deviation, family.Stiffness, family.JoinedNails, family.MissingPhalanx, family.OvergrownDigit, family.SeveralDigits}, nil)
	return Content{
		Code: "H-07", Title: "Left hand, back of the hand", Photograph: img,
		Key: []Kind{ArchLine, FlapOutline, DorsalZigzag, PalmarZigzag, JoinLine},
		Main: []Table{{"Third web, alternative “wide”", []Row{
			{Name: "dorsal web index", Value: "0.50 ± 0.03", Note: "within limits (published values)"},
			{Name: "depth", Value: "14.2 ± 0.9 mm", Note: ""}, {Name: "span", Value: "9.0 ± 0.4 mm", Note: "within limits? (doubtful), against the other hand"},
			{Name: "crown angle", Value: "120 ± 6°", Note: ""}, {Name: "flap, length × base", Value: "21.0 ± 0.8 × 12.0 ± 0.5 mm", Note: "length to base 1.75 ± 0.10"}, {Name: "graft", Value: "2.2 ± 0.4 cm²", Note: ""},
		}}},
		Tables:  []Table{{"Third web, all figures", []Row{{Name: "rise", Value: "7.8 ± 0.5 mm", Note: ""}, {Name: "limb obliquity", Value: "31 ± 4°", Note: "Narrow flaps leave scars almost across the finger, which sink into the creases, but their tips are short of blood; broad flaps are safer."}}}},
		Pieces:  examplePieces(),
		Scale:   "By the scale of the photograph 20 mm here are 20.0 ± 0.6 mm on the hand (95 %).",
		Notes:   []string{"Skin shrinks when it is cut, and a graft does more so."},
		Sources: []string{"Bae DS, Release of simple syndactyly (operative chapter)", "common practice, no source"},
		Family:  points, Caution: wording.Caution,
	}
}

func made(t *testing.T, c Content, p Paper) []byte {
	t.Helper()
	data, err := c.PDF(p)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func cut(t *testing.T, c Content) []byte {
	t.Helper()
	svg, err := c.SVG()
	if err != nil {
		t.Fatal(err)
	}
	return svg
}
