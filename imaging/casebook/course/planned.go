package course

import (
	"fmt"

	"ogive/geometry/hand"
	"ogive/geometry/plan"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
	"ogive/imaging/casebook"
	"ogive/imaging/planfile"
)

// planned is the index that the joined web was planned at: that of the last plan
// drawn on a photograph from before or on the day of its operation, nil if there
// is none. A plan in another view than view is another index and passed over.
func (c *Course) planned(book *casebook.Casebook, j casebook.Join, view hand.View) (*plane.Ratio, error) {
	var out *plane.Ratio
	for _, p := range c.ordered {
		if p.Hand != j.Hand.String() || p.View != view.String() || (j.Operated != "" && p.Date > j.Operated) {
			continue
		}
		observers, err := book.PlannedBy(p.ID)
		if err != nil {
			return nil, err
		}
		for _, o := range observers {
			index, err := plannedOn(book, p, o, j.Web)
			if err != nil {
				c.Warnings = append(c.Warnings, fmt.Sprintf("The plan of %s by %s can't be read: %v.", p.Date, o, err))
			} else if index != nil {
				out = index
			}
		}
	}
	return out, nil
}

// plannedOn is the index of one plan, nil where the web is not in it or its
// joints are not marked.
func plannedOn(book *casebook.Casebook, p casebook.Photograph, observer string, w hand.Web) (*plane.Ratio, error) {
	text, ok, err := book.Plan(p.ID, observer)
	if err != nil || !ok {
		return nil, err
	}
	f, err := planfile.Parse([]byte(text))
	if err != nil {
		return nil, err
	}
	drawn := archOf(f.Web(w))
	marks, ok, err := book.Marks(p.ID, observer)
	if err != nil || !ok || drawn == nil || marks.Reference == nil {
		return nil, err
	}
	fit, err := marks.Reference.Fit(scale.Camera{Width: plane.Pixel(p.Width), Height: plane.Pixel(p.Height)}, marks.Marks.ClickSD)
	if err != nil {
		return nil, err
	}
	on := plan.Ground{Marks: marks.Marks, Absent: marks.Absent, Fit: fit}
	if index := plan.Read(drawn.On(fit.Best), w, on, plan.Beside{}).Index; index != nil {
		return &index.Value, nil
	}
	return nil, nil
}

// archOf is the arch of the alternative that was chosen, or of the only one.
func archOf(w *planfile.Web) *planfile.Arch {
	if w == nil {
		return nil
	}
	if a := w.ChosenAlternative(); a != nil {
		return a.Arch
	}
	if len(w.Alternatives) == 1 {
		return w.Alternatives[0].Arch
	}
	return nil
}
