// Package language gives the window its sentences in the user's language.
//
//	err := language.Load() // before the window is built
//
// The window writes lang.L("English sentence"); the files of assets/translation
// hold each sentence in one language, en.json all of them. To add a language,
// copy en.json to its code, such as fr.json, and translate the right-hand side.
package language

import (
	"fyne.io/fyne/v2/lang"

	"ogive/assets"
)

// Load makes the translations known to Fyne, which picks the one that fits the
// system. It fails only if the program was built with a file that can't be read.
func Load() error {
	return lang.AddTranslationsFS(assets.Translations, assets.TranslationFolder)
}
