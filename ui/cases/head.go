package cases

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/casebook"
	"ogive/imaging/wording"
	"ogive/ui/flow"
	"ogive/ui/label"
)

// head is the bar over a case and what is known of it.
type head struct {
	room  *Room
	bar   fyne.CanvasObject
	code  *widget.Label
	facts *fyne.Container
	who   *widget.Label
	joins *widget.Label
	other *widget.Label

	bring, overTime, edit, more *widget.Button
}

func newHead(r *Room) *head {
	h := &head{room: r, code: widget.NewLabel("")}
	h.code.TextStyle.Bold, h.code.SizeName = true, theme.SizeNameHeadingText
	h.code.Truncation = fyne.TextTruncateEllipsis
	h.bring = widget.NewButton(lang.L("Import photographs…"), func() { r.offerImport(h.bring) })
	h.overTime = widget.NewButton(lang.L("Over time"), func() {
		if r.OnOverTime != nil {
			r.OnOverTime(r.page.id)
		}
	})
	h.edit = widget.NewButton(lang.L("Edit…"), r.editCase)
	h.more = widget.NewButtonWithIcon("", theme.MoreHorizontalIcon(), func() { r.menuAt(h.more, h.further()...) })
	commands := container.NewHBox(h.bring, h.overTime, h.edit, h.more)
	h.bar = container.NewVBox(container.New(layout.NewCustomPaddedLayout(8, 4, 8, 12), container.NewBorder(nil, nil, nil, container.NewCenter(commands), h.code)), widget.NewSeparator())
	h.who, h.joins, h.other = label.Wrapped(""), label.Wrapped(""), label.Wrapped("")
	h.facts = container.New(layout.NewCustomPaddedLayout(6, 12, -8, 0), closely(h.who, h.joins, h.other))
	return h
}

func (h *head) writing() []*widget.Button { return []*widget.Button{h.bring, h.edit} }

func (h *head) further() []*fyne.MenuItem {
	remove := fyne.NewMenuItem(lang.L("Remove this case…"), h.room.removeCase)
	remove.Disabled = !h.room.writable()
	sitting := fyne.NewMenuItem(lang.L("A sitting without photographs…"), h.room.newSitting)
	sitting.Disabled = remove.Disabled
	return []*fyne.MenuItem{sitting, fyne.NewMenuItem(lang.L("Export this case…"), h.room.export), fyne.NewMenuItemSeparator(), remove}
}

func (h *head) show(c contents) {
	h.code.SetText(c.about.Code)
	h.who.SetText(whoText(c))
	var joins []string
	for _, j := range c.about.Joins {
		joins = append(joins, joinText(j))
	}
	h.joins.SetText(strings.Join(joins, "\n"))
	flow.Visible(h.joins, len(joins) > 0)
	h.other.SetText(lang.L("Other findings: {{.Findings}}", map[string]any{"Findings": c.about.Findings}))
	flow.Visible(h.other, c.about.Findings != "")
	flow.Visible(h.overTime, h.room.OnOverTime != nil)
	able(h.overTime, len(c.photographs) > 0)
}

// whoText is the affected hand and the age at the last sitting.
func whoText(c contents) string {
	text := wording.Sentence(handsText(c.about.Hand))
	if len(c.sittings) > 0 {
		if old := age(c.about.Born, c.sittings[len(c.sittings)-1].Date); old != "" {
			return text + ", " + lang.L("{{.Age}} old at the last sitting", map[string]any{"Age": old})
		}
	}
	if c.about.Born != casebook.Month("") {
		text += ", " + lang.L("born {{.Month}}", map[string]any{"Month": c.about.Born})
	}
	return text
}
