package flow

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/ui/look"
)

func TestANarrowStackIsHigherAndSaysSo(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(look.Theme(theme.VariantLight))
	text := widget.NewLabel("A web that was released keeps its place while the hand grows, or it does not.")
	text.Wrapping = fyne.TextWrapWord
	below := widget.NewLabel("below")
	told := 0
	s := &Stack{OnHeight: func() { told++ }}
	page := container.New(s, text, below)
	page.Resize(fyne.NewSize(800, 100))
	wide := s.height
	page.Resize(fyne.NewSize(160, 100))
	if s.height <= wide || told != 2 {
		t.Errorf("at 160 it is %v high, at 800 %v, told %d times", s.height, wide, told)
	}
	if end := text.Position().Y + text.MinSize().Height; below.Position().Y < end {
		t.Errorf("what stands below begins at %v, the text ends at %v", below.Position().Y, end)
	}
	text.Hide()
	s.Arrange()
	if below.Position().Y != 0 {
		t.Errorf("what is hidden still takes %v", below.Position().Y)
	}
}
