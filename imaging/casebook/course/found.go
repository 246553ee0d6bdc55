package course

import (
	"fmt"
	"slices"

	"ogive/geometry/hand"
	"ogive/imaging/appraisal"
	"ogive/imaging/wording"
)

// Found is what was found of a web, its digits and its hand at the sitting of a
// photograph, a line for each finding in the order of the vocabulary.
func (c Course) Found(w Web, photograph int64) []string {
	sitting := c.photographs[photograph].Sitting
	var out []string
	for _, a := range c.appraisals {
		if a.Sitting == sitting {
			out = append(out, about(a.Appraisal, w)...)
		}
	}
	return out
}

// about is the lines of one appraisal.
func about(a appraisal.Appraisal, w Web) []string {
	web := appraisal.Web(w.Side, w.Web)
	radial, ulnar := w.Web.Digits()
	places := []appraisal.Place{
		web, appraisal.Digit(w.Side, radial), appraisal.Digit(w.Side, ulnar), appraisal.Hand(w.Side), appraisal.Patient,
	}
	total, all := a.Total(web)
	var out []string
	for _, f := range appraisal.Vocabulary {
		if all && slices.Contains(appraisal.ScarScale, f.Key) {
			if f.Key == appraisal.ScarScale[0] {
				out = append(out, fmt.Sprintf("Vancouver Scar Scale: %d of %d", total, appraisal.WorstScar))
			}
			continue
		}
		for _, at := range places {
			if g, ok := a.At(f.Key, at); ok {
				out = append(out, line(f, g))
			}
		}
	}
	if a.Remarks != "" {
		out = append(out, a.Remarks)
	}
	return out
}

func line(f appraisal.Finding, g appraisal.Given) string {
	said := f.Title
	if g.Place.Digit != 0 {
		said += ", " + digit(g.Place.Digit)
	}
	said += ": "
	if choice, ok := f.Choice(g.Choice); ok {
		said += choice.Words
		if choice.Scored {
			said += fmt.Sprintf(" (%d)", choice.Score)
		}
	}
	if g.Note != "" {
		if g.Choice != "" {
			said += "; "
		}
		said += g.Note
	}
	return wording.Sentence(said)
}

func digit(d hand.Digit) string {
	if d == hand.Thumb {
		return "thumb"
	}
	return d.String() + " finger"
}
