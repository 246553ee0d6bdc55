package annotate

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestNotesNeverOverlapLeaveTheFieldOrCoverACrown(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		em := rapid.Float64Range(5, 40).Draw(t, "em")
		field := box{0, 0, em * rapid.Float64Range(20, 90).Draw(t, "width"), em * rapid.Float64Range(15, 90).Draw(t, "height")}
		var notes []note
		var keep []spot
		for range rapid.IntRange(1, 4).Draw(t, "notes") {
			at := spot{rapid.Float64Range(0, field.right).Draw(t, "x"), rapid.Float64Range(0, field.bottom).Draw(t, "y")}
			keep = append(keep, at)
			notes = append(notes, note{
				w: em * rapid.Float64Range(8, 18).Draw(t, "w"), h: em * rapid.Float64Range(5, 12).Draw(t, "h"), anchor: at, towards: spot{0, -1},
			})
		}
		lines := newCover(field, em/2).summed()
		g := grounds{field: field, em: em, keep: keep, busy: lines, lines: lines}
		places := g.arrange(notes)
		for i, p := range places {
			if !p.found {
				continue
			}
			if !p.box.within(field) {
				t.Fatalf("note %d leaves the field: %v", i, p.box)
			}
			if math.Abs(p.box.width()-notes[i].w) > 1e-6 || math.Abs(p.box.height()-notes[i].h) > 1e-6 {
				t.Fatalf("note %d lost its size", i)
			}
			for j := range i {
				if places[j].found && p.box.meets(places[j].box) {
					t.Fatalf("notes %d and %d overlap", i, j)
				}
			}
			for _, k := range keep {
				if p.box.distance(k) < em {
					t.Fatalf("note %d covers the crown at %v", i, k)
				}
			}
		}
	})
}

func TestANoteWithoutRoomIsSaidToHaveNone(t *testing.T) {
	field := box{0, 0, 100, 100}
	lines := newCover(field, 5).summed()
	g := grounds{field: field, em: 10, busy: lines, lines: lines}
	if p := g.arrange([]note{{w: 120, h: 20}}); p[0].found {
		t.Errorf("a note wider than the field was placed at %v", p[0].box)
	}
}

func TestANoteKeepsClearOfWhatIsBusy(t *testing.T) {
	field := box{0, 0, 400, 400}
	lines := newCover(field, 5)
	lines.addLine([]spot{{20, 100}, {380, 100}}, 4)
	sum := lines.summed()
	g := grounds{field: field, em: 10, keep: []spot{{200, 200}}, busy: sum, lines: sum}
	p := g.arrange([]note{{w: 100, h: 60, anchor: spot{200, 200}, towards: spot{0, -1}}})[0]
	if !p.found || lineMeets(spot{20, 100}, spot{380, 100}, p.box) {
		t.Errorf("the note lies on the line: %v", p.box)
	}
}

func TestCoverWeighsABoxAsTheSumOfItsCells(t *testing.T) {
	c := newCover(box{0, 0, 100, 50}, 5)
	c.add(spot{12, 12}, 3)
	c.add(spot{52, 42}, 4)
	c.add(spot{500, 500}, 9)
	s := c.summed()
	for _, w := range []struct {
		b    box
		want float64
	}{{box{0, 0, 100, 50}, 7}, {box{10, 10, 15, 15}, 3}, {box{15, 10, 50, 40}, 0}, {box{-50, -50, 15, 15}, 3}} {
		if got := s.under(w.b); math.Abs(got-w.want) > 1e-9 {
			t.Errorf("under %v lies %v, want %v", w.b, got, w.want)
		}
	}
}
