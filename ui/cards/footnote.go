package cards

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/ui/flow"
	"ogive/ui/marking"
)

// footnote is what is true of every scale of its kind, such as that a ruler shows
// no tilt: below the cards, in small ink, so that nobody is trained to overlook
// the notices above them.
type footnote struct {
	widget.BaseWidget
	label *widget.Label
	help  *widget.Hyperlink
}

func newFootnote(onHelp func()) *footnote {
	f := &footnote{label: widget.NewLabel(""), help: widget.NewHyperlink(howToPhotograph(), nil)}
	f.label.Wrapping = fyne.TextWrapWord
	f.label.SizeName, f.help.SizeName = theme.SizeNameCaptionText, theme.SizeNameCaptionText
	f.help.OnTapped = onHelp
	f.ExtendBaseWidget(f)
	f.Hide()
	return f
}

// show reports whether the height may have changed.
func (f *footnote) show(r marking.Reading) bool {
	text := lines(slices.Clone(r.Usual))
	if text == f.label.Text {
		return false
	}
	f.label.SetText(text)
	flow.Visible(f, text != "")
	return true
}

func (f *footnote) HeightAt(width float32) float32 {
	h := flow.HeightAt(f.label, width)
	flow.Put(f.label, 0, 0, width, h)
	b := f.help.MinSize()
	flow.Put(f.help, 0, h-14, min(b.Width, width), b.Height)
	return h - 14 + b.Height
}

func (f *footnote) CreateRenderer() fyne.WidgetRenderer {
	return flow.NewRenderer(f.HeightAt, nil, f.label, f.help)
}
