// Package readings reads the marks of a casebook and keeps what they come to, so
// that a chart or an audit of ten thousand photographs opens none of them again.
//
//	book, err := readings.In(casebook, settings)
//	err = book.Keep(photograph, observer, marks, result) // a window that has just measured
//	kept, err := book.Of(photograph, observer)           // kept, or computed now and kept
//	items, err := book.All(ctx, progress)
//	kept.Reading.Webs[0].Index
//
// A kept reading can always be made anew from its marks, and is never given once
// they have changed: the database itself forgets it then. It is kept under the
// way it was computed (Version, the normal values and the allowed tilt), and
// another way finds nothing and computes it anew.
package readings

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"math"

	"ogive/geometry/deviation"
	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/imaging/casebook"
	"ogive/imaging/marksfile"
	"ogive/imaging/measure"
)

// Version is raised whenever the same marks on the same photograph give other
// figures than before.
const Version = 1

// Kept is what the marks of one observer on one photograph come to.
type Kept struct {
	// Lacking says why there is no reading: what is still to be marked.
	Lacking string `json:",omitempty"`
	// Reading is without the traced borders and the fitted curves.
	Reading reading.Reading
	// Phalanx is the mean length from MCP to PIP of the digits beside a web.
	Phalanx map[hand.Web]plane.Millimetre `json:",omitempty"`
	Bends   []deviation.Deviation         `json:",omitempty"`
}

// Web is the reading of one web, false if it was not read.
func (k Kept) Web(w hand.Web) (reading.Web, bool) {
	for _, read := range k.Reading.Webs {
		if read.Web == w {
			return read, true
		}
	}
	return reading.Web{}, false
}

// Book is a casebook whose marks are read in one way.
type Book struct {
	book *casebook.Casebook
	with measure.Settings
	way  string
}

// In reads the marks of the casebook with those settings.
func In(book *casebook.Casebook, with measure.Settings) (*Book, error) {
	table, err := with.Norms.Encode()
	if err != nil {
		return nil, fmt.Errorf("the normal values can't be written down: %w", err)
	}
	sum := sha256.Sum256(fmt.Appendf(table, "\nversion %d, tilt %v", Version, with.Tilt.Degrees()))
	return &Book{book, with, hex.EncodeToString(sum[:])}, nil
}

// Keep keeps what a window has measured of the marks it has just saved. Marks
// that are not the latest any more are passed over.
func (b *Book) Keep(photograph int64, observer string, marks marksfile.File, r measure.Result) error {
	p, err := b.book.Photograph(photograph)
	if err != nil {
		return err
	}
	marks.Photograph = p.File()
	text, err := marks.Encode()
	if err != nil {
		return err
	}
	return b.keep(casebook.NewReading{Photograph: photograph, Observer: observer, Marks: string(text)}, Of(r))
}

func (b *Book) keep(as casebook.NewReading, k Kept) (err error) {
	if as.Text, err = encode(k); err != nil {
		return err
	}
	return b.book.KeepReadings(b.way, as)
}

func encode(k Kept) (string, error) {
	text, err := json.Marshal(k)
	if err != nil {
		return "", fmt.Errorf("the reading can't be written down: %w", err)
	}
	return string(text), nil
}

// ErrNotMarked says that an observer has not marked a photograph.
var ErrNotMarked = errors.New("nothing is marked there by this observer")

// Of is what an observer's latest marks on a photograph come to. Where nothing
// is kept it is computed, which takes as long as opening the photograph, and
// kept if the casebook may be written to.
func (b *Book) Of(photograph int64, observer string) (Kept, error) {
	text, ok, err := b.book.KeptReading(photograph, observer, b.way)
	if err != nil {
		return Kept{}, err
	}
	if ok {
		return parse(text)
	}
	as, k, err := b.compute(photograph, observer)
	if err == nil && b.book.ReadOnly() == "" {
		err = b.keep(as, k)
	}
	return k, err
}

func parse(text string) (k Kept, err error) {
	if err := json.Unmarshal([]byte(text), &k); err != nil {
		return k, fmt.Errorf("a kept reading is damaged (%w); read the marks anew", err)
	}
	return k, nil
}

// compute reads the latest marks as they are kept.
func (b *Book) compute(photograph int64, observer string) (casebook.NewReading, Kept, error) {
	as := casebook.NewReading{Photograph: photograph, Observer: observer}
	p, err := b.book.Photograph(photograph)
	if err != nil {
		return as, Kept{}, err
	}
	text, ok, err := b.book.MarksText(photograph, observer)
	if err != nil {
		return as, Kept{}, err
	}
	if !ok {
		return as, Kept{}, ErrNotMarked
	}
	as.Marks = text
	k, err := measured([]byte(text), b.book.Path(p), b.with)
	return as, k, err
}

// Of is what of a result is kept.
func Of(r measure.Result) Kept {
	k := Kept{Reading: r.Reading, Bends: sound(deviation.Of(r.Marks.Marks, r.Scale))}
	k.Reading.Webs = nil
	if !finite(float64(k.Reading.PerPixel.Value), float64(k.Reading.PerPixel.U95)) {
		k.Reading.PerPixel = plane.Estimate[plane.Millimetre]{}
	}
	for _, w := range r.Reading.Webs {
		k.Reading.Webs = append(k.Reading.Webs, bare(w))
		if l, ok := phalanx(r, w.Web); ok {
			if k.Phalanx == nil {
				k.Phalanx = map[hand.Web]plane.Millimetre{}
			}
			k.Phalanx[w.Web] = l
		}
	}
	return k
}

// phalanx is the mean length from MCP to PIP of the two digits of a web.
func phalanx(r measure.Result, w hand.Web) (plane.Millimetre, bool) {
	radial, ulnar := w.Digits()
	var sum plane.Millimetre
	for _, d := range []hand.Digit{radial, ulnar} {
		mcp, okM := r.Marks.Marks.Joint(d, hand.MCP)
		pip, okP := r.Marks.Marks.Joint(d, hand.PIP)
		if !okM || !okP {
			return 0, false
		}
		sum += r.Scale.Best.Position(mcp).Distance(r.Scale.Best.Position(pip))
	}
	return sum / 2, sum > 0 && !math.IsInf(float64(sum), 0)
}

func sound(all []deviation.Deviation) []deviation.Deviation {
	var out []deviation.Deviation
	for _, d := range all {
		if finite(float64(d.Angle.Value), float64(d.Angle.U95)) {
			out = append(out, d)
		}
	}
	return out
}

// finite reports whether all are numbers, which JSON has no others of.
func finite(all ...float64) bool {
	for _, x := range all {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return false
		}
	}
	return true
}
