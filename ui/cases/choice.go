package cases

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"
)

// choice is a row of names of which one holds, or none. The one that holds is
// filled and ticked; tapping it again takes it back where that is allowed.
type choice struct {
	row      *fyne.Container
	buttons  []*widget.Button
	names    []string
	chosen   int
	optional bool
}

func newChoice(optional bool, names ...string) *choice {
	c := &choice{row: container.New(layout.NewCustomPaddedHBoxLayout(1)), names: names, chosen: -1, optional: optional}
	for i, name := range names {
		b := widget.NewButton(name, func() { c.tapped(i) })
		c.buttons = append(c.buttons, b)
		c.row.Add(b)
	}
	return c
}

func (c *choice) tapped(i int) {
	if i == c.chosen && c.optional {
		i = -1
	}
	c.show(i)
}

// show fills the button at i, none if i is negative.
func (c *choice) show(i int) {
	c.chosen = i
	for n, b := range c.buttons {
		b.Importance = widget.MediumImportance
		b.Text = c.names[n]
		if n == i {
			b.Importance, b.Text = widget.HighImportance, "✓ "+c.names[n]
		}
		b.Refresh()
	}
	c.row.Refresh()
}
