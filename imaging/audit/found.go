package audit

import (
	"strconv"
	"strings"

	"ogive/geometry/hand"
	"ogive/imaging/appraisal"
)

// appraised is the columns of the user's own findings: those on the web, on the
// hand, on each of the two digits beside the web, and on the donor site. Free
// text is left out.
func appraised() []column {
	out := []column{{name: "appraised_by", meaning: "whose findings the following are: the observer's own where there are any, else those written last at this sitting", values: "text", source: user, text: true, of: func(r *Row) string {
		if r.Appraised == nil {
			return ""
		}
		return r.Appraised.Appraisal.Observer
	}}}
	for _, f := range appraisal.Vocabulary {
		switch f.Scope {
		case appraisal.OfDigit:
			out = append(out, finding(f, "_radial", " on the radial side of the web", radial), finding(f, "_ulnar", " on the ulnar side of the web", ulnar))
		default:
			out = append(out, finding(f, "", "", whole(f.Scope)))
		}
		if f.Key == appraisal.ScarScale[len(appraisal.ScarScale)-1] {
			out = append(out, total())
		}
	}
	return out
}

func radial(r *Row) appraisal.Place {
	d, _ := r.Web.Digits()
	return appraisal.Digit(r.Hand, d)
}

func ulnar(r *Row) appraisal.Place {
	_, d := r.Web.Digits()
	return appraisal.Digit(r.Hand, d)
}

func whole(s appraisal.Scope) func(*Row) appraisal.Place {
	return func(r *Row) appraisal.Place {
		switch s {
		case appraisal.OfWeb:
			return appraisal.Web(r.Hand, r.Web)
		case appraisal.OfHand:
			return appraisal.Hand(r.Hand)
		}
		return appraisal.Patient
	}
}

// finding is one finding: its score where it has one, else the key of what was
// chosen.
func finding(f appraisal.Finding, suffix, where string, at func(*Row) appraisal.Place) column {
	c := column{name: "found_" + string(f.Key) + suffix, meaning: f.Title + where, source: f.Source, values: values(f)}
	c.of = func(r *Row) string {
		if r.Appraised == nil || f.Scope == appraisal.OfDigit && !r.Web.Valid() {
			return ""
		}
		g, ok := r.Appraised.Appraisal.At(f.Key, at(r))
		if !ok {
			return ""
		}
		if n, ok := r.Appraised.Appraisal.Score(f.Key, g.Place); ok {
			return strconv.Itoa(n)
		}
		return g.Choice
	}
	return c
}

func values(f appraisal.Finding) string {
	var out []string
	for _, c := range f.Choices {
		key := c.Key
		if c.Scored {
			key = strconv.Itoa(c.Score)
		}
		out = append(out, key+" = "+c.Words)
	}
	return strings.Join(out, "; ")
}

func total() column {
	return column{
		name: "found_vss_total", meaning: "sum of the four items of the Vancouver Scar Scale, only where all are given", values: "0 to " + strconv.Itoa(appraisal.WorstScar),
		source: "Sullivan T et al. J Burn Care Rehabil 1990;11:256-60 (wording from memory)",
		of: func(r *Row) string {
			if r.Appraised == nil || r.Hand != hand.Left && r.Hand != hand.Right {
				return ""
			}
			if n, all := r.Appraised.Appraisal.Total(appraisal.Web(r.Hand, r.Web)); all {
				return strconv.Itoa(n)
			}
			return ""
		},
	}
}
