package propose

import (
	"math"
)

// grid is the field between two phalanges, row by row from distal to proximal,
// each row from the radial to the ulnar axis.
type grid struct {
	f          phalanges
	window     window
	rows, cols int
	seen       []colour
	known      []bool
	drape      []float64 // logarithm of the likelihood against skin
}

// window is the part of the field that a grid shows: levels (0 PIP, 1 MCP) and
// parts of the way across.
type window struct{ distal, proximal, radial, ulnar float64 }

func newGrid(f phalanges, w window, g glance) *grid {
	down := w.level(f, w.distal).Distance(w.level(f, w.proximal))
	across := max(
		f.at(w.distal, w.radial).Distance(f.at(w.distal, w.ulnar)),
		f.at(w.proximal, w.radial).Distance(f.at(w.proximal, w.ulnar)))
	cells := func(length, limit float64) int {
		return int(max(12, min(limit, math.Ceil(length/float64(g.shrink)))))
	}
	m := &grid{f: f, window: w, rows: cells(float64(down), 260), cols: cells(float64(across), 160)}
	n := m.rows * m.cols
	m.seen, m.known, m.drape = make([]colour, n), make([]bool, n), make([]float64, n)
	for k := range m.seen {
		m.seen[k], m.known[k] = g.at(m.at(float64(k/m.cols), float64(k%m.cols)))
	}
	return m
}

func (w window) level(f phalanges, s float64) point { return f.at(s, (w.radial+w.ulnar)/2) }

// at is the place of row i, column j; level and part are the coordinates there.
func (m *grid) at(i, j float64) point { return m.f.at(m.level(i), m.part(j)) }

func (m *grid) level(i float64) float64 {
	return m.window.distal + (m.window.proximal-m.window.distal)*(i+0.5)/float64(m.rows)
}

func (m *grid) part(j float64) float64 {
	return m.window.radial + (m.window.ulnar-m.window.radial)*(j+0.5)/float64(m.cols)
}

func (m *grid) row(level float64) int {
	i := (level - m.window.distal) / (m.window.proximal - m.window.distal) * float64(m.rows)
	return max(0, min(m.rows-1, int(i)))
}

// where lists the colours of the known cells that a condition holds for.
func (m *grid) where(holds func(level, part float64, k int) bool) []colour {
	var out []colour
	for k, c := range m.seen {
		if m.known[k] && holds(m.level(float64(k/m.cols)), m.part(float64(k%m.cols)), k) {
			out = append(out, c)
		}
	}
	return out
}

// tell sets how likely each cell is drape, neighbours taken together.
func (m *grid) tell(drape, skin class) {
	raw := make([]float64, len(m.seen))
	likely := drape.against(skin)
	for k, c := range m.seen {
		raw[k] = -certain
		if m.known[k] {
			raw[k] = likely(c)
		}
	}
	pass := make([]float64, len(raw))
	for i := range m.rows {
		for j := range m.cols {
			k := i * m.cols
			pass[k+j] = (raw[k+max(0, j-1)] + 2*raw[k+j] + raw[k+min(m.cols-1, j+1)]) / 4
		}
	}
	for i := range m.rows {
		up, down := max(0, i-1)*m.cols, min(m.rows-1, i+1)*m.cols
		for j := range m.cols {
			m.drape[i*m.cols+j] = (pass[up+j] + 2*pass[i*m.cols+j] + pass[down+j]) / 4
		}
	}
}

// flood is the drape connected to what the given cells hold.
func (m *grid) flood(from []int) []bool {
	in := make([]bool, len(m.seen))
	var todo []int
	visit := func(k int) {
		if !in[k] && m.drape[k] > 0 {
			in[k] = true
			todo = append(todo, k)
		}
	}
	for _, k := range from {
		visit(k)
	}
	for len(todo) > 0 {
		k := todo[len(todo)-1]
		todo = todo[:len(todo)-1]
		i, j := k/m.cols, k%m.cols
		if i > 0 {
			visit(k - m.cols)
		}
		if i < m.rows-1 {
			visit(k + m.cols)
		}
		if j > 0 {
			visit(k - 1)
		}
		if j < m.cols-1 {
			visit(k + 1)
		}
	}
	return in
}

// run is the widest unbroken part of a row that is in the flood: the columns
// from and to, fractions included, where drape turns to skin. False if there is
// none.
func (m *grid) run(in []bool, i int) (from, to float64, ok bool) {
	best, first, last := 0, 0, 0
	for j := 0; j < m.cols; j++ {
		if !in[i*m.cols+j] {
			continue
		}
		end := j
		for end+1 < m.cols && in[i*m.cols+end+1] {
			end++
		}
		if end-j+1 > best {
			best, first, last = end-j+1, j, end
		}
		j = end
	}
	if best == 0 {
		return 0, 0, false
	}
	return m.turning(i, first, -1), m.turning(i, last, 1), true
}

// turning is where, from column j on in the given direction, drape turns to
// skin; half a column beyond the grid if it does not.
func (m *grid) turning(i, j, step int) float64 {
	if j+step < 0 || j+step >= m.cols {
		return float64(j) + 0.5*float64(step)
	}
	a, b := m.drape[i*m.cols+j], m.drape[i*m.cols+j+step]
	return float64(j) + float64(step)*a/(a-b)
}
