package assets

import "embed"

// TranslationFolder is the folder of Translations that holds the files.
const TranslationFolder = "translation"

// Translations are the sentences on the screen by language, one JSON file each
// in the form of Fyne's translations: the English sentence as key. English is
// complete.
//
//go:embed translation/*.json
var Translations embed.FS
