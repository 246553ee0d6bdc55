package look

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"ogive/imaging/palette"
)

// Names of the program's own colours, beside those that Fyne names. Draw text in
// theme.ColorNameForeground or SecondInk; both can be read on the window's
// background and on a Card.
const (
	// Card is the sheet on which a web's figures stand.
	Card fyne.ThemeColorName = "ogive-card"
	// SecondInk is for names of figures and remarks.
	SecondInk fyne.ThemeColorName = "ogive-second-ink"
	// Hairline is for rules and outlines that carry no meaning.
	Hairline fyne.ThemeColorName = "ogive-hairline"
	// Accent is the program's one accent: the wanted point, the step under way.
	Accent fyne.ThemeColorName = "ogive-accent"
	// Amiss fills the flag of a verdict that certainly finds something amiss,
	// OnAmiss is its text.
	Amiss   fyne.ThemeColorName = "ogive-amiss"
	OnAmiss fyne.ThemeColorName = "ogive-on-amiss"
	// Doubtful is the dashed outline and the text of a doubtful verdict.
	Doubtful fyne.ThemeColorName = "ogive-doubtful"
	// Well is the tick and the text of a verdict that certainly finds all well.
	Well fyne.ThemeColorName = "ogive-well"
	// Notice is the ground of a warning, OnNotice its text.
	Notice   fyne.ThemeColorName = "ogive-notice"
	OnNotice fyne.ThemeColorName = "ogive-on-notice"
	// Skin, SkinLine and PalmSkin are those of the drawing of a hand; Skin is
	// the back, PalmSkin the palm.
	Skin     fyne.ThemeColorName = "ogive-skin"
	PalmSkin fyne.ThemeColorName = "ogive-palm-skin"
	SkinLine fyne.ThemeColorName = "ogive-skin-line"
)

// Colour is a colour of the theme in use by its name, the program's own or one
// of Fyne's.
func Colour(name fyne.ThemeColorName) color.Color { return theme.Color(name) }

// Mark is the core of a kind of mark, the same as on the saved picture; Casing
// is drawn around it. Neither depends on light or dark, since both lie on the
// photograph.
func Mark(k palette.Kind) color.Color { return palette.Cores[k] }

// Casing is the ink around the core of a mark.
func Casing() color.Color { return palette.Ink }

// shades are the colours of one variant.
type shades map[fyne.ThemeColorName]color.NRGBA

func rgb(hex uint32) color.NRGBA {
	return color.NRGBA{uint8(hex >> 16), uint8(hex >> 8), uint8(hex), 0xff}
}

func (s shades) faint(name fyne.ThemeColorName, alpha uint8) color.NRGBA {
	c := s[name]
	c.A = alpha
	return c
}

// light is ink on paper, dark is chalk on slate. The accent is the brown of
// iodine, which skin is painted with before it is cut.
var (
	light = complete(shades{
		theme.ColorNameBackground: rgb(0xf3efe6),
		Card:                      rgb(0xfdfbf6),
		theme.ColorNameForeground: rgb(0x1b2129),
		SecondInk:                 rgb(0x535a63),
		Hairline:                  rgb(0xcfc8b9),
		Accent:                    rgb(0x8c420f),
		Amiss:                     rgb(0x1b2129),
		OnAmiss:                   rgb(0xfdfbf6),
		Doubtful:                  rgb(0x6b4a00),
		Well:                      rgb(0x24553c),
		Notice:                    rgb(0xf4e3bf),
		OnNotice:                  rgb(0x3a2a08),
		Skin:                      rgb(0xe4cdb4),
		PalmSkin:                  rgb(0xf0ddcd),
		SkinLine:                  rgb(0x6a5546),

		theme.ColorNameError:   rgb(0x8e1f1c),
		theme.ColorNameWarning: rgb(0x6b4a00),
		theme.ColorNameSuccess: rgb(0x24553c),
	})
	dark = complete(shades{
		theme.ColorNameBackground: rgb(0x1b1f24),
		Card:                      rgb(0x262b32),
		theme.ColorNameForeground: rgb(0xece7db),
		SecondInk:                 rgb(0xa9adb1),
		Hairline:                  rgb(0x434a53),
		Accent:                    rgb(0xe3a05c),
		Amiss:                     rgb(0xece7db),
		OnAmiss:                   rgb(0x1b1f24),
		Doubtful:                  rgb(0xe6c277),
		Well:                      rgb(0x9ccbaf),
		Notice:                    rgb(0x4a3a17),
		OnNotice:                  rgb(0xf6e6c1),
		Skin:                      rgb(0x7a6252),
		PalmSkin:                  rgb(0x97796a),
		SkinLine:                  rgb(0x16130f),

		theme.ColorNameError:   rgb(0xf2a097),
		theme.ColorNameWarning: rgb(0xe6c277),
		theme.ColorNameSuccess: rgb(0x9ccbaf),
	})
)

// complete adds the colours that Fyne's own widgets use.
func complete(s shades) shades {
	for name, like := range map[fyne.ThemeColorName]fyne.ThemeColorName{
		theme.ColorNameButton:              Card,
		theme.ColorNamePrimary:             Accent,
		theme.ColorNameHyperlink:           Accent,
		theme.ColorNamePlaceHolder:         SecondInk,
		theme.ColorNameInputBackground:     Card,
		theme.ColorNameInputBorder:         SecondInk,
		theme.ColorNameMenuBackground:      Card,
		theme.ColorNameOverlayBackground:   theme.ColorNameBackground,
		theme.ColorNameHeaderBackground:    Card,
		theme.ColorNameSeparator:           Hairline,
		theme.ColorNameScrollBar:           SecondInk,
		theme.ColorNameInnerWindowBorder:   Card,
		theme.ColorNameForegroundOnError:   Card,
		theme.ColorNameForegroundOnWarning: Card,
		theme.ColorNameForegroundOnSuccess: Card,
		theme.ColorNameForegroundOnPrimary: Card,
	} {
		s[name] = s[like]
	}
	s[theme.ColorNameInnerWindowBorderInactive] = s[theme.ColorNameBackground]
	s[theme.ColorNameDisabled] = s.faint(SecondInk, 0xb0)
	s[theme.ColorNameDisabledButton] = s[theme.ColorNameBackground]
	s[theme.ColorNameHover] = s.faint(Accent, 0x1c)
	s[theme.ColorNamePressed] = s.faint(Accent, 0x38)
	s[theme.ColorNameFocus] = s.faint(Accent, 0x50)
	s[theme.ColorNameSelection] = s.faint(Accent, 0x40)
	s[theme.ColorNameScrollBarBackground] = s.faint(Hairline, 0x60)
	s[theme.ColorNameShadow] = color.NRGBA{A: 0x40}
	return s
}
