package report

import (
	"encoding/json"
	"fmt"
	"io"
	"math"
	"strings"
	"text/tabwriter"

	"ogive/geometry/agreement"
	"ogive/imaging/agreementchart"
	"ogive/imaging/observations"
	"ogive/imaging/wording"
)

// AgreeTable writes how far observers agree, as a table to read.
func AgreeTable(to io.Writer, all []observations.Comparison) error {
	for i, c := range all {
		if i > 0 {
			fmt.Fprintln(to)
		}
		if err := agreeTable(to, c); err != nil {
			return err
		}
	}
	_, err := fmt.Fprintf(to, "\nICC(2,1) and ICC(3,1) as by Shrout and Fleiss 1979, limits of agreement as by Bland and Altman 1986\nat %.2f standard deviations; brackets hold the 95 per cent interval.\n%s\n", agreement.Reach, wording.Caution)
	return err
}

func agreeTable(to io.Writer, c observations.Comparison) error {
	fmt.Fprintln(to, heading(c))
	if c.Fault != nil {
		_, err := fmt.Fprintf(to, "  %v\n", c.Fault)
		return err
	}
	a := c.Table.Agreement()
	w := tabwriter.NewWriter(to, 0, 0, 2, ' ', 0)
	fmt.Fprintf(w, "  targets\t%d, each measured by all\n", a.Targets)
	if len(c.LeftOut) > 0 {
		fmt.Fprintf(w, "  left out\t%s: not measured by all\n", strings.Join(c.LeftOut, ", "))
	}
	fmt.Fprintf(w, "  ICC(2,1)\t%s\tthe values as they stand\n", bracketed(a.Absolute, 3))
	fmt.Fprintf(w, "  ICC(3,1)\t%s\twith each one's own bias taken off\n", bracketed(a.Consistency, 3))
	for _, p := range a.Pairs {
		fmt.Fprintf(w, "  %s less %s\t%s\tbias\n", p.First, p.Second, bracketed(p.Bias, -1))
		fmt.Fprintf(w, "\t%s\tlower limit of agreement\n", bracketed(p.Lower, -1))
		fmt.Fprintf(w, "\t%s\tupper limit of agreement\n", bracketed(p.Upper, -1))
	}
	fmt.Fprintf(w, "  technical error\t%s\tof one measurement, with the bias\n", bracketed(agreementchart.Error(a), -1))
	if v := agreementchart.Variation(a); !math.IsNaN(v.Value) {
		fmt.Fprintf(w, "  variation in %%\t%s\tof the mean %.4g\n", bracketed(v, -1), a.Mean)
	}
	return w.Flush()
}

func heading(c observations.Comparison) string {
	figure := c.Figure
	if figure == "" {
		figure = "value"
	}
	if c.Within != "" {
		return fmt.Sprintf("%s: %s with herself or himself, on occasions %s", figure, c.Within, strings.Join(c.Table.Observers, ", "))
	}
	return fmt.Sprintf("%s: %s", figure, strings.Join(c.Table.Observers, ", "))
}

// bracketed writes a figure with its bounds to so many places, or to four digits
// where places is negative.
func bracketed(i agreement.Interval, places int) string {
	number := func(x float64) string {
		if places < 0 {
			return fmt.Sprintf("%.4g", x)
		}
		return fmt.Sprintf("%.*f", places, x)
	}
	if math.IsNaN(i.Low) || math.IsNaN(i.High) {
		return number(i.Value) + " (no interval can be told)"
	}
	return fmt.Sprintf("%s (%s to %s)", number(i.Value), number(i.Low), number(i.High))
}

type jsonInterval struct {
	Value *float64 `json:"value"`
	Low   *float64 `json:"low"`
	High  *float64 `json:"high"`
}

type jsonLimits struct {
	Lower jsonInterval `json:"lower"`
	Upper jsonInterval `json:"upper"`
}

type jsonPair struct {
	First  string       `json:"first"`
	Second string       `json:"second"`
	Bias   jsonInterval `json:"bias"`
	Limits jsonLimits   `json:"limits"`
}

// jsonAgreement is one comparison. Bias and limits stand here too where there
// are just two observers.
type jsonAgreement struct {
	Figure      string        `json:"figure,omitempty"`
	Observer    string        `json:"observer,omitempty"` // who is compared with herself
	Observers   []string      `json:"observers"`
	Targets     int           `json:"targets"`
	LeftOut     []string      `json:"left_out,omitempty"`
	Fault       string        `json:"fault,omitempty"`
	Absolute    *jsonInterval `json:"icc_2_1,omitempty"`
	Consistency *jsonInterval `json:"icc_3_1,omitempty"`
	Bias        *jsonInterval `json:"bias,omitempty"`
	Limits      *jsonLimits   `json:"limits,omitempty"`
	Error       *float64      `json:"tem,omitempty"`
	Variation   *float64      `json:"cv_percent,omitempty"`
	Pairs       []jsonPair    `json:"pairs,omitempty"`
}

// AgreeJSON writes one comparison as an object, several as {"comparisons": [...]}.
func AgreeJSON(to io.Writer, all []observations.Comparison) error {
	out := make([]jsonAgreement, len(all))
	for i, c := range all {
		out[i] = asJSON(c)
	}
	e := json.NewEncoder(to)
	e.SetIndent("", "  ")
	if len(out) == 1 {
		return e.Encode(out[0])
	}
	return e.Encode(map[string]any{"comparisons": out})
}

func asJSON(c observations.Comparison) jsonAgreement {
	j := jsonAgreement{Figure: c.Figure, Observer: c.Within, Observers: c.Table.Observers, LeftOut: c.LeftOut}
	if c.Fault != nil {
		j.Fault = c.Fault.Error()
		return j
	}
	a := c.Table.Agreement()
	j.Targets = a.Targets
	j.Absolute, j.Consistency = pointer(bounds(a.Absolute)), pointer(bounds(a.Consistency))
	j.Error, j.Variation = known(a.Error), known(a.Variation)
	for _, p := range a.Pairs {
		j.Pairs = append(j.Pairs, jsonPair{p.First, p.Second, bounds(p.Bias), jsonLimits{bounds(p.Lower), bounds(p.Upper)}})
	}
	if len(j.Pairs) == 1 {
		j.Bias, j.Limits, j.Pairs = &j.Pairs[0].Bias, &j.Pairs[0].Limits, nil
	}
	return j
}

func pointer[T any](v T) *T { return &v }

func bounds(i agreement.Interval) jsonInterval {
	return jsonInterval{known(i.Value), known(i.Low), known(i.High)}
}

// known is a number, or nothing where JSON has none for it.
func known(x float64) *float64 {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return nil
	}
	return &x
}
