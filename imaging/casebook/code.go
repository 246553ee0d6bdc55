package casebook

import (
	"regexp"
	"strings"
	"unicode/utf8"
)

const longestCode = 40

var (
	fullDate = regexp.MustCompile(`(?i)(^|\D)(\d{4}[-./ ]\d{1,2}[-./ ]\d{1,2}|\d{1,2}[-./ ]\d{1,2}[-./ ]\d{2,4}|\d{1,2}\.? ?(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*\.?,? ?\d{2,4})(\D|$)`)
	longRun  = regexp.MustCompile(`\d{6,}|\d(?:[-./ ]?\d){8,}`)
	// Two words of letters with a space or comma between, in any case; joined
	// otherwise, words that begin with a capital and go on in small letters.
	twoWords = regexp.MustCompile(`(^|[^\pL\pN])\pL[\pL'’]+([ ,]+)\pL[\pL'’]+([^\pL\pN]|$)`)
	// A word as long as a name is, and the words of that length that are none.
	longWord = regexp.MustCompile(`\pL{4,}`)
	noNames  = map[string]bool{"case": true, "child": true, "clinic": true, "demo": true, "example": true, "finger": true,
		"hand": true, "left": true, "patient": true, "right": true, "study": true, "synd": true, "syndactyly": true, "test": true, "webs": true}
	dayOfMonth = regexp.MustCompile(`(?i)\d{1,2}[-./ ]?(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*[-./ ]?\d{2,4}`)
	twoNames   = regexp.MustCompile(`(^|[^\pL])(\pL['’])?\p{Lu}\p{Ll}+[-_.]*(\pL['’])?\p{Lu}\p{Ll}+`)
)

// CheckCode refuses a code that could tell who the patient is: it looks like a
// name, a date of birth or a hospital number. It can't see everything: a name of
// three letters passes.
func CheckCode(code string) error {
	switch {
	case strings.TrimSpace(code) == "":
		return refuse("the code is empty; give one of your own, such as S-012")
	case code != strings.TrimSpace(code) || strings.ContainsFunc(code, func(r rune) bool { return r < ' ' }):
		return refuse("the code begins or ends with a space or holds a control character; leave it out")
	case utf8.RuneCountInString(code) > longestCode:
		return refuse("the code is longer than %d characters; give a short one, such as S-012", longestCode)
	case fullDate.MatchString(code) || dayOfMonth.MatchString(code):
		return refuse("%q holds a full date, perhaps of birth, which could tell who the patient is; give a code of your own, such as S-012, and the month of birth, which is enough for the age", code)
	case longRun.MatchString(code):
		return refuse("%q holds a long number, perhaps a hospital number or a date of birth, which could tell who the patient is; give a code of your own, such as S-012, and keep the list of codes elsewhere", code)
	case twoWords.MatchString(code) || twoNames.MatchString(code) || mayBeName(code):
		return refuse("%q looks like a name, which could tell who the patient is; give a code of your own, such as S-012, and keep the list of codes elsewhere", code)
	}
	return nil
}

// mayBeName reports whether a word of the code is as long as a name and is not one
// that says what a case is.
func mayBeName(code string) bool {
	for _, word := range longWord.FindAllString(code, -1) {
		if !noNames[strings.ToLower(word)] {
			return true
		}
	}
	return false
}

// checkRemark refuses free text with a number or date in it that could tell who
// the patient is.
func checkRemark(what, s string) error {
	if len(s) > 10_000 {
		return refuse("%s: the text is longer than 10,000 characters; shorten it", what)
	}
	if fullDate.MatchString(s) || longRun.MatchString(s) {
		return refuse("%s: the text holds a full date or a long number, which could tell who the patient is; leave it out, sittings and operations have dates of their own", what)
	}
	return nil
}
