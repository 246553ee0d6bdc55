package annotate

import (
	"math"
	"slices"
)

// cover holds how much is lost where something is laid over the picture, as a
// table of sums over cells, so that any box is weighed in one step.
type cover struct {
	cell   float64
	nx, ny int
	weight []float64 // by cell until sum is called, then summed from the top left
}

func newCover(field box, cell float64) *cover {
	c := &cover{cell: cell}
	c.nx = int(math.Ceil(field.right/cell)) + 1
	c.ny = int(math.Ceil(field.bottom/cell)) + 1
	c.weight = make([]float64, c.nx*c.ny)
	return c
}

// add makes the cell at q dearer by w.
func (c *cover) add(q spot, w float64) {
	i, j := int(math.Floor(q.x/c.cell))+1, int(math.Floor(q.y/c.cell))+1
	if i >= 1 && i < c.nx && j >= 1 && j < c.ny {
		c.weight[j*c.nx+i] += w
	}
}

// raise makes the cell at q at least as dear as w.
func (c *cover) raise(q spot, w float64) {
	i, j := int(math.Floor(q.x/c.cell))+1, int(math.Floor(q.y/c.cell))+1
	if i >= 1 && i < c.nx && j >= 1 && j < c.ny {
		c.weight[j*c.nx+i] = math.Max(c.weight[j*c.nx+i], w)
	}
}

// addLine makes the cells along a line dearer, by w for each cell's length.
func (c *cover) addLine(path []spot, w float64) {
	for i := 1; i < len(path); i++ {
		a, b := path[i-1], path[i]
		d := b.sub(a).length()
		n := int(d/c.cell) + 1
		for k := range n {
			c.add(a.to(b, (float64(k)+0.5)/float64(n)), w*d/c.cell/float64(n))
		}
	}
}

// raiseBand makes a band about the line from a to b, half as wide as r, at
// least as dear as w.
func (c *cover) raiseBand(a, b spot, r, w float64) {
	along := b.sub(a)
	across := along.unit().square()
	n, m := int(along.length()/c.cell*1.5)+1, int(r/c.cell*1.5)+1
	if n > 4*(c.nx+c.ny) || m > 4*(c.nx+c.ny) {
		return
	}
	for i := 0; i <= n; i++ {
		q := a.to(b, float64(i)/float64(n))
		for j := -m; j <= m; j++ {
			c.raise(q.add(across.times(r*float64(j)/float64(m))), w)
		}
	}
}

// sum ends the adding and makes ready for under.
func (c *cover) sum() {
	for j := 1; j < c.ny; j++ {
		row := 0.0
		for i := 1; i < c.nx; i++ {
			row += c.weight[j*c.nx+i]
			c.weight[j*c.nx+i] = row + c.weight[(j-1)*c.nx+i]
		}
	}
}

// under is what b covers.
func (c *cover) under(b box) float64 {
	i0, i1 := c.index(b.left, c.nx), c.index(b.right, c.nx)
	j0, j1 := c.index(b.top, c.ny), c.index(b.bottom, c.ny)
	return c.weight[j1*c.nx+i1] - c.weight[j0*c.nx+i1] - c.weight[j1*c.nx+i0] + c.weight[j0*c.nx+i0]
}

func (c *cover) index(x float64, n int) int {
	return min(max(int(math.Round(x/c.cell)), 0), n-1)
}

// summed is a copy of c that is ready for under.
func (c *cover) summed() *cover {
	s := *c
	s.weight = slices.Clone(c.weight)
	s.sum()
	return &s
}

// with is the sum of two summed covers of the same size.
func (c *cover) with(d *cover) *cover {
	for i, w := range d.weight {
		c.weight[i] += w
	}
	return c
}
