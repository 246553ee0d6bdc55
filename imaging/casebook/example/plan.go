package example

import (
	"fmt"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/plan"
	"ogive/geometry/plane"
	"ogive/imaging/casebook"
	"ogive/imaging/marksfile"
	"ogive/imaging/planfile"
)

// plannedIndex is where both webs were to lie: by the surgeon's eye, a little
// deeper than on the other hand.
const (
	plannedIndex plane.Ratio = 0.46
	plannedName              = "Gothic, a little deeper than the other hand"
)

// intend keeps the plan drawn on the operated hand before the operation.
func intend(book *casebook.Casebook, photograph int64, s shot) error {
	f := planfile.File{Side: s.side, View: hand.Dorsal}
	p, err := book.Photograph(photograph)
	if err != nil {
		return err
	}
	f.Photograph = p.File()
	for _, w := range []hand.Web{staying, creeping} {
		a, err := intended(s.marks, w)
		if err != nil {
			return err
		}
		f.Webs = append(f.Webs, planfile.Web{Web: w, Alternatives: []planfile.Alternative{{Name: plannedName, Arch: a}}, Chosen: plannedName})
	}
	text, err := f.Encode()
	if err != nil {
		return err
	}
	return book.SavePlan(photograph, Observer, string(text))
}

// intended is a gothic arch at the planned index, as seen from the marked joints.
func intended(m marksfile.File, w hand.Web) (*planfile.Arch, error) {
	radial, ulnar := w.Digits()
	var crown plane.PixelPoint
	var axis plane.Vector[plane.Pixel]
	for _, d := range []hand.Digit{radial, ulnar} {
		mcp, okM := m.Marks.Joint(d, hand.MCP)
		pip, okP := m.Marks.Joint(d, hand.PIP)
		if !okM || !okP {
			return nil, fmt.Errorf("the %v of the example lacks a joint", w)
		}
		along := mcp.Towards(pip, float64(plannedIndex))
		crown.X, crown.Y = crown.X+along.X/2, crown.Y+along.Y/2
		axis = axis.Add(pip.Sub(mcp))
	}
	span := 0.25 * visits[0].size
	return &planfile.Arch{Crown: crown, Axis: crown.Add(axis), Form: plan.Form{
		Shape: arch.Gothic, Span: span, Flare: plane.Degrees(5), Turn: plane.Degrees(60),
	}}, nil
}
