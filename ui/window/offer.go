package window

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/ui/look"
)

// offer says what the program has found by itself and how to take it: beside the
// photograph, where it hides no digit and moves nothing that is aimed at.
type offer struct {
	panel fyne.CanvasObject
	found *widget.Label
}

func newOffer(accept, refuse func()) *offer {
	o := &offer{found: widget.NewLabelWithStyle("", fyne.TextAlignLeading, fyne.TextStyle{Bold: true})}
	yes := widget.NewButton(withKey(lang.L("Accept"), lang.L("Enter")), accept)
	yes.Importance = widget.HighImportance
	no := widget.NewButton(withKey(lang.L("Refuse"), lang.L("Esc")), refuse)
	rows := container.New(layout.NewCustomPaddedVBoxLayout(0), o.found, container.NewGridWithColumns(2, yes, no))
	gap := look.Size(look.Gap)
	o.panel = container.New(layout.NewCustomPaddedLayout(gap/2, gap/2, gap, gap), newShield(theme.ColorNameBackground, look.Accent, container.New(layout.NewCustomPaddedLayout(2, 8, 8, 8), rows)))
	o.panel.Hide()
	return o
}

// show offers so many webs, none if there are none.
func (o *offer) show(webs int) {
	show(o.panel, webs > 0)
	if webs == 0 {
		return
	}
	if text := foundSentence(webs); o.found.Text != text {
		o.found.SetText(text)
	}
}

func foundSentence(webs int) string {
	switch webs {
	case 1:
		return lang.L("One web found by the program")
	case 2:
		return lang.L("Two webs found by the program")
	}
	return lang.L("Three webs found by the program")
}

// withKey is what a button does and the key that does the same.
func withKey(name, key string) string { return name + "  (" + key + ")" }
