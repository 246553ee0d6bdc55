package agree

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/agreementchart"
	"ogive/imaging/wording"
	"ogive/ui/choice"
	"ogive/ui/column"
)

// side is what stands beside the plots: what is chosen, what it means, the figures.
type side struct {
	room    *Room
	object  fyne.CanvasObject
	page    *column.Page
	who     *held
	figures *held
	whoIs   *choice.Choice
	what    *choice.Choice
	basis   *column.Text
	words   [4]*column.Text
	rows    []*column.Figure
	widest  *column.Text
	remarks *column.Text
	saved   *column.Text
}

func newSide(r *Room) *side {
	s := &side{room: r, page: column.NewPage()}
	s.who, s.figures = newHeld(), newHeld()
	s.basis, s.widest, s.remarks, s.saved = column.Remark(""), column.Remark(""), column.Remark(""), column.Remark("")
	s.page.Add(column.Title(lang.L("Whose readings")), s.who, column.Title(lang.L("Of which figure")), s.figures)
	s.page.Add(column.Heading(lang.L("What it comes to")))
	for i := range s.words {
		s.words[i] = column.Body("")
		s.page.Add(s.words[i])
	}
	s.page.Add(s.basis, column.Heading(lang.L("Figures")))
	for range agreementRows {
		f := column.NewFigure("")
		s.rows = append(s.rows, f)
		s.page.Add(f)
	}
	s.page.Add(column.Remark(lang.L("In brackets is the 95 % interval. It takes targets as independent of each other, as several webs of one hand are not quite.")),
		column.Title(lang.L("Where they differ most")), s.widest, s.remarks,
		column.Heading(lang.L("Save")), newSaveRow(r), s.saved, column.Remark(wording.Term(wording.Caution)))
	s.object = container.New(layout.NewCustomPaddedLayout(0, 0, 0, 10), s.page.Object())
	return s
}

// agreementRows is how many figures a chart has.
const agreementRows = 7

// offer offers the pairs there are.
func (s *side) offer() {
	names := make([]string, len(s.room.groups))
	for i, g := range s.room.groups {
		names[i] = g.who
	}
	s.whoIs = choice.New(names...)
	s.whoIs.OnChosen = func(i int) { s.room.choose(i, s.room.current().Figure) }
	s.who.hold(s.whoIs)
}

// show shows the chart that is chosen.
func (s *side) show() {
	r := s.room
	s.whoIs.Set(r.group)
	charts := r.groups[r.group].charts
	names := make([]string, len(charts))
	for i, c := range charts {
		names[i] = wording.Sentence(wording.Term(c.Figure.Name))
	}
	s.what = choice.New(names...)
	s.what.Set(r.chart)
	s.what.OnChosen = func(i int) { r.choose(r.group, charts[i].Figure) }
	s.figures.hold(s.what)
	c := r.current()
	words := c.Words()
	for i, w := range s.words {
		w.Set("")
		if i < len(words) {
			w.Set(words[i])
		}
	}
	for i, row := range c.Rows() {
		s.rows[i].Name(row.Name)
		s.rows[i].Set(row.Text, row.Note)
	}
	s.basis.Set(c.Basis())
	var widest []string
	for _, t := range c.Widest(3) {
		widest = append(widest, "– "+c.Told(t))
	}
	s.widest.Set(strings.Join(widest, "\n"))
	s.remarks.Set(strings.Join(s.notes(c), "\n"))
	s.saved.Set("")
	s.page.Arrange()
	s.page.Object().ScrollToTop()
}

// notes are what limits the figures.
func (s *side) notes(c agreementchart.Chart) []string {
	f := s.room.found
	var out []string
	if f.Shared > 0 && c.Within == "" {
		out = append(out, lang.L("Webs that two observers marked with the very same points: {{.Count}}, as where both accepted what the program proposed. There they agree without having judged apart.", map[string]any{"Count": f.Shared}))
	}
	if f.Corrected > 0 && c.Within != "" {
		out = append(out, lang.L("Times that marks were corrected, not placed anew: {{.Count}}. They are no occasions of their own.", map[string]any{"Count": f.Corrected}))
	}
	out = append(out, some(lang.L("Left out, not read by both:"), c.LeftOut)...)
	out = append(out, some(lang.L("Passed over:"), f.Passed)...)
	return append(out, some(lang.L("Not compared:"), s.room.lacking)...)
}

// some is a heading and as many lines below it as can be read.
func some(heading string, lines []string) []string {
	const most = 5
	if len(lines) == 0 {
		return nil
	}
	out := []string{heading}
	for i, l := range lines {
		if i == most {
			return append(out, lang.L("… and {{.Count}} more", map[string]any{"Count": len(lines) - most}))
		}
		out = append(out, "– "+l)
	}
	return out
}

// newSaveRow is the buttons that save what is shown.
func newSaveRow(r *Room) fyne.CanvasObject {
	var buttons []fyne.CanvasObject
	for _, k := range kinds {
		buttons = append(buttons, widget.NewButton(k.button(), func() { r.askWhere(k) }))
	}
	return column.Line(buttons...)
}
