package plan

import (
	"fmt"
	"math"
	"strings"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/geometry/webframe"
)

// FromHand proposes an arch from the free webs of the same hand, else from the
// table alone. Index: the mean of the free webs, within the published band.
// Span: the mean of theirs, each in proportion to the distance between the MCP
// joints beside it. The third web stays the narrowest and most distal of second
// to fourth (common practice, no source). It fails if a joint of the web is
// missing, and says that the arch is to be placed by hand then.
func FromHand(g Ground, w hand.Web, b Beside) (Proposal, error) {
	frame, ok := g.Frame(w)
	if !ok {
		return Proposal{}, fmt.Errorf("joints: no arch can be proposed for the %v: %s Mark them, or place the arch by hand", w, g.lacking(w))
	}
	fellows := fellowsOf(g, w, b)
	p := Proposal{Origin: FellowWebs}
	if len(fellows) == 0 {
		p.Origin = TableOnly
		p.Reasons = append(p.Reasons, "No free web of this hand was read and no other hand is given.")
	}
	p.Index, p.Span = p.indexFrom(g, fellows, b.Table), p.spanFrom(frame, fellows)
	p.Index.Value, p.Span.Value = thirdOrder(w, fellows, p.Index.Value, p.Span.Value)
	p.keepWithin(g, b.Table)
	form := p.formFrom(w, fellows)
	form.Span = p.Span.Value
	p.Arch = form.Placed(frame.Middle(p.Index.Value), frame.Axis())
	p.CrownU95 = plane.Millimetre(p.Index.U95) * frame.Phalanx()
	if w == hand.FirstWeb {
		p.Warnings = append(p.Warnings, "The sources speak of the webs between fingers; the first web is another matter. Take this as a place to begin dragging from.")
	}
	return p, nil
}

// fellow is a free web of the same hand.
type fellow struct {
	web   hand.Web
	index plane.Ratio
	u95   plane.Ratio
	span  plane.Millimetre
	apart plane.Millimetre // between the MCP joints beside it
	form  Form
}

func fellowsOf(g Ground, w hand.Web, b Beside) []fellow {
	var out []fellow
	for _, o := range b.Webs {
		if o.Web == w || o.Web == hand.FirstWeb || o.Index == nil || o.Span == nil || o.Shape == arch.V {
			continue
		}
		frame, ok := g.Frame(o.Web)
		a, fitted := ArchOf(o, g.Fit.Best)
		if ok && fitted && frame.Apart() > 0 {
			out = append(out, fellow{o.Web, o.Index.Value, o.Index.U95, o.Span.Value, frame.Apart(), FormOf(a)})
		}
	}
	return out
}

// Doubts of proposals, all this project's own: no source tells how far the webs
// of one hand differ.
const (
	// indexDoubt is the least U95 of an index taken from other webs.
	indexDoubt plane.Ratio = 0.08
	// spanDoubt is the least U95 of a span taken from other webs, as a part of it.
	spanDoubt = 0.2
	// tableSpan is the span in parts of the distance between the MCP joints where
	// no web tells it, tableSpanDoubt the U95 of that part.
	tableSpan, tableSpanDoubt = 0.5, 0.25
	// tableFlare is the flare where no web tells it.
	tableFlare = plane.Angle(10 * math.Pi / 180)
)

// indexFrom is the mean index of the fellows within the band, or the middle of
// the band.
func (p *Proposal) indexFrom(g Ground, fellows []fellow, table norms.Table) plane.Estimate[plane.Ratio] {
	band, ok := table.Band("index", g.Marks.View)
	if len(fellows) == 0 {
		return p.indexFromTable(band, ok)
	}
	sum, worst := plane.Ratio(0), indexDoubt
	for _, f := range fellows {
		sum += f.index / plane.Ratio(len(fellows))
	}
	for _, f := range fellows {
		worst = max(worst, f.u95+plane.Ratio(math.Abs(float64(f.index-sum))))
	}
	p.Reasons = append(p.Reasons, fmt.Sprintf("Index from the %s.", namesOf(fellows)))
	return plane.Estimate[plane.Ratio]{Value: sum, U95: worst}
}

func (p *Proposal) indexFromTable(band norms.Band, ok bool) plane.Estimate[plane.Ratio] {
	if !ok {
		p.Warnings = append(p.Warnings, "No source gives an index in this view: the arch stands half way, only as a place to begin dragging from.")
		return plane.Estimate[plane.Ratio]{Value: 0.5, U95: 0.5}
	}
	p.Reasons = append(p.Reasons, fmt.Sprintf("Index from the middle of the band %.2f to %.2f (%s).", band.Low, band.High, band.Against))
	return plane.Estimate[plane.Ratio]{Value: plane.Ratio(band.Low+band.High) / 2, U95: plane.Ratio(band.High-band.Low) / 2}
}

// keepWithin takes the index to the nearest limit of the published band.
func (p *Proposal) keepWithin(g Ground, table norms.Table) {
	band, ok := table.Band("index", g.Marks.View)
	kept := min(max(p.Index.Value, plane.Ratio(band.Low)), plane.Ratio(band.High))
	if ok && kept != p.Index.Value {
		p.Reasons = append(p.Reasons, fmt.Sprintf("That index, %.2f, lies outside the published band; the nearest limit is taken.", float64(p.Index.Value)))
		p.Index.Value = kept
	}
}

func namesOf(fellows []fellow) string {
	names := make([]string, len(fellows))
	for i, f := range fellows {
		names[i] = strings.TrimSuffix(f.web.String(), " web")
	}
	if len(names) == 1 {
		return names[0] + " web"
	}
	return strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1] + " webs"
}

func (p *Proposal) spanFrom(frame webframe.Frame, fellows []fellow) plane.Estimate[plane.Millimetre] {
	apart := frame.Apart()
	if len(fellows) == 0 {
		p.Warnings = append(p.Warnings, "No norm for spans is published: half the distance between the MCP joints is taken, only as a place to begin dragging from.")
		return plane.Estimate[plane.Millimetre]{Value: tableSpan * apart, U95: tableSpanDoubt * apart}
	}
	sum := plane.Millimetre(0)
	for _, f := range fellows {
		sum += f.span / f.apart * apart / plane.Millimetre(len(fellows))
	}
	worst := spanDoubt * sum
	for _, f := range fellows {
		worst = max(worst, plane.Millimetre(math.Abs(float64(f.span/f.apart*apart-sum))))
	}
	p.Reasons = append(p.Reasons, "Span from the same, in proportion to the distance between the MCP joints.")
	return plane.Estimate[plane.Millimetre]{Value: sum, U95: worst}
}

// formFrom is the form of a fellow of the same kind: second and fourth web are
// alike, the third stands apart. Else it is gothic, half way between the sources.
func (p *Proposal) formFrom(w hand.Web, fellows []fellow) Form {
	form := Form{Shape: arch.Gothic, Turn: equilateral, Flare: tableFlare}
	flare := plane.Angle(0)
	for _, f := range fellows {
		flare += f.form.Flare / plane.Angle(len(fellows))
	}
	if len(fellows) > 0 {
		form.Flare = flare
	}
	for _, f := range fellows {
		if (f.web == hand.ThirdWeb) == (w == hand.ThirdWeb) {
			p.Reasons = append(p.Reasons, fmt.Sprintf("Shape from the %v.", f.web))
			f.form.Flare = form.Flare
			return f.form
		}
	}
	p.Reasons = append(p.Reasons, "Shape gothic, half way between the sources, which differ.")
	return form
}

// Propose is the surest proposal there is: from the other hand if it is given
// and can be laid over this one, else from this hand or the table. Why the other
// hand was not used is among the warnings.
func Propose(g Ground, w hand.Web, b Beside, other *Fellow) (Proposal, error) {
	var passed []string
	if other != nil {
		p, err := FromOtherHand(g, w, *other)
		if err == nil {
			return p, nil
		}
		passed = append(passed, "The other hand was not used: "+err.Error()+".")
	}
	p, err := FromHand(g, w, b)
	p.Warnings = append(passed, p.Warnings...)
	return p, err
}
