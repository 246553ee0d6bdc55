package agree

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/observed"
	"ogive/ui/column"
)

// empty says how to come to readings that can be compared.
type empty struct {
	object  fyne.CanvasObject
	page    *column.Page
	problem *column.Notice
	first   *column.Text
	lacking *column.Text
}

func newEmpty(r *Room) *empty {
	e := &empty{page: column.NewPage(), problem: column.NewNotice(""), first: column.Body(""), lacking: column.Remark("")}
	open := widget.NewButton(lang.L("Open a file…"), r.askForFile)
	e.page.Add(
		e.problem, column.Heading(lang.L("Nothing to compare yet")), e.first, e.lacking,
		column.Title(lang.L("Two observers")),
		column.Body(lang.L("One marks the photographs of a casebook. The other chooses “{{.Item}}” in the menu, gives another name, and marks the same photographs without a look at the first one's marks.", map[string]any{"Item": lang.L("Who is marking?")})),
		column.Title(lang.L("One observer, twice")),
		column.Body(lang.L("On another day open the casebook again, choose “{{.Item}}” in the menu on photographs that you have marked before, and mark them anew. Marks that are only corrected do not count: they keep what you saw the first time.", map[string]any{"Item": lang.L("Clear all points")})),
		column.Title(lang.L("Readings from elsewhere")),
		column.Body(lang.L("A table saved as CSV, a line for each reading, with the columns target, observer and value, and if you like figure and occasion. A unit stands in brackets behind the figure, as in “span (mm)”.")),
		column.Line(open),
		column.Remark(lang.L("At least two webs must be read by both. The fewer there are, the wider are the intervals.")))
	e.object = container.New(middle{}, e.page.Object())
	return e
}

// show says what is lacking, where something was found.
func (e *empty) show(casebook bool, source string, f observed.Found, lacking []string) {
	e.problem.Set("")
	switch {
	case source == "" && !casebook:
		e.first.Set(lang.L("No casebook is open. Agreement is told from photographs that were marked twice, or from a table of readings."))
	case len(f.Between)+len(f.Within) > 0 || len(lacking) > 0:
		e.first.Set(lang.L("Too few readings are there twice."))
	default:
		e.first.Set(lang.L("No photograph has been marked twice. How far a figure can be trusted shows when the same photographs are marked again."))
	}
	e.lacking.Set(strings.Join(append(some(lang.L("Not compared:"), lacking), some(lang.L("Passed over:"), f.Passed)...), "\n"))
	e.page.Arrange()
}
