package markshapes

import "math"

// Cover holds where something is drawn that labels and leaders had better not
// lie on, as a table of sums over cells, so that any box is weighed in one step.
type Cover struct {
	cell   float64
	nx, ny int
	weight []float64 // by cell until Sum is called, then summed from the top left
}

// NewCover is an empty cover of that field, in cells of that many pixels.
func NewCover(field Box, cell float64) *Cover {
	c := &Cover{cell: cell}
	c.nx = int(math.Ceil(field.Right/cell)) + 1
	c.ny = int(math.Ceil(field.Bottom/cell)) + 1
	c.weight = make([]float64, c.nx*c.ny)
	return c
}

// Add makes the cell at q dearer by w.
func (c *Cover) Add(q Spot, w float64) {
	i, j := int(math.Floor(q.X/c.cell))+1, int(math.Floor(q.Y/c.cell))+1
	if i >= 1 && i < c.nx && j >= 1 && j < c.ny {
		c.weight[j*c.nx+i] += w
	}
}

// AddLine makes the cells along a line dearer, by w for each cell's length.
func (c *Cover) AddLine(path []Spot, w float64) {
	for i := 1; i < len(path); i++ {
		a, b := path[i-1], path[i]
		d := b.Sub(a).Length()
		n := int(d/c.cell) + 1
		for k := range n {
			c.Add(a.To(b, (float64(k)+0.5)/float64(n)), w*d/c.cell/float64(n))
		}
	}
}

// Sum ends the adding and makes ready for Under and Along.
func (c *Cover) Sum() {
	for j := 1; j < c.ny; j++ {
		row := 0.0
		for i := 1; i < c.nx; i++ {
			row += c.weight[j*c.nx+i]
			c.weight[j*c.nx+i] = row + c.weight[(j-1)*c.nx+i]
		}
	}
}

// Under is what b covers.
func (c *Cover) Under(b Box) float64 {
	i0, i1 := c.index(b.Left, c.nx), c.index(b.Right, c.nx)
	j0, j1 := c.index(b.Top, c.ny), c.index(b.Bottom, c.ny)
	return c.weight[j1*c.nx+i1] - c.weight[j0*c.nx+i1] - c.weight[j1*c.nx+i0] + c.weight[j0*c.nx+i0]
}

// Along is what a line from a to b runs over, but for the first part of it, as
// long as skip.
func (c *Cover) Along(a, b Spot, skip float64) float64 {
	length := b.Sub(a).Length()
	sum := 0.0
	for d := skip; d < length; d += c.cell {
		q := a.To(b, d/length)
		sum += c.Under(BoxOf(q.X, q.Y, q.X, q.Y).Grown(c.cell))
	}
	return sum
}

func (c *Cover) index(x float64, n int) int {
	return min(max(int(math.Round(x/c.cell)), 0), n-1)
}
