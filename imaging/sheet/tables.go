package sheet

import (
	"fmt"
	"strings"

	"ogive/geometry/flap"
	"ogive/geometry/norms"
	"ogive/geometry/plan"
	"ogive/geometry/plane"
	"ogive/geometry/zigzag"
	"ogive/imaging/planning"
	"ogive/imaging/wording"
)

// figures adds the figures of an alternative: the main ones below the
// photograph, all of them in a table of their own.
func (g *gatherer) figures(title string, w planning.Web, a planning.Alternative) {
	var main, rest []Row
	if a.Arch != nil {
		m, r := archRows(a.Arch.Figures, g)
		main, rest = append(main, m...), append(rest, r...)
		g.patterns(a.Arch.Figures)
	}
	if a.Flap != nil {
		m, r := flapRows(a.Flap)
		main, rest = append(main, m...), append(rest, r...)
		g.note(a.Flap.Figures.Notes...)
	}
	for _, face := range []struct {
		cut  *planning.Cut
		kind Kind
	}{{a.Dorsal, DorsalZigzag}, {a.Palmar, PalmarZigzag}} {
		if face.cut != nil {
			rest = append(rest, zigzagRows(face.kind, face.cut)...)
			g.note(zigzag.Trade)
			for _, n := range face.cut.Figures.Notes {
				g.note(wording.Sentence(face.kind.String()) + ": " + n)
			}
		}
	}
	g.note(a.Notes...)
	if w.Join != nil {
		rest = append(rest, Row{Name: "length of the join", Value: wording.Millimetres(w.Join.Length)})
	}
	if len(main)+len(rest) > 0 {
		g.content.Tables = append(g.content.Tables, Table{Title: title, Rows: append(append([]Row{}, main...), rest...)})
	}
	if len(main) > 0 {
		g.content.Main = append(g.content.Main, Table{Title: title, Rows: main})
	}
}

func archRows(f plan.Figures, g *gatherer) (main, rest []Row) {
	if f.Index != nil {
		main = append(main, Row{Name: wording.IndexName(g.plan.View), Value: wording.Ratio(*f.Index), Note: verdicts(f, "index")})
	}
	if f.Depth != nil {
		main = append(main, Row{Name: wording.Depth, Value: wording.Millimetres(*f.Depth), Note: verdicts(f, wording.Depth)})
	}
	if f.Span != nil {
		main = append(main, Row{Name: wording.Span, Value: wording.Millimetres(*f.Span), Note: verdicts(f, wording.Span)})
	}
	if f.CrownAngle != nil {
		main = append(main, Row{Name: wording.CrownAngle, Value: wording.Degrees(*f.CrownAngle)})
	}
	if f.Rise != nil {
		rest = append(rest, Row{Name: wording.Rise, Value: wording.Millimetres(*f.Rise)})
	}
	if f.RiseToSpan != nil {
		rest = append(rest, Row{Name: wording.RiseToSpan, Value: wording.Ratio(*f.RiseToSpan)})
	}
	if f.Flare != nil {
		rest = append(rest, Row{Name: wording.Flare, Value: wording.Degrees(*f.Flare)})
	}
	g.note(f.Remarks...)
	return main, rest
}

// verdicts are those on a figure, each with its limit.
func verdicts(f plan.Figures, figure string) string {
	var out []string
	for _, v := range f.Verdicts {
		if v.Figure == figure {
			out = append(out, verdict(v))
		}
	}
	return strings.Join(out, "; ")
}

// verdict says in plain words what was found and beside what: "no difference
// that can be told; other hand: 0.56". That no difference can be told is a doubt
// already and is not doubted once more.
func verdict(v norms.Verdict) string {
	found := wording.Verdict(v)
	if v.Finding == norms.NoDifference {
		found = wording.Term(v.Finding)
	}
	limit, _, _ := strings.Cut(wording.Limit(v), " (")
	return found + "; " + wording.Term(v.Against) + ": " + limit
}

func (g *gatherer) patterns(f plan.Figures) {
	for _, p := range f.Patterns {
		fits := "the plan differs from it"
		switch {
		case !p.Sure:
			fits = "the plan can't be told from it"
		case p.Agrees:
			fits = "the plan is like that"
		}
		g.note(fmt.Sprintf("%s, %s: “%s” (%s); %s.", wording.WebName(f.Web), p.Figure, p.Says, p.Source, fits))
		g.source(wording.Sentence(p.Figure) + " of webs: " + p.Source)
	}
}

func flapRows(f *planning.Flap) (main, rest []Row) {
	e, kind := f.Figures, f.Flap.Kind.String()+" flap, "
	main = []Row{
		{Name: kind + "length", Value: wording.Millimetres(e.Length)},
		{Name: kind + "width at base", Value: wording.Millimetres(e.Base), Note: "length to base " + wording.Ratio(e.LengthToBase)},
		{Name: kind + "width at tip", Value: wording.Millimetres(e.Tip)},
	}
	return main, []Row{
		{Name: kind + "width at half length", Value: wording.Millimetres(e.Middle)},
		{Name: kind + "area", Value: wording.SquareMillimetres(e.Area), Note: squareCentimetres(e.Area)},
	}
}

// squareCentimetres writes an area as grafts are spoken of: "2.2 ± 0.4 cm²".
func squareCentimetres(e plane.Estimate[plane.SquareMillimetre]) string {
	v, u := wording.Rounded(float64(e.Value)/100, float64(e.U95)/100, 2)
	if u == "" {
		return ""
	}
	return v + " ± " + u + " cm²"
}

func zigzagRows(kind Kind, c *planning.Cut) []Row {
	var limbs, tips []plane.Estimate[plane.Angle]
	for _, l := range c.Figures.Limbs {
		limbs = append(limbs, l.Obliquity)
	}
	for _, f := range c.Figures.Flaps {
		tips = append(tips, f.TipAngle)
	}
	name := kind.String() + ": "
	rows := []Row{{Name: name + "flaps", Value: digits(len(tips)), Note: fmt.Sprintf("reach %.1f mm, incision %s", float64(c.Zigzag.Reach()), wording.Millimetres(c.Figures.Length))}}
	if len(tips) > 0 {
		rows = append(rows, Row{Name: name + "tip angles", Value: between(tips)})
	}
	return append(rows, Row{Name: name + "limbs to the creases", Value: between(limbs), Note: "0° across the finger, 90° along it"})
}

// between is the least and the greatest of some angles.
func between(list []plane.Estimate[plane.Angle]) string {
	if len(list) == 0 {
		return ""
	}
	least, most := list[0], list[0]
	for _, e := range list {
		if e.Value < least.Value {
			least = e
		}
		if e.Value > most.Value {
			most = e
		}
	}
	if most.Value-least.Value < plane.Degrees(1) {
		most.U95 = max(most.U95, least.U95)
		return wording.Degrees(most)
	}
	return wording.Degrees(least) + " to " + wording.Degrees(most)
}

// skin adds the skin budget of a web and its graft.
func (g *gatherer) skin(w planning.Web) {
	b := w.Skin.Budget
	t := Table{Title: wording.WebName(w.Web) + ", skin", Rows: []Row{
		{Name: "girths", Value: wording.Millimetres(b.Girths.Radial), Note: "and " + wording.Millimetres(b.Girths.Ulnar) + "; radial digit first"},
		{Name: "skin short for each mm of join", Value: wording.Millimetres(b.PerMillimetre), Note: "girths over joined outline " + wording.Ratio(b.Ratio)},
		{Name: "skin short in all", Value: squareCentimetres(b.Shortage)},
		{Name: "brought by the flap", Value: squareCentimetres(b.Flaps)},
		{Name: "graft", Value: squareCentimetres(b.Graft)},
	}}
	g.content.Tables = append(g.content.Tables, t)
	graft := Row{Name: "graft", Value: squareCentimetres(b.Graft), Note: "skin short in all " + squareCentimetres(b.Shortage)}
	if last := len(g.content.Main) - 1; last >= 0 {
		g.content.Main[last].Rows = append(g.content.Main[last].Rows, graft)
	}
	g.note(w.Skin.Remarks...)
	g.graftPieces(w)
}

// sources adds those of what the sheet shows, beyond what was added on the way.
func (g *gatherer) sources() {
	for _, b := range g.here.Table.Bands {
		if b.Figure == "index" && b.View == g.plan.View {
			for _, id := range b.Rows {
				if row, ok := g.here.Table.Row(id); ok {
					g.source("Limits of the index: " + row.Source)
				}
			}
		}
	}
	g.source("Web index: Tonkin MA et al. J Hand Surg Am 2015;40:456-61")
	for _, w := range g.plan.Webs {
		for _, a := range w.Alternatives {
			if row, ok := g.here.Table.Row("dorsal-flap-length"); ok && a.Flap != nil && a.Flap.Flap.Kind == flap.DorsalFlap {
				g.source("Length of a dorsal flap: " + row.Source)
			}
			if a.Dorsal != nil || a.Palmar != nil {
				g.source("Zigzags, tips below 30°: common practice, no source")
			}
		}
		if w.Skin != nil {
			g.source("Skin for two equal digits, about 22 per cent more than there is: widely quoted from Eaton CJ, Lister GD. Syndactyly. Hand Clin 1990;6:555-75 (from memory)")
		}
	}
	g.source("Uncertainty, at 95 per cent: JCGM 100:2008 and JCGM 101:2008")
}
