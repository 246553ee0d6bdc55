package cases

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"

	"ogive/imaging/casebook"
	"ogive/ui/label"
	"ogive/ui/overlay"
)

// chooseBeside asks which photograph the chosen one is compared with.
func (r *Room) chooseBeside() {
	chosen, ok := r.page.photograph(r.page.chosen)
	if !ok || r.OnBeside == nil {
		return
	}
	var ask *dialog.CustomDialog
	take := func(p pair) { ask.Hide(); r.OnBeside(p.a, p.b) }
	ask = dialog.NewCustom(lang.L("Beside which photograph?"), lang.L("Cancel"), r.besideList(chosen, take), r.win)
	ask.Resize(overlay.Size(r.win, 760, 640))
	ask.Show()
}

// besideList lists the photographs that can stand beside the chosen one.
func (r *Room) besideList(chosen casebook.Photograph, take func(pair)) fyne.CanvasObject {
	hands, sittings := pairs(r.page.shown.about.Hand, chosen, r.page.shown.photographs)
	rows := container.NewVBox(label.Caption(lang.L("Chosen: {{.What}}, {{.Date}}. Only photographs of the same view are listed; in another view the index is another one.",
		map[string]any{"What": showsLong(chosen), "Date": dateText(chosen.Date)})))
	rows.Add(heading(lang.L("The other hand")))
	rows.Add(r.besideGroup(chosen, hands, lang.L("There is no photograph of the other hand in this view yet."), take))
	rows.Add(heading(lang.L("The same hand at another sitting")))
	rows.Add(r.besideGroup(chosen, sittings, lang.L("There is no other sitting of this hand in this view yet."), take))
	return container.NewVScroll(container.New(layout.NewCustomPaddedLayout(0, 8, 4, 16), rows))
}

func (r *Room) besideGroup(chosen casebook.Photograph, group []pair, none string, take func(pair)) fyne.CanvasObject {
	if len(group) == 0 {
		return label.Wrapped(none)
	}
	row := container.New(layout.NewRowWrapLayoutWithCustomPadding(8, 8))
	for _, p := range group {
		when := dateText(p.other.Date)
		if p.other.Sitting == chosen.Sitting {
			when = lang.L("same day")
		}
		t := newThumb(when, markedText(r.page.shown.marked[p.other.ID]))
		t.onChoose = func() { take(p) }
		t.onOpen = t.onChoose
		t.show(r.page.small.at(p.other.Hash))
		row.Add(t)
	}
	return row
}
