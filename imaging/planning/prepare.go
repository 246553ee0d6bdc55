package planning

import (
	"fmt"
	"math"
	"slices"

	"ogive/geometry/hand"
	"ogive/geometry/plan"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/geometry/scale"
	"ogive/imaging/marksfile"
	"ogive/imaging/measure"
)

// Prepare measures a photograph and keeps its scale to plan on. Unlike measuring
// it asks for no web: the webs of a joined hand are yet to be made. The error
// names the field and the mend.
func Prepare(s measure.Subject, settings measure.Settings) (Hand, error) {
	if s.Marks.Reference == nil {
		return Hand{}, &marksfile.Refusal{Field: "scale", Problem: "is missing", Mend: "mark a ruler, its ticks or a card: a plan is drawn in millimetres"}
	}
	if v := s.Marks.Marks.View; v == hand.WebView {
		return Hand{}, &marksfile.Refusal{Field: "view", Problem: "is the web view, in which no arch can be planned", Mend: "plan on a photograph of the back of the hand or of the palm"}
	}
	if s.Scaling.Marked == nil {
		s.Scaling = measure.Inspect(s.Photograph, s.Marks.Reference)
	}
	fit, err := s.Scaling.Fit(cameraOf(s, settings), s.Marks.Marks.ClickSD)
	if err != nil {
		return Hand{}, err
	}
	result, err := s.Measure(settings)
	if err != nil {
		return Hand{}, err
	}
	return Hand{
		Marks: result.Marks, Reading: result.Reading, Table: settings.Norms,
		Ground: plan.Ground{Marks: result.Marks.Marks, Absent: result.Marks.Absent, Fit: fit},
	}, nil
}

// cameraOf is what is known of the camera, as package measure takes it: the
// focal length in pixels follows from the one for a 36 x 24 mm frame by the
// diagonals (CIPA DCG-001; from memory).
func cameraOf(s measure.Subject, settings measure.Settings) scale.Camera {
	size := s.Photograph.Size()
	diagonal := math.Hypot(float64(size.X), float64(size.Y))
	return scale.Camera{
		Width: plane.Pixel(size.X), Height: plane.Pixel(size.Y), Tilt: settings.Tilt,
		Focal: plane.Pixel(s.Photograph.Facts().Focal35 / math.Hypot(36, 24) * diagonal),
	}
}

// accepted are the webs that were read along a border that the user marked or
// accepted: one that the program only proposes is no measure for a plan.
func (h Hand) accepted() []reading.Web {
	if h.Marks.Unfinished == nil {
		return h.Reading.Webs
	}
	return slices.DeleteFunc(slices.Clone(h.Reading.Webs), func(w reading.Web) bool {
		return slices.Contains(h.Marks.Unfinished.Proposed, w.Web)
	})
}

// beside is what a plan of w is judged by.
func (h Hand) beside(w hand.Web, other *Hand) plan.Beside {
	b := plan.Beside{Table: h.Table, Webs: h.accepted()}
	if other != nil && other.Reading.View == h.Reading.View {
		webs := other.accepted()
		for i := range webs {
			if webs[i].Web == w {
				b.Other = &webs[i]
			}
		}
	}
	return b
}

// Propose is an arch to begin the plan of w with: from the other hand if it is
// given and shows the web, else from the free webs of this one and the table.
// The error says what is to be marked, or that the arch is to be placed by hand.
func (h Hand) Propose(w hand.Web, other *Hand) (plan.Proposal, error) {
	b := h.beside(w, other)
	if other == nil {
		return plan.Propose(h.Ground, w, b, nil)
	}
	if b.Other == nil {
		p, err := plan.Propose(h.Ground, w, b, nil)
		p.Warnings = append([]string{fmt.Sprintf("The other hand was not used: the %v is not marked on it in this view.", w)}, p.Warnings...)
		return p, err
	}
	return plan.Propose(h.Ground, w, b, &plan.Fellow{Ground: other.Ground, Web: *b.Other})
}
