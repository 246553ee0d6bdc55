package marking

import (
	"ogive/geometry/hand"
	"ogive/geometry/plane"
)

// markedWebs are the webs offered on the back and the palm of a hand.
var markedWebs = []hand.Web{hand.SecondWeb, hand.ThirdWeb, hand.FourthWeb}

// junctionPoints is how many points along the junction are asked for; more may
// be placed.
const junctionPoints = 4

// Order lists every spot that is asked for in this view, in the order in which
// it is offered: the scale, joint by joint across the hand, web by web.
func (s State) Order() []Spot {
	var order []Spot
	for n := range s.scalePoints() {
		order = append(order, Spot{Kind: ScalePoint, N: n})
	}
	if s.View == hand.WebView {
		web := s.junctionWeb()
		for n := range 2 {
			order = append(order, Spot{Kind: AxisPoint, Web: web, N: n})
		}
		for n := range junctionPoints {
			order = append(order, Spot{Kind: JunctionPoint, Web: web, N: n})
		}
		return order
	}
	for _, d := range hand.Digits[1:] {
		for _, j := range []hand.Joint{hand.MCP, hand.PIP} {
			order = append(order, Spot{Kind: JointPoint, Digit: d, Joint: j})
		}
	}
	for _, w := range markedWebs {
		for n := range 3 {
			order = append(order, Spot{Kind: SeedPoint, Web: w, N: n})
		}
	}
	return order
}

// junctionWeb is the web whose junction is marked: the one begun, else the third.
func (s State) junctionWeb() hand.Web {
	for _, w := range hand.Webs {
		for spot := range s.Points {
			if spot.Web == w && (spot.Kind == JunctionPoint || spot.Kind == AxisPoint) {
				return w
			}
		}
	}
	return hand.ThirdWeb
}

// Next is the first spot in the order that is neither placed nor skipped.
func (s State) Next() (Spot, bool) { return s.nextIn(s.Order()) }

// NextIn is the first spot wanted in one step.
func (s State) NextIn(step Step) (Spot, bool) {
	var part []Spot
	for _, spot := range s.Order() {
		if spot.Step() == step {
			part = append(part, spot)
		}
	}
	return s.nextIn(part)
}

func (s State) nextIn(order []Spot) (Spot, bool) {
	for _, spot := range order {
		if s.wants(spot) {
			return spot, true
		}
	}
	return Spot{}, false
}

func (s State) wants(spot Spot) bool {
	if _, placed := s.Points[spot]; placed || s.Skipped[spot] {
		return false
	}
	return spot.Kind != SeedPoint || len(s.Edges[spot.Web]) == 0
}

// Progress is how many spots of a step are done (placed or skipped), of how many.
func (s State) Progress(step Step) (done, of int) {
	for _, spot := range s.Order() {
		if spot.Step() != step {
			continue
		}
		of++
		if !s.wants(spot) {
			done++
		}
	}
	return done, of
}

// PassedOver reports whether a step was skipped as a whole.
func (s State) PassedOver(step Step) bool {
	any := false
	for _, spot := range s.Order() {
		if spot.Step() != step {
			continue
		}
		if any = true; !s.Skipped[spot] {
			return false
		}
	}
	return any
}

// Placed is a spot in its place.
type Placed struct {
	Spot Spot
	At   plane.PixelPoint
}

// Placed lists every placed spot in the order in which Tab walks them.
func (s State) Placed() []Placed {
	var list []Placed
	seen := map[Spot]bool{}
	add := func(spot Spot) {
		if p, ok := s.Points[spot]; ok && !seen[spot] {
			seen[spot] = true
			list = append(list, Placed{spot, p})
		}
	}
	for _, spot := range s.Order() {
		add(spot)
	}
	for _, spot := range everySpot() {
		add(spot)
	}
	return list
}

// everySpot lists all spots there can be, in a fixed order.
func everySpot() []Spot {
	var all []Spot
	for n := range 4 {
		all = append(all, Spot{Kind: ScalePoint, N: n})
	}
	for _, d := range hand.Digits {
		for _, j := range hand.Joints {
			all = append(all, Spot{Kind: JointPoint, Digit: d, Joint: j})
		}
	}
	for _, w := range hand.Webs {
		for n := range 3 {
			all = append(all, Spot{Kind: SeedPoint, Web: w, N: n})
		}
		for n := range 2 {
			all = append(all, Spot{Kind: AxisPoint, Web: w, N: n})
		}
		for n := range mostJunctionPoints {
			all = append(all, Spot{Kind: JunctionPoint, Web: w, N: n})
		}
	}
	return all
}

// mostJunctionPoints is the most points that can be placed along one junction.
const mostJunctionPoints = 40
