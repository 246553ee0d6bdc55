package cases

import (
	"math"
	"strings"

	"fyne.io/fyne/v2/lang"

	"ogive/geometry/followup"
	"ogive/geometry/hand"
	"ogive/imaging/casebook"
	"ogive/imaging/wording"
)

// dateText is a day that is read the same everywhere: 1 Mar 2026.
func dateText(d casebook.Date) string {
	t := d.Time()
	if t.IsZero() {
		return lang.L("no date")
	}
	months := []string{lang.L("Jan"), lang.L("Feb"), lang.L("Mar"), lang.L("Apr"), lang.L("May"), lang.L("Jun"),
		lang.L("Jul"), lang.L("Aug"), lang.L("Sep"), lang.L("Oct"), lang.L("Nov"), lang.L("Dec")}
	return lang.L("{{.Day}} {{.Month}} {{.Year}}", map[string]any{"Day": t.Day(), "Month": months[t.Month()-1], "Year": t.Year()})
}

// sittingText is what a sitting is to the operation, and how long after or
// before it.
func sittingText(s casebook.Sitting, operated casebook.Date) string {
	from, err := followup.ParseDay(string(operated))
	to, err2 := followup.ParseDay(string(s.Date))
	if err != nil || err2 != nil || operated == "" || s.Date == operated {
		return stageText(s.Stage)
	}
	m := followup.Months(from, to)
	of := map[string]any{"Stage": stageText(s.Stage), "Time": span(max(m, -m))}
	switch {
	case m > 0:
		return lang.L("{{.Stage}}, {{.Time}} after operation", of)
	case s.Stage == casebook.Before:
		return lang.L("{{.Stage}}, {{.Time}} earlier", of)
	}
	return lang.L("{{.Stage}}, {{.Time}} before operation", of)
}

// age is how old a child born in that month was on a day.
func age(born casebook.Month, day casebook.Date) string {
	from, err := followup.ParseDay(string(born) + "-01")
	to, err2 := followup.ParseDay(string(day))
	if err != nil || err2 != nil || day == "" || to.Before(from) {
		return ""
	}
	return span(followup.Months(from, to))
}

// span is a time in months, from the second year on in years.
func span(months float64) string {
	whole := int(math.Floor(months))
	years, rest := whole/12, whole%12
	switch {
	case whole == 0:
		return lang.L("less than a month")
	case whole == 1:
		return lang.L("1 month")
	case whole < 24 && whole != 12:
		return lang.L("{{.Months}} months", map[string]any{"Months": whole})
	case years == 1:
		return lang.L("1 year")
	case rest == 0:
		return lang.L("{{.Years}} years", map[string]any{"Years": years})
	case rest == 1:
		return lang.L("{{.Years}} years 1 month", map[string]any{"Years": years})
	}
	return lang.L("{{.Years}} years {{.Months}} months", map[string]any{"Years": years, "Months": rest})
}

func handsText(h casebook.Hands) string {
	switch h {
	case casebook.LeftHand:
		return lang.L("left hand")
	case casebook.RightHand:
		return lang.L("right hand")
	}
	return lang.L("both hands")
}

func sideText(s hand.Side) string {
	if s == hand.Left {
		return lang.L("left")
	}
	return lang.L("right")
}

func stageText(s casebook.Stage) string {
	switch s {
	case casebook.Before:
		return lang.L("before operation")
	case casebook.AtOperation:
		return lang.L("at operation")
	}
	return lang.L("follow-up")
}

// showsText is what a photograph shows, short: left · back.
func showsText(p casebook.Photograph) string {
	side, view := sideOf(p), viewOf(p)
	if side == 0 || view == 0 {
		return lang.L("which hand?")
	}
	v := map[hand.View]string{hand.Dorsal: lang.L("back"), hand.Palmar: lang.L("palm"), hand.WebView: lang.L("into the web")}[view]
	return sideText(side) + " · " + v
}

// showsLong is the same in full.
func showsLong(p casebook.Photograph) string {
	if side, view := sideOf(p), viewOf(p); side != 0 && view != 0 {
		return wording.Photograph(side, view)
	}
	return lang.L("Hand and view not said yet")
}

func markedText(who []string) string {
	if len(who) == 0 {
		return lang.L("not marked yet")
	}
	return lang.L("marked by {{.Who}}", map[string]any{"Who": strings.Join(who, ", ")})
}

// joinText is a join in words: left third web, simple complete, operated on 1 Mar
// 2026.
func joinText(j casebook.Join) string {
	of := lang.L("{{.Side}} {{.Web}}", map[string]any{"Side": sideText(j.Hand), "Web": j.Web.String()})
	kind := strings.TrimSpace(map[casebook.Kind]string{casebook.Simple: lang.L("simple"), casebook.Complex: lang.L("complex")}[j.Kind] + " " +
		map[casebook.Extent]string{casebook.Complete: lang.L("complete"), casebook.Incomplete: lang.L("incomplete")}[j.Extent])
	parts := []string{wording.Sentence(of)}
	if kind != "" {
		parts = append(parts, kind)
	}
	if j.Operated != "" {
		parts = append(parts, lang.L("operated on {{.Date}}", map[string]any{"Date": dateText(j.Operated)}))
	}
	return strings.Join(parts, ", ")
}

func photographsText(n int) string {
	switch n {
	case 0:
		return lang.L("no photograph")
	case 1:
		return lang.L("1 photograph")
	}
	return lang.L("{{.Count}} photographs", map[string]any{"Count": n})
}

// sentence begins with a capital letter and ends with a full stop.
func sentence(text string) string {
	text = strings.TrimRight(strings.ReplaceAll(text, "\n", "; "), ".")
	return wording.Sentence(text) + "."
}
