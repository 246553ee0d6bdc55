package written

import (
	"ogive/geometry/arch"
	"ogive/geometry/norms"
	"ogive/geometry/plan"
	"ogive/geometry/skinbudget"
	"ogive/geometry/zigzag"
	"ogive/imaging/planning"
)

func planText(path string, o planning.Opened) planForm {
	p := o.Plan()
	out := planForm{
		Figures: 1, Plan: path, Photograph: o.Here.Marks.Photograph, Side: p.Side.String(), View: p.View.String(),
		Scale: scaleForm{plain(&p.PerPixel), append([]string{}, p.Warnings...)}, Webs: []webForm{}, Notes: o.Begun.Notes,
	}
	for _, w := range p.Webs {
		form := webText(w)
		for _, b := range o.Begun.Proposals {
			if b.Web == w.Web {
				form.Proposal = proposalText(b.Proposal)
			}
		}
		out.Webs = append(out.Webs, form)
	}
	return out
}

func webText(w planning.Web) webForm {
	out := webForm{Web: int(w.Web), ThirdsRule: w.ThirdsRule, Alternatives: []alternativeForm{}, Remarks: w.Remarks}
	if w.Chosen >= 0 {
		out.Chosen = w.Alternatives[w.Chosen].Name
	}
	if w.Join != nil {
		out.Join = plain(&w.Join.Length)
	}
	for _, a := range w.Alternatives {
		out.Alternatives = append(out.Alternatives, alternativeText(a))
	}
	if w.Skin != nil {
		out.Skin = skinText(*w.Skin)
	}
	return out
}

func proposalText(p plan.Proposal) *proposalForm {
	out := &proposalForm{From: p.Origin.String(), Index: plain(&p.Index), CrownU95: number(p.CrownU95), Reasons: p.Reasons, Warnings: p.Warnings}
	if p.Arch.Shape != arch.V {
		out.Span = plain(&p.Span)
	}
	return out
}

func alternativeText(a planning.Alternative) alternativeForm {
	out := alternativeForm{Name: a.Name, Notes: a.Notes, Dorsal: cutText(a.Dorsal), Palmar: cutText(a.Palmar)}
	if a.Dorsal != nil || a.Palmar != nil {
		out.Trade = zigzag.Trade
	}
	if a.Arch != nil {
		out.Arch = archText(*a.Arch)
	}
	if f := a.Flap; f != nil {
		out.Flap = &flapForm{
			Kind: f.Flap.Kind.String(), Length: plain(&f.Figures.Length), Base: plain(&f.Figures.Base), Middle: plain(&f.Figures.Middle),
			Tip: plain(&f.Figures.Tip), LengthToBase: plain(&f.Figures.LengthToBase), Area: plain(&f.Figures.Area), Notes: f.Figures.Notes,
			Outline: places(f.Flap.Outline), Pixels: places(f.Pixels),
		}
	}
	return out
}

func archText(a planning.Arch) *archForm {
	f := a.Figures
	out := &archForm{
		Shape: a.Arch.Shape.String(), Index: plain(f.Index), Depth: plain(f.Depth), Span: plain(f.Span), Rise: plain(f.Rise), RiseToSpan: plain(f.RiseToSpan),
		Flare: degrees(f.Flare), CrownAngle: degrees(f.CrownAngle), Verdicts: []verdictForm{}, Patterns: []patternForm{}, Remarks: f.Remarks,
		Outline: places(a.Curve), Pixels: places(a.Pixels),
	}
	for _, v := range f.Verdicts {
		out.Verdicts = append(out.Verdicts, verdictText(v))
	}
	for _, p := range f.Patterns {
		out.Patterns = append(out.Patterns, patternForm(p))
	}
	return out
}

func verdictText(v norms.Verdict) verdictForm {
	return verdictForm{v.Figure, v.Finding, v.Certain, number(v.Limit), v.Against}
}

func cutText(c *planning.Cut) *cutForm {
	if c == nil {
		return nil
	}
	out := &cutForm{Length: plain(&c.Figures.Length), Limbs: []limbForm{}, Flaps: []tipForm{}, Notes: c.Figures.Notes, Outline: places(c.Zigzag.Points), Pixels: places(c.Pixels)}
	for _, l := range c.Figures.Limbs {
		out.Limbs = append(out.Limbs, limbForm{plain(&l.Length), degrees(&l.Obliquity)})
	}
	for _, f := range c.Figures.Flaps {
		out.Flaps = append(out.Flaps, tipForm{degrees(&f.TipAngle), f.Narrow})
	}
	return out
}

func skinText(s planning.Skin) *skinForm {
	b := s.Budget
	out := &skinForm{
		Radial: plain(&b.Girths.Radial), Ulnar: plain(&b.Girths.Ulnar), Joined: plain(&b.Outline), Ratio: plain(&b.Ratio), PerMillimetre: plain(&b.PerMillimetre),
		Shortage: squareCentimetres(&b.Shortage), Flaps: squareCentimetres(&b.Flaps), Graft: squareCentimetres(&b.Graft),
		Patches: []patchForm{}, Remarks: s.Remarks,
	}
	for _, p := range s.Patches {
		out.Patches = append(out.Patches, patchForm{digitName(p), number(p.Width), number(p.Length), places(p.Outline)})
	}
	return out
}

func digitName(p skinbudget.Patch) string {
	if p.Radial {
		return "radial"
	}
	return "ulnar"
}
