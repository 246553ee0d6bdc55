package plan

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/wording"
	"ogive/ui/flow"
	"ogive/ui/look"
)

// head is the bar along the top: the way back, what is planned on, and what can
// be done with it.
type head struct {
	room              *Room
	title, said, kept *widget.Label
	undo, redo, sheet *widget.Button
	object            *fyne.Container
	problem           bool // the plan could not be kept
}

func newHead(r *Room) *head {
	h := &head{room: r, title: widget.NewLabel(""), said: widget.NewLabel(""), kept: widget.NewLabel("")}
	h.title.TextStyle.Bold, h.title.SizeName = true, theme.SizeNameSubHeadingText
	h.title.Truncation = fyne.TextTruncateEllipsis
	h.said.SizeName, h.said.Importance = theme.SizeNameCaptionText, widget.LowImportance
	h.said.Truncation = fyne.TextTruncateEllipsis
	h.kept.SizeName, h.kept.Importance = theme.SizeNameCaptionText, widget.LowImportance
	back := widget.NewButtonWithIcon(lang.L("Back"), theme.NavigateBackIcon(), func() { r.leave() })
	h.undo, h.redo = quiet(look.IconUndo, r.Undo), quiet(look.IconRedo, r.Redo)
	h.sheet = widget.NewButtonWithIcon(lang.L("Print sheet…"), look.Icon(look.IconPicture), func() {
		r.drop()
		if r.OnSheet != nil {
			r.OnSheet()
		}
	})
	buttons := container.NewHBox(container.NewCenter(h.kept), h.undo, h.redo,
		quiet(look.IconFit, func() { r.plate.Fit(); r.keyboard.take() }),
		quiet(look.IconPixel, func() { r.plate.PixelForPixel(); r.keyboard.take() }), h.sheet)
	words := container.New(layout.NewCustomPaddedVBoxLayout(-14), h.title, h.said)
	h.object = container.New(layout.NewCustomPaddedLayout(6, 8, 10, 10),
		container.NewBorder(nil, nil, container.NewCenter(back), container.NewCenter(buttons), words))
	return h
}

func quiet(icon look.IconName, do func()) *widget.Button {
	b := widget.NewButtonWithIcon("", look.Icon(icon), do)
	b.Importance = widget.LowImportance
	return b
}

func (r *Room) leave() {
	r.drop()
	if r.OnBack != nil {
		r.OnBack()
	}
}

// begin names what is planned on.
func (h *head) begin() {
	m := h.room.model
	h.problem = false
	h.kept.SetText("")
	h.title.SetText(lang.L("Plan · {{.Title}}", map[string]any{"Title": m.Title}))
	h.say(wording.Photograph(h.room.file.Side, h.room.file.View))
}

func (h *head) say(text string) { h.said.SetText(text) }

// show names the step that can be taken back.
func (h *head) show() {
	enable(h.undo, h.room.UndoName() != "")
	enable(h.redo, h.room.RedoName() != "")
	if name := h.room.UndoName(); name != "" && !h.problem {
		h.say(lang.L("Last step: {{.Step}}", map[string]any{"Step": name}))
	}
}

func enable(b *widget.Button, able bool) {
	switch {
	case able && b.Disabled():
		b.Enable()
	case !able && !b.Disabled():
		b.Disable()
	}
}

// caution stands under the photograph.
func caution() fyne.CanvasObject {
	l := widget.NewLabel(lang.L("All figures are of a drawing, before any skin is cut.") + " " + wording.Term(wording.Caution))
	l.Wrapping, l.SizeName, l.Importance = fyne.TextWrapWord, theme.SizeNameCaptionText, widget.MediumImportance
	return l
}

// columns gives the side column its width and the photograph the rest.
type columns struct{}

func (columns) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(700, 400) }

func (columns) Layout(parts []fyne.CanvasObject, size fyne.Size) {
	gap := look.Size(look.Gap)
	right := min(max(look.Size(look.Column)+48, size.Width*0.29), 450)
	left := size.Width - right - 3*gap
	parts[0].Move(fyne.NewPos(gap, 0))
	parts[0].Resize(fyne.NewSize(left, size.Height-gap))
	parts[1].Move(fyne.NewPos(left+2*gap, 0))
	parts[1].Resize(fyne.NewSize(right, size.Height-gap))
}

// photographed stands the webs above the photograph and the caution below it.
type photographed struct{}

func (photographed) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(300, 300) }

func (photographed) Layout(parts []fyne.CanvasObject, size fyne.Size) {
	webs, plate, caution := parts[0], parts[1], parts[2]
	top, foot := flow.HeightAt(webs, size.Width), flow.HeightAt(caution, size.Width)
	flow.Put(webs, 0, 0, size.Width, top)
	flow.Put(plate, 0, top+4, size.Width, size.Height-top-foot-4)
	flow.Put(caution, 0, size.Height-foot, size.Width, foot)
}
