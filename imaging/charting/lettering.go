package charting

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
	TitleSize = 15
	TextSize  = 11.5
	SmallSize = 10
)

// Handler sets the lettering of a plot.
var Handler = sync.OnceValue(func() text.Handler {
	return text.Plain{Fonts: vgfont.NewCache(liberation.Collection())}
})

// Letters is the lettering of a colour and a size.
func Letters(c color.Color, size vg.Length) text.Style {
	return text.Style{Color: c, Font: vgfont.Font{Typeface: "Liberation", Variant: "Sans", Size: size}, Handler: Handler()}
}

// Bold is the lettering in bold.
func Bold(s text.Style) text.Style {
	s.Font.Weight = font.WeightBold
	return s
}

// Aligned is the lettering about another corner.
func Aligned(s text.Style, x text.XAlignment, y text.YAlignment) text.Style {
	s.XAlign, s.YAlign = x, y
	return s
}

// Wrapped breaks a text into lines no wider than width; a single longer word
// stands on a line of its own.
func Wrapped(words string, s text.Style, width vg.Length) []string {
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
