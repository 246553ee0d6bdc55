package chart

import (
	"image/color"
	"strings"
	"sync"

	"golang.org/x/image/font"
	vgfont "gonum.org/v1/plot/font"
	"gonum.org/v1/plot/font/liberation"
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
)

// Sizes of the lettering in points.
const (
	titleSize = 15
	textSize  = 11.5
	smallSize = 10
)

var handler = sync.OnceValue(func() text.Handler {
	return text.Plain{Fonts: vgfont.NewCache(liberation.Collection())}
})

func letters(c color.Color, size vg.Length) text.Style {
	return text.Style{Color: c, Font: vgfont.Font{Typeface: "Liberation", Variant: "Sans", Size: size}, Handler: handler()}
}

func bold(s text.Style) text.Style {
	s.Font.Weight = font.WeightBold
	return s
}

func aligned(s text.Style, x text.XAlignment, y text.YAlignment) text.Style {
	s.XAlign, s.YAlign = x, y
	return s
}

// wrapped breaks a text into lines no wider than width; a single longer word
// stands on a line of its own.
func wrapped(words string, s text.Style, width vg.Length) []string {
	var lines []string
	line := ""
	for _, w := range strings.Fields(words) {
		longer := strings.TrimSpace(line + " " + w)
		if line != "" && s.Width(longer) > width {
			lines, longer = append(lines, line), w
		}
		line = longer
	}
	return append(lines, line)
}
