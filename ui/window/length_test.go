package window

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"ogive/geometry/plane"
)

func TestTheCountOfTheTicksIsOfferedAndWaitsForAYes(t *testing.T) {
	s := newScene(t)
	_, truth := s.opened()
	s.tellHand(truth.Side, truth.View)
	s.board.OnPlace(truth.Ruler.From)
	s.board.OnPlace(truth.Ruler.To)
	s.until("the ticks are counted", s.length.counted.Visible)
	if !strings.HasPrefix(s.length.counted.Text, plainNumber(float64(truth.Ruler.Length))+" mm") {
		t.Errorf("a ruler of %v mm is said to be %q", truth.Ruler.Length, s.length.counted.Text)
	}
	if got := s.work.State().Length; got != 0 {
		t.Errorf("nobody said yes, and the length is %v", got)
	}
	if s.win.Canvas().Focused() != s.length.entry {
		t.Error("the count took the keys from the field")
	}
	s.keep(s.still(), "length-counted")
	s.length.counted.OnTapped()
	if got := s.work.State().Length; got != truth.Ruler.Length || s.length.panel.Visible() {
		t.Errorf("after yes the length is %v; asked still: %v", got, s.length.panel.Visible())
	}
}

func TestWhatCannotBeCountedIsNotOffered(t *testing.T) {
	s := newScene(t)
	_, truth := s.opened()
	s.tellHand(truth.Side, truth.View)
	s.board.OnPlace(plane.Pt[plane.Pixel](30, 30))
	s.board.OnPlace(plane.Pt[plane.Pixel](400, 60))
	s.until("it is said that nothing was counted", func() bool { return strings.Contains(s.length.remark.Text, "cannot be counted") })
	if s.length.counted.Visible() {
		t.Errorf("on the drape %q is offered", s.length.counted.Text)
	}
}

func TestTheLengthIsAskedForAsideOfTheRuler(t *testing.T) {
	for _, size := range []fyne.Size{{Width: 1024, Height: 700}, {Width: 1600, Height: 1000}} {
		for name, ends := range map[string][2]plane.PixelPoint{
			"below": {plane.Pt[plane.Pixel](100, 850), plane.Pt[plane.Pixel](1100, 850)},
			"above": {plane.Pt[plane.Pixel](100, 40), plane.Pt[plane.Pixel](1100, 60)},
			"left":  {plane.Pt[plane.Pixel](50, 60), plane.Pt[plane.Pixel](60, 860)},
			"right": {plane.Pt[plane.Pixel](1150, 60), plane.Pt[plane.Pixel](1140, 860)},
			"slant": {plane.Pt[plane.Pixel](100, 100), plane.Pt[plane.Pixel](1100, 850)},
		} {
			s := newScene(t)
			s.win.Resize(size)
			_, truth := s.opened()
			s.tellHand(truth.Side, truth.View)
			s.board.OnPlace(ends[0])
			s.board.OnPlace(ends[1])
			s.until("the ticks are looked for", func() bool { return !strings.HasPrefix(s.length.remark.Text, "Counting") })
			panel := s.length.panel
			from, to := s.board.PositionOf(ends[0]), s.board.PositionOf(ends[1])
			least := float32(40)
			if name == "slant" {
				least = 1
			}
			if d := distanceToLine(panel.Position(), panel.Size(), from, to); d < least {
				t.Errorf("%v: the question at %v of %v lies %.0f from a ruler %s, from %v to %v", size, panel.Position(), panel.Size(), d, name, from, to)
			}
			s.keep(s.still(), "length-"+name)
		}
	}
}
