package round

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/rounds"
	"ogive/ui/look"
)

// head is the bar along the top: the way back, what is being done, how far it is.
type head struct {
	room              *Room
	back              *widget.Button
	title, said       *widget.Label
	fit, pixel        *widget.Button
	undo, redo        *widget.Button
	photograph, marks *fyne.Container // what can be done with the picture
	object            fyne.CanvasObject
}

func newHead(r *Room) *head {
	h := &head{room: r, title: widget.NewLabel(""), said: widget.NewLabel("")}
	h.title.TextStyle.Bold, h.title.SizeName = true, theme.SizeNameSubHeadingText
	h.title.Truncation, h.said.Truncation = fyne.TextTruncateEllipsis, fyne.TextTruncateEllipsis
	h.said.SizeName, h.said.Importance = theme.SizeNameCaptionText, widget.LowImportance
	h.back = widget.NewButtonWithIcon("", theme.NavigateBackIcon(), r.leave)
	h.fit = command(look.IconFit, func() { r.table.board.Fit(); r.keyboard.take() })
	h.pixel = command(look.IconPixel, func() { r.table.board.PixelForPixel(); r.keyboard.take() })
	h.undo, h.redo = command(look.IconUndo, func() { r.table.marking.undo() }), command(look.IconRedo, func() { r.table.marking.redo() })
	h.photograph, h.marks = container.NewHBox(h.fit, h.pixel), container.NewHBox(h.undo, h.redo)
	words := container.New(layout.NewCustomPaddedVBoxLayout(-14), h.title, h.said)
	h.object = inset(container.NewBorder(nil, nil, container.NewCenter(h.back), container.NewCenter(container.NewHBox(h.marks, h.photograph)), words), 6, 8, 10)
	return h
}

func command(icon look.IconName, do func()) *widget.Button {
	b := widget.NewButtonWithIcon("", look.Icon(icon), do)
	b.Importance = widget.LowImportance
	return b
}

// show says where the user is.
func (h *head) show() {
	r := h.room
	visible(h.photograph, r.taking != nil && r.page != concluding)
	visible(h.marks, r.page == placing)
	visible(h.back, r.page != starting || r.OnLeave != nil)
	switch {
	case r.page == starting:
		h.say(lang.L("Back"), lang.L("Rounds"), lang.L("Pictures of hands whose truth is known: judge them, and see which way your eye errs."))
	case r.page == concluding:
		h.say(lang.L("All rounds"), lang.L("The round is done"), h.who(r.result.round))
	case r.taking != nil:
		h.say(lang.L("Leave the round"), r.progress(), h.who(r.taking.round)+" · "+lang.L("what you have compared with the truth is kept: leave and go on whenever you like"))
	}
	h.object.Refresh()
}

func (h *head) say(back, title, said string) {
	h.back.SetText(back)
	h.title.SetText(title)
	h.said.SetText(said)
}

// who takes the round, and of what kind it is.
func (h *head) who(of *rounds.Round) string {
	if of == nil {
		return ""
	}
	return lang.L("{{.Kind}} by {{.Observer}}", map[string]any{"Kind": kindWords(of.Setup.Kind), "Observer": of.Observer})
}

// progress is which picture is in hand.
func (r *Room) progress() string {
	done, of := r.taking.round.Progress()
	if r.page != telling {
		done++
	}
	return lang.L("Picture {{.Number}} of {{.All}}", map[string]any{"Number": min(done, of), "All": of})
}

// keptSentence says what becomes of a round that is left.
func (r *Room) keptSentence() string {
	done, of := r.taking.round.Progress()
	if done == of {
		return ""
	}
	return lang.L("The round is kept: {{.Done}} of {{.All}} pictures are answered. Go on with it at the right, whenever you like.", map[string]any{"Done": done, "All": of})
}
