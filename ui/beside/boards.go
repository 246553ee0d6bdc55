package beside

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"

	"ogive/geometry/comparison"
	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/imaging/compared"
	"ogive/imaging/measure"
	"ogive/ui/board"
	"ogive/ui/marking"
)

// boards are the two photographs, the operated hand larger, with the other
// hand's arches over its own.
type boards struct {
	plates [2]*plate
	object *fyne.Container
	aspect float32
}

func newBoards(open func(side int)) *boards {
	b := &boards{aspect: 4.0 / 3}
	for i := range b.plates {
		b.plates[i] = newPlate(func() { open(i) })
	}
	b.object = container.New(plates{func() float32 { return b.aspect }}, b.plates[0].object, b.plates[1].object)
	return b
}

// show puts the photographs on the boards, bare.
func (b *boards) show(sides [2]Side) {
	for i, s := range sides {
		b.plates[i].show(s.Title, s.Photograph)
	}
	if p := sides[0].Photograph; p != nil && p.Size().Y > 0 {
		b.aspect = float32(p.Size().X) / float32(p.Size().Y)
		b.object.Refresh()
	}
}

// compare draws what was read of each, and the ghosts, and says which is which.
func (b *boards) compare(p compared.Pair, sides [2]Side) {
	roles := [2]string{lang.L("Operated"), lang.L("Other hand")}
	if p.Comparison.TwoSittings() {
		roles = [2]string{lang.L("Later"), lang.L("Earlier")}
	}
	for i, s := range sides {
		b.plates[i].title.SetText(roles[i] + " · " + s.Title)
	}
	for i, r := range []measure.Result{p.Operated, p.Other} {
		scene := sceneOf(r)
		if i == 0 {
			scene.Lines = ghosts(p)
		}
		b.plates[i].board.Draw(scene)
		b.plates[i].want(append(beside(r, p.Comparison.Webs), around(r, p.Comparison.Webs)...))
	}
}

// beside is the joints beside the webs that are compared.
func beside(r measure.Result, webs []comparison.Web) []plane.PixelPoint {
	var out []plane.PixelPoint
	for _, w := range webs {
		radial, ulnar := w.Web.Digits()
		for _, d := range []hand.Digit{radial, ulnar} {
			for _, j := range []hand.Joint{hand.MCP, hand.PIP} {
				if at, ok := r.Marks.Marks.Joint(d, j); ok {
					out = append(out, at)
				}
			}
		}
	}
	return out
}

// around is the arches of the webs that are compared.
func around(r measure.Result, webs []comparison.Web) []plane.PixelPoint {
	var out []plane.PixelPoint
	for _, w := range webs {
		for _, read := range r.Reading.Webs {
			if read.Web == w.Web {
				out = append(append(out, read.Crown), read.Curve...)
			}
		}
	}
	return out
}

// sceneOf is the arches of a photograph, without joints and labels, which would
// hide how the arches lie to each other.
func sceneOf(r measure.Result) board.Scene {
	return board.Scene{View: r.Reading.View, Quiet: true, Reading: marking.Reading{Reading: r.Reading, Scaled: true}}
}

// ghosts are the other hand's arches where they come to lie.
func ghosts(p compared.Pair) []board.Line {
	var lines []board.Line
	for _, w := range p.Comparison.Webs {
		if w.Ghost != nil && len(w.Ghost.CurvePixel) > 1 {
			lines = append(lines, board.Line{Points: w.Ghost.CurvePixel, Style: board.GhostLine})
		}
	}
	return lines
}

// reveal shows one web on both photographs.
func (b *boards) reveal(p compared.Pair, w hand.Web) {
	one := slices.DeleteFunc(slices.Clone(p.Comparison.Webs), func(c comparison.Web) bool { return c.Web != w })
	for i, r := range []measure.Result{p.Operated, p.Other} {
		b.plates[i].want(around(r, one))
	}
}
