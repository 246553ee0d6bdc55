package reading

import (
	"math/rand/v2"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
)

// joints are MCP and PIP of the two digits of a web, radial first.
type joints struct {
	mcp, pip [2]plane.PixelPoint
	all      bool // false where one of the four is not marked
}

func jointsOf(m hand.Marks, web hand.Web) joints {
	out := joints{all: true}
	radial, ulnar := web.Digits()
	for i, d := range [2]hand.Digit{radial, ulnar} {
		mcp, okM := m.Joint(d, hand.MCP)
		pip, okP := m.Joint(d, hand.PIP)
		out.mcp[i], out.pip[i] = mcp, pip
		out.all = out.all && okM && okP
	}
	return out
}

// missed is the joints, each moved as the observer may have missed it.
func (j joints) missed(sd plane.Pixel, rng *rand.Rand) joints {
	for i := range j.mcp {
		j.mcp[i] = j.mcp[i].Add(clickError(sd, rng))
		j.pip[i] = j.pip[i].Add(clickError(sd, rng))
	}
	return j
}

// place is the index and the depth (mm) of a crown: the index after Tonkin MA et
// al. J Hand Surg Am 2015;40:456-61.
func (j joints) place(crown plane.Position, m scale.Map) (index, depth float64, ok bool) {
	if !j.all {
		return 0, 0, false
	}
	var along plane.Vector[plane.Millimetre]
	var pips [2]plane.Position
	for i := range j.mcp {
		mcp, pip := m.Position(j.mcp[i]), m.Position(j.pip[i])
		length := pip.Distance(mcp)
		if length == 0 {
			return 0, 0, false
		}
		u := pip.Sub(mcp).Scale(1 / float64(length))
		index += float64(crown.Sub(mcp).Dot(u)/length) / 2
		along = along.Add(u)
		pips[i] = pip
	}
	return index, float64(pips[0].Mid(pips[1]).Sub(crown).Dot(along.Direction())), true
}
