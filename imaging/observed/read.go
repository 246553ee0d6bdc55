package observed

import (
	"fmt"
	"runtime"
	"strconv"
	"sync"

	"ogive/geometry/hand"
	"ogive/imaging/casebook"
	"ogive/imaging/casebook/readings"
	"ogive/imaging/marksfile"
	"ogive/imaging/observations"
)

// read reads all marks on one photograph.
func (r *Reader) read(p photograph) Found {
	var out Found
	taken := map[string]map[string]bool{} // targets with figure, by observer
	for _, m := range p.observers {
		if len(p.observers) > 1 {
			out.Between = append(out.Between, r.latest(p, m, taken, &out)...)
		}
		if len(m.revisions) > 1 {
			out.Within = append(out.Within, r.occasions(p, m, &out)...)
		}
	}
	out.Between = byTwo(out.Between, taken)
	out.Shared = shared(p, out.Between)
	if len(out.Between)+len(out.Within) > 0 {
		out.Photographs = 1
	}
	return out
}

func (f *Found) pass(p photograph, observer, why string) {
	f.Passed = append(f.Passed, fmt.Sprintf("%s, marked by %s: %s", p.name, observer, why))
}

// latest is what an observer's latest marks come to, through the readings that
// the casebook keeps.
func (r *Reader) latest(p photograph, m marker, taken map[string]map[string]bool, out *Found) []observations.Observation {
	kept, err := r.kept.Of(p.id, m.name)
	switch {
	case err != nil:
		out.pass(p, m.name, err.Error())
		return nil
	case kept.Lacking != "":
		out.pass(p, m.name, kept.Lacking)
		return nil
	}
	var all []observations.Observation
	for _, v := range valuesOf(kept) {
		o := observations.Observation{Target: target(p.name, kept.Reading.Side, v.web), Observer: m.name, Figure: v.name, Value: v.value}
		key := o.Target + "\n" + o.Figure
		if taken[key] == nil {
			taken[key] = map[string]bool{}
		}
		taken[key][m.name] = true
		all = append(all, o)
	}
	return all
}

// byTwo is what at least two observers read.
func byTwo(all []observations.Observation, taken map[string]map[string]bool) (out []observations.Observation) {
	for _, o := range all {
		if len(taken[o.Target+"\n"+o.Figure]) > 1 {
			out = append(out, o)
		}
	}
	return out
}

// occasion is a value and the marks that it was read from.
type occasion struct {
	marks marksfile.File
	value value
	side  hand.Side
}

// occasions is what an observer read at every occasion, each figure of each web by
// itself, those that were read more than once.
func (r *Reader) occasions(p photograph, m marker, out *Found) []observations.Observation {
	type which struct {
		web    hand.Web
		figure int
	}
	found := map[which][]occasion{}
	var order []which
	for i, revision := range m.revisions {
		marks, kept, err := r.revision(p.id, m.name, revision, i == len(m.revisions)-1)
		if err != nil {
			out.pass(p, m.name, fmt.Sprintf("revision %d: %v", revision.Number, err))
			continue
		}
		corrected := false
		for _, v := range valuesOf(kept) {
			key := which{v.web, v.figure}
			before := found[key]
			last := len(before) - 1
			switch {
			case last < 0:
				order = append(order, key)
				found[key] = []occasion{{marks, v, kept.Reading.Side}}
			case anew(figures[v.figure], v.web, before[last].marks, marks):
				found[key] = append(before, occasion{marks, v, kept.Reading.Side})
			default:
				before[last] = occasion{marks, v, kept.Reading.Side}
				corrected = true
			}
		}
		if corrected {
			out.Corrected++
		}
	}
	var all []observations.Observation
	for _, key := range order {
		if len(found[key]) < 2 {
			continue
		}
		for n, o := range found[key] {
			all = append(all, observations.Observation{
				Target: target(p.name, o.side, key.web), Observer: m.name, Figure: o.value.name, Occasion: strconv.Itoa(n + 1), Value: o.value.value,
			})
		}
	}
	return all
}

// revision is one revision and what it comes to. Marks that lack something are no
// error: they come to nothing.
func (r *Reader) revision(photograph int64, observer string, of casebook.Revision, latest bool) (marksfile.File, readings.Kept, error) {
	if !latest {
		return r.measured(photograph, of.Text)
	}
	marks, err := marksfile.Parse([]byte(of.Text))
	if err != nil {
		return marks, readings.Kept{}, err
	}
	kept, err := r.kept.Of(photograph, observer)
	return marks, kept, err
}

// spread spreads work over the cores.
func spread(n int, work func(i int)) {
	next := make(chan int)
	var workers sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), n) {
		workers.Go(func() {
			for i := range next {
				work(i)
			}
		})
	}
	for i := range n {
		next <- i
	}
	close(next)
	workers.Wait()
}
