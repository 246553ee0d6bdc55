package audit

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"ogive/geometry/followup"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
)

const indexMeaning = "where the web lies between the joints of the two digits beside it: 0 at the MCP joints, 1 at the PIP joints; in the palmar view the basal digital crease and the PIP crease take their place"

// figures is the columns of what was measured and how it was judged.
func figures() []column {
	own := func(r *Row) []norms.Verdict {
		if r.Read == nil {
			return nil
		}
		return r.Read.Verdicts
	}
	return slices.Concat(
		estimate("index", "", indexMeaning, "", "Tonkin MA et al. J Hand Surg Am 2015;40:456-61", plain[plane.Ratio], ofWeb(func(w *reading.Web) *plane.Estimate[plane.Ratio] { return w.Index })),
		estimate("depth", "_mm", "distance from the crown of the web to the middle between the PIP joints, along the axis of the web", "mm", program, plain[plane.Millimetre], ofWeb(func(w *reading.Web) *plane.Estimate[plane.Millimetre] { return w.Depth })),
		estimate("span", "_mm", "width of the arch where it leaves the borders of the digits", "mm", program, plain[plane.Millimetre], ofWeb(func(w *reading.Web) *plane.Estimate[plane.Millimetre] { return w.Span })),
		estimate("rise", "_mm", "height of the arch from its crown to where it leaves the borders of the digits", "mm", program, plain[plane.Millimetre], ofWeb(func(w *reading.Web) *plane.Estimate[plane.Millimetre] { return w.Rise })),
		estimate("crown_angle", "_deg", "angle between the two sides of the arch at its crown: 180 where it is round or flat", "degrees", program, degrees, ofWeb(func(w *reading.Web) *plane.Estimate[plane.Angle] { return w.CrownAngle })),
		estimate("slope", "_deg", "angle of the junction of palmar and dorsal skin to the long axis of the digit, seen in the web view: 0 along it, 90 across it", "degrees", program, degrees, ofWeb(func(w *reading.Web) *plane.Estimate[plane.Angle] { return w.Slope })),
		shape(),
		verdict("index", "index", "how the index stands to the normal values", "too deep, too shallow, within limits", own),
		verdict("span", "span", "how the span stands to the other webs of the same hand", "too wide, too narrow, within limits", own),
		verdict("slope", "slope", "how the slope stands to the normal values", "too steep, too flat, within limits", own),
	)
}

func shape() []column {
	ofArch := func(write func(*reading.Web) string) func(*Row) string {
		return func(r *Row) string {
			if r.Read == nil || r.Read.Shape == 0 {
				return ""
			}
			return write(r.Read)
		}
	}
	return []column{
		{name: "shape", meaning: "the arch that explains the border best", values: "V, gothic, round, U", source: program, of: ofArch(func(w *reading.Web) string { return w.Shape.String() })},
		{name: "shape_sure", meaning: "false where another shape explains the border about as well", values: yesNo, source: "difference in BIC of 2 or more: Kass RE, Raftery AE. J Am Stat Assoc 1995;90:773-95", of: ofArch(func(w *reading.Web) string { return strconv.FormatBool(w.ShapeSure) })},
		{name: "fit_rms_mm", meaning: "robust root mean square distance from the traced border to the arch", unit: "mm", values: "number, 0 or more", source: program, of: ofArch(func(w *reading.Web) string { return number(float64(w.FitRMS)) })},
	}
}

// followed is the columns of the web's way since the baseline.
func followed() []column {
	const creep = "share of the distance left between web and PIP joints at the baseline that the web has advanced: (I - I0)/(1 - I0); negative where it has deepened"
	graded := func(write func(followup.Grading) string) func(*Row) string {
		return func(r *Row) string {
			if r.Follow == nil || r.Follow.Creep == nil {
				return ""
			}
			return write(r.Follow.Grading)
		}
	}
	const withey = "Withey SJ et al. J Hand Surg Br 2001;26:4-7 (thirds from memory)"
	return append(
		estimate("creep", "", creep, "", program, plain[plane.Ratio], func(r *Row) *plane.Estimate[plane.Ratio] {
			if r.Follow == nil {
				return nil
			}
			return r.Follow.Creep
		}),
		column{name: "creep_grade", meaning: "likeliest grade of web creep by the measured creep and, where no advance can be told, the feel of the web", values: "0, 1, 2, 3, 4", source: withey, of: graded(func(g followup.Grading) string { return strconv.Itoa(g.Grade) })},
		column{name: "creep_grade_least", meaning: "lowest grade that the interval leaves open", values: "0, 1, 2, 3, 4", source: withey, of: graded(func(g followup.Grading) string { return strconv.Itoa(g.Least) })},
		column{name: "creep_grade_most", meaning: "highest grade that the interval leaves open", values: "0, 1, 2, 3, 4", source: withey, of: graded(func(g followup.Grading) string { return strconv.Itoa(g.Most) })},
		column{name: "creep_grade_certain", meaning: "true where the interval leaves one grade open", values: yesNo, source: program, of: graded(func(g followup.Grading) string { return strconv.FormatBool(g.Certain) })},
		column{name: "is_baseline", meaning: "whether creep is measured from this row: the first after the release, at the operation or later, in the same view, by the same observer where that one marked it", values: yesNo, source: program, of: func(r *Row) string {
			if r.Follow == nil || r.Baseline == nil {
				return ""
			}
			return strconv.FormatBool(r.Baseline.Photograph == r.Photograph.ID && r.Baseline.Observer == r.Observer)
		}},
		column{name: "baseline_months", meaning: "time from the operation on this web to the baseline", unit: "months", values: "number", source: "dates given by the user", of: func(r *Row) string {
			if r.Follow == nil || r.Baseline == nil || r.Join.Operated == "" {
				return ""
			}
			return number(math.Round(r.Baseline.Months*100) / 100)
		}},
		column{name: "differs_from_baseline", meaning: "what was done otherwise than at the baseline, so that a change may come from it; several are parted by \" | \"", values: "scale, observer", source: program, of: differences},
	)
}

func differences(r *Row) string {
	if r.Follow == nil {
		return ""
	}
	names := map[followup.Difference]string{followup.OtherView: "view", followup.OtherScale: "scale", followup.OtherObserver: "observer"}
	var out []string
	for _, d := range r.Follow.Differs {
		out = append(out, names[d])
	}
	return strings.Join(out, " | ")
}

// beside is the columns of the differences against the other hand.
func beside() []column {
	const note = " of this web minus that of the same web of the other hand, at the same sitting in the same view; for webs that were joined only"
	verdicts := func(r *Row) []norms.Verdict {
		if r.Other == nil {
			return nil
		}
		return r.Other.Verdicts
	}
	return slices.Concat(
		estimate("other_index_difference", "", "index"+note, "", program, plain[plane.Ratio], ofOther(func(d *Difference) *plane.Estimate[plane.Ratio] { return d.Index })),
		estimate("other_depth_difference", "_mm", "depth"+note, "mm", program, plain[plane.Millimetre], ofOther(func(d *Difference) *plane.Estimate[plane.Millimetre] { return d.Depth })),
		estimate("other_span_difference", "_mm", "span"+note, "mm", program, plain[plane.Millimetre], ofOther(func(d *Difference) *plane.Estimate[plane.Millimetre] { return d.Span })),
		estimate("other_crown_angle_difference", "_deg", "crown angle"+note, "degrees", program, degrees, ofOther(func(d *Difference) *plane.Estimate[plane.Angle] { return d.CrownAngle })),
		verdict("other_index", "index", "how the index stands to that of the other hand", "too deep, too shallow, "+norms.NoDifference, verdicts),
		verdict("other_depth", "depth", "how the depth stands to that of the other hand", "too deep, too shallow, "+norms.NoDifference, verdicts),
		verdict("other_span", "span", "how the span stands to that of the other hand", "too wide, too narrow, "+norms.NoDifference, verdicts),
		[]column{
			{name: "other_observer", meaning: "who marked the other hand: the same observer where that one did", values: "text", source: user, text: true, of: func(r *Row) string {
				if r.Other == nil {
					return ""
				}
				return r.Other.Other.Observer
			}},
			{name: "other_joined", meaning: "whether the web of the other hand was joined too, so that it is no healthy fellow", values: yesNo, source: user, of: func(r *Row) string {
				if r.Other == nil {
					return ""
				}
				return strconv.FormatBool(r.Other.Other.Join != nil)
			}},
		},
	)
}

func ofOther[Q plane.Measured](pick func(*Difference) *plane.Estimate[Q]) func(*Row) *plane.Estimate[Q] {
	return func(r *Row) *plane.Estimate[Q] {
		if r.Other == nil {
			return nil
		}
		return pick(r.Other)
	}
}
