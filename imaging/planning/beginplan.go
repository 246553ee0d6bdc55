package planning

import (
	"errors"

	"ogive/geometry/hand"
	"ogive/geometry/plan"
	"ogive/imaging/planfile"
)

// Begun is a plan to begin with.
type Begun struct {
	File planfile.File
	// Proposals are where its arches came from, one for each web in File.
	Proposals []Proposed
	// Notes say in sentences what could not be proposed, and why, and what is to
	// be known of a join.
	Notes []string
}

// Proposed is the proposal for one web.
type Proposed struct {
	Web      hand.Web
	Proposal plan.Proposal
}

// ProposedName is the name of the alternative that Begin makes.
const ProposedName = "proposed"

// Begin is a plan to begin with: arch, flap, join and zigzags for each of the
// webs, or, where none are given, for each web that is joined: both digits have
// joints marked and no border is. It fails where there is none, and says so.
func Begin(here Hand, other *Hand, webs ...hand.Web) (Begun, error) {
	if len(webs) == 0 {
		webs = joinedWebs(here)
	}
	if len(webs) == 0 {
		return Begun{}, errors.New("joints: there is no web to plan; mark MCP and PIP of two neighbouring digits, or say which web to plan")
	}
	m := here.Marks
	out := Begun{File: planfile.File{Photograph: m.Photograph, Side: m.Marks.Side, View: m.Marks.View}}
	for _, w := range webs {
		p, err := here.Propose(w, other)
		if err != nil {
			out.Notes = append(out.Notes, err.Error()+".")
			out.File.Webs = append(out.File.Webs, planfile.Web{Web: w})
			continue
		}
		out.Proposals = append(out.Proposals, Proposed{w, p})
		out.File.Webs = append(out.File.Webs, here.begun(w, p))
		if note := here.JoinNote(w, p.Arch); note != "" {
			out.Notes = append(out.Notes, note)
		}
	}
	return out, nil
}

func (h Hand) begun(w hand.Web, p plan.Proposal) planfile.Web {
	m := h.Ground.Fit.Best
	out := planfile.Web{Web: w, Chosen: ProposedName}
	a := planfile.Alternative{Name: ProposedName, Arch: planfile.ArchOn(p.Arch, m)}
	a.Flap, _ = h.BeginFlap(w, p.Arch, false, nil)
	if h.Separates(w, p.Arch) {
		out.Join = h.BeginJoin(w, p.Arch)
		a.Zigzag = h.BeginZigzag(w, h.Beyond(*out.Join, a.Flap))
	}
	out.Alternatives = []planfile.Alternative{a}
	return out
}

// joinedWebs are the webs between two digits with joints marked that have no
// border of their own; all that have one where there is no such web.
func joinedWebs(h Hand) []hand.Web {
	free := map[hand.Web]bool{}
	for _, w := range h.Marks.Marks.Webs {
		free[w.Web] = true
	}
	var joined, marked []hand.Web
	for _, w := range hand.Webs {
		radial, ulnar := w.Digits()
		switch {
		case free[w]:
			marked = append(marked, w)
		case w != hand.FirstWeb && len(h.Ground.Marks.Joints[radial]) > 0 && len(h.Ground.Marks.Joints[ulnar]) > 0:
			joined = append(joined, w)
		}
	}
	if len(joined) > 0 {
		return joined
	}
	return marked
}
