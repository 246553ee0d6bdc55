// Package sheet makes the printed page for theatre: a PDF with the marked
// photograph, the outlines at true size with check bars, the figures, their
// sources and the family's page; and the same outlines as SVG for a cutter.
//
//	content := sheet.Of(plan, hand, photograph, sheet.Words{Code: "H-07"})
//	pdf, err := content.PDF(sheet.A4)
//	svg, err := content.SVG()
//
// The same content gives the same bytes: a PDF states no time and no user, and
// holds nothing but what is seen on its pages.
package sheet

import (
	"fmt"
	"image"
	"image/color"
	"slices"

	"ogive/geometry/plane"
	"ogive/imaging/family"
)

// Content is everything that a sheet shows.
type Content struct {
	// Code is the case's code, never a name. It may be empty.
	Code string
	// Title says what the photograph shows: "Left hand, back of the hand".
	Title string
	// Photograph has the plan drawn on it; nil leaves it out.
	Photograph image.Image
	// Key is the lines drawn on the photograph, in order.
	Key []Kind
	// Main are the figures below the photograph, a table for each alternative;
	// Tables are all figures.
	Main, Tables []Table
	// Pieces are drawn at true size.
	Pieces []Piece
	// Scale says how far "true size" is to be trusted.
	Scale   string
	Notes   []string
	Sources []string
	// Family stands on pages of its own; none leaves them out.
	Family []family.Point
	// Caution stands on every page.
	Caution string
}

// Table is a list of figures under a heading.
type Table struct {
	Title string
	Rows  []Row
}

// Row is one figure, with its interval, and what is to be said of it.
type Row struct {
	Name, Value, Note string
	// Swatches are colours that the row speaks of.
	Swatches []color.RGBA
}

// Piece is what is drawn together at true size: y points down on the page as on
// the photograph.
type Piece struct {
	Name, Note string
	// Together reports that the piece shows lines in their places that are there
	// once more as pieces of their own; a cutter does not get it.
	Together bool
	Outlines []Outline
	// Landmarks are places by which the piece is laid on the hand.
	Landmarks []Landmark
}

// Outline is one line, closed or open, in millimetres.
type Outline struct {
	Kind   Kind
	Points []plane.Position
	Closed bool
}

// Landmark is a named place.
type Landmark struct {
	Name string
	At   plane.Position
}

// largest is the millimetres across the largest piece that a hand can have.
const largest = 400.0

// check refuses pieces that no hand has: they would fill pages without end.
func (c Content) check() error {
	for _, p := range c.Pieces {
		for _, o := range p.Outlines {
			if slices.ContainsFunc(o.Points, func(q plane.Position) bool { return !q.Finite() }) {
				return fmt.Errorf("%s: a point has no place; mark the scale anew", p.Name)
			}
		}
		if b := p.bounds(); !(b.width() <= largest && b.height() <= largest) {
			return fmt.Errorf("%s: measures %.0f by %.0f mm, and no hand is so large; check the scale and the points that lie far off", p.Name, b.width(), b.height())
		}
	}
	return nil
}

// box is an upright rectangle in millimetres.
type box struct{ left, top, right, bottom float64 }

func (b box) width() float64  { return b.right - b.left }
func (b box) height() float64 { return b.bottom - b.top }

// bounds holds all of the piece, and the letters of its landmarks.
func (p Piece) bounds() box {
	var b box
	first := true
	add := func(q plane.Position, aside, margin float64) {
		x, y := float64(q.X), float64(q.Y)
		if first {
			b, first = box{x, y, x, y}, false
		}
		b = box{min(b.left, x-aside), min(b.top, y-margin), max(b.right, x+aside), max(b.bottom, y+margin)}
	}
	for _, o := range p.Outlines {
		for _, q := range o.Points {
			add(q, 1, 1)
		}
	}
	for _, l := range p.Landmarks {
		add(l.At, nameRoom, 3)
	}
	return b
}

// nameRoom is the millimetres that a landmark's name takes up beside it.
const nameRoom = 16

// namedLeft reports whether the landmark's name stands on its left: on the side
// away from the landmarks at about its level, or from the lines where there are
// none.
func (p Piece) namedLeft(l Landmark) bool {
	const level plane.Millimetre = 15
	sum, n := 0.0, 0
	for _, other := range p.Landmarks {
		if d := other.At.Y - l.At.Y; other != l && d > -level && d < level {
			sum, n = sum+float64(other.At.X), n+1
		}
	}
	if n > 0 {
		return float64(l.At.X) < sum/float64(n)
	}
	p.Landmarks = nil
	b := p.bounds()
	return float64(l.At.X) < (b.left+b.right)/2
}
