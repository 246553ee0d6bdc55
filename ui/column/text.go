package column

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/ui/flow"
	"ogive/ui/look"
)

// Text is words that go on in the next line where they find no room. Its letters
// begin at the very edge. Without words it takes no room.
type Text struct {
	Block
	words        *widget.TextSegment
	label        *widget.RichText
	above, below float32
}

// Heading heads a section, with a gap above it.
func Heading(words string) *Text {
	t := newText(words, theme.SizeNameSubHeadingText, 20, 6)
	t.words.Style.TextStyle.Bold = true
	return t
}

// Title names what follows directly.
func Title(words string) *Text {
	t := newText(words, theme.SizeNameText, 8, 2)
	t.words.Style.TextStyle.Bold = true
	return t
}

// Body is words to be read.
func Body(words string) *Text { return newText(words, theme.SizeNameText, 0, 8) }

// Large is words to be read from a distance, or at a kitchen table.
func Large(words string, heading bool) *Text {
	if heading {
		t := newText(words, theme.SizeNameHeadingText, 4, 8)
		t.words.Style.TextStyle.Bold = true
		return t
	}
	return newText(words, theme.SizeNameSubHeadingText, 0, 12)
}

// Remark is words in small letters.
func Remark(words string) *Text {
	t := newText(words, theme.SizeNameCaptionText, 0, 8)
	t.words.Style.ColorName = look.SecondInk
	return t
}

func newText(words string, size fyne.ThemeSizeName, above, below float32) *Text {
	t := &Text{words: &widget.TextSegment{Text: words}, above: above, below: below}
	t.words.Style = widget.RichTextStyle{ColorName: theme.ColorNameForeground, SizeName: size}
	t.label = widget.NewRichText(t.words)
	t.label.Wrapping = fyne.TextWrapWord
	t.begin(t, t.stand, nil, t.label)
	flow.Visible(t, words != "")
	return t
}

// Set changes the words.
func (t *Text) Set(words string) {
	if t.words.Text != words {
		t.words.Text = words
		t.label.Refresh()
	}
	flow.Visible(t, words != "")
}

// Words are the words.
func (t *Text) Words() string { return t.words.Text }

func (t *Text) stand(width float32) float32 {
	if !t.Visible() {
		return 0
	}
	rim := look.Size(theme.SizeNameInnerPadding)
	h := flow.HeightAt(t.label, width+2*rim)
	flow.Put(t.label, -rim, t.above-rim, width+2*rim, h)
	return t.above + h - 2*rim + t.below
}
