package round

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/rounds"
	"ogive/imaging/wording"
	"ogive/ui/flow"
)

// newGrid is a card with a small table: the first row and the first column name
// the others. A remark stands under the title, "" for none. Cells of the diagonal
// from row and column bold on are set in bold, none for -1.
func newGrid(title, remark string, rows [][]string, shares []float32, bold int) *card {
	c := newCard(strong(title))
	c.gap = -8
	if remark != "" {
		c.objects = append(c.objects, caption(remark))
	}
	for i, row := range rows {
		line := &gridRow{shares: shares}
		for j, text := range row {
			l := wrapped(text)
			l.SizeName = theme.SizeNameCaptionText
			if i == 0 {
				l.Importance = widget.LowImportance
			}
			l.TextStyle.Bold = bold >= 0 && i >= bold && i == j
			line.cells = append(line.cells, l)
		}
		line.ExtendBaseWidget(line)
		c.objects = append(c.objects, line)
	}
	return c
}

// newConfusion says what was taken for what.
func newConfusion(m rounds.Mistaken) *card {
	head := []string{lang.L("it was ↓  you said →")}
	shares := []float32{1.7}
	for _, name := range m.Names {
		head, shares = append(head, findingWords(name)), append(shares, 1)
	}
	rows := [][]string{head}
	for i, counts := range m.Counts {
		row := []string{findingWords(m.Names[i])}
		for _, n := range counts {
			row = append(row, cell(n))
		}
		rows = append(rows, row)
	}
	return newGrid(lang.L("What you took for what: {{.What}}", map[string]any{"What": askedWords(m.Of)}),
		lang.L("Right answers are bold, from the upper left to the lower right."), rows, shares, 1)
}

func cell(n int) string {
	if n == 0 {
		return "·"
	}
	return fmt.Sprint(n)
}

func scatterRows(list []rounds.Scatter) [][]string {
	rows := [][]string{{lang.L("mark"), lang.L("along the digit"), lang.L("sideways"), lang.L("error")}}
	for _, s := range list {
		rows = append(rows, []string{wording.Sentence(s.Of), bias(s.Distal, 1), bias(s.Ulnar, 1), fixed(s.Error, 1)})
	}
	return rows
}

func figureRows(list []rounds.Scatter) [][]string {
	rows := [][]string{{lang.L("figure"), lang.L("difference"), lang.L("error")}}
	for _, s := range list {
		decimals, unit := 2, ""
		switch s.Of {
		case "span":
			decimals, unit = 1, " mm"
		case "slope":
			decimals, unit = 0, "°"
		}
		rows = append(rows, []string{wording.Sentence(wording.Term(s.Of)), bias(s.Distal, decimals) + unit, fixed(s.Error, decimals) + unit})
	}
	return rows
}

// gridRow is a line of a table.
type gridRow struct {
	widget.BaseWidget
	cells  []fyne.CanvasObject
	shares []float32
}

var _ flow.Tall = (*gridRow)(nil)

// HeightAt places the cells for that width.
func (g *gridRow) HeightAt(width float32) float32 {
	whole := float32(0)
	for _, s := range g.shares {
		whole += s
	}
	x, high := float32(0), float32(0)
	for i, c := range g.cells {
		w := width * g.shares[i] / whole
		h := flow.HeightAt(c, w)
		flow.Put(c, x, 0, w, h)
		x, high = x+w, max(high, h)
	}
	return high
}

// CreateRenderer is called by Fyne.
func (g *gridRow) CreateRenderer() fyne.WidgetRenderer { return gridRenderer{g} }

type gridRenderer struct{ g *gridRow }

func (r gridRenderer) MinSize() fyne.Size {
	return fyne.NewSize(100, r.g.HeightAt(max(100, r.g.Size().Width)))
}
func (r gridRenderer) Layout(size fyne.Size)        { r.g.HeightAt(size.Width) }
func (r gridRenderer) Objects() []fyne.CanvasObject { return r.g.cells }
func (r gridRenderer) Destroy()                     {}
func (r gridRenderer) Refresh() {
	for _, c := range r.g.cells {
		c.Refresh()
	}
}
