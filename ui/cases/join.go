package cases

import (
	"errors"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/hand"
	"ogive/imaging/casebook"
	"ogive/imaging/wording"
	"ogive/ui/choice"
	"ogive/ui/flow"
	"ogive/ui/label"
)

var (
	allKinds   = []casebook.Kind{casebook.Simple, casebook.Complex}
	allExtents = []casebook.Extent{casebook.Complete, casebook.Incomplete}
)

// joinRow is one web in the form: whether it was joined, how, and when it was
// operated on.
type joinRow struct {
	side   hand.Side
	web    hand.Web
	joined *widget.Check
	kind   *choice.Choice
	extent *choice.Choice
	day    *widget.Entry
	wrong  *widget.Label
	more   *fyne.Container
	object *fyne.Container
}

func newJoinRow(side hand.Side, web hand.Web, changed func() bool) *joinRow {
	j := &joinRow{side: side, web: web, day: widget.NewEntry(), wrong: label.Wrapped("")}
	j.kind = choice.New(lang.L("simple"), lang.L("complex"))
	j.extent = choice.New(lang.L("complete"), lang.L("incomplete"))
	j.kind.Optional, j.extent.Optional = true, true
	j.day.SetPlaceHolder("2026-03-01")
	j.day.OnChanged = func(string) { changed() }
	j.wrong.Importance = widget.DangerImportance
	j.wrong.Hide()
	j.more = container.NewHBox(j.kind, j.extent, widget.NewLabel(lang.L("operated on")), container.New(column(124), j.day))
	j.more.Hide()
	j.joined = widget.NewCheck(lang.L("{{.Web}} ({{.Digits}})", map[string]any{"Web": wording.WebName(web), "Digits": wording.WebDigits(web)}), func(on bool) { flow.Visible(j.more, on); changed() })
	j.object = container.NewVBox(container.NewBorder(nil, nil, nil, j.more, j.joined), j.wrong)
	return j
}

func (j *joinRow) fill(from casebook.Join) {
	for i, k := range allKinds {
		if k == from.Kind {
			j.kind.Set(i)
		}
	}
	for i, e := range allExtents {
		if e == from.Extent {
			j.extent.Set(i)
		}
	}
	j.day.SetText(string(from.Operated))
	j.joined.SetChecked(true)
}

func (j *joinRow) check() bool {
	if !j.joined.Checked {
		return say(j.wrong, nil)
	}
	_, err := casebook.ParseDate(strings.TrimSpace(j.day.Text))
	return say(j.wrong, err)
}

func (j *joinRow) read() casebook.Join {
	out := casebook.Join{Hand: j.side, Web: j.web, Operated: casebook.Date(strings.TrimSpace(j.day.Text))}
	if j.kind.Chosen >= 0 {
		out.Kind = allKinds[j.kind.Chosen]
	}
	if j.extent.Chosen >= 0 {
		out.Extent = allExtents[j.extent.Chosen]
	}
	return out
}

func errNoHand() error {
	return errors.New(lang.L("say which hand is affected: left, right or both"))
}
