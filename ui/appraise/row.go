package appraise

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/appraisal"
	"ogive/ui/choice"
	"ogive/ui/flow"
	"ogive/ui/look"
)

// row is one finding: its title and what was measured at the left, the answers
// at the right, and a note below them.
type row struct {
	widget.BaseWidget
	form    *Form
	section *section
	finding appraisal.Finding

	rule     *canvas.Line
	title    *widget.Label
	measured *widget.Label
	answers  *choice.Choice
	pen      *widget.Button // begins a note
	note     *widget.Entry
	filling  bool
}

const (
	titleWidth = 216
	penWidth   = 38
	rowGap     = 4
)

var _ flow.Tall = (*row)(nil)

func newRow(f *Form, s *section, finding appraisal.Finding) *row {
	r := &row{form: f, section: s, finding: finding, rule: canvas.NewLine(nil)}
	r.title = widget.NewLabel(finding.Title)
	r.title.Wrapping, r.title.TextStyle.Bold = fyne.TextWrapWord, true
	r.measured = remark("")
	var names []string
	for _, c := range finding.Choices {
		name := c.Words
		if c.Scored {
			name = fmt.Sprintf("%d · %s", c.Score, c.Words)
		}
		names = append(names, name)
	}
	r.answers = choice.New(names...)
	r.answers.Optional = true
	r.answers.OnChosen = func(int) { r.give() }
	r.note = widget.NewEntry()
	r.note.SetPlaceHolder(lang.L("Note"))
	r.note.OnChanged = func(string) { r.give() }
	r.pen = widget.NewButtonWithIcon("", theme.DocumentCreateIcon(), r.beginNote)
	r.pen.Importance = widget.LowImportance
	r.ExtendBaseWidget(r)
	r.colour()
	return r
}

func (r *row) place() appraisal.Place { return r.section.at[r.section.now] }

func (r *row) beginNote() {
	r.note.Show()
	r.form.stack.Arrange()
	if c := fyne.CurrentApp().Driver().CanvasForObject(r.note); c != nil {
		c.Focus(r.note)
	}
}

// fill shows what is given at the place of now.
func (r *row) fill() {
	r.filling = true
	defer func() { r.filling = false }()
	given, _ := r.form.given.At(r.finding.Key, r.place())
	chosen := -1
	for i, c := range r.finding.Choices {
		if c.Key == given.Choice {
			chosen = i
		}
	}
	r.answers.Set(chosen)
	r.note.SetText(given.Note)
	visible(r.note, given.Note != "")
	text := r.form.figures[Beside{r.finding.Beside, r.place()}]
	r.measured.SetText(lang.L("measured: {{.Figure}}", map[string]any{"Figure": text}))
	visible(r.measured, text != "" && r.finding.Beside != appraisal.Nothing)
}

func (r *row) give() {
	if r.filling || r.form.filling {
		return
	}
	g := appraisal.Given{Finding: r.finding.Key, Place: r.place(), Note: r.note.Text}
	if i := r.answers.Chosen; i >= 0 {
		g.Choice = r.finding.Choices[i].Key
	}
	r.form.set(g)
}

func visible(o fyne.CanvasObject, on bool) {
	if on {
		o.Show()
	} else {
		o.Hide()
	}
}

// HeightAt places everything for that width.
func (r *row) HeightAt(width float32) float32 {
	const top = 8
	right := width - titleWidth - penWidth
	left := flow.HeightAt(r.title, titleWidth)
	flow.Put(r.title, -8, top, titleWidth, left)
	if r.measured.Visible() {
		h := flow.HeightAt(r.measured, titleWidth)
		flow.Put(r.measured, -8, top+left-10, titleWidth, h)
		left += h - 10
	}
	answers := r.answers.HeightAt(right)
	flow.Put(r.answers, titleWidth, top, right, answers)
	flow.Put(r.pen, width-penWidth, top, penWidth, r.pen.MinSize().Height)
	if r.note.Visible() {
		h := r.note.MinSize().Height
		flow.Put(r.note, titleWidth, top+answers+rowGap, right, h)
		answers += rowGap + h
	}
	height := top + max(left, answers) + top
	r.rule.Position1, r.rule.Position2 = fyne.NewPos(0, 0), fyne.NewPos(width, 0)
	return height
}

func (r *row) colour() { r.rule.StrokeColor, r.rule.StrokeWidth = look.Colour(look.Hairline), 1 }

// CreateRenderer is called by Fyne.
func (r *row) CreateRenderer() fyne.WidgetRenderer { return rowRenderer{r} }

type rowRenderer struct{ r *row }

func (d rowRenderer) MinSize() fyne.Size    { return fyne.NewSize(titleWidth+penWidth+200, 40) }
func (d rowRenderer) Layout(size fyne.Size) { d.r.HeightAt(size.Width) }
func (d rowRenderer) Destroy()              {}

func (d rowRenderer) Refresh() {
	d.r.colour()
	for _, o := range d.Objects() {
		o.Refresh()
	}
}

func (d rowRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{d.r.rule, d.r.title, d.r.measured, d.r.answers, d.r.pen, d.r.note}
}
