package marking

import (
	"fyne.io/fyne/v2/lang"

	"ogive/geometry/hand"
	"ogive/imaging/wording"
)

// Name is what the spot is called in this view, in every place where it is
// named: "ring PIP", "third web crown", "second scale point".
func (s Spot) Name(view hand.View) string {
	switch s.Kind {
	case ScalePoint:
		return scalePointName(s.N)
	case JointPoint:
		return wording.JointOf(s.Digit, s.Joint, view)
	case SeedPoint:
		return seedName(s.Web, s.N)
	case JunctionPoint:
		return lang.L("junction point {{.N}}", map[string]any{"N": s.N + 1})
	}
	return lang.L("long axis point {{.N}}", map[string]any{"N": s.N + 1})
}

func scalePointName(n int) string {
	switch n {
	case 0:
		return lang.L("first scale point")
	case 1:
		return lang.L("second scale point")
	case 2:
		return lang.L("third scale point")
	}
	return lang.L("fourth scale point")
}

func seedName(web hand.Web, n int) string {
	if n == 1 {
		return lang.L("{{.Web}} crown", map[string]any{"Web": wording.Web(web)})
	}
	on, other := web.Digits()
	if n == 2 {
		on = other
	}
	return lang.L("{{.Web}} border, {{.Finger}}", map[string]any{"Web": wording.Web(web), "Finger": wording.Finger(on)})
}

// Label is what stands beside the spot's mark, "" for nothing: at the first joint
// of a digit its whole name, at the others the joint alone, at the crown the web.
func (s Spot) Label(view hand.View) string {
	switch {
	case s.Kind == JointPoint && s.Joint == hand.MCP:
		return s.Name(view)
	case s.Kind == JointPoint:
		return wording.Joint(s.Joint, view)
	case s.Kind == SeedPoint && s.N == 1:
		return wording.Web(s.Web)
	}
	return ""
}
