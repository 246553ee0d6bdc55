package beside

import (
	"errors"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/comparison"
	"ogive/imaging/compared"
	"ogive/imaging/wording"
	"ogive/ui/flow"
	"ogive/ui/label"
	"ogive/ui/look"
)

// plain is the page in place of the room where two photographs can't be
// compared: why, and what to do.
type plain struct {
	why, what *widget.Label
	open      [2]*widget.Button
	buttons   *fyne.Container
	words     *flow.Stack
	object    *fyne.Container
}

func newPlain(r *Room) *plain {
	p := &plain{why: label.Wrapped(""), what: label.Wrapped("")}
	p.why.TextStyle.Bold, p.why.SizeName = true, theme.SizeNameSubHeadingText
	for i := range p.open {
		p.open[i] = widget.NewButtonWithIcon("", look.Icon(look.IconOpen), func() { r.open(i) })
	}
	back := widget.NewButtonWithIcon(lang.L("Choose another photograph"), theme.NavigateBackIcon(), r.back)
	buttons := container.NewHBox(p.open[0], p.open[1], back)
	p.words = &flow.Stack{OnHeight: func() {}}
	p.object = container.New(page{}, container.New(p.words, p.why, p.what, buttons))
	p.buttons = buttons
	return p
}

// page stands a text of a readable width a third down the room.
type page struct{}

func (page) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(400, 240) }

func (page) Layout(parts []fyne.CanvasObject, size fyne.Size) {
	width := min(680, size.Width-2*look.Size(look.Gap))
	flow.Put(parts[0], (size.Width-width)/2, size.Height/4, width, size.Height*3/4)
}

// show says why and offers the photographs that need work.
func (p *plain) show(sides [2]Side, err error) {
	why, what, need := reasons(sides, err)
	p.why.SetText(why)
	p.what.SetText(what)
	for i, b := range p.open {
		b.SetText(lang.L("Open {{.Title}}", map[string]any{"Title": sides[i].Title}))
		b.Importance = widget.MediumImportance
		if need[i] && !(need[0] && need[1]) {
			b.Importance = widget.HighImportance
		}
		flow.Visible(b, need[i])
		b.Refresh()
	}
	p.buttons.Refresh()
	p.words.Arrange()
}

// reasons are the error in words for the reader, what to do, and which of the
// photographs to open for it.
func reasons(sides [2]Side, err error) (why, what string, need [2]bool) {
	var unready compared.Unready
	switch {
	case errors.As(err, &unready):
		side := 0
		if unready.Other {
			side = 1
		}
		need[side] = true
		if errors.Is(err, compared.ErrNothingRead) {
			return lang.L("{{.Title}} is not marked yet.", map[string]any{"Title": wording.Sentence(sides[side].Title)}),
				lang.L("Open it and mark the scale, MCP and PIP of the digits beside the web, and the web itself. Then come back."), need
		}
		return lang.L("{{.Title}} can't be measured.", map[string]any{"Title": wording.Sentence(sides[side].Title)}), wording.Sentence(unready.Err.Error()) + ".", need
	case errors.Is(err, comparison.ErrViews):
		return lang.L("The two photographs show different views."),
			lang.L("In another view the index stands on other landmarks, so nothing can be compared. Choose a photograph in the same view: both of the back of the hand, or both of the palm. If a view is named wrongly, open that photograph and correct it."), [2]bool{true, true}
	case errors.Is(err, comparison.ErrWebs):
		return lang.L("No web is marked on both photographs."),
			lang.L("Only a web that was read on both can be compared. Open the one that lacks it and mark the same web."), [2]bool{true, true}
	}
	return lang.L("These two can't be compared."), wording.Sentence(err.Error()) + ".", [2]bool{true, true}
}
