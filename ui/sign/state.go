package sign

import (
	"fyne.io/fyne/v2"

	"ogive/geometry/norms"
	"ogive/ui/look"
)

// State is how a verdict is shown.
type State int

// The states, each with a shape, a cut of letters and a colour of its own.
const (
	Amiss    State = iota + 1 // a solid flag, bold
	Doubtful                  // a dashed outline, slanted
	Well                      // a tick, plain
	Equal                     // two strokes, plain
)

// Of is the state of a verdict. That no difference can be told is never surer
// than that.
func Of(v norms.Verdict) State {
	switch {
	case v.Finding == norms.NoDifference:
		return Equal
	case !v.Certain:
		return Doubtful
	case v.Finding == norms.WithinLimits:
		return Well
	}
	return Amiss
}

var inkOf = map[State]fyne.ThemeColorName{Amiss: look.OnAmiss, Doubtful: look.Doubtful, Well: look.Well, Equal: look.SecondInk}
