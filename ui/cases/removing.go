package cases

import (
	"slices"
	"strings"

	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/casebook"
	"ogive/ui/label"
)

// removeCase says what will be lost and lets the code be typed before it is.
func (r *Room) removeCase() {
	id, code := r.page.id, r.page.shown.about.Code
	typed := widget.NewEntry()
	remove := widget.NewButton(lang.L("Remove for good"), nil)
	remove.Importance = widget.DangerImportance
	able(remove, false)
	content := container.NewVBox(label.Wrapped(lossText(r.page.shown)),
		widget.NewLabel(lang.L("To remove it, type its code: {{.Code}}", map[string]any{"Code": code})), typed)
	ask := r.ask(lang.L("Remove this case?"), content, remove, 560, 360)
	typed.OnChanged = func(text string) { able(remove, text == code) }
	remove.OnTapped = func() {
		ask.Hide()
		r.page.leave()
		r.index.choose(0)
		r.change(func(book *casebook.Casebook) error { return book.RemoveCase(id) })
	}
	r.win.Canvas().Focus(typed)
}

// lossText is what is lost with a case.
func lossText(c contents) string {
	var who []string
	marked := 0
	for _, p := range c.photographs {
		if by := c.marked[p.ID]; len(by) > 0 {
			marked++
			who = append(who, by...)
		}
	}
	slices.Sort(who)
	who = slices.Compact(who)
	text := lang.L("Case {{.Code}} with {{.Sittings}} sittings and {{.Photographs}} is removed for good. It can't be brought back unless it was exported.",
		map[string]any{"Code": c.about.Code, "Sittings": len(c.sittings), "Photographs": photographsText(len(c.photographs))})
	if marked > 0 {
		text += " " + lang.L("So are the marks on {{.Count}} of them, by {{.Who}}.", map[string]any{"Count": marked, "Who": strings.Join(who, ", ")})
	}
	return text + " " + lang.L("The files they were imported from stay where they are.")
}
