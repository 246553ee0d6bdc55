package plan

import (
	"strings"
	"testing"

	"ogive/geometry/hand"
	"ogive/geometry/plan"
)

func TestTheOrderOfWebsIsToldOfTheThirdWeb(t *testing.T) {
	f := plan.Figures{Web: hand.SecondWeb, Patterns: []plan.Pattern{{Figure: "order", Says: "narrowest of second to fourth", Source: "a table", Agrees: true, Sure: true}}}
	if got := patterns(f); !strings.Contains(got, "“third web narrowest of second to fourth”") {
		t.Errorf("of the second web it says %q", got)
	}
	if f.Web = hand.ThirdWeb; strings.Contains(patterns(f), "third web") {
		t.Errorf("of the third web it says %q", patterns(f))
	}
}
