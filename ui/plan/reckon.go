package plan

import (
	"reflect"
	"slices"

	"ogive/imaging/planfile"
	"ogive/imaging/planning"
)

// reckon brings what follows from the plan up to date. A web that is as it was
// when it was reckoned last is not reckoned anew.
func (r *Room) reckon() {
	old := r.plan
	bare := r.file
	bare.Webs = nil
	r.plan = planning.Of(bare, r.model.Here, r.model.Other)
	r.plan.File = cloned(r.file)
	for _, w := range r.file.Webs {
		r.plan.Webs = append(r.plan.Webs, r.reckoned(w, old))
	}
}

// reckoned is what follows from a web; an alternative of it that is as it was is
// not reckoned anew.
func (r *Room) reckoned(w planfile.Web, old planning.Plan) planning.Web {
	was := old.File.Web(w.Web)
	at := slices.IndexFunc(old.Webs, func(p planning.Web) bool { return p.Web == w.Web })
	switch {
	case was == nil || at < 0 || !reflect.DeepEqual(was.Join, w.Join):
		return r.follows(w)
	case reflect.DeepEqual(*was, w):
		return old.Webs[at]
	}
	lean, same := clonedWeb(w), map[int]int{}
	for i, a := range w.Alternatives {
		k := slices.IndexFunc(was.Alternatives, func(b planfile.Alternative) bool { return reflect.DeepEqual(a, b) })
		if k >= 0 && k < len(old.Webs[at].Alternatives) {
			same[i] = k
			lean.Alternatives[i].Arch, lean.Alternatives[i].Zigzag = nil, nil // the skin needs the flap
		}
	}
	out := r.follows(lean)
	for i, k := range same {
		out.Alternatives[i] = old.Webs[at].Alternatives[k]
	}
	return out
}

// follows is what follows from one web.
func (r *Room) follows(w planfile.Web) planning.Web {
	one := planfile.File{Photograph: r.file.Photograph, Side: r.file.Side, View: r.file.View, Webs: []planfile.Web{w}}
	return planning.Of(one, r.model.Here, r.model.Other).Webs[0]
}

// reckonHeld brings up to date what a dragged handle changes: one part of the
// alternative in hand.
func (r *Room) reckonHeld() {
	kept, p := r.kept(), r.planned()
	if kept == nil || p == nil || r.alternative >= min(len(p.Alternatives), len(kept.Alternatives)) {
		return
	}
	if was := r.plan.File.Web(r.web); was != nil {
		// What is being dragged is to be reckoned whole when it is dropped.
		was.Join, was.Alternatives = another(kept.Join), slices.Clone(was.Alternatives)
		if r.column.tab == zigzagTab || r.alternative >= len(was.Alternatives) {
			was.Join = nil
		} else {
			was.Alternatives[r.alternative] = planfile.Alternative{}
		}
	}
	a, now := kept.Alternatives[r.alternative], &p.Alternatives[r.alternative]
	one := planfile.Web{Web: kept.Web, Join: kept.Join, Alternatives: []planfile.Alternative{{Name: a.Name}}}
	part := &one.Alternatives[0]
	switch r.column.tab {
	case archTab:
		part.Arch = a.Arch
		now.Arch = r.follows(one).Alternatives[0].Arch
	case flapTab:
		part.Flap = a.Flap
		now.Flap = r.follows(one).Alternatives[0].Flap
	case zigzagTab:
		part.Zigzag = a.Zigzag
		got := r.follows(one)
		fresh := got.Alternatives[0]
		now.Dorsal, now.Palmar, now.Notes, p.Join = fresh.Dorsal, fresh.Palmar, fresh.Notes, got.Join
	}
}
