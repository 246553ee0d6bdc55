package planfile

import (
	"fmt"

	"ogive/geometry/arch"
	"ogive/geometry/flap"
	"ogive/geometry/plan"
	"ogive/geometry/plane"
)

func (f field) alternative() Alternative {
	f.object("an alternative", "name", "arch", "flap", "zigzag")
	out := Alternative{Name: f.at("name").words("the alternative's name", 1, longestName)}
	if a := f.at("arch"); a.there {
		out.Arch = a.arch()
	}
	if p := f.at("flap"); p.there {
		p.object("a flap", "kind", "outline")
		out.Flap = &Flap{
			Kind:    named(p.at("kind"), `"dorsal" or "palmar"`, flap.ParseKind),
			Outline: p.at("outline").points("the outline's points", leastOutline, mostOutline),
		}
	}
	if z := f.at("zigzag"); z.there {
		z.object("a zigzag", "dorsal", "palmar")
		out.Zigzag = &Zigzag{Dorsal: z.at("dorsal").zigzag(), Palmar: z.at("palmar").zigzag()}
	}
	return out
}

func (f field) zigzag() []plane.PixelPoint {
	if !f.there {
		return nil
	}
	return f.points("the zigzag's points from proximal to distal", 2, mostZigzag)
}

func (f field) arch() *Arch {
	f.object("an arch", "crown", "axis", "shape", "span_mm", "flare_deg", "turn_deg", "flat_share")
	a := &Arch{Crown: f.at("crown").point(), Axis: f.at("axis").point()}
	if f.sound() && a.Crown == a.Axis {
		f.at("axis").refuse("lies on the crown", "give a place on the arch's axis, distal to its crown")
	}
	a.Form = f.form()
	return a
}

// form reads the numbers that the shape does not fix.
func (f field) form() plan.Form {
	out := plan.Form{Shape: named(f.at("shape"), `"V", "round", "gothic" or "U"`, parseShape)}
	if !f.sound() {
		return out
	}
	out.Flare = f.at("flare_deg").degrees("the flare in degrees", leastFlare(out.Shape), 65)
	if out.Shape != arch.V {
		out.Span = plane.Millimetre(f.at("span_mm").number("the span in millimetres", 0.5, 80))
	}
	switch out.Shape {
	case arch.Gothic:
		out.Turn = f.at("turn_deg").degrees("half the crown angle in degrees", 3, 89)
	case arch.U:
		out.Flat = plane.Ratio(f.at("flat_share").number("the part of the span that is flat", 0.02, 0.98))
	}
	f.unused(out.Shape)
	if !f.sound() {
		return out
	}
	bounded := out.Bounded()
	if out.Shape == arch.Gothic && bounded.Turn > out.Turn+plane.Degrees(1e-6) {
		f.at("turn_deg").refuse(fmt.Sprintf("is %g, less than 3 degrees more than the flare", out.Turn.Degrees()), "give the crown a wider angle, or the shape V")
	}
	return bounded
}

// leastFlare is the least flare in degrees: the borders of a V must part.
func leastFlare(s arch.Shape) float64 {
	if s == arch.V {
		return 3
	}
	return -25
}

// unused refuses numbers that the shape fixes: they would be passed over.
func (f field) unused(s arch.Shape) {
	for _, n := range []struct {
		name string
		used bool
	}{{"span_mm", s != arch.V}, {"turn_deg", s == arch.Gothic}, {"flat_share", s == arch.U}} {
		if at := f.at(n.name); at.there && !n.used {
			at.refuse(fmt.Sprintf("is fixed by the shape %v", s), "leave it out")
		}
	}
}

func parseShape(name string) (arch.Shape, error) {
	for _, s := range arch.Shapes {
		if s.String() == name {
			return s, nil
		}
	}
	return 0, fmt.Errorf("unknown shape %q", name)
}
