// Package comparison holds one photograph of a hand against another: the
// operated hand beside the other one, or the same hand at two sittings.
//
//	c, err := comparison.Compare(operated, other, table.Span)
//	c.Webs[0].Index    // operated minus other, with its uncertainty
//	c.Webs[0].Ghost    // the other hand's arch on the operated one
//	c.RegistrationRMS  // how well the landmarks of the two agree, mm
//	c.Reminders        // digits larger than their fellows, to look at again
//
// The errors of two photographs are independent, so the expanded uncertainty of
// a difference is that of both figures in quadrature (JCGM 100:2008, 5.1.2).
// The index needs no scale; a depth or a span carries the errors of both scales.
package comparison

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/geometry/scale"
)

// Comparison is what the two photographs say together.
type Comparison struct {
	Operated, Other hand.Side
	View            hand.View
	// RegistrationRMS is over the landmarks of all webs.
	// It is NaN where no web can be registered.
	RegistrationRMS plane.Millimetre
	Webs            []Web
	// Sizes are the lengths and widths of the digits beside the webs.
	Sizes []Size
	// Reminders are sentences on digits that differ in size: overgrowth is to be
	// thought of, or growth between two sittings.
	Reminders []string
	// Warnings concern the comparison as a whole; each is a sentence.
	Warnings []string
}

// TwoSittings reports whether both photographs show the same hand.
func (c Comparison) TwoSittings() bool { return c.Operated == c.Other }

// Web is one web that both photographs show. A difference is operated minus
// other, nil where one of the two figures is not known.
type Web struct {
	Web        hand.Web
	Index      *plane.Estimate[plane.Ratio]
	Depth      *plane.Estimate[plane.Millimetre]
	Span       *plane.Estimate[plane.Millimetre] // nil beside a V, which has none
	CrownAngle *plane.Estimate[plane.Angle]
	// Verdicts judge each figure of the operated web beside that of the other.
	Verdicts []norms.Verdict
	// Ghost is nil where the two can't be registered.
	Ghost *Ghost
	// Overlay is both arches in the web's own frame, nil as Ghost is.
	Overlay *Overlay
	// Warnings say what is missing, each a sentence.
	Warnings []string
}

// Why two photographs can't be compared.
var (
	ErrViews = errors.New("view")
	ErrWebs  = errors.New("webs")
)

// Compare compares every web that was read on both photographs. It fails with
// ErrViews if the two show different views, and with ErrWebs if they have no web
// in common.
func Compare(operated, other Photograph, tolerance norms.SpanTolerance) (Comparison, error) {
	a, b := operated.Reading, other.Reading
	if a.View != b.View {
		return Comparison{}, fmt.Errorf("%w: one photograph shows the %v view, the other the %v view; compare photographs of the same view", ErrViews, a.View, b.View)
	}
	c := Comparison{Operated: a.Side, Other: b.Side, View: a.View}
	p := pair{operated: operated.scaled(), other: other.scaled(), tolerance: tolerance, mirrored: a.Side != b.Side}
	for _, w := range a.Webs {
		for _, o := range b.Webs {
			if w.Web == o.Web && readable(w) && readable(o) {
				c.Webs = append(c.Webs, p.web(w, o))
			}
		}
	}
	if len(c.Webs) == 0 {
		return Comparison{}, fmt.Errorf("%w: the two photographs have no web in common; mark the same web on both", ErrWebs)
	}
	c.RegistrationRMS = p.rms()
	if operated.Scale.Best == (scale.Map{}) || other.Scale.Best == (scale.Map{}) {
		c.Warnings = append(c.Warnings, "The scale of one of the photographs is known by the size of a pixel only: the hands are laid over each other without regard to tilt.")
	}
	c.Sizes = p.sizes(c.Webs)
	c.Reminders = p.remind(c.Sizes)
	if !p.mirrored && grown(c.Sizes) {
		c.leaveSpans()
	}
	return c, nil
}

// leaveSpans takes the verdicts on spans back: of a hand that has grown a span
// tells the growth as much as the web.
func (c *Comparison) leaveSpans() {
	for i := range c.Webs {
		c.Webs[i].Verdicts = slices.DeleteFunc(c.Webs[i].Verdicts, func(v norms.Verdict) bool { return v.Figure == "span" })
	}
}

// readable reports whether anything but a slope was read of w.
func readable(w reading.Web) bool { return w.Index != nil || w.Span != nil }

// pair is the two photographs and what their registrations leave over.
type pair struct {
	operated, other Photograph
	tolerance       norms.SpanTolerance
	mirrored        bool
	squares         float64 // of the distances between landmarks, mm²
	landmarks       int
}

func (p *pair) fellow() string {
	if p.mirrored {
		return norms.OtherHand
	}
	return norms.OtherSitting
}

func (p *pair) web(w, o reading.Web) Web {
	out := Web{
		Web:   w.Web,
		Index: difference(w.Index, o.Index), Depth: difference(w.Depth, o.Depth),
		CrownAngle: difference(w.CrownAngle, o.CrownAngle),
	}
	spanned := w.Shape != arch.V && o.Shape != arch.V
	if spanned {
		out.Span = difference(w.Span, o.Span)
	} else {
		out.warn("No difference in span: a V has no span.")
	}
	if w.Shape == 0 || o.Shape == 0 {
		out.warn("The border is not traced on both photographs: only index and depth of the clicked crown are compared, and no verdict is certain.")
	}
	p.judge(&out, w, o)
	if err := p.register(&out, w, o); err != nil {
		out.warn("No registration: " + err.Error() + ".")
	}
	return out
}

// judge adds the verdicts. Millimetres of two sittings tell growth as much as
// the web, so the depth is then left to the index.
func (p *pair) judge(out *Web, w, o reading.Web) {
	if out.Index != nil {
		if phalanx, ok := p.operated.phalanx(w.Web); ok {
			out.Verdicts = append(out.Verdicts, p.tolerance.JudgeIndexAgainst(p.fellow(), *w.Index, *o.Index, phalanx))
		}
	}
	if out.Depth != nil && p.mirrored {
		out.Verdicts = append(out.Verdicts, p.tolerance.JudgeDepthAgainst(p.fellow(), *w.Depth, *o.Depth))
	}
	if out.Span != nil {
		out.Verdicts = append(out.Verdicts, p.tolerance.JudgeSpanAgainst(p.fellow(), *w.Span, *o.Span))
	}
	for i := range out.Verdicts {
		out.Verdicts[i].Certain = out.Verdicts[i].Certain && w.Shape != 0 && o.Shape != 0
	}
}

func (w *Web) warn(text string) { w.Warnings = append(w.Warnings, text) }

// difference is a minus b.
func difference[Q plane.Measured](a, b *plane.Estimate[Q]) *plane.Estimate[Q] {
	if a == nil || b == nil {
		return nil
	}
	return &plane.Estimate[Q]{Value: a.Value - b.Value, U95: Q(math.Hypot(float64(a.U95), float64(b.U95)))}
}
