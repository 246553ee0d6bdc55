package cases

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/hand"
	"ogive/imaging/casebook"
	"ogive/ui/choice"
	"ogive/ui/flow"
	"ogive/ui/label"
)

var allHands = []casebook.Hands{casebook.LeftHand, casebook.RightHand, casebook.BothHands}

// form is what is known of a case, being written. What is wrong is said beneath
// the field it is in.
type form struct {
	id       int64
	code     *widget.Entry
	born     *widget.Entry
	hands    *choice.Choice
	joins    []*joinRow
	groups   map[hand.Side]*fyne.Container
	findings *widget.Entry

	wrongCode, wrongBorn, wrongHands, wrong *widget.Label
	save                                    *widget.Button
	content                                 *container.Scroll
}

func newForm(c casebook.Case) *form {
	f := &form{id: c.ID, code: widget.NewEntry(), born: widget.NewEntry(), findings: widget.NewMultiLineEntry(), groups: map[hand.Side]*fyne.Container{}}
	for _, l := range []**widget.Label{&f.wrongCode, &f.wrongBorn, &f.wrongHands, &f.wrong} {
		*l = label.Wrapped("")
		(*l).Importance = widget.DangerImportance
		(*l).Hide()
	}
	f.code.SetPlaceHolder("S-012")
	f.born.SetPlaceHolder("2021-07")
	f.hands = choice.New(lang.L("Left"), lang.L("Right"), lang.L("Both"))
	f.hands.OnChosen = func(int) { f.arrange(); f.check() }
	f.findings.SetPlaceHolder(lang.L("such as a missing phalanx, a joined nail"))
	f.findings.Wrapping = fyne.TextWrapWord
	f.findings.SetMinRowsVisible(2)
	f.save = widget.NewButton(lang.L("Keep the case"), nil)
	f.save.Importance = widget.HighImportance
	f.lay()
	f.fill(c)
	f.code.OnChanged = func(string) { f.check() }
	f.born.OnChanged = func(string) { f.check() }
	return f
}

func (f *form) lay() {
	rows := container.NewVBox(
		field(lang.L("Code"), container.New(column(220), f.code), lang.L("Your own, such as S-012. Never a name, a date of birth or a hospital number: keep the list of codes elsewhere."), f.wrongCode),
		field(lang.L("Month of birth"), container.New(column(220), f.born), lang.L("Year and month; it is enough for the age. It may stay empty."), f.wrongBorn),
		field(lang.L("Affected hand"), f.hands, "", f.wrongHands))
	for _, side := range sides {
		group := container.NewVBox(heading(map[hand.Side]string{hand.Left: lang.L("Webs joined on the left hand"), hand.Right: lang.L("Webs joined on the right hand")}[side]))
		for _, web := range hand.Webs {
			j := newJoinRow(side, web, f.check)
			f.joins = append(f.joins, j)
			group.Add(j.object)
		}
		f.groups[side] = group
		rows.Add(group)
	}
	rows.Add(field(lang.L("Other findings"), f.findings, "", f.wrong))
	f.content = container.NewVScroll(container.New(layout.NewCustomPaddedLayout(0, 0, 0, 16), rows))
}

// field is a name with its entry, an explanation and what is wrong.
func field(name string, entry fyne.CanvasObject, hint string, wrong *widget.Label) fyne.CanvasObject {
	heading := widget.NewLabelWithStyle(name, fyne.TextAlignLeading, fyne.TextStyle{Bold: true})
	right := container.New(layout.NewCustomPaddedVBoxLayout(-4), container.NewHBox(entry))
	if _, long := entry.(*widget.Entry); long {
		right = container.New(layout.NewCustomPaddedVBoxLayout(-4), entry)
	}
	if hint != "" {
		right.Add(label.Caption(hint))
	}
	right.Add(wrong)
	return container.NewBorder(nil, nil, container.NewVBox(container.New(column(150), heading)), nil, right)
}

func (f *form) fill(c casebook.Case) {
	f.code.SetText(c.Code)
	f.born.SetText(string(c.Born))
	f.findings.SetText(c.Findings)
	for i, h := range allHands {
		if h == c.Hand {
			f.hands.Set(i)
		}
	}
	for _, row := range f.joins {
		for _, j := range c.Joins {
			if j.Hand == row.side && j.Web == row.web {
				row.fill(j)
			}
		}
	}
	f.arrange()
}

// arrange shows the webs of the affected hand only.
func (f *form) arrange() {
	for _, side := range sides {
		flow.Visible(f.groups[side], f.affects(side))
	}
	f.content.Refresh()
}

func (f *form) affects(side hand.Side) bool {
	switch f.hand() {
	case casebook.LeftHand:
		return side == hand.Left
	case casebook.RightHand:
		return side == hand.Right
	}
	return f.hand() == casebook.BothHands
}

func (f *form) hand() casebook.Hands {
	if f.hands.Chosen < 0 {
		return ""
	}
	return allHands[f.hands.Chosen]
}

// check says what is wrong as soon as it is; an empty code is not yet wrong.
func (f *form) check() bool {
	var code, born error
	if f.code.Text != "" {
		code = casebook.CheckCode(f.code.Text)
	}
	_, born = casebook.ParseMonth(strings.TrimSpace(f.born.Text))
	if len(strings.TrimSpace(f.born.Text)) < len("2021-07") && born != nil && !f.save.Disabled() {
		born = nil // it is still being typed
	}
	well := say(f.wrongCode, code)
	well = say(f.wrongBorn, born) && well
	if f.hands.Chosen >= 0 {
		say(f.wrongHands, nil)
	}
	for _, j := range f.joins {
		well = j.check() && well
	}
	return well
}

func say(l *widget.Label, err error) bool {
	if err != nil {
		l.SetText(sentence(err.Error()))
	}
	flow.Visible(l, err != nil)
	return err == nil
}

// read is the case that was written; false if something is wrong, which is said.
func (f *form) read() (casebook.Case, bool) {
	c := casebook.Case{ID: f.id, Code: f.code.Text, Born: casebook.Month(strings.TrimSpace(f.born.Text)), Hand: f.hand(), Findings: strings.TrimSpace(f.findings.Text)}
	_, born := casebook.ParseMonth(string(c.Born))
	well := say(f.wrongCode, casebook.CheckCode(c.Code))
	well = say(f.wrongBorn, born) && well
	var none error
	if c.Hand == "" {
		none = errNoHand()
	}
	well = say(f.wrongHands, none) && well
	for _, row := range f.joins {
		if !f.affects(row.side) || !row.joined.Checked {
			continue
		}
		well = row.check() && well
		c.Joins = append(c.Joins, row.read())
	}
	return c, well
}

func (r *Room) newCase() {
	r.writeCase(lang.L("New case"), newForm(casebook.Case{}), func(book *casebook.Casebook, c casebook.Case) (int64, error) { return book.AddCase(c) })
}

func (r *Room) editCase() {
	r.writeCase(lang.L("Edit the case"), newForm(r.page.shown.about), func(book *casebook.Casebook, c casebook.Case) (int64, error) { return c.ID, book.ChangeCase(c) })
}

// writeCase shows a form until what it says has been kept.
func (r *Room) writeCase(title string, f *form, keep func(*casebook.Casebook, casebook.Case) (int64, error)) *dialog.CustomDialog {
	ask := r.ask(title, f.content, f.save, 860, 700)
	f.save.OnTapped = func() {
		c, ok := f.read()
		if !ok {
			return
		}
		r.background(func(book *casebook.Casebook) func() {
			id, err := keep(book, c)
			return func() {
				if !say(f.wrong, err) {
					return
				}
				ask.Hide()
				r.index.search.SetText("")
				r.index.fill(func([]casebook.Summary) { r.ShowCase(id) })
			}
		})
	}
	r.win.Canvas().Focus(f.code)
	return ask
}
