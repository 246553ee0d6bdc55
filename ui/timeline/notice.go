package timeline

import (
	"fyne.io/fyne/v2/widget"

	"ogive/ui/flow"
	"ogive/ui/label"
	"ogive/ui/look"
	"ogive/ui/plate"
)

// notice is a sentence on a ground of its own, hidden while there is none.
type notice struct {
	object *plate.Plate
	label  *widget.Label
}

func newNotice() *notice {
	n := &notice{label: label.Wrapped("")}
	n.object = plate.New(look.Notice, "", n.label)
	n.object.Hide()
	return n
}

func (n *notice) show(text string) {
	n.label.SetText(text)
	flow.Visible(n.object, text != "")
}
