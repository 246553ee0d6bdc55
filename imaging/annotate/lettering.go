package annotate

import (
	"strings"

	"ogive/imaging/markshapes"
)

// fonts are the faces of one picture; faces are not safe to share between
// drawings that run at the same time.
type fonts struct{ regular, bold, italic, title, small lettering }

func newFonts(em float64) fonts {
	return fonts{
		regular: markshapes.Regular(em),
		bold:    markshapes.Bold(em),
		italic:  markshapes.Italic(em),
		title:   markshapes.Bold(1.25 * em),
		small:   markshapes.Bold(0.82 * em),
	}
}

// lineHeight is the distance between two lines of text.
func lineHeight(f lettering) float64 { return 1.32 * f.Size }

// baseline is how far the baseline lies below the top of a line of text.
func baseline(f lettering) float64 { return 0.98 * f.Size }

// wrapped breaks a text into lines no wider than width; a word wider than that
// is broken too.
func wrapped(f lettering, text string, width float64) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		for _, part := range broken(f, word, width) {
			switch joined := strings.TrimSpace(line + " " + part); {
			case line == "" || f.WidthOf(joined) <= width:
				line = joined
			default:
				lines = append(lines, line)
				line = part
			}
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// broken is a word in parts no wider than width.
func broken(f lettering, word string, width float64) []string {
	if f.WidthOf(word) <= width {
		return []string{word}
	}
	var parts []string
	part := ""
	for _, r := range word {
		if part != "" && f.WidthOf(part+string(r)) > width {
			parts = append(parts, part)
			part = ""
		}
		part += string(r)
	}
	return append(parts, part)
}
