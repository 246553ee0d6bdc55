package ruler

import (
	"testing"

	"ogive/geometry/plane"
)

// countedRow is a row of n spaces, all of whose ticks were seen.
func countedRow(n int, g Graduation) Found {
	f := Found{Graduation: g}
	for i := range n + 1 {
		f.Ticks = append(f.Ticks, plane.Pt(plane.Pixel(10*i), 0))
		f.Seen = append(f.Seen, true)
	}
	return f
}

func TestTheTicksTellTheLengthWhereTheirPatternIsKnown(t *testing.T) {
	for _, c := range []struct {
		graduation Graduation
		want       plane.Millimetre
	}{{Millimetres, 70}, {HalfMillimetres, 35}, {Sixteenths, 70 * 25.4 / 16}} {
		got, certain := countedRow(70, c.graduation).Length()
		if !certain || got != c.want {
			t.Errorf("graduation %d: %v mm, certain %v; want %v mm", c.graduation, got, certain, c.want)
		}
	}
}

func TestALengthIsNotCertainWhereTheCountMayBeWrong(t *testing.T) {
	doubtful := countedRow(70, Millimetres)
	doubtful.last = 1
	hidden := countedRow(70, Millimetres)
	for i := range 30 {
		hidden.Seen[i+10] = false
	}
	for name, f := range map[string]Found{
		"a click between two ticks": doubtful, "ticks out of sight": hidden,
		"no pattern": countedRow(70, Unknown), "nothing": {},
	} {
		if length, certain := f.Length(); certain {
			t.Errorf("%s: %v mm is called certain", name, length)
		}
	}
}
