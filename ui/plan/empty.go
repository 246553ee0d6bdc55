package plan

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/hand"
	"ogive/imaging/wording"
	"ogive/ui/flow"
	"ogive/ui/label"
)

// empty is what stands in the column while there is nothing to plan with: the
// webs to choose from, or the ways to begin an arch.
type empty struct {
	room                  *Room
	title, text           *widget.Label
	webs                  []*widget.Button
	propose, byHand, drop *widget.Button
	choose, begin         *line
}

func newEmpty(r *Room) *empty {
	e := &empty{room: r, title: label.Wrapped(""), text: label.Wrapped("")}
	e.title.TextStyle.Bold, e.title.SizeName = true, theme.SizeNameSubHeadingText
	var things []fyne.CanvasObject
	for _, w := range hand.Webs {
		b := widget.NewButton(wording.WebName(w)+" ("+wording.WebDigits(w)+")", func() { r.planWeb(w) })
		e.webs = append(e.webs, b)
		things = append(things, b)
	}
	e.choose = newLine(things...)
	e.propose = widget.NewButton(lang.L("Propose an arch"), r.proposeAnew)
	e.propose.Importance = widget.HighImportance
	e.byHand = widget.NewButton(lang.L("Draw one by hand"), r.drawByHand)
	e.drop = widget.NewButton(lang.L("Take this web off the plan"), r.dropWeb)
	e.begin = newLine(e.propose, e.byHand, e.drop)
	return e
}

func (e *empty) objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{e.title, e.text, e.choose, e.begin}
}

func (e *empty) show() {
	r := e.room
	title, text := "", ""
	noWeb, noArch := r.kept() == nil, r.kept() != nil && r.now() == nil
	switch {
	case noWeb:
		title = lang.L("Choose a web to plan")
		text = lang.L("No web is joined on this photograph, or none was found to be: a joined web is one whose two digits have their joints marked and that has no border of its own.")
		if len(r.model.Notes) > 0 {
			text += "\n" + sentences(r.model.Notes)
		}
	case noArch:
		title = lang.L("No arch is planned for the {{.Web}} yet", map[string]any{"Web": wording.Web(r.web)})
		text = r.notes[r.web]
		if p := r.proposals[r.web]; text == "" && p.why != "" {
			text = p.why
		}
	}
	write(e.title, title)
	write(e.text, text)
	flow.Visible(e.choose, noWeb)
	flow.Visible(e.begin, noArch)
}

// sentences are several in one text, each in a line of its own.
func sentences(s []string) string {
	var out []string
	for _, one := range s {
		if one = strings.TrimSpace(one); one != "" {
			out = append(out, wording.Sentence(one))
		}
	}
	return strings.Join(out, "\n")
}
