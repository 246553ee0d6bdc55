// Package planning reckons everything that follows from a plan on its
// photograph: outlines in millimetres and in pixels, figures, notes. The window,
// the sheet and the command share it.
//
//	settings, err := measure.Defaults()
//	here, err := planning.Prepare(subject, settings)        // once for each photograph
//	other, err := planning.Prepare(otherSubject, settings)  // the other hand, if there is one
//	p := planning.Of(file, here, &other)                    // the whole plan
//	w := here.Web(file.Webs[0], &other)                     // one web, after every gesture
//	w.Alternatives[0].Arch.Figures.Index
//	here.Propose(hand.ThirdWeb, &other)                     // an arch to begin with
//
// From the command line and for the sheet, Open does all of it from a plan file
// or a marks file.
package planning

import (
	"ogive/geometry/arch"
	"ogive/geometry/flap"
	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/plan"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/geometry/skinbudget"
	"ogive/geometry/zigzag"
	"ogive/imaging/marksfile"
	"ogive/imaging/planfile"
)

// Hand is one photograph of a hand, measured and ready to be planned on.
type Hand struct {
	Marks   marksfile.File // every web that could be traced with its edge
	Ground  plan.Ground
	Reading reading.Reading
	Table   norms.Table
}

// Plan is everything that follows from a plan file.
type Plan struct {
	File     planfile.File
	Side     hand.Side
	View     hand.View
	PerPixel plane.Estimate[plane.Millimetre]
	Webs     []Web
	// Warnings concern the scale and the photograph as a whole.
	Warnings []string
}

// Web is everything that follows from the plan of one web.
type Web struct {
	Web          hand.Web
	Alternatives []Alternative
	// Chosen is the index of the chosen alternative, -1 while none is chosen.
	Chosen int
	Join   *Join
	Skin   *Skin // nil without girths, join or a choice; Remarks say which
	// ThirdsRule is why the thirds rule can't be used for this web, empty where
	// it can.
	ThirdsRule string
	Remarks    []string
}

// Join is the join of the two digits.
type Join struct {
	Line   zigzag.Join
	Pixels [2]plane.PixelPoint
	Length plane.Estimate[plane.Millimetre]
}

// Alternative is one way to make the web. What is not drawn is nil.
type Alternative struct {
	Name   string
	Arch   *Arch
	Flap   *Flap
	Dorsal *Cut
	Palmar *Cut
	// Notes concern the zigzags of both faces together.
	Notes []string
}

// Arch is a planned arch.
type Arch struct {
	Arch    arch.Arch
	Curve   []plane.Position // with its borders, left to right
	Pixels  []plane.PixelPoint
	Figures plan.Figures
}

// Flap is a planned flap; the outline is closed by its base, from the last point
// to the first.
type Flap struct {
	Flap    flap.Flap
	Pixels  []plane.PixelPoint
	Figures flap.Figures
}

// Cut is the zigzag on one face.
type Cut struct {
	Zigzag  zigzag.Zigzag
	Pixels  []plane.PixelPoint
	Figures zigzag.Figures
}

// Skin is what skin is short, with the graft's templates: the patches for both
// digits and the spindle to take them from.
type Skin struct {
	Budget  skinbudget.Budget
	Patches []skinbudget.Patch
	Spindle skinbudget.Spindle // without outline where nothing is short
	Remarks []string
}
