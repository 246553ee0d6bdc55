package wording

import (
	"fmt"
	"strings"
)

// Gaps are what is put into a sentence where it says {{.Name}}.
type Gaps = map[string]any

// say gives an English sentence in the user's language, its gaps filled.
var say = english

// Translate lets every word of this package pass through in, which knows the
// user's language; without it all words are English. Call it once, before
// anything is said: a program that writes files for other programs never does.
//
// A sentence whose translation is not known is to be given as it is. Terms and
// the literals given to say in this package are all there are.
func Translate(in func(sentence string, gaps Gaps) string) { say = in }

func english(sentence string, gaps Gaps) string {
	for name, filling := range gaps {
		sentence = strings.ReplaceAll(sentence, "{{."+name+"}}", fmt.Sprint(filling))
	}
	return sentence
}

// Term is one of Terms in the user's language; the name of a figure, which is
// the key to it, is shown through Term. Other words come back as they are.
func Term(word string) string {
	if word == "" || strings.Contains(word, "{{") {
		return word // a user's own words are no sentence with gaps
	}
	return say(word, nil)
}
