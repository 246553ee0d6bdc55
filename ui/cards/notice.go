package cards

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/wording"
	"ogive/ui/flow"
	"ogive/ui/look"
	"ogive/ui/marking"
)

// notices are what is amiss with the scale and the photograph as a whole, at the
// top of the column: what is true of every ruler stands in the footnote.
type notices struct {
	widget.BaseWidget
	text   string
	ground *canvas.Rectangle
	rail   *canvas.Rectangle
	sign   *widget.Icon
	label  *widget.Label
	help   *widget.Button
}

func newNotices(onHelp func()) *notices {
	n := &notices{ground: canvas.NewRectangle(nil), rail: canvas.NewRectangle(nil), label: widget.NewLabel("")}
	n.sign = widget.NewIcon(look.ColouredIcon(look.IconWarning, look.OnNotice))
	n.label.Wrapping = fyne.TextWrapWord
	n.help = widget.NewButtonWithIcon(howToPhotograph(), look.Icon(look.IconCamera), onHelp)
	n.help.Importance = widget.LowImportance
	n.help.Alignment = widget.ButtonAlignLeading
	n.ExtendBaseWidget(n)
	n.colour()
	return n
}

func howToPhotograph() string { return lang.L("How to take the photograph") }

// show reports whether the height may have changed.
func (n *notices) show(r marking.Reading) bool {
	text := lines(append(append([]string{}, r.Problems...), r.Unusual()...))
	if text == n.text {
		return false
	}
	n.text = text
	n.label.SetText(text)
	flow.Visible(n, text != "")
	return true
}

// lines are sentences under each other.
func lines(sentences []string) string {
	for i, s := range sentences {
		sentences[i] = wording.Sentence(s)
	}
	return strings.Join(sentences, "\n")
}

func (n *notices) colour() {
	n.ground.FillColor = look.Colour(look.Notice)
	n.ground.CornerRadius = look.Size(theme.SizeNameInputRadius)
	n.rail.FillColor = look.Colour(look.Doubtful)
}

func (n *notices) HeightAt(width float32) float32 {
	const rail, sign = 5, 22
	left := float32(rail + sign + 8)
	h := flow.HeightAt(n.label, width-left)
	flow.Put(n.sign, rail+8, 9, sign, sign)
	flow.Put(n.label, left, 0, width-left, h)
	b := n.help.MinSize()
	flow.Put(n.help, left, h-6, min(b.Width, width-left), b.Height)
	h += b.Height - 4
	flow.Put(n.ground, 0, 0, width, h)
	flow.Put(n.rail, 0, 0, rail, h)
	return h
}

func (n *notices) CreateRenderer() fyne.WidgetRenderer {
	return flow.NewRenderer(n.HeightAt, n.colour, n.ground, n.rail, n.sign, n.label, n.help)
}
