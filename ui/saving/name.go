package saving

import (
	"strings"
	"unicode"
)

// Name is a file's name made of words, without an ending. What no file system
// objects to stays: letters, digits, - and _.
func Name(words ...string) string {
	name := strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) || r == '-' || r == '_' {
			return r
		}
		return '-'
	}, strings.Join(words, "-"))
	return strings.Trim(name, "-")
}
