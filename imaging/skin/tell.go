package skin

import (
	"fmt"
	"image/color"
	"slices"

	"ogive/geometry/plane"
	"ogive/geometry/skincolour"
	"ogive/imaging/wording"
)

// Line is one figure on skin colour, ready to read.
type Line struct {
	Name, Value, Note string
	// Swatches are the colours that the line speaks of.
	Swatches []color.RGBA
}

// pairs are the places that are worth comparing, in the order in which they are
// told.
var pairs = [][2]skincolour.Place{
	{skincolour.Back, skincolour.Palm},
	{skincolour.Graft, skincolour.Neighbour}, {skincolour.Graft, skincolour.Back}, {skincolour.Graft, skincolour.Palm},
	{skincolour.Donor, skincolour.Neighbour}, {skincolour.Donor, skincolour.Back}, {skincolour.Donor, skincolour.Palm},
}

// Notes that go with what is told.
const (
	screenNote = "Swatches differ from screen to screen and from printer to printer: compare skin with skin."
	choiceNote = "It is one reason among others (common practice, no source); the choice stays with the surgeon."
)

// Tell is what the samples say: each one's tone, the differences between them
// with a verdict, and which flap the colours speak for. The notes say what to
// know of them; the first sample of a place counts.
func Tell(samples []Sample, limits skincolour.Limits) (lines []Line, notes []string) {
	if len(samples) == 0 {
		return nil, nil
	}
	for _, s := range samples {
		lines = append(lines, s.line())
		for _, n := range s.Notes {
			if !slices.Contains(notes, n) {
				notes = append(notes, n)
			}
		}
	}
	for _, pair := range pairs {
		a, b := find(samples, pair[0]), find(samples, pair[1])
		if a == nil || b == nil {
			continue
		}
		lines = append(lines, comparison(*a, *b, limits))
		if pair[0] == skincolour.Back {
			r := skincolour.Reasoning(a.Sample, b.Sample)
			notes = append(notes, reasonWords(r))
		}
	}
	return lines, append(notes, screenNote)
}

func find(samples []Sample, p skincolour.Place) *Sample {
	i := slices.IndexFunc(samples, func(s Sample) bool { return s.Place == p })
	if i < 0 {
		return nil
	}
	return &samples[i]
}

func (s Sample) line() Line {
	ita := s.ITA()
	note := skincolour.ToneOf(ita.Value).String()
	light, dark := skincolour.ToneOf(ita.High()), skincolour.ToneOf(ita.Low())
	if light != dark {
		note += fmt.Sprintf("; the interval runs from %v to %v", light, dark)
	}
	if s.Doubt != "" {
		note = "no colour of skin"
	}
	return Line{
		Name:  wording.Sentence(s.Place.String()) + ", typology angle",
		Value: wording.Degrees(ita), Note: note, Swatches: []color.RGBA{swatch(s.Colour)},
	}
}

func swatch(c skincolour.Lab) color.RGBA {
	r, g, b := c.SRGB()
	return color.RGBA{r, g, b, 0xff}
}

func comparison(a, b Sample, limits skincolour.Limits) Line {
	c := skincolour.Compare(a.Sample, b.Sample)
	out := Line{
		Name:     fmt.Sprintf("%s to %v, CIEDE2000", wording.Sentence(a.Place.String()), b.Place),
		Value:    difference(c.CIEDE2000),
		Swatches: []color.RGBA{swatch(a.Colour), swatch(b.Colour)},
	}
	switch {
	case a.Doubt != "" || b.Doubt != "":
		out.Note = "not judged: no colour of skin"
	case a.Place != skincolour.Back:
		v := limits.Judge(c)
		out.Note = fmt.Sprintf("%s, by its CIELAB difference of %s against %.1f", wording.Verdict(v), difference(c.CIELAB), v.Limit)
	}
	if !c.Neutral() {
		out.Note = joined(out.Note, "not balanced on a neutral patch")
	}
	return out
}

func joined(a, b string) string {
	if a == "" {
		return b
	}
	return a + "; " + b
}

// difference writes a colour difference: "8.0 ± 3.9".
func difference(e plane.Estimate[float64]) string {
	v, u := wording.Rounded(e.Value, e.U95, 1)
	if u == "" {
		return "not known"
	}
	return v + " ± " + u
}

func reasonWords(r skincolour.Reason) string {
	if !r.Possible {
		return r.Because
	}
	words := "Colour of back and palm: difference " + difference(r.Difference) + ". " + r.Because
	if !r.Certain {
		words += " The interval reaches over the limit, so this is doubtful."
	}
	return words + " " + choiceNote
}
