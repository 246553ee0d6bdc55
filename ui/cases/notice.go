package cases

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"ogive/ui/flow"
	"ogive/ui/label"
	"ogive/ui/look"
	"ogive/ui/plate"
)

// notice is a line that says what cannot be done or what is amiss.
type notice struct {
	changed  func()
	object   *fyne.Container
	label    *widget.Label
	close    *widget.Button
	standing string // what is said while nothing else is
}

func newNotice(changed func()) *notice {
	n := &notice{label: label.Wrapped(""), changed: changed}
	n.close = quiet(lang.L("Close"), func() { n.show("") })
	n.object = container.NewPadded(plate.New(look.Notice, "", container.NewBorder(nil, nil, nil, container.NewVBox(n.close), n.label)))
	n.object.Hide()
	return n
}

// stand says what holds as long as the casebook is open, "" for nothing.
func (n *notice) stand(text string) {
	n.standing = text
	n.show("")
}

// show says something until it is closed; "" takes it back.
func (n *notice) show(text string) {
	flow.Visible(n.close, text != "")
	if text == "" {
		text = n.standing
	}
	if n.label.Text == text {
		return
	}
	n.label.SetText(text)
	flow.Visible(n.object, text != "")
	n.changed()
}
