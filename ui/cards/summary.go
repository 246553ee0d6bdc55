package cards

import (
	"strings"

	"ogive/geometry/norms"
	"ogive/geometry/reading"
	"ogive/imaging/wording"
)

// summary is one line for each web with its verdicts, those beyond a limit
// first: the cards below may need scrolling, and what matters must not.
func summary(webs []reading.Web) string {
	var beyond, within []string
	for _, w := range webs {
		if len(w.Verdicts) == 0 {
			continue
		}
		name := wording.WebName(w.Web)
		if found := findings(w.Verdicts); len(found) > 0 {
			beyond = append(beyond, name+": "+strings.Join(found, ", "))
		} else {
			within = append(within, name+": "+allWithin(w.Verdicts))
		}
	}
	if len(beyond)+len(within) < 2 {
		return "" // a single card speaks for itself
	}
	return strings.Join(append(beyond, within...), "\n")
}

// findings are the verdicts beyond a limit.
func findings(verdicts []norms.Verdict) []string {
	var found []string
	for _, v := range verdicts {
		if v.Finding != norms.WithinLimits {
			found = append(found, wording.VerdictOf(v))
		}
	}
	return found
}

// allWithin is what verdicts within limits come to. Where one figure alone is
// judged it is named: a span within limits says nothing of how deep a web lies.
func allWithin(verdicts []norms.Verdict) string {
	if len(verdicts) == 1 {
		return wording.VerdictOf(verdicts[0])
	}
	return wording.Verdict(leastCertain(verdicts))
}

func leastCertain(verdicts []norms.Verdict) norms.Verdict {
	for _, v := range verdicts {
		if !v.Certain {
			return v
		}
	}
	return verdicts[0]
}
