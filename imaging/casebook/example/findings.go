package example

import (
	"ogive/geometry/hand"
	"ogive/imaging/appraisal"
	"ogive/imaging/casebook"
)

// appraise writes down what was found at each follow-up.
func appraise(book *casebook.Casebook, id int64) error {
	sittings, err := book.Sittings(id)
	if err != nil {
		return err
	}
	for _, s := range sittings {
		a, ok := findings[s.Date]
		if !ok {
			continue
		}
		a.Observer = Observer
		if err := book.SaveAppraisal(s.ID, a); err != nil {
			return err
		}
	}
	return nil
}

var (
	atStaying  = appraisal.Web(operatedHand, staying)
	atCreeping = appraisal.Web(operatedHand, creeping)
	ofHand     = appraisal.Hand(operatedHand)
	little     = appraisal.Digit(operatedHand, hand.Little)
)

// findings by the day of the follow-up: the creeping web is thickened long
// before it has reached the PIP joints.
var findings = map[casebook.Date]appraisal.Appraisal{
	"2023-05-16": {Findings: append(scar(atCreeping, "red", "more", "firm", "under_2"),
		is(appraisal.Look, atStaying, "near"), is(appraisal.Look, atCreeping, "near"),
		is(appraisal.Feel, atStaying, "soft"), is(appraisal.Feel, atCreeping, "thickened"),
		is(appraisal.Creep, atStaying, "0"), is(appraisal.Creep, atCreeping, "1"),
		is(appraisal.DorsalScars, ofHand, "visible"), is(appraisal.GraftColour, atCreeping, "darker"),
	)},
	"2024-02-20": {Findings: append(scar(atCreeping, "pink", "more", "firm", "under_2"),
		is(appraisal.Look, atStaying, "natural"), is(appraisal.Look, atCreeping, "different"),
		is(appraisal.Feel, atStaying, "soft"), is(appraisal.Feel, atCreeping, "thickened"),
		is(appraisal.Creep, atStaying, "0"), is(appraisal.Creep, atCreeping, "2"),
		is(appraisal.DorsalScars, ofHand, "fine"), is(appraisal.GraftColour, atCreeping, "darker"),
		is(appraisal.Movement, little, "full"),
	), Remarks: "Ruler forgotten; a bank card beside the hand instead."},
	"2026-02-17": {Findings: append(scar(atCreeping, "normal", "more", "banding", "under_2"),
		is(appraisal.Look, atStaying, "natural"), is(appraisal.Look, atCreeping, "different"),
		is(appraisal.Feel, atStaying, "soft"), is(appraisal.Feel, atCreeping, "thickened"),
		is(appraisal.Creep, atStaying, "0"), is(appraisal.Creep, atCreeping, "3"),
		is(appraisal.DorsalScars, ofHand, "fine"), is(appraisal.GraftColour, atCreeping, "darker"),
		is(appraisal.Movement, little, "full"), is(appraisal.Deviation, little, "none"),
	), Remarks: "The child notices the web when spreading the fingers."},
}

func is(k appraisal.Key, at appraisal.Place, choice string) appraisal.Given {
	return appraisal.Given{Finding: k, Place: at, Choice: choice}
}

// scar is the four items of the Vancouver Scar Scale, in its order.
func scar(at appraisal.Place, choices ...string) []appraisal.Given {
	var out []appraisal.Given
	for i, k := range appraisal.ScarScale {
		out = append(out, is(k, at, choices[i]))
	}
	return out
}
