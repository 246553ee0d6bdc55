// Package appraisal is what a surgeon finds on looking at an operated hand and
// feeling it: a result is more than a position.
//
//	var a appraisal.Appraisal
//	a.Observer = "AB"
//	web := appraisal.Web(hand.Left, hand.ThirdWeb)
//	a.Set(appraisal.Given{Finding: appraisal.Feel, Place: web, Choice: "thickened", Note: "radial side"})
//	total, all := a.Total(web) // Vancouver Scar Scale, if all four items are given
//	text, err := a.Encode()
//	a, err = appraisal.Parse(text)
//
// Vocabulary lists what can be said: every finding with its choices in words,
// the place it is said of, and the measured figure that stands beside it. A
// window builds its form from the list and needs no other.
package appraisal

import (
	"slices"
	"time"

	"ogive/geometry/hand"
)

// Appraisal is the findings of one observer at one sitting. What was not looked
// at is not in it.
type Appraisal struct {
	Observer string
	// Saved is when it was last written; the casebook sets it.
	Saved    time.Time
	Findings []Given
	// Remarks is free text.
	Remarks string
}

// Given is one finding as it was given: a choice, a note, or both.
type Given struct {
	Finding Key
	Place   Place
	// Choice is the key of the choice, empty where there is only a note.
	Choice string
	Note   string
}

// Place is what a finding is said of. Hand, Web and Digit are zero where they
// do not apply; see Scope.
type Place struct {
	Hand  hand.Side
	Web   hand.Web
	Digit hand.Digit
}

// Web is the place of a finding on one web.
func Web(h hand.Side, w hand.Web) Place { return Place{Hand: h, Web: w} }

// Digit is the place of a finding on one digit.
func Digit(h hand.Side, d hand.Digit) Place { return Place{Hand: h, Digit: d} }

// Hand is the place of a finding on the hand as a whole.
func Hand(h hand.Side) Place { return Place{Hand: h} }

// Patient is the place of a finding elsewhere on the patient.
var Patient = Place{}

// At is what was found at a place, false if nothing was.
func (a Appraisal) At(k Key, p Place) (Given, bool) {
	for _, g := range a.Findings {
		if g.Finding == k && g.Place == p {
			return g, true
		}
	}
	return Given{}, false
}

// Set puts g in the place of what was said before of the same finding and place.
// With neither choice nor note that is taken back.
func (a *Appraisal) Set(g Given) {
	kept := slices.DeleteFunc(slices.Clone(a.Findings), func(o Given) bool { return o.Finding == g.Finding && o.Place == g.Place })
	if g.Choice != "" || g.Note != "" {
		kept = append(kept, g)
	}
	slices.SortFunc(kept, inOrder)
	a.Findings = kept
}

// Empty reports whether nothing was found and nothing remarked.
func (a Appraisal) Empty() bool { return len(a.Findings) == 0 && a.Remarks == "" }

// Texts is everything in free text, for whoever must look through it.
func (a Appraisal) Texts() []string {
	out := []string{a.Remarks}
	for _, g := range a.Findings {
		out = append(out, g.Note)
	}
	return out
}
