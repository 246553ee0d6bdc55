// Package language gives the window its sentences in the user's language.
//
//	err := language.Load() // before the window is built
//
// The window writes lang.L("English sentence"), and the words of figures, findings
// and anatomy come from package wording, which Load lets through lang.L as well;
// the files of assets/translation hold each sentence in one language, en.json all
// of them. Sentences in which geometry and imaging warn of something, with their
// figures in them, are English in every language.
//
// To add a language, copy en.json to its code, such as fr.json, and translate the
// right-hand side.
package language

import (
	"sync"

	"fyne.io/fyne/v2/lang"

	"ogive/assets"
	"ogive/imaging/wording"
)

// Load makes the translations known to Fyne, which picks the one that fits the
// system. It fails only if the program was built with a file that can't be read.
func Load() error {
	wording.Translate(new(remembered).say)
	return lang.AddTranslationsFS(assets.Translations, assets.TranslationFolder)
}

// remembered keeps the words without gaps that were asked for: they are said
// again at every movement of a dragged point.
type remembered struct{ words sync.Map }

func (r *remembered) say(sentence string, gaps wording.Gaps) string {
	if gaps != nil {
		return lang.L(sentence, gaps)
	}
	if known, ok := r.words.Load(sentence); ok {
		return known.(string)
	}
	word := lang.L(sentence)
	r.words.Store(sentence, word)
	return word
}
