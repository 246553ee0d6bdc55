// Package planfile reads and writes plan files: what is planned for the webs of
// one photograph of a hand, as JSON. The form is described by assets.PlanSchema.
//
//	f, err := planfile.Read("right-dorsal.plan.json")
//	if err != nil { ... }                     // names the file, the field and the mend
//	a := f.Webs[0].Alternatives[0].Arch.On(fit.Best)   // the arch in millimetres
//	err = f.Save(path)                        // whole or not at all
//
// Places are kept in pixels of the upright photograph, so that a plan stays where
// it was drawn when a joint or the scale is marked anew; sizes are kept in
// millimetres, so that a span of 9 mm stays one of 9 mm.
package planfile

import (
	"ogive/geometry/arch"
	"ogive/geometry/flap"
	"ogive/geometry/hand"
	"ogive/geometry/plan"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
)

// Version is the form of plan file that this program reads and writes: the
// number in the field "ogive_plan".
const Version = 1

// File is what a plan file holds.
type File struct {
	// Photograph is the photograph's file, as in its marks file.
	Photograph string
	// Marks is the marks file of the photograph and Other that of the other
	// hand, as seen from the folder of the plan file. Both are empty where the
	// plan is kept beside its marks in a casebook.
	Marks, Other string
	Side         hand.Side
	View         hand.View
	Webs         []Web
	Donors       []Donor
	Patches      []Patch
	Family       Family
}

// Web is the plan of one web.
type Web struct {
	Web          hand.Web
	Alternatives []Alternative
	// Chosen is the name of the alternative that is to be made, empty while none
	// is chosen.
	Chosen string
	// Join is the proximal and the distal end of the join, nil while unmarked.
	Join   *[2]plane.PixelPoint
	Girths *Girths
}

// Alternative is one way to make the web. What is not drawn yet is nil.
type Alternative struct {
	Name   string
	Arch   *Arch
	Flap   *Flap
	Zigzag *Zigzag
}

// Arch is a planned arch: its crown and a place on its axis distal to the crown,
// on the photograph, and its form.
type Arch struct {
	Crown, Axis plane.PixelPoint
	Form        plan.Form
}

// On is the arch on the plane of m.
func (a Arch) On(m scale.Map) arch.Arch {
	crown := m.Position(a.Crown)
	return a.Form.Placed(crown, m.Position(a.Axis).Sub(crown))
}

// ArchOn is the arch a, on the plane of m, as it is kept.
func ArchOn(a arch.Arch, m scale.Map) *Arch {
	back := m.Back()
	return &Arch{Crown: back.Pixel(a.Crown), Axis: back.Pixel(a.Crown.Add(a.Axis.Scale(axisKept))), Form: plan.FormOf(a)}
}

// axisKept is how far from the crown the place on the axis is kept, in
// millimetres.
const axisKept = 10

// Flap is the outline of a flap, from one end of its base over the tip to the
// other.
type Flap struct {
	Kind    flap.Kind
	Outline []plane.PixelPoint
}

// Zigzag is the incisions on both faces, from proximal to distal. The one on the
// face turned away is drawn as it would be seen through the hand.
type Zigzag struct{ Dorsal, Palmar []plane.PixelPoint }

// Girths are those of the two digits of a web.
type Girths struct{ Radial, Ulnar Girth }

// Girth is the girth of a digit as taped, or its width where it was not: one of
// the two, the other zero. Both are zero where neither is known.
type Girth struct{ Taped, Width plane.Millimetre }

// Donor is a place that skin was taken from in the user's own cases.
type Donor struct {
	Name string
	// Gave is how much skin it gave in square centimetres, zero where not noted.
	Gave float64
	// Drawbacks is free text: a visible scar, hair, darker skin.
	Drawbacks string
}

// Patch is a round patch on a photograph, in which skin colour is sampled.
type Patch struct {
	// Name says what is sampled: back, palm, donor, graft, neighbour, neutral.
	Name   string
	Centre plane.PixelPoint
	Radius plane.Pixel
	// Photograph is another photograph that the patch lies on, empty for the
	// plan's own.
	Photograph string
}

// Family is what the family is to be told.
type Family struct {
	// Findings are the keys of the findings that were ticked, in order.
	Findings []string
	// Texts are the points whose wording the user changed, by their key, in order.
	Texts []Text
}

// Text is the user's own wording of one point.
type Text struct{ Key, Text string }

// Web is the plan of w, nil if there is none.
func (f *File) Web(w hand.Web) *Web {
	for i := range f.Webs {
		if f.Webs[i].Web == w {
			return &f.Webs[i]
		}
	}
	return nil
}

// ChosenAlternative is the alternative that was chosen, the only one if there is
// but one, else nil.
func (w *Web) ChosenAlternative() *Alternative {
	for i := range w.Alternatives {
		if w.Alternatives[i].Name == w.Chosen || len(w.Alternatives) == 1 {
			return &w.Alternatives[i]
		}
	}
	return nil
}
