package written

import (
	"fmt"
	"io"
	"strings"
	"text/tabwriter"

	"ogive/geometry/arch"
	"ogive/geometry/norms"
	"ogive/geometry/plan"
	"ogive/geometry/plane"
	"ogive/geometry/skinbudget"
	"ogive/geometry/zigzag"
	"ogive/imaging/planning"
	"ogive/imaging/wording"
)

// Table writes the figures of a plan to be read by a surgeon, web by web, and
// the caution under all.
func Table(to io.Writer, path string, o planning.Opened) error {
	p := o.Plan()
	t := &table{}
	t.line("%s", path)
	t.line("%s; plan on %s", wording.Photograph(p.Side, p.View), wording.MillimetresPerPixel(p.PerPixel))
	for _, w := range p.Webs {
		t.line("")
		t.web(w, o, p)
	}
	t.list("Notes", o.Begun.Notes)
	t.list("Warnings", p.Warnings)
	t.line("")
	t.wrap(wording.Caution, "", "")
	_, err := io.WriteString(to, t.String())
	return err
}

// table is the text in the making.
type table struct{ strings.Builder }

func (t *table) line(format string, args ...any) { fmt.Fprintf(t, format+"\n", args...) }

// rows sets names and values in two columns.
func (t *table) rows(rows [][2]string) {
	w := tabwriter.NewWriter(t, 0, 0, 3, ' ', 0)
	for _, r := range rows {
		fmt.Fprintf(w, "  %s\t%s\n", r[0], r[1])
	}
	_ = w.Flush() // a strings.Builder takes everything
}

// list writes sentences under a title, unless there are none.
func (t *table) list(title string, sentences []string) {
	if len(sentences) == 0 {
		return
	}
	t.line("  %s", title)
	for _, s := range sentences {
		t.wrap(s, "    ", "      ")
	}
}

// wide is how many characters a line of running words may have.
const wide = 88

func (t *table) wrap(text, indent, further string) {
	line := indent
	for _, word := range strings.Fields(text) {
		if strings.TrimSpace(line) != "" && len([]rune(line))+len([]rune(word)) >= wide {
			t.line("%s", line)
			line = further
		}
		if strings.TrimSpace(line) != "" {
			line += " "
		}
		line += word
	}
	t.line("%s", line)
}

func (t *table) web(w planning.Web, o planning.Opened, p planning.Plan) {
	t.line("%s (%s)", wording.WebName(w.Web), wording.WebDigits(w.Web))
	for _, b := range o.Begun.Proposals {
		if b.Web == w.Web {
			t.proposal(b.Proposal)
		}
	}
	for i, a := range w.Alternatives {
		name := a.Name
		if i == w.Chosen {
			name += " (chosen)"
		}
		t.line("")
		t.line("  %s", name)
		t.alternative(a, p)
	}
	if w.ThirdsRule != "" {
		t.list("Flap", []string{wording.Sentence(w.ThirdsRule)})
	}
	if w.Join != nil {
		t.rows([][2]string{{"join", wording.Millimetres(w.Join.Length)}})
	}
	if w.Skin != nil {
		t.skin(*w.Skin)
	}
	t.list("Remarks", w.Remarks)
}

func (t *table) proposal(p plan.Proposal) {
	t.line("  proposed from: %v", p.Origin)
	rows := [][2]string{{"index, as far as that tells", wording.Ratio(p.Index)}}
	if p.Arch.Shape != arch.V {
		rows = append(rows, [2]string{"span, as far as that tells", wording.Millimetres(p.Span)})
	}
	t.rows(append(rows, [2]string{"place of the crown", fmt.Sprintf("± %.1f mm", float64(p.CrownU95))}))
	t.list("Reasons", p.Reasons)
	t.list("Look at again", p.Warnings)
}

func (t *table) alternative(a planning.Alternative, p planning.Plan) {
	if a.Arch != nil {
		t.arch(*a.Arch, p)
	}
	if f := a.Flap; f != nil {
		t.rows([][2]string{
			{fmt.Sprintf("%v flap, length", f.Flap.Kind), wording.Millimetres(f.Figures.Length)},
			{"  width at base, middle, tip", wording.Millimetres(f.Figures.Base) + ", " + wording.Millimetres(f.Figures.Middle) + ", " + wording.Millimetres(f.Figures.Tip)},
			{"  area", centimetres(f.Figures.Area)},
		})
		t.list("Flap", f.Figures.Notes)
	}
	t.cut("dorsal", a.Dorsal)
	t.cut("palmar", a.Palmar)
	if a.Dorsal != nil || a.Palmar != nil {
		t.list("Zigzag", append([]string{zigzag.Trade}, a.Notes...))
	}
}

func (t *table) arch(a planning.Arch, p planning.Plan) {
	f := a.Figures
	rows := [][2]string{{"shape", a.Arch.Shape.String()}}
	rows = add(rows, wording.IndexName(p.View), f.Index, wording.Ratio)
	rows = add(rows, wording.Depth, f.Depth, wording.Millimetres)
	rows = add(rows, wording.Span, f.Span, wording.Millimetres)
	rows = add(rows, wording.Rise, f.Rise, wording.Millimetres)
	rows = add(rows, wording.RiseToSpan, f.RiseToSpan, wording.Ratio)
	rows = add(rows, wording.Flare, f.Flare, wording.Degrees)
	t.rows(add(rows, wording.CrownAngle, f.CrownAngle, wording.Degrees))
	var sentences []string
	for _, v := range f.Verdicts {
		sentences = append(sentences, verdict(v))
	}
	for _, s := range f.Patterns {
		sentences = append(sentences, pattern(s))
	}
	t.list("Verdicts", sentences)
	t.list("Remarks", f.Remarks)
}

func add[Q plane.Measured](rows [][2]string, name string, e *plane.Estimate[Q], write func(plane.Estimate[Q]) string) [][2]string {
	if e == nil {
		return rows
	}
	return append(rows, [2]string{name, write(*e)})
}

func verdict(v norms.Verdict) string {
	if v.Finding == norms.NoDifference || v.Finding == norms.WithinLimits {
		return fmt.Sprintf("%s %s; nearest limit %s", v.Figure, v.Finding, wording.Limit(v))
	}
	certain := ""
	if v.Certain {
		certain = " (certain)"
	}
	return fmt.Sprintf("%s %s%s; limit %s", v.Figure, wording.Verdict(v), certain, wording.Limit(v))
}

func pattern(p plan.Pattern) string {
	word := "as"
	if !p.Agrees {
		word = "not as"
	}
	if !p.Sure {
		word = "perhaps " + word
	}
	return fmt.Sprintf("%s %s %q has it (%s)", p.Figure, word, p.Says, p.Source)
}

func (t *table) cut(face string, c *planning.Cut) {
	if c == nil {
		return
	}
	var tips, limbs []string
	for _, f := range c.Figures.Flaps {
		tips = append(tips, wording.Degrees(f.TipAngle))
	}
	for _, l := range c.Figures.Limbs {
		limbs = append(limbs, wording.Degrees(l.Obliquity))
	}
	t.rows([][2]string{
		{face + " zigzag, tips", strings.Join(tips, ", ")},
		{"  limbs to the creases", strings.Join(limbs, ", ")},
	})
	t.list("Caution", c.Figures.Notes)
}

func (t *table) skin(s planning.Skin) {
	b := s.Budget
	t.rows([][2]string{
		{"girths", wording.Millimetres(b.Girths.Radial) + " and " + wording.Millimetres(b.Girths.Ulnar)},
		{"skin apart to skin joined", wording.Ratio(b.Ratio)},
		{"short per mm of join", wording.Millimetres(b.PerMillimetre)},
		{"short in all", centimetres(b.Shortage)},
		{"brought by the flap", centimetres(b.Flaps)},
		{"graft", centimetres(b.Graft)},
	})
	for _, p := range s.Patches {
		t.rows([][2]string{{"patch, " + digitName(p) + " digit", fmt.Sprintf("%.1f x %.1f mm", float64(p.Width), float64(p.Length))}})
	}
	if len(s.Patches) > 0 {
		t.list("Patches", []string{skinbudget.TemplateNote})
	}
	t.list("Skin", s.Remarks)
}

// centimetres writes an area in square centimetres: "3.1 ± 0.2 cm²".
func centimetres(e plane.Estimate[plane.SquareMillimetre]) string {
	v, u := wording.Rounded(float64(e.Value)/100, float64(e.U95)/100, 1)
	if u == "" {
		return "not known"
	}
	return v + " ± " + u + " cm²"
}
