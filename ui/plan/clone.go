package plan

import (
	"slices"

	"ogive/imaging/planfile"
)

// cloned is f in a copy that shares nothing with it.
func cloned(f planfile.File) planfile.File {
	f.Webs = slices.Clone(f.Webs)
	for i := range f.Webs {
		f.Webs[i] = clonedWeb(f.Webs[i])
	}
	f.Donors, f.Patches = slices.Clone(f.Donors), slices.Clone(f.Patches)
	f.Family.Findings, f.Family.Texts = slices.Clone(f.Family.Findings), slices.Clone(f.Family.Texts)
	return f
}

func clonedWeb(w planfile.Web) planfile.Web {
	w.Alternatives = slices.Clone(w.Alternatives)
	for i := range w.Alternatives {
		w.Alternatives[i] = clonedAlternative(w.Alternatives[i])
	}
	w.Join, w.Girths = another(w.Join), another(w.Girths)
	return w
}

func clonedAlternative(a planfile.Alternative) planfile.Alternative {
	a.Arch = another(a.Arch)
	if a.Flap != nil {
		a.Flap = &planfile.Flap{Kind: a.Flap.Kind, Outline: slices.Clone(a.Flap.Outline)}
	}
	if a.Zigzag != nil {
		a.Zigzag = &planfile.Zigzag{Dorsal: slices.Clone(a.Zigzag.Dorsal), Palmar: slices.Clone(a.Zigzag.Palmar)}
	}
	return a
}

// another is a copy of what p points to, nil of nil.
func another[T any](p *T) *T {
	if p == nil {
		return nil
	}
	v := *p
	return &v
}
