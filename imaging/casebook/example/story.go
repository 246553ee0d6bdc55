package example

import (
	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/imaging/casebook"
	"ogive/imaging/phantom"
)

// operated is the day on which the second and the fourth web of the left hand
// were released, which have no digit in common.
const operated casebook.Date = "2023-02-14"

const (
	operatedHand = hand.Left
	staying      = hand.SecondWeb
	creeping     = hand.FourthWeb
)

func child() casebook.Case {
	join := func(w hand.Web) casebook.Join {
		return casebook.Join{Hand: operatedHand, Web: w, Kind: casebook.Simple, Extent: casebook.Incomplete, Operated: operated}
	}
	return casebook.Case{
		Code: Code, Born: "2021-08", Hand: casebook.LeftHand,
		Joins:    []casebook.Join{join(staying), join(creeping)},
		Findings: "An invented child: every photograph is drawn by the program.",
	}
}

// visit is one sitting: how large the hand is and where the operated webs lie.
// All numbers are invented; the hand grows, one web creeps.
type visit struct {
	date              casebook.Date
	size              plane.Millimetre // MCP to PIP of the middle finger
	staying, creeping plane.Ratio
	reference         phantom.Reference
}

var visits = []visit{
	{"2022-11-22", 16.0, 0.92, 0.95, phantom.WhiteRuler},
	{operated, 16.5, 0.47, 0.47, phantom.WhiteRuler},
	{"2023-05-16", 17.2, 0.47, 0.49, phantom.WhiteRuler},
	{"2024-02-20", 19.5, 0.475, 0.58, phantom.IDCard}, // the ruler was not at hand
	{"2026-02-17", 24.0, 0.47, 0.72, phantom.WhiteRuler},
}

// pieces is how many pieces of work there are: each photograph is drawn, brought
// in and read.
var pieces = 3 * 2 * len(visits)

// released is whether the webs had been separated by then.
func (v visit) released() bool { return v.date >= operated }

// picture is the photograph of one hand at a visit.
func (v visit) picture(side hand.Side, seed uint64) phantom.Case {
	c := phantom.Case{
		Seed: seed, Side: side, View: hand.Dorsal, Size: v.size, Build: 1.12, Skin: phantom.Beige,
		Drape: phantom.Blue, Reference: v.reference, Width: 1152, Height: 864, NoiseSD: 1,
		Turn: plane.Degrees(float64(seed%7) - 3),
		Tilt: plane.Degrees(float64(seed%5) / 2), TiltDirection: plane.Degrees(float64(seed * 50 % 360)),
		Webs: map[hand.Web]phantom.WebShape{
			staying:       {Shape: arch.U, Index: 0.48, Span: 0.26 * v.size, Flat: 0.35},
			hand.ThirdWeb: {Shape: arch.Gothic, Index: 0.53, Span: 0.21 * v.size},
			creeping:      {Shape: arch.U, Index: 0.47, Span: 0.25 * v.size, Flat: 0.35},
		},
	}
	if side == operatedHand {
		c.Webs[staying] = v.web(v.staying, 0.25)
		c.Webs[creeping] = v.web(v.creeping, 0.22)
	}
	return c
}

// web is an operated web: a narrow cleft before the release, gothic after it.
func (v visit) web(index, span plane.Ratio) phantom.WebShape {
	if !v.released() {
		return phantom.WebShape{Shape: arch.Gothic, Index: index, Span: 0.12 * v.size, Flare: plane.Degrees(3)}
	}
	return phantom.WebShape{Shape: arch.Gothic, Index: index, Span: plane.Millimetre(span) * v.size}
}
