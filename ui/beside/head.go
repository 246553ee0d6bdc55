package beside

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/compared"
	"ogive/imaging/wording"
	"ogive/ui/look"
)

// head is the bar along the top: the way back, what is compared, and what can be
// done with it.
type head struct {
	title, said       *widget.Label
	swap, copy, saved *widget.Button
	object            *fyne.Container
}

func newHead(r *Room) *head {
	h := &head{title: widget.NewLabel(""), said: widget.NewLabel("")}
	h.title.TextStyle.Bold, h.title.SizeName = true, theme.SizeNameSubHeadingText
	h.title.Truncation = fyne.TextTruncateEllipsis
	h.said.SizeName, h.said.Importance = theme.SizeNameCaptionText, widget.LowImportance
	h.said.Truncation = fyne.TextTruncateEllipsis
	back := widget.NewButtonWithIcon(lang.L("Back"), theme.NavigateBackIcon(), r.back)
	h.swap = widget.NewButtonWithIcon(lang.L("Swap hands"), theme.ViewRefreshIcon(), r.swap)
	h.copy = widget.NewButtonWithIcon(lang.L("Copy table"), look.Icon(look.IconCopy), r.copyTable)
	h.saved = widget.NewButtonWithIcon(lang.L("Save picture…"), look.Icon(look.IconPicture), r.askWhere)
	buttons := container.NewHBox(h.swap, h.copy, h.saved)
	words := container.New(layout.NewCustomPaddedVBoxLayout(-14), h.title, h.said)
	h.object = container.New(layout.NewCustomPaddedLayout(6, 8, 10, 10),
		container.NewBorder(nil, nil, container.NewCenter(back), container.NewCenter(buttons), words))
	return h
}

func (h *head) waiting(sides [2]Side) {
	h.title.SetText(lang.L("Comparing…"))
	h.say(lang.L("{{.One}} beside {{.Other}}", map[string]any{"One": sides[0].Title, "Other": sides[1].Title}))
	h.enable(false)
}

func (h *head) failed(sides [2]Side) {
	h.title.SetText(lang.L("These two can't be compared yet"))
	h.say(lang.L("{{.One}} beside {{.Other}}", map[string]any{"One": sides[0].Title, "Other": sides[1].Title}))
	h.swap.Hide()
}

// show names the pair.
func (h *head) show(p compared.Pair) {
	c := p.Comparison
	if c.TwoSittings() {
		h.title.SetText(lang.L("Two sittings of the {{.Side}} hand", map[string]any{"Side": wording.Term(c.Operated.String())}))
		h.swap.SetText(lang.L("Swap sittings"))
	} else {
		h.title.SetText(lang.L("Operated {{.Side}} hand beside the {{.Other}} hand", map[string]any{"Side": wording.Term(c.Operated.String()), "Other": wording.Term(c.Other.String())}))
		h.swap.SetText(lang.L("Swap hands"))
	}
	h.say(wording.Sentence(wording.View(c.View)) + ". " + order(p))
	h.swap.Show()
	h.enable(true)
}

func (h *head) say(text string) { h.said.SetText(text) }

func (h *head) enable(able bool) {
	for _, b := range []*widget.Button{h.swap, h.copy, h.saved} {
		if able {
			b.Enable()
		} else {
			b.Disable()
		}
	}
	h.object.Refresh() // a button's words may need another width
}

func copied() string {
	return lang.L("The table is in the clipboard; paste it into your notes or a spreadsheet.")
}
