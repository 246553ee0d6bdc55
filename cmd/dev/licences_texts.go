package main

import (
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"
	"unicode/utf8"
)

// licence is one text that has to go with the program.
type licence struct{ name, text string }

// licences is every licence of the component: of itself, of what it carries
// from others in its folders, and those that remarks name. A component must
// have a licence of its own, at its top.
func (c component) licences() ([]licence, error) {
	names := c.known
	if len(names) == 0 {
		var err error
		if names, err = licenceNames(c.files); err != nil {
			return nil, fmt.Errorf("look for the licence of %s: %w", c.title(), err)
		}
		if !slices.ContainsFunc(names, grants) {
			return nil, fmt.Errorf("%s has no licence file, so it may not be passed on; do without it, or ask its authors for one", c.title())
		}
	}
	for _, r := range c.remarks() {
		names = append(names, r.files...)
	}
	var out []licence
	for _, name := range names {
		text, err := readText(c.files, name)
		if err != nil {
			return nil, fmt.Errorf("read the licence of %s: %w", c.title(), err)
		}
		if text == "" {
			return nil, fmt.Errorf("%s of %s is empty, so what it allows is not known", name, c.title())
		}
		// Modules repeat their own licence in folders that once were modules.
		same := func(l licence) bool { return l.text == text }
		if !slices.ContainsFunc(out, same) {
			out = append(out, licence{name, text})
		}
	}
	return out, nil
}

// licenceNames lists the files of a module that hold licences or notices,
// wherever they lie: other people's work is often kept in a folder with its own.
// Data of tests are left out, for they are not compiled in.
func licenceNames(files fs.FS) ([]string, error) {
	var names []string
	err := fs.WalkDir(files, ".", func(name string, entry fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case entry.IsDir() && (entry.Name() == "testdata" || len(entry.Name()) > 1 && strings.HasPrefix(entry.Name(), ".")):
			return fs.SkipDir
		case entry.Type().IsRegular() && bearsLicence(name):
			names = append(names, name)
		}
		return nil
	})
	return names, err
}

// bearsLicence judges a file by its name, as authors of modules name them:
// LICENSE, LICENCE.md, COPYING.txt, LICENSE_Inter.txt, Cephes-LICENSE,
// LICENSE.libheif, NOTICE, PATENTS, OFL.txt, AUTHORS.
func bearsLicence(name string) bool {
	whole := strings.ToUpper(path.Base(name))
	ending := path.Ext(whole)
	switch ending {
	case ".GO", ".C", ".H", ".CC", ".PY", ".SH", ".JS", ".JSON", ".YML", ".YAML", ".TOML", ".TMPL", ".PNG", ".SVG", ".HTML", ".MOD", ".SUM":
		return false
	}
	switch strings.TrimSuffix(whole, ending) {
	case "NOTICE", "PATENTS", "OFL", "AUTHORS", "COPYRIGHT":
		return true
	}
	return grantsByName(whole)
}

// grants reports whether the file at the top of a component allows its use; a
// list of authors, a notice or a promise about patents does not.
func grants(name string) bool {
	return !strings.Contains(name, "/") && grantsByName(strings.ToUpper(name))
}

func grantsByName(whole string) bool {
	return strings.Contains(whole, "LICENSE") || strings.Contains(whole, "LICENCE") || strings.HasPrefix(whole, "COPYING")
}

// readText reads a licence as lines that end alike, whatever system it was
// written on.
func readText(files fs.FS, name string) (string, error) {
	data, err := fs.ReadFile(files, name)
	if err != nil {
		return "", err
	}
	text := strings.NewReplacer("\r\n", "\n", "\r", "\n", "\ufeff", "").Replace(string(data))
	if !utf8.ValidString(text) {
		text = latin1(text)
	}
	return strings.Trim(text, "\n\t \f"), nil
}

// latin1 reads bytes as ISO 8859-1, in which old licences write names.
func latin1(text string) string {
	runes := make([]rune, len(text))
	for i := range len(text) {
		runes[i] = rune(text[i])
	}
	return string(runes)
}
