// Package rounds is teaching rounds: a set of pictures judged by eye or marked
// blind, scored against the truth, and kept on the disk. It knows no window.
//
//	round, err := rounds.Begin(folder, "AB", rounds.Setup{Kind: rounds.ByEye}, settings.Norms, time.Now())
//	supply := round.Supply(ctx, settings, nil) // makes pictures ahead
//	defer supply.Close()
//	for !round.Done() {
//		picture, err := supply.Next(ctx)
//		// show picture.Photograph, ask picture.Questions
//		feedback, err := round.Answer(picture, answer, settings, time.Now())
//		// draw feedback.Drawing over the answer, show feedback.Lines and feedback.Look
//	}
//	summary := round.Summary()
//
// Every answer is on the disk when Answer returns; a round that was left is taken
// up again with Load or List, and its Supply goes on with the next picture.
//
// Pictures are phantoms drawn from the setup's seed, whose truth is exact, or
// photographs of a casebook with the marks of a reference observer, whose truth
// has the uncertainty of their reading: then every finding that the interval
// allows is taken as right.
package rounds

import (
	"fmt"
	"slices"
)

// Kind is what the learner is asked to do.
type Kind string

// The kinds: to judge before any figure is shown, or to mark everything with no
// figure until the end.
const (
	ByEye Kind = "by eye"
	Blind Kind = "blind"
)

// Difficulty is how far beyond their limits the figures of a phantom lie, and how
// well it can be seen.
type Difficulty string

// The difficulties: faults well beyond the limit on a hand seen squarely against a
// cloth of another colour; as they come; just beyond or just within the limit, with
// a tilted camera and a cloth much like the skin.
const (
	Clear Difficulty = "clear"
	Usual Difficulty = "usual"
	Close Difficulty = "close"
)

// Difficulties lists them from the easiest to the hardest.
var Difficulties = []Difficulty{Clear, Usual, Close}

// Fault is something that may be amiss in the pictures of a round.
type Fault string

// The faults. Shapes lets webs have any shape, whatever is usual there; Slopes adds
// pictures that look into a web whose junction may be too flat or too steep.
const (
	TooDeep    Fault = "too deep"
	TooShallow Fault = "too shallow"
	TooWide    Fault = "too wide"
	TooNarrow  Fault = "too narrow"
	Shapes     Fault = "shapes"
	Slopes     Fault = "slopes"
)

// Faults lists all faults.
var Faults = []Fault{TooDeep, TooShallow, TooWide, TooNarrow, Shapes, Slopes}

// DefaultCount is the number of pictures of a round where none is given, MaxCount
// the largest.
const (
	DefaultCount = 10
	MaxCount     = 50
)

// Setup is what a round is made of. The same setup gives the same pictures.
type Setup struct {
	Kind       Kind       `json:"kind"`
	Count      int        `json:"count"`            // zero: DefaultCount
	Difficulty Difficulty `json:"difficulty"`       // empty: Usual
	Faults     []Fault    `json:"faults,omitempty"` // none: all
	Seed       uint64     `json:"seed"`
	// Photographs, if any are given, are taken instead of phantoms: then Count is
	// theirs, and Difficulty, Faults and Seed have no meaning.
	Photographs []Reference `json:"photographs,omitempty"`
	// Casebook tells the casebook of the photographs from others; empty: not known.
	Casebook string `json:"casebook,omitempty"`
}

// Reference is a photograph of a casebook and the observer whose marks on it are
// taken for the truth. Key is the casebook's name for the photograph.
type Reference struct {
	Key      string `json:"key"`
	Observer string `json:"observer"`
}

// Filled is s with every zero field given its value.
func (s Setup) Filled() Setup {
	if s.Count == 0 {
		s.Count = DefaultCount
	}
	if s.Difficulty == "" {
		s.Difficulty = Usual
	}
	if len(s.Photographs) > 0 {
		s.Count, s.Faults = len(s.Photographs), nil
		return s
	}
	var faults []Fault
	for _, f := range Faults {
		if len(s.Faults) == 0 || slices.Contains(s.Faults, f) {
			faults = append(faults, f)
		}
	}
	s.Faults = faults
	return s
}

// Check refuses a setup that no round can be made of; the error says how to mend
// it.
func (s Setup) Check() error {
	switch {
	case s.Kind != ByEye && s.Kind != Blind:
		return fmt.Errorf("kind: %.40q is no kind of round; give %q or %q", s.Kind, ByEye, Blind)
	case s.Count < 1 || s.Count > MaxCount:
		return fmt.Errorf("count: a round of %d pictures; give 1 to %d", s.Count, MaxCount)
	case !slices.Contains(Difficulties, s.Difficulty):
		return fmt.Errorf("difficulty: %.40q is none; give %q, %q or %q", s.Difficulty, Clear, Usual, Close)
	}
	if len(s.Casebook) > 200 {
		return fmt.Errorf("casebook: its name is longer than 200 bytes; shorten it")
	}
	for _, f := range s.Faults {
		if !slices.Contains(Faults, f) {
			return fmt.Errorf("faults: there is no fault %.40q; give some of %q", f, Faults)
		}
	}
	for _, p := range s.Photographs {
		if p.Key == "" || p.Observer == "" {
			return fmt.Errorf("photographs: one has no key or no reference observer; give both")
		}
	}
	return nil
}

func (s Setup) has(f Fault) bool { return slices.Contains(s.Faults, f) }
