package plan

import (
	"math"
	"math/rand/v2"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
	"ogive/geometry/webframe"
)

// joints are MCP and PIP of the two digits of a web, radial first.
type joints struct {
	mcp, pip [2]plane.PixelPoint
	all      bool // false where one of the four is not marked
}

func (g Ground) jointsOf(w hand.Web) joints {
	out := joints{all: w.Valid()}
	if !out.all {
		return out
	}
	radial, ulnar := w.Digits()
	for i, d := range [2]hand.Digit{radial, ulnar} {
		mcp, okM := g.Marks.Joint(d, hand.MCP)
		pip, okP := g.Marks.Joint(d, hand.PIP)
		out.mcp[i], out.pip[i] = mcp, pip
		out.all = out.all && okM && okP && mcp != pip
	}
	return out
}

// missed is the joints, each moved as the observer may have missed it.
func (j joints) missed(sd plane.Pixel, rng *rand.Rand) joints {
	miss := func() plane.Vector[plane.Pixel] {
		return plane.Vec(sd*plane.Pixel(rng.NormFloat64()), sd*plane.Pixel(rng.NormFloat64()))
	}
	for i := range j.mcp {
		j.mcp[i], j.pip[i] = j.mcp[i].Add(miss()), j.pip[i].Add(miss())
	}
	return j
}

// place is the index and the depth (mm) of a crown, not a number where a joint
// is missing.
func (j joints) place(crown plane.Position, m scale.Map) (index, depth float64) {
	f, ok := j.frame(m)
	if !ok {
		return math.NaN(), math.NaN()
	}
	return float64(f.Index(crown)), float64(f.Depth(crown))
}

func (j joints) frame(m scale.Map) (webframe.Frame, bool) {
	if !j.all {
		return webframe.Frame{}, false
	}
	f := webframe.Frame{
		MCP: [2]plane.Position{m.Position(j.mcp[0]), m.Position(j.mcp[1])},
		PIP: [2]plane.Position{m.Position(j.pip[0]), m.Position(j.pip[1])},
	}
	return f, f.MCP[0] != f.PIP[0] && f.MCP[1] != f.PIP[1]
}

// Frame is the frame of w on the best map, if all four joints are marked.
func (g Ground) Frame(w hand.Web) (webframe.Frame, bool) {
	return webframe.Of(g.Marks, g.Fit.Best, w)
}
