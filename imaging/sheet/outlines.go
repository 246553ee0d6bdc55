package sheet

import "fmt"

// outlinePages are the pieces at true size, with check bars on every page.
func (w *writer) outlinePages() {
	for _, page := range pack(w.content.Pieces, w.paper.window(), w.wordsHeight) {
		w.newPage("Outlines at true size")
		w.bars()
		var here []Piece
		for _, p := range page {
			here = append(here, p.piece)
			if p.whole() {
				w.words(p.piece.Name, p.piece.Note, p.cell)
				w.piece(p)
				continue
			}
			w.part(p)
		}
		w.key(kindsOf(here), w.paper.window().left)
	}
}

const instruction = "Print at 100 %, without scaling. Measure both bars:"

// ends says between which places a bar is 50 mm long.
const ends = "50.0 mm from the middle of one end mark to the middle of the other."

// barLength is the length of a check bar in millimetres.
const barLength = 50.0

// levelBar and uprightBar are where the bars begin.
func (p Paper) levelBar() (x, y float64) {
	f := p.field()
	return f.left + barSide, f.bottom - 4
}

func (p Paper) uprightBar() (x, y float64) {
	f := p.field()
	return f.left + 4, f.bottom - 4 - barLength
}

// bars draws both check bars: their length is from the middle of one end stroke
// to that of the other.
func (w *writer) bars() {
	w.pdf.SetDrawColor(0, 0, 0)
	w.pdf.SetDashPattern(nil, 0)
	x, y := w.paper.levelBar()
	u, v := w.paper.uprightBar()
	w.pdf.SetLineWidth(0.25)
	w.pdf.Line(x, y, x+barLength, y)
	w.pdf.Line(u, v, u, v+barLength)
	w.pdf.SetLineWidth(0.15)
	for i := range 6 {
		half := 1.0
		if i == 0 || i == 5 {
			half = 2.5
		}
		s := float64(i) * barLength / 5
		w.pdf.Line(x+s, y-half, x+s, y+half)
		w.pdf.Line(u-half, v+s, u+half, v+s)
	}
	w.set("B", textSize, ink)
	w.at(x+barLength+3, y-4.4, "50 mm")
	w.at(x+barLength+17, y-4.4, instruction)
	w.set("", smallSize, ink)
	for i, line := range w.lines(ends+"\n"+w.content.Scale, w.field.right-x-barLength-3) {
		w.at(x+barLength+3, y+0.2+float64(i)*lineOf(smallSize), line)
	}
	w.set("B", textSize, ink)
	w.pdf.TransformBegin()
	w.pdf.TransformRotate(90, u-2.6, v+barLength/2)
	w.at(u-2.6-w.pdf.GetStringWidth("50 mm")/2, v+barLength/2-3.2, "50 mm")
	w.pdf.TransformEnd()
}

// key explains the lines, as they are drawn on the page.
func (w *writer) key(kinds []Kind, x float64) {
	left := x
	for _, k := range kinds {
		w.set("", smallSize, ink)
		room := 14 + w.pdf.GetStringWidth(k.String()) + 5
		if x+room > w.field.right+5 {
			x = left
			w.y += lineOf(smallSize) + 0.6
		}
		w.stroke(k, 1)
		w.pdf.Line(x, w.y+1.8, x+12, w.y+1.8)
		w.at(x+14, w.y, k.String())
		x += room
	}
	if len(kinds) > 0 {
		w.y += lineOf(smallSize) + 1
	}
}

// stroke sets the pen for a kind of line.
func (w *writer) stroke(k Kind, widen float64) {
	s := k.style()
	w.pdf.SetDrawColor(int(s.ink.R), int(s.ink.G), int(s.ink.B))
	w.pdf.SetLineWidth(s.width * widen)
	w.pdf.SetDashPattern(s.dash, 0)
	if w.pdf.SetLineCapStyle("round"); len(s.dash) > 0 {
		w.pdf.SetLineCapStyle("butt") // round ends would fill the gaps
	}
	w.pdf.SetLineJoinStyle("round")
}

const nameLine = 4.6

// wordsHeight is how high the words above a piece are.
func (w *writer) wordsHeight(p Piece, width float64) float64 {
	w.set("", smallSize, ink)
	n := 0
	if p.Note != "" {
		n = len(w.lines(p.Note, width))
	}
	w.set("B", textSize, ink)
	return nameLine*float64(len(w.lines(p.Name, width))) + float64(n)*lineOf(smallSize) + 2
}

// words writes the name and the note of a piece at the top of its cell.
func (w *writer) words(name, note string, cell box) {
	y := cell.top
	w.set("B", textSize, ink)
	for _, line := range w.lines(name, cell.width()) {
		w.at(cell.left, y, line)
		y += nameLine
	}
	if note == "" {
		return
	}
	w.set("", smallSize, ink)
	for _, line := range w.lines(note, cell.width()) {
		w.at(cell.left, y, line)
		y += lineOf(smallSize)
	}
}

// piece draws the lines and landmarks of a piece.
func (w *writer) piece(p placed) {
	for _, o := range p.piece.Outlines {
		if len(o.Points) < 2 {
			continue
		}
		w.stroke(o.Kind, 1)
		for i, q := range o.Points {
			x, y := p.x+float64(q.X), p.y+float64(q.Y)
			if i == 0 {
				w.pdf.MoveTo(x, y)
				continue
			}
			w.pdf.LineTo(x, y)
		}
		if o.Closed {
			w.pdf.ClosePath()
		}
		w.pdf.DrawPath("D")
	}
	w.pdf.SetDashPattern(nil, 0)
	for _, l := range p.piece.Landmarks {
		w.landmark(l, p)
	}
}

// landmark draws a cross with its name on the side away from the lines.
func (w *writer) landmark(l Landmark, p placed) {
	x, y := p.x+float64(l.At.X), p.y+float64(l.At.Y)
	w.pdf.SetDrawColor(int(ink.R), int(ink.G), int(ink.B))
	w.pdf.SetLineWidth(0.2)
	w.pdf.Line(x-1.5, y, x+1.5, y)
	w.pdf.Line(x, y-1.5, x, y+1.5)
	w.set("", 6, faded)
	beside := x + 2.2
	if p.piece.namedLeft(l) {
		beside = x - 2.2 - w.pdf.GetStringWidth(plain(l.Name))
	}
	w.at(beside, y-1.1, l.Name)
}

// part draws what of a large piece lies on this page, and the marks by which
// the pages are joined.
func (w *writer) part(p placed) {
	window := tileWindow(w.paper.window())
	note := fmt.Sprintf("Part %d of %d across, %d of %d down. Lay the crosses of neighbouring pages on each other and glue within the thin lines. %s",
		p.column, p.columns, p.row, p.rows, p.piece.Note)
	w.words(p.piece.Name, note, p.cell)
	w.pdf.ClipRect(window.left, window.top, window.width(), window.height(), false)
	w.piece(p)
	w.pdf.ClipEnd()
	w.seams(p, window)
}

// seams marks the strips that neighbouring pages have in common.
func (w *writer) seams(p placed, window box) {
	w.pdf.SetDrawColor(int(faded.R), int(faded.G), int(faded.B))
	w.pdf.SetLineWidth(0.1)
	w.pdf.SetDashPattern([]float64{1, 1}, 0)
	for _, side := range []struct {
		there      bool
		edge, into float64
		upright    bool
	}{
		{p.column > 1, window.left, overlap, true},
		{p.column < p.columns, window.right, -overlap, true},
		{p.row > 1, window.top, overlap, false},
		{p.row < p.rows, window.bottom, -overlap, false},
	} {
		if !side.there {
			continue
		}
		for _, at := range []float64{side.edge, side.edge + side.into} {
			if side.upright {
				w.pdf.Line(at, window.top, at, window.bottom)
			} else {
				w.pdf.Line(window.left, at, window.right, at)
			}
		}
		w.crosses(side.edge+side.into/2, side.upright, window)
	}
}

// crosses are at the quarters of a strip, where the neighbouring page has its
// own.
func (w *writer) crosses(middle float64, upright bool, window box) {
	w.pdf.SetDashPattern(nil, 0)
	w.pdf.SetLineWidth(0.2)
	for i := 1; i <= 3; i++ {
		x, y := middle, window.top+float64(i)*window.height()/4
		if !upright {
			x, y = window.left+float64(i)*window.width()/4, middle
		}
		w.pdf.Line(x-2.5, y, x+2.5, y)
		w.pdf.Line(x, y-2.5, x, y+2.5)
	}
	w.pdf.SetLineWidth(0.1)
	w.pdf.SetDashPattern([]float64{1, 1}, 0)
}
