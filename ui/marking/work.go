// Package marking is the work on one photograph: what is marked, what is wanted
// next, how to go back, and the reading of it all. It knows no window.
//
//	w, err := marking.Open("right-dorsal.jpg", settings)
//	w.SetHand(hand.Right, hand.Dorsal)
//	spot, more := w.State().Next()   // what to click next
//	err = w.Place(spot, at)          // on the disk when it returns
//	r := w.Measure(w.State())        // figures of all that is complete
//	w.Undo()
//
// Every gesture is one step of the history and is saved at once: beside the
// photograph, in a marks file that package marksfile describes, or wherever a
// Keeper puts it, such as a casebook:
//
//	w, err := marking.KeptBy(path, keeper, photograph, settings)
//
// Nothing is measured unless Measure is called, so a hand can be marked blind.
package marking

import (
	"maps"
	"path/filepath"

	"fyne.io/fyne/v2/lang"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
	"ogive/imaging/marksfile"
	"ogive/imaging/measure"
	"ogive/imaging/photo"
)

// Work is one photograph with its marks, their history and their file.
type Work struct {
	Photograph *photo.Photograph
	// Path is where the photograph lies.
	Path   string
	keeper Keeper

	state   State
	history history
	drag    *State // the state before the drag under way
	reader  reader
}

// Open opens the photograph at path and the marks made on it before. Marks that
// can't be read are an error of type *marksfile.Refusal or a plain one; the file
// is left as it is.
func Open(path string, settings measure.Settings) (*Work, error) {
	p, err := photo.Open(path)
	if err != nil {
		return nil, err
	}
	return With(path, p, settings)
}

// With is Open for a photograph that is already decoded.
func With(path string, p *photo.Photograph, settings measure.Settings) (*Work, error) {
	beside, err := Beside(path)
	if err != nil {
		return nil, err
	}
	return KeptBy(path, beside, p, settings)
}

// KeptBy is With for marks that k keeps. Marks outside the photograph are
// refused, whoever kept them.
func KeptBy(path string, k Keeper, p *photo.Photograph, settings measure.Settings) (*Work, error) {
	state, err := loaded(k, p.Size())
	if err != nil {
		return nil, err
	}
	return &Work{Photograph: p, Path: path, keeper: k, state: state, reader: newReader(p, settings)}, nil
}

// State is what is marked now.
func (w *Work) State() State { return w.state }

// File is what is marked now as a marks file.
func (w *Work) File() marksfile.File { return fileOf(filepath.Base(w.Path), w.state) }

// KeptIn is where the marks are kept, for a sentence: the path of the marks file
// beside the photograph, or what the Keeper calls itself.
func (w *Work) KeptIn() string { return w.keeper.Name() }

// SetHand says which hand the photograph shows and from where.
func (w *Work) SetHand(side hand.Side, view hand.View) error {
	return w.change(lang.L("hand and view"), func(s *State) { s.Side, s.View = side, view })
}

// SetLength says how long the ruler is between its two points.
func (w *Work) SetLength(length plane.Millimetre) error {
	return w.change(lang.L("length {{.Length}} mm", map[string]any{"Length": float64(length)}), func(s *State) { s.Length = length })
}

// SetMethod says what the scale is marked on. Points already placed on another
// kind of reference are taken away.
func (w *Work) SetMethod(m scale.Method, card CardSize) error {
	name := lang.L("scale by ruler")
	if m == scale.ByCard {
		name = lang.L("scale by card")
	}
	return w.change(name, func(s *State) {
		if m != s.Method {
			maps.DeleteFunc(s.Points, func(spot Spot, _ plane.PixelPoint) bool { return spot.Kind == ScalePoint })
		}
		s.Method, s.Card = m, card
	})
}

// Place puts the spot at a place on the photograph, wherever it was.
func (w *Work) Place(spot Spot, at plane.PixelPoint) error {
	return w.change(w.placing(spot), func(s *State) { s.put(spot, at) })
}

// Skip goes on without the spot.
func (w *Work) Skip(spot Spot) error {
	return w.change(w.skipping(spot), func(s *State) { s.Skipped[spot] = true })
}

// Remove takes the spot away again.
func (w *Work) Remove(spot Spot) error {
	return w.change(w.removing(spot), func(s *State) {
		delete(s.Points, spot)
		delete(s.Skipped, spot)
		if spot.Kind == SeedPoint {
			delete(s.Edges, spot.Web)
			delete(s.Proposed, spot.Web)
		}
	})
}

// Nudge moves the spot by so many pixels; a run of nudges of one spot is one
// step of the history.
func (w *Work) Nudge(spot Spot, by plane.Vector[plane.Pixel]) error {
	at, ok := w.state.Points[spot]
	if !ok {
		return nil
	}
	name := w.nudging(spot)
	if w.history.lastDone() == name {
		w.state = w.state.copied()
		w.state.put(spot, w.within(at.Add(by)))
		return w.save()
	}
	return w.change(name, func(s *State) { s.put(spot, w.within(at.Add(by))) })
}

// Drag moves the spot without a step of the history; Drop ends the drag as one.
func (w *Work) Drag(spot Spot, to plane.PixelPoint) {
	w.beginDrag()
	w.state.put(spot, w.within(to))
}

// DragEdge pulls the traced border of a web: the point nearest to from goes to
// to, its neighbours follow.
func (w *Work) DragEdge(web hand.Web, edge []plane.PixelPoint, from, to plane.PixelPoint) {
	w.beginDrag()
	w.state.Edges[web] = plane.Pulled(edge, from, w.within(to))
}

func (w *Work) beginDrag() {
	if w.drag == nil {
		before := w.state
		w.drag = &before
	}
	w.state = w.state.copied()
}

// Drop ends a drag: it is one step of the history, named, and on the disk.
func (w *Work) Drop(name string) error {
	if w.drag == nil {
		return nil
	}
	w.history.push(step{name: name, before: *w.drag, after: w.state})
	w.drag = nil
	return w.save()
}

// Propose takes seeds found by the program for webs that have none.
func (w *Work) Propose(seeds map[hand.Web][3]plane.PixelPoint) error {
	return w.change(lang.L("propose webs"), func(s *State) {
		for web, three := range seeds {
			if _, begun := s.Points[Spot{Kind: SeedPoint, Web: web, N: 1}]; begun {
				continue
			}
			for n, p := range three {
				s.Points[Spot{Kind: SeedPoint, Web: web, N: n}] = p
			}
			s.Proposed[web] = true
		}
	})
}

// AcceptProposals makes all proposed webs the user's own.
func (w *Work) AcceptProposals() error {
	return w.change(lang.L("accept proposed webs"), func(s *State) { clear(s.Proposed) })
}

// RejectProposals takes all proposed webs away.
func (w *Work) RejectProposals() error {
	return w.change(lang.L("refuse proposed webs"), func(s *State) {
		maps.DeleteFunc(s.Points, func(spot Spot, _ plane.PixelPoint) bool {
			return spot.Kind == SeedPoint && s.Proposed[spot.Web]
		})
		clear(s.Proposed)
	})
}

// change makes one step of the history.
func (w *Work) change(name string, by func(*State)) error {
	before := w.state
	w.state = before.copied()
	by(&w.state)
	w.history.push(step{name: name, before: before, after: w.state})
	return w.save()
}

// save keeps the state. Until hand and view are known there is nothing to keep.
func (w *Work) save() error {
	if w.state.Side == 0 || w.state.View == 0 {
		return nil
	}
	return w.keeper.Save(w.File())
}

// put places the spot; a moved seed gives its web up to tracing again, and makes
// a proposal the user's own.
func (s *State) put(spot Spot, at plane.PixelPoint) {
	s.Points[spot] = at
	s.take(spot)
	if spot.Kind == SeedPoint {
		delete(s.Edges, spot.Web)
		delete(s.Proposed, spot.Web)
	}
}

// take wants a spot again that was skipped, and with it the others of the same
// scale, border or line, of which one alone is nothing.
func (s *State) take(spot Spot) {
	delete(s.Skipped, spot)
	if spot.Kind == JointPoint {
		return
	}
	maps.DeleteFunc(s.Skipped, func(other Spot, _ bool) bool { return other.Kind == spot.Kind && other.Web == spot.Web })
}

// within is p moved onto the photograph.
func (w *Work) within(p plane.PixelPoint) plane.PixelPoint {
	size := w.Photograph.Size()
	return plane.Pt(
		min(max(p.X, 0), plane.Pixel(size.X)),
		min(max(p.Y, 0), plane.Pixel(size.Y)),
	)
}
