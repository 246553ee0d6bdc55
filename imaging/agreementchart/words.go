package agreementchart

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"ogive/geometry/agreement"
	"ogive/imaging/wording"
)

// Who is whose readings are held against each other: "AB and CD", "AB at
// occasions 1 and 2".
func (c Chart) Who() string {
	if c.Within != "" {
		return fmt.Sprintf("%s at occasions %s and %s", c.Within, c.Names[0], c.Names[1])
	}
	return fmt.Sprintf("%s and %s", c.Names[0], c.Names[1])
}

// Title is the figure and who read it.
func (c Chart) Title() string { return wording.Sentence(c.Figure.Name) + ": " + c.Who() }

// Basis is what the figures rest on.
func (c Chart) Basis() string {
	said := fmt.Sprintf("%d targets, each read by both", len(c.Targets))
	if c.Within != "" {
		said = fmt.Sprintf("%d targets, each read on both occasions", len(c.Targets))
	}
	if n := len(c.LeftOut); n > 0 {
		said += fmt.Sprintf("; %d left out, read only once", n)
	}
	if c.Source != "" {
		said += "; readings from " + c.Source
	}
	return said + "."
}

// axis is the name of the readings of the first or the second.
func (c Chart) axis(i int) string { return c.name(i) + ": " + c.Figure.String() }

func (c Chart) name(i int) string {
	if c.Within != "" {
		return c.Within + ", occasion " + c.Names[i]
	}
	return c.Names[i]
}

// Row is one figure with its interval.
type Row struct {
	Name     string
	Interval agreement.Interval
	Text     string // the figure and its interval, written out
	Note     string // what it is of
}

// Names of the figures that are not in the unit of what was read.
const (
	correlationAbsolute   = "ICC(2,1)"
	correlationConsistent = "ICC(3,1)"
	variation             = "Coefficient of variation"
)

// Rows are all figures.
func (c Chart) Rows() []Row {
	p, unit := c.pair(), c.Figure.Unit
	row := func(name string, i agreement.Interval, unit, note string) Row {
		return Row{name, i, bracketed(i, unit), note}
	}
	less := c.name(0) + " less " + c.name(1)
	if c.Within != "" {
		less = fmt.Sprintf("occasion %s less %s", c.Names[0], c.Names[1])
	}
	return []Row{
		{correlationAbsolute, c.agreement.Absolute, correlation(c.agreement.Absolute), "the readings as they stand"},
		{correlationConsistent, c.agreement.Consistency, correlation(c.agreement.Consistency), "the bias taken off"},
		row("Bias", p.Bias, unit, less),
		row("Lower limit of agreement", p.Lower, unit, "1.96 deviations below the bias"),
		row("Upper limit of agreement", p.Upper, unit, "1.96 deviations above the bias"),
		row("Technical error", c.Error(), unit, "of one reading, with the bias"),
		row(variation, c.Variation(), "%", fmt.Sprintf("of the mean %s", with(unit, fmt.Sprintf("%.3g", c.agreement.Mean)))),
	}
}

// Words are what the figures mean, a sentence each, none surer than its interval.
func (c Chart) Words() []string {
	p := c.pair()
	if p.Deviation == 0 && p.Bias.Value == 0 {
		return []string{fmt.Sprintf("%s read the same on all %d targets; look whether the one was copied from the other.", c.Who(), len(c.Targets))}
	}
	return []string{c.biasWords(p.Bias), c.limitWords(p), c.correlationWords(), c.errorWords()}
}

func (c Chart) biasWords(b agreement.Interval) string {
	at := places(b)
	first, second := c.Names[0], c.Names[1]
	if c.Within != "" {
		first, second = c.Within+" at occasion "+first, "at occasion "+second
	}
	if b.Low <= 0 && b.High >= 0 {
		return fmt.Sprintf("No lasting difference can be told: on the average %s reads the %s %s than %s, but the interval reaches from %s to %s.",
			first, c.Figure.Name, c.apart(b.Value, at), second, c.apart(b.Low, at), c.apart(b.High, at))
	}
	low, high := math.Min(math.Abs(b.Low), math.Abs(b.High)), math.Max(math.Abs(b.Low), math.Abs(b.High))
	return fmt.Sprintf("On the average %s reads the %s %s than %s (%s to %s).",
		first, c.Figure.Name, c.apart(b.Value, at), second, number(low, at), number(high, at))
}

// apart is a difference in words: "0.010 higher".
func (c Chart) apart(difference float64, places int) string {
	side := "higher"
	if difference < 0 {
		side = "lower"
	}
	return with(c.Figure.Unit, number(math.Abs(difference), places)) + " " + side
}

// limitWords name the larger of the two limits: within it lie at least as many
// differences as between both.
func (c Chart) limitWords(p agreement.Pair) string {
	reach := agreement.Interval{
		Value: math.Max(-p.Lower.Value, p.Upper.Value),
		Low:   math.Max(math.Max(-p.Lower.High, p.Upper.Low), 0),
		High:  math.Max(-p.Lower.Low, p.Upper.High),
	}
	at := places(reach)
	return fmt.Sprintf("About 95 of 100 pairs of readings are expected to differ by less than %s; %d targets leave anything from %s to %s open.",
		with(c.Figure.Unit, number(reach.Value, at)), len(c.Targets), number(reach.Low, at), with(c.Figure.Unit, number(reach.High, at)))
}

func (c Chart) correlationWords() string {
	i := c.agreement.Absolute
	if math.IsNaN(i.Value) {
		return "No ICC can be told: the targets do not differ."
	}
	if math.IsNaN(i.Low) || math.IsNaN(i.High) {
		return fmt.Sprintf("The ICC(2,1) is %s; no interval can be told.", number(i.Value, 3))
	}
	if i.Low <= 0 {
		return fmt.Sprintf("Whether the readings tell these targets apart can't be said: the ICC(2,1) is %s.", correlation(i))
	}
	percent := func(x float64) string { return fmt.Sprintf("%.0f", 100*below(x, 2)) }
	return fmt.Sprintf("Of the spread of the readings about %s per cent (%s to %s) lies in the targets, the rest in the reading. This holds only for targets that differ as much as these.",
		percent(i.Value), percent(i.Low), percent(i.High))
}

func (c Chart) errorWords() string {
	return fmt.Sprintf("A single reading strays from what both find together by %s, one standard deviation.", bracketed(c.Error(), c.Figure.Unit))
}

// Widest are the n targets, or fewer, on which the two differ most, the widest
// first.
func (c Chart) Widest(n int) []Target {
	all := slices.Clone(c.Targets)
	slices.SortStableFunc(all, func(a, b Target) int { return cmp.Compare(b.apart(), a.apart()) })
	return all[:min(n, len(all))]
}

func (t Target) apart() float64 { return math.Abs(t.Readings[0] - t.Readings[1]) }

// Told is a target with both readings: "S-012 photograph 1, left hand, third web:
// AB 0.52, CD 0.47".
func (c Chart) Told(t Target) string {
	at := places(c.pair().Bias)
	read := func(i int) string {
		name := c.Names[i]
		if c.Within != "" {
			name = "occasion " + name
		}
		return name + " " + with(c.Figure.Unit, number(t.Readings[i], at))
	}
	return fmt.Sprintf("%s: %s, %s", t.Name, read(0), read(1))
}
