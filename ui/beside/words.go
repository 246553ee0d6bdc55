package beside

import (
	"fmt"

	"fyne.io/fyne/v2/lang"

	"ogive/geometry/norms"
	"ogive/imaging/compared"
	"ogive/imaging/wording"
)

// verdictWords is the finding and how sure it is.
func verdictWords(v norms.Verdict) string {
	switch {
	case v.Finding == norms.NoDifference:
		return wording.Term(v.Finding)
	case v.Certain:
		return lang.L("{{.Finding}}, certain", map[string]any{"Finding": wording.Term(v.Finding)})
	}
	return wording.Verdict(v)
}

// limitWords is the limit, where it comes from, and that it allows for a
// tolerance.
func limitWords(v norms.Verdict) string {
	return lang.L("limit {{.Limit}}, tolerance included", map[string]any{"Limit": wording.Limit(v)})
}

// order says which way differences are taken.
func order(p compared.Pair) string {
	if p.Comparison.TwoSittings() {
		return lang.L("Differences are later minus earlier.")
	}
	return lang.L("Differences are operated minus other.")
}

func growth() string {
	return lang.L("Millimetres grow with a child: between two sittings compare the index, which does not.")
}

func tolerance() string {
	return lang.L("The tolerance is the larger of 1 mm and 10 per cent, unless you have set another. It is this project's own: no norm for such differences is published.")
}

// residual is how far the joints of the two hands come to lie apart.
func residual(p compared.Pair) string {
	if p.Trust() == compared.Unregistered {
		return lang.L("The arches can't be laid over each other")
	}
	mm := fmt.Sprintf("%.1f", float64(p.Comparison.RegistrationRMS))
	return lang.L("Residual of the registration: {{.Millimetres}} mm", map[string]any{"Millimetres": mm})
}

// means says when to distrust the dashed arch.
func means(p compared.Pair) string {
	figures := lang.L("The figures and their differences do not depend on it: each is measured on its own photograph.")
	switch p.Trust() {
	case compared.Unregistered:
		return lang.L("Mark MCP and PIP of both digits on both photographs.") + " " + figures
	case compared.Contrary:
		return lang.L("The joints of the two hands do not agree: distrust where the dashed arch lies. Check which hand is named on each photograph, and whether each joint is marked where it is.") + " " + figures
	case compared.Loose:
		return lang.L("The fingers are spread or bent otherwise on the two photographs, or a joint is marked elsewhere: take the dashed arch for its shape rather than for its place.") + " " + figures
	}
	return lang.L("So far apart, on average, come the joints of the two hands to lie. Distrust the dashed arch from some 3 mm on: then fingers are spread otherwise, or a joint is marked elsewhere.") + " " + figures
}
