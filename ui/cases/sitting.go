package cases

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/casebook"
	"ogive/ui/label"
)

// sittingWords is what stands at the left of a sitting.
func (p *page) sittingWords(s casebook.Sitting) *fyne.Container {
	when := widget.NewLabelWithStyle(dateText(s.Date), fyne.TextAlignLeading, fyne.TextStyle{Bold: true})
	column := closely(when, label.Caption(sittingText(s, p.shown.about.Operated())))
	if who := p.shown.appraised[s.ID]; len(who) > 0 {
		column.Add(label.Caption(lang.L("appraised by {{.Who}}", map[string]any{"Who": strings.Join(who, ", ")})))
	}
	if s.Note != "" {
		note := label.Caption(s.Note)
		note.TextStyle.Italic = true
		column.Add(note)
	}
	write := quiet(lang.L("Appraise…"), func() { p.room.appraise(s) })
	more := widget.NewButtonWithIcon("", theme.MoreHorizontalIcon(), nil)
	more.Importance = widget.LowImportance
	more.OnTapped = func() { p.room.menuAt(more, p.ofSitting(s)...) }
	able(more, p.room.writable())
	column.Add(container.NewHBox(write, more))
	return column
}

// ofSitting is what can be corrected about a sitting.
func (p *page) ofSitting(s casebook.Sitting) []*fyne.MenuItem {
	items := []*fyne.MenuItem{
		fyne.NewMenuItem(lang.L("Note…"), func() { p.room.writeNote(s) }),
		fyne.NewMenuItem(lang.L("Another day…"), func() { p.room.writeDay(s) }),
		fyne.NewMenuItemSeparator(),
	}
	for _, stage := range []casebook.Stage{casebook.Before, casebook.AtOperation, casebook.FollowUp} {
		item := fyne.NewMenuItem(lang.L("This is: {{.Stage}}", map[string]any{"Stage": stageText(stage)}), func() {
			p.room.change(func(b *casebook.Casebook) error { return b.SetStage(s.ID, stage) })
		})
		item.Checked = s.Stage == stage
		items = append(items, item)
	}
	if len(ofSitting(p.shown.photographs, s.ID)) == 0 {
		items = append(items, fyne.NewMenuItemSeparator(), fyne.NewMenuItem(lang.L("Remove this sitting"), func() {
			p.room.change(func(b *casebook.Casebook) error { return b.RemoveSitting(s.ID) })
		}))
	}
	return items
}

// writeNote lets the note on a sitting be written.
func (r *Room) writeNote(s casebook.Sitting) {
	note := widget.NewMultiLineEntry()
	note.Wrapping = fyne.TextWrapWord
	note.SetText(s.Note)
	note.SetMinRowsVisible(4)
	r.keepField(lang.L("Note on {{.Date}}", map[string]any{"Date": dateText(s.Date)}), note, "",
		func(b *casebook.Casebook, text string) error { return b.SetSittingNote(s.ID, strings.TrimSpace(text)) })
}

// writeDay lets the day of a sitting be corrected, as when a camera's clock was
// wrong.
func (r *Room) writeDay(s casebook.Sitting) {
	day := widget.NewEntry()
	day.SetText(string(s.Date))
	r.keepField(lang.L("On which day was it?"), day, lang.L("Year, month, day: 2026-03-01. All photographs of this sitting go with it."),
		func(b *casebook.Casebook, text string) error {
			return b.SetSittingDate(s.ID, casebook.Date(strings.TrimSpace(text)))
		})
}

// newSitting adds a sitting without photographs, to be appraised.
func (r *Room) newSitting() {
	day := widget.NewEntry()
	day.SetPlaceHolder("2026-03-01")
	id := r.page.id
	r.keepField(lang.L("A sitting without photographs"), day, lang.L("Year, month, day: 2026-03-01."),
		func(b *casebook.Casebook, text string) error {
			_, err := b.AddSitting(id, casebook.Date(strings.TrimSpace(text)))
			return err
		})
}

// keepField asks for one text and keeps it; what is wrong is said beneath it.
func (r *Room) keepField(title string, field *widget.Entry, hint string, keep func(*casebook.Casebook, string) error) {
	wrong := label.Wrapped("")
	wrong.Importance = widget.DangerImportance
	wrong.Hide()
	on := widget.NewButton(lang.L("Keep"), nil)
	on.Importance = widget.HighImportance
	ask := r.ask(title, container.NewVBox(field, label.Caption(hint), wrong), on, 520, 300)
	on.OnTapped = func() {
		text := field.Text
		r.background(func(book *casebook.Casebook) func() {
			err := keep(book, text)
			return func() {
				if say(wrong, err) {
					ask.Hide()
					r.Refresh()
				}
			}
		})
	}
	field.OnSubmitted = func(string) { on.OnTapped() }
	r.win.Canvas().Focus(field)
}
