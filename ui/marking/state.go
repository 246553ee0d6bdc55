package marking

import (
	"maps"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
)

// State is everything that is marked at one moment. A gesture makes a new one
// and leaves the old one as it was, so that undoing is going back to it.
type State struct {
	Side    hand.Side // zero until the user has said which hand it is
	View    hand.View // zero until the user has said from where it is seen
	Method  scale.Method
	Length  plane.Millimetre // of the ruler between the two points; 0 unknown
	Card    CardSize
	ClickSD plane.Pixel

	Points  map[Spot]plane.PixelPoint
	Skipped map[Spot]bool
	// Edges are borders that were corrected by hand; all others are traced anew
	// from their seeds, which always gives the same border.
	Edges map[hand.Web][]plane.PixelPoint
	// Proposed are webs whose seeds were found by the program and are not yet
	// accepted.
	Proposed map[hand.Web]bool
}

// CardSize is the size of the card that serves as reference.
type CardSize struct{ Width, Height plane.Millimetre }

// BankCard is the size of a bank card (ISO/IEC 7810, ID-1).
var BankCard = CardSize{85.60, 53.98}

func newState() State {
	return State{
		Method: scale.ByRuler, Card: BankCard, ClickSD: hand.DefaultClickSD,
		Points: map[Spot]plane.PixelPoint{}, Skipped: map[Spot]bool{},
		Edges: map[hand.Web][]plane.PixelPoint{}, Proposed: map[hand.Web]bool{},
	}
}

// copied is a state that can be changed without changing s.
func (s State) copied() State {
	s.Points, s.Skipped = maps.Clone(s.Points), maps.Clone(s.Skipped)
	s.Edges, s.Proposed = maps.Clone(s.Edges), maps.Clone(s.Proposed)
	return s
}

// scalePoints is how many points the scale needs.
func (s State) scalePoints() int {
	if s.Method == scale.ByCard {
		return 4
	}
	return 2
}

// Reference is the marked scale, nil while it is not complete.
func (s State) Reference() scale.Reference {
	var at []plane.PixelPoint
	for n := range s.scalePoints() {
		p, ok := s.Points[Spot{Kind: ScalePoint, N: n}]
		if !ok {
			return nil
		}
		at = append(at, p)
	}
	if s.Method == scale.ByCard {
		return scale.Card{Corners: [4]plane.PixelPoint(at), Width: s.Card.Width, Height: s.Card.Height}
	}
	if s.Length <= 0 {
		return nil
	}
	return scale.Ruler{From: at[0], To: at[1], Length: s.Length}
}

// LacksLength reports whether the ruler is marked and its length not yet given.
func (s State) LacksLength() bool {
	_, from := s.Points[Spot{Kind: ScalePoint, N: 0}]
	_, to := s.Points[Spot{Kind: ScalePoint, N: 1}]
	return s.Method == scale.ByRuler && from && to && s.Length <= 0
}

// Seeds are the three seeds of a web, if all are placed.
func (s State) Seeds(w hand.Web) ([3]plane.PixelPoint, bool) {
	var seeds [3]plane.PixelPoint
	for n := range seeds {
		p, ok := s.Points[Spot{Kind: SeedPoint, Web: w, N: n}]
		if !ok {
			return seeds, false
		}
		seeds[n] = p
	}
	return seeds, true
}

// Marks is what is complete of s, for a reading.
func (s State) Marks() hand.Marks {
	m := hand.Marks{Side: s.Side, View: s.View, ClickSD: s.ClickSD, Joints: map[hand.Digit]map[hand.Joint]plane.PixelPoint{}}
	for _, d := range hand.Digits {
		for _, j := range hand.Joints {
			if p, ok := s.Points[Spot{Kind: JointPoint, Digit: d, Joint: j}]; ok {
				if m.Joints[d] == nil {
					m.Joints[d] = map[hand.Joint]plane.PixelPoint{}
				}
				m.Joints[d][j] = p
			}
		}
	}
	for _, w := range hand.Webs {
		seeds, ok := s.Seeds(w)
		if edge := s.Edges[w]; len(edge) > 0 {
			m.Webs = append(m.Webs, hand.WebMarks{Web: w, Edge: edge})
		} else if ok {
			m.Webs = append(m.Webs, hand.WebMarks{Web: w, Seeds: seeds[:]})
		}
		if j, ok := s.junction(w); ok {
			m.Junctions = append(m.Junctions, j)
		}
	}
	return m
}

func (s State) junction(w hand.Web) (hand.JunctionMarks, bool) {
	j := hand.JunctionMarks{Web: w}
	for n := range j.Axis {
		p, ok := s.Points[Spot{Kind: AxisPoint, Web: w, N: n}]
		if !ok {
			return j, false
		}
		j.Axis[n] = p
	}
	for n := 0; ; n++ {
		p, ok := s.Points[Spot{Kind: JunctionPoint, Web: w, N: n}]
		if !ok {
			return j, n >= 2
		}
		j.Line = append(j.Line, p)
	}
}
