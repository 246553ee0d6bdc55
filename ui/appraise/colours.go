package appraise

import (
	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/skincolour"
	"ogive/imaging/appraisal"
	"ogive/imaging/casebook"
	"ogive/imaging/planfile"
	"ogive/imaging/skin"
)

// colours adds how far a graft differs in colour from the skin around it, as
// sampled in the plans on the photographs of a sitting. A patch belongs to a hand;
// the figure stands beside every web of it that was joined.
func (m measured) colours(book *casebook.Casebook, c casebook.Case, sitting int64, table norms.Table) error {
	limits, err := skincolour.LimitsOf(table)
	if err != nil {
		return err
	}
	all, err := book.Photographs(c.ID)
	if err != nil {
		return err
	}
	for _, p := range all {
		if p.Sitting != sitting {
			continue
		}
		side, err := hand.ParseSide(p.Hand)
		if err != nil {
			continue // it is not said which hand it shows
		}
		planners, err := book.PlannedBy(p.ID)
		if err != nil {
			return err
		}
		for _, who := range planners {
			text, _, err := book.Plan(p.ID, who)
			if err != nil {
				return err
			}
			m.graft(text, book, p, c.Joins, side, limits)
		}
	}
	return nil
}

// graft adds what one plan tells. A plan that can't be read is told where it is
// opened.
func (m measured) graft(text string, book *casebook.Casebook, p casebook.Photograph, joins []casebook.Join, side hand.Side, limits skincolour.Limits) {
	f, err := planfile.Parse([]byte(text))
	if err != nil || len(f.Patches) == 0 {
		return
	}
	samples, _ := skin.OfPlan(f.Patches, book.OpenNamed(p))
	line, told := skin.GraftDifference(samples, limits)
	if !told {
		return
	}
	words := line.Name + " " + line.Value
	if line.Note != "" {
		words += " (" + line.Note + ")"
	}
	for _, j := range joins {
		if j.Hand == side {
			m.say(appraisal.ColourDifference, appraisal.Web(side, j.Web), words)
		}
	}
}
