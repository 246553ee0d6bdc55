package window

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"
)

// choice is a row of names of which one holds, or none yet. The one that holds
// is filled and ticked.
type choice struct {
	row     *fyne.Container
	buttons []*widget.Button
	names   []string
	chosen  int
}

func newChoice(names []string, onChosen func(int)) *choice {
	c := &choice{row: container.New(layout.NewCustomPaddedHBoxLayout(1)), names: names, chosen: -1}
	for i, name := range names {
		b := widget.NewButton(name, func() { onChosen(i) })
		c.buttons = append(c.buttons, b)
		c.row.Add(b)
	}
	return c
}

// show fills the button at i, none if i is negative.
func (c *choice) show(i int) {
	if i == c.chosen {
		return
	}
	c.chosen = i
	for n, b := range c.buttons {
		b.Importance = widget.MediumImportance
		b.SetText(c.names[n])
		if n == i {
			b.Importance = widget.HighImportance
			b.SetText("✓ " + c.names[n])
		}
		b.Refresh()
	}
	c.row.Refresh()
}
