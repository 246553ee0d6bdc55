// Package wording puts figures, verdicts and warnings into the words that a
// surgeon reads, the same in a table, on a marked picture and on a screen.
//
//	wording.Ratio(*web.Index)             // "0.47 ± 0.02"
//	wording.Millimetres(*web.Span)        // "8.4 ± 0.3 mm"
//	wording.Degrees(*web.CrownAngle)      // "118 ± 6°"
//	wording.IndexName(hand.Dorsal)        // "dorsal web index"
//	wording.Verdict(v)                    // "too deep" or "too deep? (doubtful)"
//	wording.Photograph(side, view)        // "Right hand, back of the hand"
//	wording.Caution                       // stands under every output
//
// The words are English unless Translate was told otherwise.
//
// Figures are rounded to what their uncertainty deserves: see Rounded.
package wording

// Caution stands under every output.
const Caution = "An aid to drawing and measuring. Measure again on the patient; skin, vessels and bone are not assessed; local protocol and the responsible surgeon decide."
