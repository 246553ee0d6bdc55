package window

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"ogive/ui/look"
)

// topic is what a notice is about; a new one takes the place of the old one.
type topic int

const (
	aboutSaving topic = iota
	aboutOpening
	aboutDropping
	aboutHand
	aboutPicture
	aboutCopying
	aboutValues
	topics
)

// notice is a sentence over the photograph, with what can be done about it.
type notice struct {
	about   topic
	text    string
	lasting bool // goes away by itself only; others can be closed
	choices []choiceOf
}

// choiceOf is a button.
type choiceOf struct {
	name string
	do   func()
}

// notices is all that is said over the photograph at one time.
type notices struct {
	box     *fyne.Container
	shown   [topics]*notice
	changed func() // lays the box out anew
}

func newNotices() *notices { return &notices{box: container.NewVBox(), changed: func() {}} }

func (n *notices) show(one notice) {
	if old := n.shown[one.about]; old != nil && old.text == one.text && len(old.choices) == len(one.choices) {
		return
	}
	n.shown[one.about] = &one
	n.rebuild()
}

func (n *notices) close(about topic) {
	if n.shown[about] == nil {
		return
	}
	n.shown[about] = nil
	n.rebuild()
}

// closeAll closes what was said about the photograph that was open until now.
func (n *notices) closeAll() {
	n.shown = [topics]*notice{aboutDropping: n.shown[aboutDropping], aboutValues: n.shown[aboutValues]}
	n.rebuild()
}

// passOver closes what has been read by the time of the next gesture: that
// something was done as wished.
func (n *notices) passOver() {
	for _, about := range []topic{aboutCopying, aboutDropping} {
		if one := n.shown[about]; one != nil && !one.lasting {
			n.close(about)
		}
	}
}

// texts are the sentences that are shown.
func (n *notices) texts() []string {
	var all []string
	for _, one := range n.shown {
		if one != nil {
			all = append(all, one.text)
		}
	}
	return all
}

func (n *notices) rebuild() {
	n.box.RemoveAll()
	for about, one := range n.shown {
		if one != nil {
			n.box.Add(n.strip(topic(about), *one))
		}
	}
	n.box.Refresh()
	n.changed()
}

func (n *notices) strip(about topic, one notice) fyne.CanvasObject {
	text := widget.NewLabel(one.text)
	text.Wrapping = fyne.TextWrapWord
	row := container.NewHBox()
	for i, c := range one.choices {
		b := widget.NewButton(c.name, c.do)
		if i == 0 {
			b.Importance = widget.HighImportance
		}
		row.Add(b)
	}
	if !one.lasting {
		row.Add(widget.NewButton(lang.L("Close"), func() { n.close(about) }))
	}
	buttons := container.NewVBox(layout.NewSpacer(), row, layout.NewSpacer())
	return newShield(look.Notice, look.OnNotice, container.NewPadded(container.NewBorder(nil, nil, nil, buttons, text)))
}
