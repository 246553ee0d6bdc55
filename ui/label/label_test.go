package label

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/ui/look"
)

func TestEveryLabelGoesOnInTheNextLine(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(look.Theme(theme.VariantLight))
	for what, make := range map[string]func(string) *widget.Label{"wrapped": Wrapped, "centred": Centred, "caption": Caption} {
		l := make("Choose the photograph that shows the other hand from the same side.")
		l.Resize(fyne.NewSize(800, 20))
		wide := l.MinSize().Height
		l.Resize(fyne.NewSize(160, 20))
		if slim := l.MinSize().Height; slim <= wide {
			t.Errorf("%s: in 160 it is %v high, in 800 %v", what, slim, wide)
		}
	}
}

func TestACaptionIsSmallerThanOtherText(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(look.Theme(theme.VariantLight))
	if a, b := Caption("limit").MinSize().Height, Wrapped("limit").MinSize().Height; a >= b {
		t.Errorf("a caption is %v high, other text %v", a, b)
	}
}
