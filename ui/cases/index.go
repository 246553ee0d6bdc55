package cases

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/casebook"
	"ogive/ui/flow"
	"ogive/ui/label"
)

const indexWidth = 272

// index is the list of cases with its search.
type index struct {
	room   *Room
	object fyne.CanvasObject
	search *widget.Entry
	list   *widget.List
	none   *widget.Label
	add    *widget.Button
	// receive brings an exported case in.
	receive *widget.Button
	leave   *widget.Button

	found  []casebook.Summary
	chosen int64
	turn   int // of the last search; what comes back for an earlier one is dropped
}

func newIndex(r *Room) *index {
	x := &index{room: r}
	x.search = widget.NewEntry()
	x.search.SetPlaceHolder(lang.L("Search: code, web, finding, date"))
	x.search.OnChanged = func(string) { x.fill(nil) }
	x.search.OnSubmitted = func(string) {
		if len(x.found) > 0 {
			r.ShowCase(x.found[0].ID)
		}
	}
	x.list = widget.NewList(func() int { return len(x.found) }, newRow, x.fillRow)
	x.list.HideSeparators = true
	x.list.OnSelected = x.selected
	x.none = label.Wrapped("")
	x.none.Hide()
	x.add = widget.NewButton(lang.L("New case"), r.newCase)
	x.receive = quiet(lang.L("Bring a case in…"), r.receive)
	x.leave = quiet(lang.L("Back to the start page"), r.goBack)
	x.leave.Alignment, x.receive.Alignment = widget.ButtonAlignLeading, widget.ButtonAlignLeading
	body := container.NewBorder(container.NewVBox(x.search, x.none), container.NewVBox(x.add, x.receive, x.leave), nil, nil, x.list)
	edge := container.NewBorder(nil, nil, nil, widget.NewSeparator(), container.New(layout.NewCustomPaddedLayout(8, 8, 10, 10), body))
	x.object = container.New(column(indexWidth), edge)
	return x
}

// column is a layout of a given width.
type column float32

// MinSize is called by Fyne.
func (c column) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(float32(c), objects[0].MinSize().Height)
}

// Layout is called by Fyne.
func (c column) Layout(objects []fyne.CanvasObject, size fyne.Size) { objects[0].Resize(size) }

func newRow() fyne.CanvasObject {
	code := widget.NewLabelWithStyle("", fyne.TextAlignLeading, fyne.TextStyle{Bold: true})
	about := widget.NewLabel("")
	about.SizeName = theme.SizeNameCaptionText
	code.Truncation, about.Truncation = fyne.TextTruncateEllipsis, fyne.TextTruncateEllipsis
	last := widget.NewLabel("")
	last.SizeName = theme.SizeNameCaptionText
	return closely(container.NewBorder(nil, nil, nil, last, code), about)
}

func (x *index) fillRow(i widget.ListItemID, row fyne.CanvasObject) {
	if i >= len(x.found) {
		return
	}
	s := x.found[i]
	both := row.(*fyne.Container).Objects
	top := both[0].(*fyne.Container).Objects
	last := ""
	if s.Last != "" {
		last = dateText(s.Last)
	}
	top[0].(*widget.Label).SetText(s.Code)
	top[1].(*widget.Label).SetText(last)
	both[1].(*widget.Label).SetText(handsText(s.Hand) + ", " + photographsText(s.Photographs))
	both[0].Refresh() // the date needs another width now
}

func (x *index) selected(i widget.ListItemID) {
	if i < len(x.found) && x.found[i].ID != x.chosen {
		x.chosen = x.found[i].ID
		x.room.page.open(x.chosen)
	}
}

// fill looks for the cases and then calls then, which may be nil.
func (x *index) fill(then func([]casebook.Summary)) {
	x.turn++
	turn, text := x.turn, x.search.Text
	x.room.background(func(book *casebook.Casebook) func() {
		found, err := book.Cases(text)
		return func() {
			if turn != x.turn {
				return
			}
			if err != nil {
				x.room.notice.show(sentence(err.Error()))
				return
			}
			x.show(found, text)
			if then != nil {
				then(found)
			}
		}
	})
}

func (x *index) show(found []casebook.Summary, text string) {
	x.found = found
	none := text == "" && len(found) == 0 && !x.room.appraising.object.Visible()
	flow.Visible(x.room.empty, none)
	flow.Visible(x.room.rooms, !none && !x.room.appraising.object.Visible())
	flow.Visible(x.none, len(found) == 0)
	x.none.SetText(lang.L("No case holds “{{.Text}}”.", map[string]any{"Text": text}))
	x.list.UnselectAll()
	x.list.Refresh()
	x.mark()
}

// choose marks a case as the one that is open.
func (x *index) choose(id int64) {
	x.chosen = id
	x.mark()
}

func (x *index) mark() {
	for i, s := range x.found {
		if s.ID == x.chosen {
			x.list.Select(i)
			return
		}
	}
	x.list.UnselectAll()
}
