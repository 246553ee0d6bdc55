package window

import (
	"testing"

	"fyne.io/fyne/v2"
)

// A photograph that moves by a pixel while somebody aims at it costs a point.
func TestThePhotographStaysWhereItIsWhileItIsMarked(t *testing.T) {
	for _, size := range []fyne.Size{{Width: 1024, Height: 700}, {Width: 1280, Height: 800}} {
		s := newScene(t)
		_, truth := s.opened()
		s.win.Resize(size)
		s.drain()
		was := s.board.Size()
		stays := func(after string) {
			t.Helper()
			s.drain()
			if now := s.board.Size(); now != was {
				t.Errorf("at %v, the photograph's %v become %v %s", size, was, now, after)
				was = now
			}
		}
		s.tellHand(truth.Side, truth.View)
		stays("when the hand is told")
		s.board.OnPlace(truth.Ruler.From)
		stays("when a point is placed")
		s.board.OnPlace(truth.Ruler.To)
		s.tellLength(truth.Ruler.Length)
		s.until("webs are proposed", s.proposed)
		stays("when webs are proposed")
		s.refuse()
		stays("when they are refused")
	}
}
