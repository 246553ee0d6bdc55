package plan

import (
	"testing"

	"fyne.io/fyne/v2/canvas"

	"ogive/geometry/hand"
	"ogive/geometry/plan"
	"ogive/geometry/plane"
	"ogive/imaging/planning"
)

// What waits while a plan is begun for another web, and when a handle is dropped.
func BenchmarkBeginAndDrop(b *testing.B) {
	b.Run("begin", func(b *testing.B) {
		m := model(b)
		for b.Loop() {
			if _, err := planning.Begin(m.Here, m.Other, hand.ThirdWeb); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("drop", func(b *testing.B) {
		r := shown(b)
		for range 3 {
			r.copyAlternative()
		}
		for i := 0; b.Loop(); i++ {
			g, _ := r.grip(archID(plan.Crown))
			r.plate.OnDragHandle(g.ID, g.At.Add(plane.Vec(plane.Pixel(i%5-2), 1)))
			r.plate.OnDropHandle(g.ID)
		}
	})
	b.Run("drag and paint the board", func(b *testing.B) {
		r := shown(b)
		g, _ := r.grip(archID(plan.Crown))
		picture := r.plate.CreateRenderer().Objects()[0].(*canvas.Raster)
		w, h := int(r.plate.Size().Width), int(r.plate.Size().Height)
		for i := 0; b.Loop(); i++ {
			r.plate.OnDragHandle(g.ID, g.At.Add(plane.Vec(plane.Pixel(i%5-2), 1)))
			picture.Generator(w, h)
		}
	})
}

// From the event of a drag to new figures in the card, without painting the board.
func BenchmarkDragToFigures(b *testing.B) {
	for tab, id := range map[int]string{archTab: archID(plan.SpanRight), flapTab: "flap 1", zigzagTab: "zigzag 2"} {
		b.Run([]string{"arch", "flap", "zigzag"}[tab], func(b *testing.B) {
			r := shown(b)
			r.column.open(tab)
			g, ok := r.grip(id)
			if !ok {
				b.Fatal("no such handle")
			}
			for i := 0; b.Loop(); i++ {
				r.plate.OnDragHandle(id, g.At.Add(plane.Vec(plane.Pixel(i%9), 1)))
			}
			b.ReportMetric(float64(b.Elapsed().Microseconds())/float64(b.N)/1000, "ms/drag")
		})
	}
}
