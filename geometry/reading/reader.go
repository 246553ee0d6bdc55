package reading

import (
	"slices"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
)

// Reader reads like Read and remembers the last reading of every web, so that a
// gesture costs only the webs it touches, and their arches only if their border
// or the scale has moved. Its readings are those of Read to the last digit. It
// serves one goroutine at a time; the zero Reader is ready.
type Reader struct{ last map[hand.Web]remembered }

// remembered is one web as it was read last, before any verdict.
type remembered struct {
	edge    []plane.PixelPoint
	best    scale.Map
	some    [2]scale.Map // two of the likely maps stand for all: they are drawn alike
	clickSD plane.Pixel
	view    hand.View
	joints  joints

	fitted arch.Fitted
	read   Web
}

// Read is the reading of m, as by the function Read.
func (r *Reader) Read(m hand.Marks, fit scale.Fit, table norms.Table) Reading {
	if r.last == nil {
		r.last = map[hand.Web]remembered{}
	}
	return readAll(m, fit, table, r)
}

// fit is the arch of the border, the one remembered if neither border nor map
// has moved.
func (r *Reader) fit(w hand.WebMarks, best scale.Map, border []plane.Position, pixel plane.Millimetre) (arch.Fitted, error) {
	if old, ok := r.last[w.Web]; ok && old.best == best && slices.Equal(old.edge, w.Edge) {
		return old.fitted, nil
	}
	return arch.Fit(border, pixel)
}

// again is the web as remembered, if nothing it is read from has changed.
func (r *Reader) again(m hand.Marks, w hand.WebMarks, fit scale.Fit) (Web, bool) {
	old, ok := r.last[w.Web]
	if !ok || old.best != fit.Best || old.some != some(fit) || old.clickSD != m.ClickSD || old.view != m.View ||
		old.joints != jointsOf(m, w.Web) || !slices.Equal(old.edge, w.Edge) {
		return Web{}, false
	}
	return old.copied(), true
}

func (r *Reader) remember(m hand.Marks, w hand.WebMarks, fit scale.Fit, fitted arch.Fitted, read Web) {
	r.last[w.Web] = remembered{
		edge: w.Edge, best: fit.Best, some: some(fit), clickSD: m.ClickSD, view: m.View,
		joints: jointsOf(m, w.Web), fitted: fitted, read: read,
	}
}

// copied is the web with lists of its own, to which verdicts can be added.
func (o remembered) copied() Web {
	w := o.read
	w.Warnings, w.Lacks, w.Verdicts = slices.Clone(w.Warnings), slices.Clone(w.Lacks), nil
	return w
}

func some(fit scale.Fit) [2]scale.Map {
	if len(fit.Likely) == 0 {
		return [2]scale.Map{}
	}
	return [2]scale.Map{fit.Likely[0], fit.Likely[len(fit.Likely)-1]}
}
