package main

import (
	"fmt"
	"math"
	"os"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/imaging/marksfile"
)

// shown is a photograph in the window, which is clicked on.
type shown struct {
	*running
	photograph *photographed
	place      place
	kept       string // the file in which the program keeps the marks on it
}

// findPhotograph finds where the photograph lies on the screen; answering a
// question may give it more room.
func (s *shown) findPhotograph() {
	s.t.Helper()
	s.still()
	s.wait("the photograph is seen clearly", func() bool {
		found, misfit := s.photograph.find(s.look())
		s.place = found
		return misfit < wellFound
	})
}

// wellFound is a misfit, of 255, that only the right place has while a panel
// lies over the photograph: a photograph that is dimmed, or a pixel off, has a
// greater one.
const wellFound = 15

// mark clicks at a place on the photograph with a hand that trembles, and waits
// until a mark there is on the disk.
func (s *shown) mark(q plane.PixelPoint) {
	s.t.Helper()
	x, y := s.place.screen(s.photograph, q)
	px, py := math.Round(x), math.Round(y)
	at := s.place.on(s.photograph, px, py)
	s.tremblingClick(int(px), int(py))
	s.wait(fmt.Sprintf("click %d, at (%.0f, %.0f) on the photograph, has left a mark", s.clicks, at.X, at.Y), func() bool {
		for _, p := range everyPoint(s.marks()) {
			if float64(p.Distance(at))*s.place.zoom < 1 {
				return true
			}
		}
		return false
	})
}

// marks is what is on the disk.
func (s *shown) marks() marksfile.File {
	s.t.Helper()
	if _, err := os.Stat(s.kept); err != nil {
		return marksfile.File{}
	}
	f, err := marksfile.Read(s.kept)
	if err != nil {
		s.t.Fatalf("the marks on the disk cannot be read: %v", err)
	}
	return f
}

func everyPoint(f marksfile.File) []plane.PixelPoint {
	var all []plane.PixelPoint
	if f.Reference != nil {
		all = append(all, f.Reference.Points()...)
	}
	for _, digit := range hand.Digits {
		for _, joint := range hand.Joints {
			if p, ok := f.Marks.Joint(digit, joint); ok {
				all = append(all, p)
			}
		}
	}
	for _, web := range f.Marks.Webs {
		all = append(all, web.Seeds...)
	}
	if f.Unfinished != nil {
		for _, p := range f.Unfinished.Points {
			all = append(all, p.At)
		}
	}
	return all
}
