package appraisal

import (
	"cmp"
	"fmt"
	"slices"
	"unicode/utf8"

	"ogive/geometry/hand"
)

const (
	longestNote    = 1000   // characters
	longestRemarks = 10_000 // characters
)

// Check refuses what the vocabulary does not know, what is said of the wrong
// kind of place, and what is said twice. The error names the field and the mend.
func (a Appraisal) Check() error {
	if utf8.RuneCountInString(a.Remarks) > longestRemarks {
		return fmt.Errorf("remarks: are longer than %d characters; shorten them", longestRemarks)
	}
	seen := map[Given]bool{}
	for i, g := range a.Findings {
		if err := g.check(); err != nil {
			return fmt.Errorf("findings[%d]%w", i, err)
		}
		what := Given{Finding: g.Finding, Place: g.Place}
		if seen[what] {
			return fmt.Errorf("findings[%d]: says %s of the same place a second time; leave one of them out", i, g.Finding)
		}
		seen[what] = true
	}
	return nil
}

func (g Given) check() error {
	f, ok := Find(g.Finding)
	if !ok {
		return fmt.Errorf(".finding: %.40q is unknown; give one of the vocabulary, such as %q", string(g.Finding), string(Look))
	}
	if err := g.Place.check(f.Scope); err != nil {
		return err
	}
	if _, ok := f.Choice(g.Choice); !ok && g.Choice != "" {
		return fmt.Errorf(".choice: %.40q is no choice of %s; give one such as %q", g.Choice, f.Key, f.Choices[0].Key)
	}
	if g.Choice == "" && g.Note == "" {
		return fmt.Errorf(": %s has neither choice nor note; give one, or leave the finding out", f.Key)
	}
	if utf8.RuneCountInString(g.Note) > longestNote {
		return fmt.Errorf(".note: is longer than %d characters; shorten it", longestNote)
	}
	return nil
}

func (p Place) check(s Scope) error {
	wantHand, wantWeb, wantDigit := s != OfPatient, s == OfWeb, s == OfDigit
	switch {
	case wantHand != (p.Hand == hand.Left || p.Hand == hand.Right):
		return fmt.Errorf(".hand: the finding is said of a %s; %s", s, mend(wantHand, `give "left" or "right"`))
	case wantWeb != p.Web.Valid() || !wantWeb && p.Web != 0:
		return fmt.Errorf(".web: the finding is said of a %s; %s", s, mend(wantWeb, "give the number of a web from 1 to 4"))
	case wantDigit != slices.Contains(hand.Digits, p.Digit) || !wantDigit && p.Digit != 0:
		return fmt.Errorf(".digit: the finding is said of a %s; %s", s, mend(wantDigit, `give a digit such as "ring"`))
	case !wantHand && p.Hand != 0:
		return fmt.Errorf(".hand: the finding is said of a %s; leave it out", s)
	}
	return nil
}

func mend(wanted bool, how string) string {
	if wanted {
		return how
	}
	return "leave it out"
}

// inOrder sorts by vocabulary, then by place.
func inOrder(a, b Given) int {
	at := func(k Key) int { return slices.IndexFunc(Vocabulary, func(f Finding) bool { return f.Key == k }) }
	return cmp.Or(
		cmp.Compare(at(a.Finding), at(b.Finding)), cmp.Compare(a.Finding, b.Finding),
		cmp.Compare(a.Place.Hand, b.Place.Hand), cmp.Compare(a.Place.Web, b.Place.Web), cmp.Compare(a.Place.Digit, b.Place.Digit),
	)
}
