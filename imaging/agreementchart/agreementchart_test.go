package agreementchart_test

import (
	"bytes"
	"encoding/csv"
	"encoding/xml"
	"errors"
	"fmt"
	"image"
	"image/png"
	"io"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"ogive/imaging/agreementchart"
	"ogive/imaging/charting"
	"ogive/imaging/observations"
	"ogive/imaging/wording"
)

// meters is the two meters of Bland JM, Altman DG. Lancet 1986;i:307-10, Wright
// first (source of the file: testdata/reference).
func meters(t testing.TB) agreementchart.Chart {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("..", "..", "testdata", "reference", "bland_altman1986_pefr.csv"))
	if err != nil {
		t.Fatal(err)
	}
	lines, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var all []observations.Observation
	for _, l := range lines[1:] {
		for i, cell := range l[1:] {
			v, err := strconv.ParseFloat(cell, 64)
			if err != nil {
				t.Fatal(err)
			}
			all = append(all, observations.Observation{Target: l[0], Observer: []string{"Wright", "Mini"}[i], Figure: "peak flow (l/min)", Value: v})
		}
	}
	charts, lacking := agreementchart.Of(all, "the paper of 1986")
	if len(charts) != 1 || len(lacking) != 0 {
		t.Fatalf("%d charts, lacking %v", len(charts), lacking)
	}
	return charts[0]
}

// webs is what two observers read on webs of invented hands, the first with a
// bias; AB read them twice.
func webs(n int, bias float64) []observations.Observation {
	rng := rand.New(rand.NewPCG(6, 3))
	var all []observations.Observation
	for i := range n {
		true := 0.52 + 0.05*rng.NormFloat64()
		for _, who := range []struct {
			name, occasion string
			bias           float64
		}{{"AB", "1", bias}, {"CD", "1", 0}, {"AB", "2", bias}} {
			read := true + who.bias + 0.011*rng.NormFloat64()
			all = append(all, observations.Observation{
				Target: fmt.Sprintf("S-%03d photograph 1, right hand, third web", i+1), Observer: who.name, Occasion: who.occasion, Figure: "dorsal web index", Value: math.Round(read*1000) / 1000,
			})
		}
	}
	return all
}

// Source: as in geometry/agreement's tests: the paper's bias of -2.1 with its
// interval of -22.0 to 17.8 (from memory), and ICC(2,1) by the R package psych.
func TestTheMetersOf1986ReadAsInThePaper(t *testing.T) {
	c := meters(t)
	rows := c.Rows()
	if got := rows[2].Text; got != "-2 l/min (-22 to 18)" {
		t.Errorf("the bias reads %q", got)
	}
	if got := rows[0].Text; !strings.HasPrefix(got, "0.95 (0.86 to 0.98)") {
		t.Errorf("ICC(2,1) reads %q", got)
	}
	if got := c.Basis(); got != "17 targets, each read by both; readings from the paper of 1986." {
		t.Errorf("it rests on %q", got)
	}
	want := "No lasting difference can be told: on the average Wright reads the peak flow 2 l/min lower than Mini, but the interval reaches from 22 l/min lower to 18 l/min higher."
	if got := c.Words()[0]; got != want {
		t.Errorf("the bias is told as\n%q, want\n%q", got, want)
	}
}

// The chi-squared quantiles of 17 degrees of freedom are 7.564 and 30.191 (any
// table of them; from memory).
func TestTheTechnicalErrorHasTheIntervalOfAStandardDeviation(t *testing.T) {
	c := meters(t)
	e := c.Error()
	low, high := e.Value*math.Sqrt(17/30.191), e.Value*math.Sqrt(17/7.564)
	if math.Abs(e.Low-low) > 0.001*low || math.Abs(e.High-high) > 0.001*high {
		t.Errorf("the interval is %.3f to %.3f, by the table %.3f to %.3f", e.Low, e.High, low, high)
	}
}

// Where two differ by chance alone, 95 of 100 intervals hold the true error.
func TestTheIntervalOfTheTechnicalErrorHoldsTheTruthAsOftenAsItSays(t *testing.T) {
	rng := rand.New(rand.NewPCG(9, 5))
	const trials, targets, sd = 2000, 12, 0.3
	held := 0
	for range trials {
		var all []observations.Observation
		for i := range targets {
			for _, who := range []string{"A", "B"} {
				all = append(all, observations.Observation{Target: fmt.Sprint(i), Observer: who, Value: float64(i) + sd*rng.NormFloat64()})
			}
		}
		charts, _ := agreementchart.Of(all, "")
		if e := charts[0].Error(); e.Low <= sd && sd <= e.High {
			held++
		}
	}
	if share := float64(held) / trials; math.Abs(share-0.95) > 0.015 {
		t.Errorf("%.1f %% of the intervals hold the truth", 100*share)
	}
}

func TestABiasBeyondItsIntervalIsSaidAndInTheRightDirection(t *testing.T) {
	charts, _ := agreementchart.Of(webs(40, 0.02), "")
	words := strings.Join(charts[0].Words(), "\n")
	if !strings.HasPrefix(words, "On the average AB reads the dorsal web index 0.0") || !strings.Contains(words, "higher than CD (0.0") {
		t.Errorf("it reads\n%s", words)
	}
	if strings.Contains(words, "No lasting difference") {
		t.Errorf("the bias is denied:\n%s", words)
	}
}

// Wright and mini meter differ most on subjects 15 (178 and 259) and 16 (423 and
// 350): the paper's table.
func TestTheTargetsThatDifferMostAreToldFirst(t *testing.T) {
	c := meters(t)
	var got []string
	for _, w := range c.Widest(2) {
		got = append(got, c.Told(w))
	}
	if want := []string{"15: Wright 178 l/min, Mini 259 l/min", "16: Wright 423 l/min, Mini 350 l/min"}; !slices.Equal(got, want) {
		t.Errorf("told are %q, want %q", got, want)
	}
	if n := len(c.Widest(99)); n != 17 {
		t.Errorf("of 17 targets %d differ", n)
	}
}

func TestAxesBearThreeToNineNumbers(t *testing.T) {
	for _, size := range []float64{1, 1.9, 2, 3.4, 3.6, 4.9, 5, 6.9, 7.1, 9.9} {
		for _, times := range []float64{0.01, 1, 100} {
			low := 0.37 * times
			if n := len(agreementchart.Ticks(low, low+size*times)); n < 3 || n > 9 {
				t.Errorf("from %g to %g there are %d numbers", low, low+size*times, n)
			}
		}
	}
}

func TestACorrelationShortOfOneIsNotWrittenAsOne(t *testing.T) {
	var all []observations.Observation
	for i := range 30 {
		for n, who := range []string{"A", "B"} {
			all = append(all, observations.Observation{Target: fmt.Sprint(i), Observer: who, Value: float64(i) + 0.0001*float64((i*7+n*3)%5)})
		}
	}
	c := must(agreementchart.Of(all, ""))[0]
	if got := c.Rows()[0].Text; got != "0.999 (0.999 to 0.999)" {
		t.Errorf("it is written %q", got)
	}
	if got := c.Words()[2]; !strings.Contains(got, "about 99 per cent (99 to 99)") {
		t.Errorf("it is told as %q", got)
	}
}

func TestTwoWhoNeverDifferAreSuspectedOfCopying(t *testing.T) {
	charts, _ := agreementchart.Of([]observations.Observation{{Target: "1", Observer: "A", Value: 1}, {Target: "1", Observer: "B", Value: 1}, {Target: "2", Observer: "A", Value: 3}, {Target: "2", Observer: "B", Value: 3}}, "")
	if words := charts[0].Words(); len(words) != 1 || !strings.Contains(words[0], "copied") {
		t.Errorf("it reads %v", words)
	}
	if img := charts[0].Image(image.Pt(600, 300), 1, charting.Paper); img.Bounds().Dx() != 600 {
		t.Error("it is not drawn")
	}
}

func TestObserversAndOccasionsAreHeldAgainstEachOtherApart(t *testing.T) {
	charts, lacking := agreementchart.Of(webs(5, 0), "")
	if len(lacking) != 0 || len(charts) != 2 {
		t.Fatalf("%d charts, lacking %v", len(charts), lacking)
	}
	if got := charts[0].Title(); got != "Dorsal web index: AB and CD" {
		t.Errorf("the first is %q", got)
	}
	if got := charts[1].Title(); got != "Dorsal web index: AB at occasions 1 and 2" {
		t.Errorf("the second is %q", got)
	}
}

func TestWhatTooFewHaveReadIsNamed(t *testing.T) {
	all := append(webs(2, 0), observations.Observation{Target: "x", Observer: "EF", Figure: "dorsal web index", Value: 1, Occasion: "1"})
	charts, lacking := agreementchart.Of(all, "")
	if len(charts) != 2 || len(lacking) != 2 || !strings.Contains(lacking[0], "AB and EF") {
		t.Errorf("%d charts, lacking %q", len(charts), lacking)
	}
}

func TestAFigureKeepsItsUnitInBrackets(t *testing.T) {
	for text, want := range map[string]agreementchart.Figure{
		"span (mm)": {Name: "span", Unit: "mm"}, "dorsal web index": {Name: "dorsal web index"}, "": {Name: "value"}, "(mm)": {Name: "(mm)"}, "crown angle (°)": {Name: "crown angle", Unit: "°"},
	} {
		if got := agreementchart.FigureOf(text); got != want {
			t.Errorf("%q is %+v", text, got)
		}
	}
}

func TestReadingsGoOutAsTheyCanComeInAgain(t *testing.T) {
	for _, c := range must(agreementchart.Of(webs(6, 0.01), "")) {
		var out bytes.Buffer
		if err := c.ReadingsCSV(&out); err != nil {
			t.Fatal(err)
		}
		again, err := observations.Read(&out)
		if err != nil {
			t.Fatal(err)
		}
		charts, _ := agreementchart.Of(again, "")
		if len(charts) != 1 || !slices.Equal(charts[0].Targets, c.Targets) || charts[0].Title() != c.Title() {
			t.Errorf("%s comes in again as %d charts", c.Title(), len(charts))
		}
	}
}

func must(charts []agreementchart.Chart, _ []string) []agreementchart.Chart { return charts }

func TestFiguresGoOutWithTheirIntervalsUnitsAndTheCaution(t *testing.T) {
	var out bytes.Buffer
	if err := agreementchart.FiguresCSV(&out, []agreementchart.Chart{meters(t)}); err != nil {
		t.Fatal(err)
	}
	lines, err := csv.NewReader(&out).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(lines) != 8 || lines[1][1] != "" || lines[3][1] != "l/min" || lines[7][1] != "%" || !strings.HasPrefix(lines[3][7], "-2.117") || lines[1][11] != wording.Caution {
		t.Errorf("%q", lines)
	}
}

func TestTheSameChartGivesTheSameBytes(t *testing.T) {
	for _, c := range []agreementchart.Chart{meters(t), must(agreementchart.Of(webs(30, 0.01), "casebook"))[1]} {
		for name, write := range map[string]func(io.Writer) error{"page.pdf": c.PDF, "page.png": c.PNG, "page.svg": c.SVG} {
			var a, b bytes.Buffer
			if err := errors.Join(write(&a), write(&b)); err != nil {
				t.Fatal(err)
			}
			if !bytes.Equal(a.Bytes(), b.Bytes()) {
				t.Errorf("%s: the same chart gives two files", name)
			}
			keep(t, strconv.Itoa(len(c.Targets))+name, a.Bytes())
		}
	}
}

func TestTheDrawingIsSoundAndBearsTheCaution(t *testing.T) {
	var out bytes.Buffer
	if err := meters(t).SVG(&out); err != nil {
		t.Fatal(err)
	}
	var texts strings.Builder
	for d := xml.NewDecoder(&out); ; {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatal(err)
		}
		if chars, ok := token.(xml.CharData); ok {
			texts.WriteString(string(chars) + " ")
		}
	}
	said := strings.Join(strings.Fields(texts.String()), " ")
	for _, want := range []string{wording.Caution, "Shrout and Fleiss 1979", "Bland and Altman 1986", "17 targets", "the paper of 1986", "Peak flow", "l/min", "both read the same"} {
		if !strings.Contains(said, want) {
			t.Errorf("the drawing does not say %q; it says %q", want, said)
		}
	}
}

func TestEverySizeIsDrawn(t *testing.T) {
	c := must(agreementchart.Of(webs(30, 0.01), ""))[0]
	for _, size := range []image.Point{{}, {1, 1}, {40, 400}, {400, 40}, {640, 620}, {1180, 620}} {
		for name, ink := range map[string]charting.Ink{"paper": charting.Paper, "chalk": charting.Chalk} {
			img := c.Image(size, 1, ink)
			if img.Bounds().Dx() != max(size.X, 1) || img.Bounds().Dy() != max(size.Y, 1) {
				t.Errorf("%v is drawn as %v", size, img.Bounds())
			}
			var out bytes.Buffer
			if err := png.Encode(&out, img); err != nil {
				t.Fatal(err)
			}
			keep(t, fmt.Sprintf("%s-%dx%d.png", name, size.X, size.Y), out.Bytes())
		}
	}
}

// keep writes what was drawn to the folder named by OGIVE_SHOTS, to be looked at.
func keep(t *testing.T, name string, data []byte) {
	t.Helper()
	folder := os.Getenv("OGIVE_SHOTS")
	if folder == "" {
		return
	}
	if err := os.WriteFile(filepath.Join(folder, name), data, 0o666); err != nil {
		t.Fatal(err)
	}
}
