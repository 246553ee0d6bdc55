package sheet

import "math"

// placed is a piece in its place on a page of outlines: the position (0, 0) of
// the piece lies at x, y, and its words begin at the left of its cell.
type placed struct {
	piece Piece
	x, y  float64
	cell  box
	// part is which part of a piece too large for one page it is: 1, 1 of 1, 1 for
	// one that fits.
	column, row, columns, rows int
}

func (p placed) whole() bool { return p.columns == 1 && p.rows == 1 }

const (
	// leastCell is room enough for a piece's words beside each other.
	leastCell = 52.0
	gap       = 7.0
	// overlap is what neighbouring pages of a large piece have in common.
	overlap = 12.0
)

// packer fills pages with pieces, shelf by shelf.
type packer struct {
	window box
	words  func(p Piece, width float64) float64 // the height of a piece's words
	pages  [][]placed
	x, y   float64 // the next cell
	shelf  float64 // the height of the present shelf
}

// pack gives every piece its place; words is how high a piece's words are at a
// width.
func pack(pieces []Piece, window box, words func(p Piece, width float64) float64) [][]placed {
	k := &packer{window: window, words: words}
	for _, p := range pieces {
		k.put(p)
	}
	return k.pages
}

func (k *packer) put(p Piece) {
	b := p.bounds()
	width := math.Max(b.width(), leastCell)
	top := k.words(p, math.Min(width, k.window.width()))
	if b.width() > k.window.width() || top+b.height() > k.window.height() {
		k.tile(p, b)
		return
	}
	if len(k.pages) == 0 || k.x+width > k.window.right {
		k.nextShelf()
	}
	if len(k.pages) == 0 || k.y+top+b.height() > k.window.bottom {
		k.nextPage()
	}
	cell := box{k.x, k.y, k.x + width, k.y + top + b.height()}
	last := len(k.pages) - 1
	k.pages[last] = append(k.pages[last], placed{piece: p, x: k.x - b.left, y: k.y + top - b.top, cell: cell, column: 1, row: 1, columns: 1, rows: 1})
	k.x += width + gap
	k.shelf = math.Max(k.shelf, cell.height())
}

func (k *packer) nextShelf() {
	k.x, k.y, k.shelf = k.window.left, k.y+k.shelf+gap, 0
}

func (k *packer) nextPage() {
	k.pages = append(k.pages, nil)
	k.x, k.y, k.shelf = k.window.left, k.window.top, 0
}

// tile lays a piece that is larger than a page over several pages, each with the
// window full of it.
func (k *packer) tile(p Piece, b box) {
	window := tileWindow(k.window)
	columns, rows := tiles(b.width(), window.width()), tiles(b.height(), window.height())
	for row := range rows {
		for column := range columns {
			k.pages = append(k.pages, []placed{{
				piece: p, cell: k.window,
				x:      window.left - b.left - float64(column)*(window.width()-overlap),
				y:      window.top - b.top - float64(row)*(window.height()-overlap),
				column: column + 1, row: row + 1, columns: columns, rows: rows,
			}})
		}
	}
	// What follows begins on a page of its own.
	k.x, k.y, k.shelf = k.window.right, k.window.bottom, 0
}

// tileWindow leaves room above for the words of a piece in parts.
func tileWindow(window box) box {
	window.top += 14
	return window
}

// tiles is how many windows a length takes that overlap.
func tiles(length, window float64) int {
	if length <= window {
		return 1
	}
	return int(math.Ceil((length - overlap) / (window - overlap)))
}
