package round

import (
	"math"
	"strconv"

	"fyne.io/fyne/v2/lang"

	"ogive/geometry/norms"
	"ogive/geometry/scoring"
	"ogive/imaging/rounds"
	"ogive/imaging/wording"
)

func withKey(text, key string) string { return text + "  (" + key + ")" }

func fixed(x float64, decimals int) string { return strconv.FormatFloat(x, 'f', decimals, 64) }

func kindWords(k rounds.Kind) string {
	if k == rounds.Blind {
		return lang.L("Marked blind")
	}
	return lang.L("Judged by eye")
}

func difficultyWords(d rounds.Difficulty) string {
	switch d {
	case rounds.Clear:
		return lang.L("Clear")
	case rounds.Close:
		return lang.L("Close")
	}
	return lang.L("Usual")
}

// picturesWords say what pictures a round has.
func picturesWords(s rounds.Setup) string {
	if len(s.Photographs) > 0 {
		return lang.L("Photographs")
	}
	return difficultyWords(s.Difficulty)
}

// difficultyMeans says what a difficulty is like.
func difficultyMeans(d rounds.Difficulty) string {
	switch d {
	case rounds.Clear:
		return lang.L("Faults are plain, and the hand stands out from the cloth. Begin here.")
	case rounds.Close:
		return lang.L("Figures lie just beyond or just within their limits, and the skin is much like the cloth.")
	}
	return lang.L("Faults and photographs as they come.")
}

func faultWords(f rounds.Fault) string {
	switch f {
	case rounds.TooDeep:
		return lang.L("webs too deep")
	case rounds.TooShallow:
		return lang.L("webs too shallow")
	case rounds.TooWide:
		return lang.L("webs too wide")
	case rounds.TooNarrow:
		return lang.L("webs too narrow")
	case rounds.Shapes:
		return lang.L("unusual shapes")
	}
	return lang.L("slopes too flat or too steep")
}

func askedWords(of rounds.Asked) string {
	switch of {
	case rounds.Place:
		return lang.L("depth")
	case rounds.Width:
		return lang.L("width")
	case rounds.Shape:
		return lang.L("shape")
	case rounds.Slope:
		return lang.L("slope")
	}
	return lang.L("crown")
}

// findingWords is a finding or a shape as the questions call it.
func findingWords(name string) string {
	if name == norms.WithinLimits {
		return lang.L("normal")
	}
	return wording.Term(name)
}

// againstWords say by which normal values a round is judged.
func againstWords(l rounds.Limits) string {
	return lang.L("Normal here: dorsal index {{.Low}} to {{.High}}, slope {{.Flat}} to {{.Steep}}° ({{.Against}}); sources differ.", map[string]any{
		"Low": fixed(l.Index[0], 2), "High": fixed(l.Index[1], 2), "Flat": fixed(l.Slope[0], 0), "Steep": fixed(l.Slope[1], 0), "Against": wording.Term(l.Against)})
}

// share is a part in words: "31 of 40, 78 % (62 to 88 % at 95 per cent)".
func share(s scoring.Share) string {
	if s.Of == 0 || math.IsNaN(s.Value) {
		return lang.L("nothing to score")
	}
	return lang.L("{{.Right}} of {{.All}}", map[string]any{"Right": s.Right, "All": s.Of}) + ", " + percent(s)
}

// percent is a part with its interval: "78 % (62 to 88 % at 95 per cent)".
func percent(s scoring.Share) string {
	if s.Of == 0 || math.IsNaN(s.Value) {
		return ""
	}
	return lang.L("{{.Percent}} % ({{.Low}} to {{.High}} % at 95 per cent)", map[string]any{
		"Percent": fixed(100*s.Value, 0), "Low": fixed(100*s.Low, 0), "High": fixed(100*s.High, 0)})
}

// bias is a mean with its interval: "+1.2 (0.6 to 1.8)".
func bias(b scoring.Bias, decimals int) string {
	if b.N == 0 || math.IsNaN(b.Value) {
		return "–"
	}
	if math.IsNaN(b.Low) || math.IsNaN(b.High) {
		return signed(b.Value, decimals)
	}
	return lang.L("{{.Mean}} ({{.Low}} to {{.High}})", map[string]any{"Mean": signed(b.Value, decimals), "Low": signed(b.Low, decimals), "High": signed(b.High, decimals)})
}

func signed(x float64, decimals int) string {
	text := fixed(math.Abs(x), decimals)
	switch {
	case text == fixed(0, decimals):
		return text
	case x < 0:
		return "−" + text
	}
	return "+" + text
}
