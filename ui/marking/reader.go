package marking

import (
	"path/filepath"
	"sync"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/imaging/marksfile"
	"ogive/imaging/measure"
	"ogive/imaging/photo"
	"ogive/imaging/trace"
	"ogive/imaging/wording"
)

// Reading is what is read of a state, and the borders that were traced for it.
type Reading struct {
	reading.Reading
	// Scaled is false while there is no scale: then nothing is read yet.
	Scaled bool
	// Edges are the borders of all webs that have one, scaled or not.
	Edges map[hand.Web][]plane.PixelPoint
	// Problems say what hinders the reading, in plain sentences.
	Problems []string
	// Marks are the marks that were read, every web that could be traced with its
	// border: what a comparison or a sheet is made of. Without a scale only the
	// photograph is named.
	Marks marksfile.File
}

// reader reads states of one photograph. It keeps the last border of each web,
// since a gesture moves one web at the most.
type reader struct {
	photograph *photo.Photograph
	settings   measure.Settings
	mu         *sync.Mutex
	last       map[hand.Web]border
	scaling    measure.Scaling
	webs       *reading.Reader
}

// border is the outcome of tracing one web from its seeds.
type border struct {
	seeds    [3]plane.PixelPoint
	edge     []plane.PixelPoint
	warnings []string
	draft    bool
}

func newReader(p *photo.Photograph, s measure.Settings) reader {
	return reader{photograph: p, settings: s, mu: &sync.Mutex{}, webs: new(reading.Reader), last: map[hand.Web]border{}}
}

// Measure reads all that is complete of s. It may be called from any goroutine.
func (w *Work) Measure(s State) Reading { return w.named(w.reader.read(s, false)) }

// MeasureDragged is Measure fast enough to follow a dragged point: a moved web is
// traced in fewer points, and the ticks between moved ends of a ruler are not
// looked for.
func (w *Work) MeasureDragged(s State) Reading { return w.named(w.reader.read(s, true)) }

func (w *Work) named(r Reading) Reading {
	r.Marks.Photograph = filepath.Base(w.Path)
	return r
}

// UseSettings changes the normal values and the tilt that later readings use.
func (w *Work) UseSettings(s measure.Settings) {
	w.reader.mu.Lock()
	defer w.reader.mu.Unlock()
	w.reader.settings = s
}

func (r *reader) read(s State, quick bool) Reading {
	r.mu.Lock()
	defer r.mu.Unlock()
	marks := s.Marks()
	out := Reading{Edges: map[hand.Web][]plane.PixelPoint{}}
	notes := map[hand.Web][]string{}
	for i, web := range marks.Webs {
		if len(web.Edge) == 0 {
			b := r.trace(web.Web, [3]plane.PixelPoint(web.Seeds), quick)
			if len(b.edge) == 0 {
				out.Problems = append(out.Problems, b.warnings...)
				continue
			}
			web.Edge, notes[web.Web] = b.edge, b.warnings
			marks.Webs[i] = web
		}
		out.Edges[web.Web] = web.Edge
	}
	reference := s.Reference()
	if reference == nil {
		return out
	}
	out.Problems = nil // a web without a border says so on its card
	scaling := r.scaling
	switch {
	case reference == scaling.Marked:
	case quick:
		scaling = measure.Scaling{Marked: reference}
	default:
		scaling = measure.Inspect(r.photograph, reference)
		r.scaling = scaling
	}
	file := marksfile.File{Marks: marks, Reference: reference}
	result, err := measure.Subject{Photograph: r.photograph, Marks: file, Scaling: scaling, Reader: r.webs}.Measure(r.settings)
	if err != nil {
		out.Problems = append(out.Problems, err.Error())
		return out
	}
	out.Reading, out.Marks, out.Scaled = result.Reading, result.Marks, true
	for i := range out.Webs {
		out.Webs[i].Warnings = append(notes[out.Webs[i].Web], out.Webs[i].Warnings...)
	}
	return out
}

// trace follows the border from the seeds, unless it did so last time. A quick
// trace serves only while a point is dragged.
func (r *reader) trace(web hand.Web, seeds [3]plane.PixelPoint, quick bool) border {
	if b, ok := r.last[web]; ok && b.seeds == seeds && (quick || !b.draft) {
		return b
	}
	follow := trace.Web
	if quick {
		follow = trace.Draft
	}
	b := border{seeds: seeds, draft: quick}
	if traced, err := follow(r.photograph, seeds); err != nil {
		b.warnings = []string{wording.WebName(web) + ": " + err.Error()}
	} else {
		b.edge, b.warnings = traced.Points, traced.Warnings
	}
	r.last[web] = b
	return b
}
