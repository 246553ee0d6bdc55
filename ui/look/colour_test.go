package look

import (
	"image/color"
	"math"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
)

// grounds are what each text is drawn on.
var grounds = map[fyne.ThemeColorName][]fyne.ThemeColorName{
	theme.ColorNameForeground:  {theme.ColorNameBackground, Card, theme.ColorNameButton, theme.ColorNameInputBackground, Notice, theme.ColorNameMenuBackground, theme.ColorNameOverlayBackground},
	SecondInk:                  {theme.ColorNameBackground, Card},
	theme.ColorNamePlaceHolder: {theme.ColorNameInputBackground},
	Accent:                     {theme.ColorNameBackground, Card},
	theme.ColorNameHyperlink:   {theme.ColorNameBackground, Card, Notice},
	theme.ColorNameError:       {theme.ColorNameBackground, Card},
	theme.ColorNameWarning:     {theme.ColorNameBackground, Card},
	theme.ColorNameSuccess:     {theme.ColorNameBackground, Card},
	OnAmiss:                    {Amiss},
	Doubtful:                   {Card, theme.ColorNameBackground},
	Well:                       {Card, theme.ColorNameBackground},
	OnNotice:                   {Notice},

	theme.ColorNameForegroundOnPrimary: {theme.ColorNamePrimary},
	theme.ColorNameForegroundOnError:   {theme.ColorNameError},
	theme.ColorNameForegroundOnWarning: {theme.ColorNameWarning},
	theme.ColorNameForegroundOnSuccess: {theme.ColorNameSuccess},
}

var variants = map[string]fyne.ThemeVariant{"light": theme.VariantLight, "dark": theme.VariantDark}

// Text needs a contrast of 4.5:1: WCAG 2.2, success criterion 1.4.3 (AA); that of
// what is greyed out is exempt.
func TestTextIsLegible(t *testing.T) {
	for name, v := range variants {
		least, where := math.Inf(1), ""
		for text, on := range grounds {
			for _, ground := range on {
				c := contrast(Theme(v).Color(text, v), Theme(v).Color(ground, v))
				if c < 4.5 {
					t.Errorf("%s: %s on %s has a contrast of %.2f", name, text, ground, c)
				}
				if c < least {
					least, where = c, string(text)+" on "+string(ground)
				}
			}
		}
		t.Logf("%s: the least contrast is %.2f, %s", name, least, where)
	}
}

// Under the pointer, pressed, selected or focused, a veil of the accent lies on the
// ground of a text.
func TestTextIsLegibleUnderEveryVeil(t *testing.T) {
	for name, v := range variants {
		of := func(name fyne.ThemeColorName) color.Color { return Theme(v).Color(name, v) }
		for _, veil := range []fyne.ThemeColorName{theme.ColorNameHover, theme.ColorNamePressed, theme.ColorNameSelection, theme.ColorNameFocus} {
			for _, ground := range []fyne.ThemeColorName{theme.ColorNameBackground, Card, theme.ColorNameMenuBackground, theme.ColorNameInputBackground} {
				if c := contrast(of(theme.ColorNameForeground), over(of(veil), of(ground))); c < 4.5 {
					t.Errorf("%s: text on %s under %s has a contrast of %.2f", name, ground, veil, c)
				}
			}
		}
		for _, veil := range []fyne.ThemeColorName{theme.ColorNameHover, theme.ColorNamePressed} {
			if c := contrast(of(theme.ColorNameForegroundOnPrimary), over(of(veil), of(theme.ColorNamePrimary))); c < 4.5 {
				t.Errorf("%s: text on a filled button under %s has a contrast of %.2f", name, veil, c)
			}
		}
	}
}

// over is what is seen of the ground through a veil.
func over(veil, ground color.Color) color.Color {
	r, g, b, a := veil.RGBA() // premultiplied
	gr, gg, gb, _ := ground.RGBA()
	mix := func(v, under uint32) uint16 { return uint16(v + under*(0xffff-a)/0xffff) }
	return color.RGBA64{mix(r, gr), mix(g, gg), mix(b, gb), 0xffff}
}

// Drawings that must be seen to understand need 3:1: WCAG 2.2, success criterion
// 1.4.11.
func TestDrawingsAreSeen(t *testing.T) {
	for name, v := range variants {
		for _, pair := range [][2]fyne.ThemeColorName{
			{Accent, Card}, {Doubtful, Card}, {Well, Card}, {Amiss, Card},
			{theme.ColorNameInputBorder, theme.ColorNameInputBackground}, {SkinLine, Skin}, {SkinLine, PalmSkin},
		} {
			if c := contrast(Theme(v).Color(pair[0], v), Theme(v).Color(pair[1], v)); c < 3 {
				t.Errorf("%s: %s on %s has a contrast of %.2f", name, pair[0], pair[1], c)
			}
		}
	}
}

// Black on white is 21:1, and #777777 on white 4.48:1 (WebAIM, Contrast and
// Color Accessibility; from memory).
func TestContrastIsThatOfTheStandard(t *testing.T) {
	for _, c := range []struct {
		a, b color.Color
		want float64
	}{{color.Black, color.White, 21}, {color.White, color.White, 1}, {color.Gray{0x77}, color.White, 4.48}} {
		if got := contrast(c.a, c.b); math.Abs(got-c.want) > 0.005 {
			t.Errorf("contrast of %v on %v is %.3f, want %.2f", c.a, c.b, got, c.want)
		}
	}
}

func TestEveryColourOfFyneIsGivenInBothVariants(t *testing.T) {
	for _, v := range variants {
		for _, s := range []shades{light, dark} {
			if len(s) != len(light) {
				t.Errorf("one variant names %d colours, the other %d", len(s), len(light))
			}
		}
		test.AssertAllColorNamesDefined(t, Theme(v), "ogive")
	}
}

func TestTheChosenVariantHoldsWhateverTheDesktopIsSetTo(t *testing.T) {
	for _, v := range variants {
		for _, desktop := range variants {
			if got, want := Theme(v).Color(Card, desktop), AsSystem().Color(Card, v); got != want {
				t.Errorf("variant %d on a desktop set to %d draws cards %v, want %v", v, desktop, got, want)
			}
		}
	}
}

// contrast is (lighter + 0.05) / (darker + 0.05) of relative luminances: WCAG
// 2.2, definition of contrast ratio.
func contrast(a, b color.Color) float64 {
	la, lb := luminance(a), luminance(b)
	return (math.Max(la, lb) + 0.05) / (math.Min(la, lb) + 0.05)
}

// luminance is WCAG 2.2's relative luminance, with the threshold of sRGB's
// transfer curve as in IEC 61966-2-1.
func luminance(c color.Color) float64 {
	r, g, b, _ := c.RGBA()
	part := func(v uint32) float64 {
		s := float64(v) / 0xffff
		if s <= 0.04045 {
			return s / 12.92
		}
		return math.Pow((s+0.055)/1.055, 2.4)
	}
	return 0.2126*part(r) + 0.7152*part(g) + 0.0722*part(b)
}
