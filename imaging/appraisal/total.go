package appraisal

// ScarScale is the four items of the Vancouver Scar Scale.
var ScarScale = []Key{Vascularity, Pigmentation, Pliability, Height}

// WorstScar is the highest total of the Vancouver Scar Scale.
const WorstScar = 3 + 2 + 5 + 3

// Total is the sum of the Vancouver Scar Scale on a web, 0 for normal skin to
// WorstScar; false unless all four items are given.
func (a Appraisal) Total(web Place) (total int, all bool) {
	for _, k := range ScarScale {
		n, ok := a.Score(k, web)
		if !ok {
			return 0, false
		}
		total += n
	}
	return total, true
}

// Score is the score of what was chosen, false if nothing was or the finding
// has no scores.
func (a Appraisal) Score(k Key, p Place) (int, bool) {
	g, given := a.At(k, p)
	f, known := Find(k)
	if !given || !known {
		return 0, false
	}
	c, ok := f.Choice(g.Choice)
	return c.Score, ok && c.Scored
}
