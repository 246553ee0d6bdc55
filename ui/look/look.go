// Package look is how the window looks: colours by name in light and dark, type,
// spacing and icons.
//
//	app.Settings().SetTheme(look.Theme(theme.VariantDark))
//	app.Settings().SetTheme(look.AsSystem()) // light or dark as the desktop is
//	rule := canvas.NewLine(look.Colour(look.Hairline))
//	icon := widget.NewIcon(look.Icon(look.IconWebs))
//
// Light is ink on paper, dark is chalk on slate; there is one accent. Nothing is
// said by colour alone: each colour here goes with a shape or with words.
package look

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/gobolditalic"
	"golang.org/x/image/font/gofont/goitalic"
	"golang.org/x/image/font/gofont/gomono"
	"golang.org/x/image/font/gofont/goregular"
)

// Sizes of the program's own, beside those that Fyne names.
const (
	// FigureText is the size of the figure a card is about.
	FigureText fyne.ThemeSizeName = "ogive-figure"
	// Gap is the distance between things that do not belong together.
	Gap fyne.ThemeSizeName = "ogive-gap"
	// Column is the width of a column beside the photograph.
	Column fyne.ThemeSizeName = "ogive-column"
)

// sizes are in Fyne's units, large enough to be read at arm's length.
var sizes = map[fyne.ThemeSizeName]float32{
	theme.SizeNameText:               15,
	theme.SizeNameCaptionText:        13,
	theme.SizeNameSubHeadingText:     18,
	theme.SizeNameHeadingText:        25,
	theme.SizeNamePadding:            4,
	theme.SizeNameInnerPadding:       8,
	theme.SizeNameLineSpacing:        5,
	theme.SizeNameInlineIcon:         22,
	theme.SizeNameInputRadius:        4,
	theme.SizeNameSelectionRadius:    4,
	theme.SizeNameScrollBar:          12,
	theme.SizeNameScrollBarSmall:     4,
	theme.SizeNameSeparatorThickness: 1,

	FigureText: 22,
	Gap:        12,
	Column:     312,
}

// Size is a size of the theme in use by its name, the program's own or one of
// Fyne's.
func Size(name fyne.ThemeSizeName) float32 { return theme.Size(name) }

// ours is the theme; fixed says that variant holds whatever the desktop is set
// to.
type ours struct {
	fixed   bool
	variant fyne.ThemeVariant
}

// Theme is the program's look in light (theme.VariantLight) or dark
// (theme.VariantDark).
func Theme(v fyne.ThemeVariant) fyne.Theme { return ours{fixed: true, variant: v} }

// AsSystem is the program's look in light or dark, as the desktop is set.
func AsSystem() fyne.Theme { return ours{} }

func (o ours) Color(name fyne.ThemeColorName, v fyne.ThemeVariant) color.Color {
	if o.fixed {
		v = o.variant
	}
	s := light
	if v == theme.VariantDark {
		s = dark
	}
	if c, ok := s[name]; ok {
		return c
	}
	return theme.DefaultTheme().Color(name, v)
}

func (o ours) Size(name fyne.ThemeSizeName) float32 {
	if s, ok := sizes[name]; ok {
		return s
	}
	return theme.DefaultTheme().Size(name)
}

// The letters are those of the saved picture. Signs they lack come from Fyne's
// own font.
var (
	regular    = fyne.NewStaticResource("Go-Regular.ttf", goregular.TTF)
	bold       = fyne.NewStaticResource("Go-Bold.ttf", gobold.TTF)
	italic     = fyne.NewStaticResource("Go-Italic.ttf", goitalic.TTF)
	boldItalic = fyne.NewStaticResource("Go-Bold-Italic.ttf", gobolditalic.TTF)
	mono       = fyne.NewStaticResource("Go-Mono.ttf", gomono.TTF)
)

func (o ours) Font(style fyne.TextStyle) fyne.Resource {
	switch {
	case style.Symbol:
		return theme.DefaultTheme().Font(style)
	case style.Monospace:
		return mono
	case style.Bold && style.Italic:
		return boldItalic
	case style.Bold:
		return bold
	case style.Italic:
		return italic
	}
	return regular
}

func (o ours) Icon(name fyne.ThemeIconName) fyne.Resource { return theme.DefaultTheme().Icon(name) }
