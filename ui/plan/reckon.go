package plan

import (
	"reflect"

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

func (r *Room) reckoned(w planfile.Web, old planning.Plan) planning.Web {
	was := old.File.Web(w.Web)
	for _, p := range old.Webs {
		if p.Web == w.Web && was != nil && reflect.DeepEqual(*was, w) {
			return p
		}
	}
	return r.follows(w)
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
	// What is being dragged is not what was reckoned whole.
	r.plan.File = planfile.File{}
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
