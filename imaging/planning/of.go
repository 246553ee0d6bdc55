package planning

import (
	"fmt"

	"ogive/geometry/drawn"
	"ogive/geometry/flap"
	"ogive/geometry/plan"
	"ogive/geometry/plane"
	"ogive/geometry/skinbudget"
	"ogive/geometry/zigzag"
	"ogive/imaging/planfile"
)

// Of is everything that follows from the plan file f on the hand here; other is
// the other hand, nil where there is no photograph of it.
func Of(f planfile.File, here Hand, other *Hand) Plan {
	p := Plan{
		File: f, Side: here.Reading.Side, View: here.Reading.View, PerPixel: here.Reading.PerPixel,
		Warnings: append([]string(nil), here.Reading.Warnings...),
	}
	if f.Side != p.Side || f.View != p.View {
		p.Warnings = append(p.Warnings, fmt.Sprintf("The plan was drawn on the %v view of a %v hand, the marks show the %v view of a %v hand: check that they belong together.", f.View, f.Side, p.View, p.Side))
	}
	if other != nil && other.Reading.View != p.View {
		p.Warnings = append(p.Warnings, "The photograph of the other hand shows another view; it is not compared with.")
	}
	for _, w := range f.Webs {
		p.Webs = append(p.Webs, here.Web(w, other))
	}
	return p
}

// Web is everything that follows from the plan of one web, which is all that a
// dragged handle changes.
func (h Hand) Web(w planfile.Web, other *Hand) Web {
	out := Web{Web: w.Web, Chosen: -1}
	if err := flap.ThirdsRule(h.Ground.Marks, h.Ground.Absent, w.Web); err != nil {
		out.ThirdsRule = err.Error() + "."
	}
	beside := h.beside(w.Web, other)
	if w.Join != nil {
		out.Join = h.joinOf(*w.Join)
	}
	chosen := w.ChosenAlternative()
	for i := range w.Alternatives {
		if &w.Alternatives[i] == chosen {
			out.Chosen = i
		}
		out.Alternatives = append(out.Alternatives, h.alternative(w, w.Alternatives[i], beside))
	}
	out.reckon(w)
	return out
}

func (h Hand) joinOf(ends [2]plane.PixelPoint) *Join {
	line := h.join(ends)
	return &Join{Line: line, Pixels: ends, Length: drawn.Figure(h.Ground.Fit, []plane.Position{line.From, line.To},
		func(ps []plane.Position) plane.Millimetre { return ps[0].Distance(ps[1]) })}
}

func (h Hand) alternative(w planfile.Web, a planfile.Alternative, beside plan.Beside) Alternative {
	out := Alternative{Name: a.Name}
	if a.Arch != nil {
		out.Arch = h.arch(w, *a.Arch, beside)
	}
	if a.Flap != nil {
		f := flap.Flap{Kind: a.Flap.Kind, Outline: h.Ground.Fit.Best.Positions(a.Flap.Outline)}
		out.Flap = &Flap{Flap: f, Pixels: a.Flap.Outline, Figures: flap.Of(f, h.Ground.Fit)}
	}
	if a.Zigzag != nil {
		out.Dorsal, out.Palmar = h.cut(w, a.Zigzag.Dorsal), h.cut(w, a.Zigzag.Palmar)
		out.noteMismatch()
	}
	return out
}

func (h Hand) arch(w planfile.Web, kept planfile.Arch, beside plan.Beside) *Arch {
	a := kept.On(h.Ground.Fit.Best)
	size := max(a.Span(), 6)
	curve := a.Polyline(size, curveStep)
	return &Arch{Arch: a, Curve: curve, Pixels: h.pixels(curve), Figures: plan.Read(a, w.Web, h.Ground, beside)}
}

// curveStep is how far apart the points of a drawn arch are, in millimetres:
// its chords leave an arc of radius 4 mm by less than 0.01 mm.
const curveStep plane.Millimetre = 0.25

// cut is the zigzag through those points; without a marked join it runs from its
// first to its last point.
func (h Hand) cut(w planfile.Web, points []plane.PixelPoint) *Cut {
	if len(points) < 2 {
		return nil
	}
	ends := [2]plane.PixelPoint{points[0], points[len(points)-1]}
	if w.Join != nil {
		ends = *w.Join
	}
	z := zigzag.Zigzag{Join: h.join(ends), Points: h.Ground.Fit.Best.Positions(points)}
	return &Cut{Zigzag: z, Pixels: points, Figures: zigzag.Of(z, h.Ground.Fit)}
}

// meeting is how far along the join a tip may lie from the bay that is to
// receive it before it is remarked (this project's own).
const meeting plane.Millimetre = 1

func (a *Alternative) noteMismatch() {
	if a.Dorsal == nil || a.Palmar == nil {
		return
	}
	if d := max(a.Dorsal.Zigzag.Mismatch(a.Palmar.Zigzag), a.Palmar.Zigzag.Mismatch(a.Dorsal.Zigzag)); d > meeting {
		a.Notes = append(a.Notes, fmt.Sprintf("A tip of one face lies %.1f mm along the join from the nearest bay of the other: the flaps do not interdigitate there.", float64(d)))
	}
}

// reckon fills the skin budget of the chosen alternative.
func (w *Web) reckon(kept planfile.Web) {
	switch {
	case kept.Girths == nil:
		return
	case w.Join == nil:
		w.Remarks = append(w.Remarks, "No skin budget: mark the two ends of the join.")
		return
	case w.Chosen < 0:
		w.Remarks = append(w.Remarks, "No skin budget: choose one of the alternatives.")
		return
	}
	girths, fromWidth := girthsOf(*kept.Girths)
	var brought plane.Estimate[plane.SquareMillimetre]
	if f := w.Alternatives[w.Chosen].Flap; f != nil {
		brought = f.Figures.Area
	}
	budget, err := skinbudget.Reckon(girths, w.Join.Length, brought)
	if err != nil {
		w.Remarks = append(w.Remarks, "No skin budget: "+err.Error()+".")
		return
	}
	patches := budget.Patches()
	w.Skin = &Skin{Budget: budget, Patches: patches, Spindle: skinbudget.SpindleFor(patches), Remarks: budget.Remarks}
	if fromWidth {
		w.Skin.Remarks = append([]string{skinbudget.WidthWarning}, w.Skin.Remarks...)
	}
}
