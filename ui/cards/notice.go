package cards

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/wording"
	"ogive/ui/look"
	"ogive/ui/marking"
)

// notices are the warnings about the scale and the photograph as a whole, at the
// top of the column.
type notices struct {
	widget.BaseWidget
	text   string
	ground *canvas.Rectangle
	rail   *canvas.Rectangle
	label  *widget.Label
	help   *widget.Button
}

func newNotices(onHelp func()) *notices {
	n := &notices{ground: canvas.NewRectangle(nil), rail: canvas.NewRectangle(nil), label: widget.NewLabel("")}
	n.label.Wrapping = fyne.TextWrapWord
	n.help = widget.NewButtonWithIcon(lang.L("How to take the photograph"), look.Icon(look.IconCamera), onHelp)
	n.help.Importance = widget.LowImportance
	n.help.Alignment = widget.ButtonAlignLeading
	n.ExtendBaseWidget(n)
	n.colour()
	return n
}

// show reports whether the height may have changed.
func (n *notices) show(r marking.Reading) bool {
	var lines []string
	for _, l := range append(append([]string{}, r.Problems...), r.Warnings...) {
		lines = append(lines, wording.Sentence(l))
	}
	text := strings.Join(lines, "\n")
	if text == n.text {
		return false
	}
	n.text = text
	n.label.SetText(text)
	setVisible(n, text != "")
	return true
}

func (n *notices) colour() {
	n.ground.FillColor = look.Colour(look.Notice)
	n.ground.CornerRadius = look.Size(theme.SizeNameInputRadius)
	n.rail.FillColor = look.Colour(look.Doubtful)
}

func (n *notices) heightAt(width float32) float32 {
	const rail = 5
	h := heightAt(n.label, width-rail)
	n.label.Move(fyne.NewPos(rail, 0))
	n.label.Resize(fyne.NewSize(width-rail, h))
	b := n.help.MinSize()
	n.help.Move(fyne.NewPos(rail, h-6))
	n.help.Resize(fyne.NewSize(min(b.Width, width-rail), b.Height))
	return h + b.Height - 4
}

func (n *notices) CreateRenderer() fyne.WidgetRenderer { return noticesRenderer{n} }

type noticesRenderer struct{ n *notices }

func (r noticesRenderer) MinSize() fyne.Size { return fyne.NewSize(160, 40) }

func (r noticesRenderer) Layout(size fyne.Size) {
	r.n.heightAt(size.Width)
	r.n.ground.Resize(size)
	r.n.rail.Resize(fyne.NewSize(5, size.Height))
}

func (r noticesRenderer) Refresh() {
	r.n.colour()
	for _, o := range r.Objects() {
		o.Refresh()
	}
}

func (r noticesRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.n.ground, r.n.rail, r.n.label, r.n.help}
}

func (r noticesRenderer) Destroy() {}
