package cases

import (
	"slices"

	"ogive/imaging/casebook"
)

// pair is two photographs that can be compared: a of the operated hand or the
// later sitting, b of the other hand or the earlier one.
type pair struct {
	a, b  casebook.Photograph
	other casebook.Photograph // of the two, the one that was not chosen
	hands bool                // of two hands; else two sittings of one
}

// pairs are those with the chosen photograph, the likeliest first: the other hand
// in the same sitting, then in sittings ever farther away, then the same hand in
// other sittings, the nearest first. All show the same view: another view gives
// another index.
func pairs(affected casebook.Hands, chosen casebook.Photograph, all []casebook.Photograph) (hands, sittings []pair) {
	if sideOf(chosen) == 0 || viewOf(chosen) == 0 {
		return nil, nil
	}
	for _, p := range all {
		switch {
		case p.ID == chosen.ID || p.View != chosen.View || sideOf(p) == 0:
		case p.Hand != chosen.Hand:
			a, b := chosen, p
			if string(affected) == p.Hand {
				a, b = p, chosen
			}
			hands = append(hands, pair{a: a, b: b, other: p, hands: true})
		case p.Sitting != chosen.Sitting:
			a, b := chosen, p
			if p.Date > chosen.Date {
				a, b = p, chosen
			}
			sittings = append(sittings, pair{a: a, b: b, other: p})
		}
	}
	nearest := func(x, y pair) int { return apart(chosen, x.other) - apart(chosen, y.other) }
	slices.SortStableFunc(hands, nearest)
	slices.SortStableFunc(sittings, nearest)
	return hands, sittings
}

// apart is how many days lie between two photographs.
func apart(a, b casebook.Photograph) int {
	hours := a.Date.Time().Sub(b.Date.Time()).Hours()
	return int(max(hours, -hours)) / 24
}
