package scoring

import "slices"

// Confusion counts what was taken for what. Rows are what is true, columns what
// was said, both in the order of Names.
type Confusion struct {
	Names  []string
	Counts [][]int
}

// NewConfusion is an empty count over those names.
func NewConfusion(names ...string) Confusion {
	c := Confusion{Names: names}
	for range names {
		c.Counts = append(c.Counts, make([]int, len(names)))
	}
	return c
}

// Add counts one answer; it is passed over unless both names are known.
func (c Confusion) Add(truth, said string) {
	i, j := slices.Index(c.Names, truth), slices.Index(c.Names, said)
	if i >= 0 && j >= 0 {
		c.Counts[i][j]++
	}
}

// Total is how many answers were counted, and Right how many of them are true.
func (c Confusion) Total() (right, total int) {
	for i, row := range c.Counts {
		for j, n := range row {
			total += n
			if i == j {
				right += n
			}
		}
	}
	return right, total
}

// Worst is the mistake made most often, the first of several as often; false if
// none was made.
func (c Confusion) Worst() (truth, said string, times int, ok bool) {
	for i, row := range c.Counts {
		for j, n := range row {
			if i != j && n > times {
				truth, said, times, ok = c.Names[i], c.Names[j], n, true
			}
		}
	}
	return truth, said, times, ok
}
