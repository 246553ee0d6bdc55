package annotate

import "math"

// cover holds where something is drawn that labels and leaders had better not
// lie on, as a table of sums over cells, so that any box is weighed in one step.
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

// along is what a line from a to b runs over, but for the first part of it, as
// long as skip.
func (c *cover) along(a, b spot, skip float64) float64 {
	length := b.sub(a).length()
	sum := 0.0
	for d := skip; d < length; d += c.cell {
		q := a.to(b, d/length)
		sum += c.under(box{q.x, q.y, q.x, q.y}.grown(c.cell))
	}
	return sum
}

func (c *cover) index(x float64, n int) int {
	return min(max(int(math.Round(x/c.cell)), 0), n-1)
}
