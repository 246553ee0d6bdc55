package audit

import (
	"cmp"
	"math"
	"slices"

	"ogive/geometry/arch"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
)

// Difference is a web that was joined beside the same web of the other hand, at
// the same sitting in the same view: this one minus the other.
type Difference struct {
	Other      *Row
	Index      *plane.Estimate[plane.Ratio]
	Depth      *plane.Estimate[plane.Millimetre]
	Span       *plane.Estimate[plane.Millimetre] // nil beside a V, which has none
	CrownAngle *plane.Estimate[plane.Angle]
	Verdicts   []norms.Verdict
}

// compare holds every web that was joined against the other hand: as the same
// observer marked it, else the first who did. The figures are those of package
// comparison, which besides lays the hands over each other and measures digits:
// far too long for a whole casebook.
func (c *chart) compare(tolerance norms.SpanTolerance) {
	for _, r := range c.rows {
		if r.Join == nil || r.Read == nil {
			continue
		}
		others := slices.DeleteFunc(slices.Clone(c.rows), func(o *Row) bool {
			return o.Read == nil || o.Sitting.ID != r.Sitting.ID || o.Web != r.Web || o.View != r.View || o.Hand != r.Hand.Other() || !readable(o.Read)
		})
		if len(others) == 0 || !readable(r.Read) {
			continue
		}
		slices.SortStableFunc(others, func(a, b *Row) int {
			return cmp.Or(cmp.Compare(stranger(a, r), stranger(b, r)), cmp.Compare(a.Observer, b.Observer), cmp.Compare(a.Photograph.ID, b.Photograph.ID))
		})
		r.Other = differ(r, others[0], tolerance)
	}
}

func readable(w *reading.Web) bool { return w.Index != nil || w.Span != nil }

func stranger(a, b *Row) int {
	if a.Observer == b.Observer {
		return 0
	}
	return 1
}

func differ(r, other *Row, tolerance norms.SpanTolerance) *Difference {
	w, o := r.Read, other.Read
	d := &Difference{
		Other: other,
		Index: minus(w.Index, o.Index), Depth: minus(w.Depth, o.Depth), CrownAngle: minus(w.CrownAngle, o.CrownAngle),
	}
	if w.Shape != arch.V && o.Shape != arch.V {
		d.Span = minus(w.Span, o.Span)
	}
	if phalanx := r.Kept.Phalanx[r.Web]; d.Index != nil && phalanx > 0 {
		d.Verdicts = append(d.Verdicts, tolerance.JudgeIndexAgainst(norms.OtherHand, *w.Index, *o.Index, phalanx))
	}
	if d.Depth != nil {
		d.Verdicts = append(d.Verdicts, tolerance.JudgeDepthAgainst(norms.OtherHand, *w.Depth, *o.Depth))
	}
	if d.Span != nil {
		d.Verdicts = append(d.Verdicts, tolerance.JudgeSpanAgainst(norms.OtherHand, *w.Span, *o.Span))
	}
	for i := range d.Verdicts {
		d.Verdicts[i].Certain = d.Verdicts[i].Certain && w.Shape != 0 && o.Shape != 0
	}
	return d
}

// minus is a minus b; the errors of two photographs are independent (JCGM
// 100:2008, 5.1.2).
func minus[Q plane.Measured](a, b *plane.Estimate[Q]) *plane.Estimate[Q] {
	if a == nil || b == nil {
		return nil
	}
	return &plane.Estimate[Q]{Value: a.Value - b.Value, U95: Q(math.Hypot(float64(a.U95), float64(b.U95)))}
}
