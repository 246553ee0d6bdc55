package audit

import (
	"math"
	"strconv"

	"ogive/geometry/followup"
	"ogive/geometry/plane"
	"ogive/imaging/casebook"
)

// whose is the columns that say of whom, when and by whom.
func whose() []column {
	return []column{
		{name: "case", meaning: "code of the case. An apostrophe stands before a text that begins with = + - @ or an apostrophe, so that no spreadsheet takes it for a formula; take the first apostrophe away to have the code", values: "text", source: user, text: true,
			of: func(r *Row) string { return r.Case.Code }},
		{name: "affected_hand", meaning: "which hands were joined at birth", values: "left, right, both", source: user, of: func(r *Row) string { return string(r.Case.Hand) }},
		{name: "sitting", meaning: "number of the sitting in the case, by date", values: "1, 2, 3 and so on", source: program, of: func(r *Row) string { return strconv.Itoa(r.Number) }},
		{name: "stage", meaning: "what the sitting is to the operation", values: "before, operation, follow-up", source: "from the dates, or set by the user", of: func(r *Row) string { return string(r.Sitting.Stage) }},
		{name: "age_months", meaning: "age at the sitting in whole months, from the middle of the month of birth; the day of birth is not asked, so that it may be one off", unit: "months", values: "whole number", source: user, of: age},
		{name: "months_since_first_operation", meaning: "time since the first operation of the case; negative before it", unit: "months", values: "number", source: "dates given by the user", of: func(r *Row) string { return since(r, r.Case.Operated()) }},
		{name: "months_since_operation", meaning: "time since the operation on this web; negative before it, empty where the web was not operated on", unit: "months", values: "number", source: "dates given by the user",
			of: func(r *Row) string {
				if r.Join == nil {
					return ""
				}
				return since(r, r.Join.Operated)
			}},
		{name: "hand", meaning: "the hand on the photograph", values: "left, right", source: user, of: func(r *Row) string {
			if r.Hand == 0 {
				return ""
			}
			return r.Hand.String()
		}},
		{name: "web", meaning: "the web: 1 thumb-index, 2 index-middle, 3 middle-ring, 4 ring-little; empty where none could be read", values: "1, 2, 3, 4", source: "marked by the observer", of: func(r *Row) string {
			if !r.Web.Valid() {
				return ""
			}
			return strconv.Itoa(int(r.Web))
		}},
		{name: "view", meaning: "how the hand was photographed: web looks into one web; empty where the web was appraised only", values: "dorsal, palmar, web", source: user, of: func(r *Row) string { return r.View }},
		{name: "observer", meaning: "who marked the photograph, or appraised the web where there is none", values: "text", source: user, text: true, of: func(r *Row) string { return r.Observer }},
		{name: "photograph", meaning: "first twelve digits of the SHA-256 of the photograph's copy, to find it again by its file name in the casebook", values: "text", source: program, of: func(r *Row) string {
			return r.Photograph.Hash[:min(12, len(r.Photograph.Hash))]
		}},
	}
}

// what is the columns that say what was joined and done.
func what() []column {
	ofJoin := func(pick func(*casebook.Join) string) func(*Row) string {
		return func(r *Row) string {
			if r.Join == nil {
				return ""
			}
			return pick(r.Join)
		}
	}
	return []column{
		{name: "joined", meaning: "whether this web was joined at birth", values: yesNo, source: user, of: func(r *Row) string { return strconv.FormatBool(r.Join != nil) }},
		{name: "join_kind", meaning: "simple: skin only; complex: bone or nail too", values: "simple, complex", source: user, of: ofJoin(func(j *casebook.Join) string { return string(j.Kind) })},
		{name: "join_extent", meaning: "complete: to the finger tips", values: "complete, incomplete", source: user, of: ofJoin(func(j *casebook.Join) string { return string(j.Extent) })},
		{name: "operated", meaning: "whether this web had been operated on by the day of the sitting", values: yesNo, source: "dates given by the user", of: func(r *Row) string {
			return strconv.FormatBool(r.Join != nil && r.Join.Operated != "" && r.Join.Operated <= r.Sitting.Date)
		}},
		{name: "scale_method", meaning: "how the scale was marked", values: "ruler, ticks, card", source: "marked by the observer", of: func(r *Row) string { return string(r.Kept.Reading.Method) }},
		{name: "mm_per_px", meaning: "size of a pixel of the photograph at the webs", unit: "mm", values: "number", source: program, of: perPixel(func(e plane.Estimate[plane.Millimetre]) plane.Millimetre { return e.Value })},
		{name: "mm_per_px_u95", meaning: u95Note, unit: "mm", values: "number, 0 or more", source: jcgm, of: perPixel(func(e plane.Estimate[plane.Millimetre]) plane.Millimetre { return e.U95 })},
	}
}

func perPixel(pick func(plane.Estimate[plane.Millimetre]) plane.Millimetre) func(*Row) string {
	return func(r *Row) string {
		if e := r.Kept.Reading.PerPixel; e.Value > 0 {
			return number(float64(pick(e)))
		}
		return ""
	}
}

func age(r *Row) string {
	if r.Case.Born == "" {
		return ""
	}
	months, ok := monthsBetween(string(r.Case.Born)+"-15", string(r.Sitting.Date))
	if !ok {
		return ""
	}
	return strconv.Itoa(int(math.Floor(months)))
}

func since(r *Row, d casebook.Date) string {
	months, ok := monthsBetween(string(d), string(r.Sitting.Date))
	if !ok {
		return ""
	}
	return number(math.Round(months*100) / 100)
}

func monthsBetween(from, to string) (float64, bool) {
	a, errA := followup.ParseDay(from)
	b, errB := followup.ParseDay(to)
	if errA != nil || errB != nil {
		return 0, false
	}
	return followup.Months(a, b), true
}
