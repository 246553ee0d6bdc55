package marksfile

import (
	"ogive/geometry/plane"
	"ogive/geometry/scale"
)

// What is larger can't lie beside a hand, in millimetres.
const (
	maxRuler = 2000
	maxStep  = 200
	maxCard  = 2000
)

const maxTicks = 10_000

const scaleForm = `one of {"ruler": [[x, y], [x, y]], "length_mm": L}, {"ticks": [[x, y], ...], "step_mm": s}, {"card": [4 corners], "width_mm": w, "height_mm": h}`

// reference is nil where no scale is marked. Whether the points can be a ruler,
// ticks or a card is left to Complete.
func (f field) reference() scale.Reference {
	if f.missing() || !f.object(scaleForm, "ruler", "length_mm", "ticks", "step_mm", "card", "width_mm", "height_mm") {
		return nil
	}
	ways := 0
	for _, name := range []string{"ruler", "ticks", "card"} {
		if !f.at(name).missing() {
			ways++
		}
	}
	switch {
	case ways == 0:
		f.refuse("has no ruler, ticks or card", "give "+scaleForm)
	case ways > 1:
		f.refuse("has more than one of ruler, ticks and card", "keep one of them")
	case !f.at("ruler").missing():
		return f.ruler()
	case !f.at("ticks").missing():
		return f.ticks()
	default:
		return f.card()
	}
	return nil
}

func (f field) ruler() scale.Reference {
	f.object("a ruler", "ruler", "length_mm")
	ends := f.at("ruler").points("the 2 ends of a length on the ruler", 2, 2)
	length := f.at("length_mm").positive("the length between the two points in millimetres", maxRuler)
	if !f.sound() {
		return nil
	}
	return scale.Ruler{From: ends[0], To: ends[1], Length: plane.Millimetre(length)}
}

func (f field) ticks() scale.Reference {
	f.object("ticks", "ticks", "step_mm")
	at := f.at("ticks").points("3 equally spaced ticks of the ruler or more", 3, maxTicks)
	step := f.at("step_mm").positive("the distance from tick to tick in millimetres", maxStep)
	if !f.sound() {
		return nil
	}
	return scale.Ticks{At: at, Step: plane.Millimetre(step)}
}

func (f field) card() scale.Reference {
	f.object("a card", "card", "width_mm", "height_mm")
	corners := f.at("card").points("the 4 corners of the card in order around", 4, 4)
	width := f.at("width_mm").positive("the length of the side from the first corner to the second in millimetres", maxCard)
	height := f.at("height_mm").positive("the length of the side from the second corner to the third in millimetres", maxCard)
	if !f.sound() {
		return nil
	}
	return scale.Card{Corners: [4]plane.PixelPoint(corners), Width: plane.Millimetre(width), Height: plane.Millimetre(height)}
}
