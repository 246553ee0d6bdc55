package sheet

import (
	"strconv"
	"strings"
	"sync"
	"unicode"

	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
)

// letters is the font whose letters can be printed; that it can be read is
// proven by every test of this package.
var letters = sync.OnceValue(func() *sfnt.Font {
	f, err := sfnt.Parse(goregular.TTF)
	if err != nil {
		panic("sheet: an embedded font is damaged: " + err.Error())
	}
	return f
})

// plain is a text with nothing but what can be printed: a letter that the font
// does not have becomes a question mark rather than nothing.
func plain(text string) string {
	if strings.IndexFunc(text, func(r rune) bool { return r >= unicode.MaxASCII || r < ' ' }) < 0 {
		return text
	}
	var buffer sfnt.Buffer
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n':
			return r
		case unicode.IsSpace(r):
			return ' '
		case unicode.IsControl(r) || unicode.In(r, unicode.Cf):
			return -1
		}
		if i, err := letters().GlyphIndex(&buffer, r); err != nil || i == 0 {
			return '?'
		}
		return r
	}, text)
}

func digits(n int) string { return strconv.Itoa(n) }
