package cases

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/hand"
	"ogive/imaging/casebook"
	"ogive/ui/flow"
	"ogive/ui/label"
	"ogive/ui/overlay"
)

// foot is what can be done with the photograph that is chosen.
type foot struct {
	room   *Room
	object fyne.CanvasObject
	shows  *widget.Label
	when   *widget.Label

	open, beside, plan, more *widget.Button
	buttons                  *fyne.Container
}

func newFoot(r *Room) *foot {
	f := &foot{room: r, shows: widget.NewLabel(""), when: widget.NewLabel("")}
	f.shows.TextStyle.Bold = true
	f.when.SizeName = theme.SizeNameCaptionText
	f.shows.Truncation, f.when.Truncation = fyne.TextTruncateEllipsis, fyne.TextTruncateEllipsis
	f.open = widget.NewButton(lang.L("Mark and read"), func() { r.page.openChosen() })
	f.open.Importance = widget.HighImportance
	f.beside = widget.NewButton(lang.L("Beside another…"), r.chooseBeside)
	f.plan = widget.NewButton(lang.L("Plan"), func() {
		if p, ok := r.page.photograph(r.page.chosen); ok && r.OnPlan != nil {
			r.OnPlan(p)
		}
	})
	f.more = widget.NewButtonWithIcon("", theme.MoreHorizontalIcon(), func() { r.menuAt(f.more, f.further()...) })
	f.buttons = container.NewHBox(f.open, f.beside, f.plan, f.more)
	row := container.NewBorder(nil, nil, nil, container.NewCenter(f.buttons), container.NewVBox(layout.NewSpacer(), closely(f.shows, f.when), layout.NewSpacer()))
	f.object = container.NewVBox(widget.NewSeparator(), container.New(layout.NewCustomPaddedLayout(2, 6, 8, 12), row))
	return f
}

func (f *foot) show() {
	p, ok := f.room.page.photograph(f.room.page.chosen)
	if on := len(f.room.page.shown.photographs) > 0; on != f.object.Visible() {
		flow.Visible(f.object, on)
		f.room.page.body.Refresh()
	}
	defer f.object.Refresh()
	flow.Visible(f.buttons, ok)
	flow.Visible(f.plan, f.room.OnPlan != nil)
	flow.Visible(f.beside, f.room.OnBeside != nil)
	if !ok {
		f.shows.SetText(lang.L("No photograph is chosen"))
		f.when.SetText(lang.L("Choose one to mark it, or to see it beside another."))
		return
	}
	f.shows.SetText(showsLong(p))
	f.when.SetText(dateText(p.Date) + ", " + markedText(f.room.page.shown.marked[p.ID]))
	said := sideOf(p) != 0 && viewOf(p) != 0
	able(f.beside, said)
	able(f.plan, said)
}

func (f *foot) further() []*fyne.MenuItem {
	p, _ := f.room.page.photograph(f.room.page.chosen)
	items := []*fyne.MenuItem{}
	for _, view := range views {
		for _, side := range sides {
			now := p
			now.Hand, now.View = side.String(), view.String()
			item := fyne.NewMenuItem(lang.L("It shows: {{.What}}", map[string]any{"What": showsLong(now)}), func() { f.room.tell([]int64{p.ID}, side, view) })
			item.Checked = sideOf(p) == side && viewOf(p) == view
			item.Disabled = !f.room.writable()
			items = append(items, item)
		}
	}
	remove := fyne.NewMenuItem(lang.L("Remove this photograph…"), func() { f.room.removePhotograph(p) })
	remove.Disabled = !f.room.writable()
	return append(items, fyne.NewMenuItemSeparator(), remove)
}

// tell says which hand photographs show, and how.
func (r *Room) tell(photographs []int64, side hand.Side, view hand.View) {
	r.change(func(book *casebook.Casebook) error {
		for _, id := range photographs {
			if err := book.SetHandAndView(id, side, view); err != nil {
				return err
			}
		}
		return nil
	})
}

func (r *Room) removePhotograph(p casebook.Photograph) {
	text := lang.L("{{.What}}, {{.Date}}. The copy in the casebook and all marks on it are removed for good. The file it was imported from stays where it is.",
		map[string]any{"What": showsLong(p), "Date": dateText(p.Date)})
	if who := r.page.shown.marked[p.ID]; len(who) > 0 {
		text += "\n\n" + lang.L("Lost with it: the photograph is {{.Marked}}.", map[string]any{"Marked": markedText(who)})
	}
	ask := dialog.NewCustomConfirm(lang.L("Remove this photograph?"), lang.L("Remove"), lang.L("Keep it"), label.Wrapped(text), func(yes bool) {
		if yes {
			r.change(func(book *casebook.Casebook) error { return book.RemovePhotograph(p.ID) })
		}
	}, r.win)
	ask.SetConfirmImportance(widget.DangerImportance)
	ask.Resize(overlay.Size(r.win, 520, 260))
	ask.Show()
}
