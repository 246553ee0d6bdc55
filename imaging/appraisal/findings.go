package appraisal

const (
	ownWords = "this project's own words"
	withey   = "Withey SJ et al. J Hand Surg Br 2001;26:4-7 (wording from memory)"
	sullivan = "Sullivan T et al. J Burn Care Rehabil 1990;11:256-60 (wording from memory)"
)

// Vocabulary is everything that can be said, in the order of a form.
var Vocabulary = []Finding{
	{Key: Look, Title: "How the web looks", Scope: OfWeb, Beside: MeasuredIndex, Source: ownWords, Choices: words(
		"natural", "Like a web that was never joined",
		"near", "Slightly different on a second look",
		"different", "Different at first sight",
		"poor", "Conspicuous",
	)},
	{Key: Feel, Title: "How the web feels", Scope: OfWeb, Beside: MeasuredCreep, Source: ownWords, Choices: words(
		"soft", "Soft, as normal",
		"thickened", "Thickened",
	)},
	{Key: Creep, Title: "Web creep by eye", Scope: OfWeb, Beside: MeasuredCreep, Source: withey, Choices: scores(
		"0", "Soft web, as normal",
		"1", "No web advance, but thickened",
		"2", "Creep to one third of the distance from the base of the web to the PIP crease",
		"3", "Creep to two thirds of the distance from the base of the web to the PIP crease",
		"4", "Creep to the PIP crease",
	)},
	{Key: Vascularity, Title: "Scar: vascularity", Scope: OfWeb, Beside: ColourDifference, Source: sullivan, Choices: scores(
		"normal", "Normal", "pink", "Pink", "red", "Red", "purple", "Purple",
	)},
	{Key: Pigmentation, Title: "Scar: pigmentation", Scope: OfWeb, Beside: ColourDifference, Source: sullivan, Choices: scores(
		"normal", "Normal", "less", "Hypopigmentation", "more", "Hyperpigmentation",
	)},
	{Key: Pliability, Title: "Scar: pliability", Scope: OfWeb, Source: sullivan, Choices: scores(
		"normal", "Normal",
		"supple", "Supple: flexible with minimal resistance",
		"yielding", "Yielding: giving way to pressure",
		"firm", "Firm: inflexible, not easily moved, resistant to manual pressure",
		"banding", "Banding: rope-like tissue that blanches with extension of the scar",
		"contracture", "Contracture: permanent shortening of the scar, producing deformity or distortion",
	)},
	{Key: Height, Title: "Scar: height", Scope: OfWeb, Source: sullivan, Choices: scores(
		"flat", "Normal, flat", "under_2", "Less than 2 mm", "2_to_5", "2 to 5 mm", "over_5", "More than 5 mm",
	)},
	{Key: DorsalScars, Title: "Scars on the back of the hand", Scope: OfHand, Source: ownWords, Choices: words(
		"none", "None",
		"fine", "Fine, seen only when looked for",
		"visible", "Visible at a glance",
		"thickened", "Thickened or widened",
	)},
	{Key: GraftColour, Title: "Colour of the graft", Scope: OfWeb, Beside: ColourDifference, Source: ownWords, Choices: words(
		"no_graft", "No graft",
		"matches", "Matches the skin around it",
		"lighter", "Lighter than the skin around it",
		"darker", "Darker than the skin around it",
	)},
	{Key: GraftHair, Title: "Hair on the graft", Scope: OfWeb, Source: ownWords, Choices: words(
		"no_graft", "No graft", "none", "No hair", "some", "Some hair", "much", "Much hair",
	)},
	{Key: NailFolds, Title: "Nail folds", Scope: OfDigit, Source: ownWords, Choices: words(
		"natural", "As normal",
		"narrow", "A fold is narrow or uneven",
		"missing", "A fold is missing",
		"nail_bent", "The nail is bent or ridged",
	)},
	{Key: Deviation, Title: "Deviation of the digit", Scope: OfDigit, Beside: MeasuredBend, Source: ownWords, Choices: words(
		"none", "None", "radial", "To the radial side", "ulnar", "To the ulnar side",
	)},
	{Key: Rotation, Title: "Rotation of the digit", Scope: OfDigit, Source: ownWords, Choices: words(
		"none", "None",
		"slight", "Slight, the fingers do not cross",
		"crossing", "The fingers cross when they are bent",
	)},
	{Key: Movement, Title: "Movement of the digit", Scope: OfDigit, Source: ownWords, Choices: words(
		"full", "Full",
		"extension", "Lacks extension",
		"flexion", "Lacks flexion",
		"both", "Lacks extension and flexion",
	)},
	{Key: DonorSite, Title: "Where the graft was taken", Scope: OfPatient, Source: ownWords, Choices: words(
		"no_graft", "No graft",
		"fine", "A fine line",
		"visible", "Visible at a glance",
		"thickened", "Thickened or widened",
		"complaints", "Itching, painful or not healed",
	)},
}

// words are choices without scores, as pairs of key and words.
func words(pairs ...string) []Choice {
	var out []Choice
	for i := 0; i < len(pairs); i += 2 {
		out = append(out, Choice{Key: pairs[i], Words: pairs[i+1]})
	}
	return out
}

// scores are choices that score 0, 1, 2 and so on.
func scores(pairs ...string) []Choice {
	out := words(pairs...)
	for i := range out {
		out[i].Scored, out[i].Score = true, i
	}
	return out
}
