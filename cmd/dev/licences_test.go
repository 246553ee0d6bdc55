package main

import (
	"reflect"
	"strings"
	"testing"
	"testing/fstest"
)

// folder is a module's folder holding the given files.
func folder(files map[string]string) fstest.MapFS {
	out := fstest.MapFS{}
	for name, text := range files {
		out[name] = &fstest.MapFile{Data: []byte(text)}
	}
	return out
}

func TestExactlyTheCompiledModulesAreListed(t *testing.T) {
	const list = `
{"ImportPath": "fmt", "Standard": true}
{"ImportPath": "ogive/geometry/plane", "Module": {"Path": "ogive", "Main": true, "Dir": "/src"}}
{"ImportPath": "z.example/last", "Module": {"Path": "z.example/last", "Version": "v1.0.0", "Dir": "/z"}}
{"ImportPath": "a.example/first/one", "Module": {"Path": "a.example/first", "Version": "v2.3.4", "Dir": "/a"}}
{"ImportPath": "a.example/first/two", "Module": {"Path": "a.example/first", "Version": "v2.3.4", "Dir": "/a"}}
{"ImportPath": "b.example/old", "Module": {"Path": "b.example/old", "Version": "v1.0.0", "Dir": "/b",
	"Replace": {"Path": "b.example/mended", "Version": "v1.0.1", "Dir": "/c"}}}`
	got, err := modules(strings.NewReader(list))
	if err != nil {
		t.Fatal(err)
	}
	var titles []string
	for _, c := range got {
		titles = append(titles, c.title())
	}
	want := []string{"a.example/first v2.3.4", "b.example/mended v1.0.1", "z.example/last v1.0.0"}
	if !reflect.DeepEqual(titles, want) {
		t.Errorf("listed %v, want %v", titles, want)
	}
	if !got[0].contains("a.example/first/two") || got[0].contains("a.example/first/t") {
		t.Errorf("the packages of %s are taken as %v", got[0].name, got[0].packages)
	}
}

func TestAPackageOfNoKnownOriginStopsThePackaging(t *testing.T) {
	for list, says := range map[string]string{
		`{"ImportPath": "stray.example/p"}`:                                                          "stray.example/p",
		`{"ImportPath": "m.example/p", "Module": {"Path": "m.example", "Version": "v0.1.0"}}`:        "m.example v0.1.0",
		`{"ImportPath": "m.example/p", "Module": {"Path": "m.example", "Version": "v0.1.0", "Dir": `: "list of compiled packages",
	} {
		if _, err := modules(strings.NewReader(list)); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%s gives the error %v, want %q in it", list, err, says)
		}
	}
}

func TestLicencesAreFoundUnderTheNamesThatAuthorsGiveThem(t *testing.T) {
	for name, bears := range map[string]bool{
		"LICENSE": true, "License.md": true, "LICENCE.txt": true, "COPYING": true, "COPYING.LESSER": true,
		"LICENSE.libheif": true, "LICENSE_Inter.txt": true, "Cephes-LICENSE": true, "LICENSE-reader": true,
		"NOTICE": true, "NOTICE.txt": true, "PATENTS": true, "AUTHORS": true, "OFL.txt": true, "lib/LICENSE": true,
		"license.go": false, "README.md": false, "oflag.go": false, "notices.md": false, "licenses.json": false, "main.c": false,
	} {
		if got := bearsLicence(name); got != bears {
			t.Errorf("%s is taken as a licence: %v", name, got)
		}
	}
}

func TestEveryLicenceOfAModuleIsGatheredOnceButThoseOfItsTests(t *testing.T) {
	c := component{name: "m.example", version: "v1.0.0", files: folder(map[string]string{
		"LICENSE":                "mine\r\nwholly\r\n",
		"fonts/LICENSE_Some.txt": "the font's",
		"part/LICENSE":           "mine\nwholly",
		"fonts/testdata/LICENSE": "of a test",
		".github/LICENSE":        "of a robot",
		"main.go":                "package m",
	})}
	got, err := c.licences()
	want := []licence{{"LICENSE", "mine\nwholly"}, {"fonts/LICENSE_Some.txt", "the font's"}}
	if err != nil || !reflect.DeepEqual(got, want) {
		t.Errorf("gathered %q, %v; want %q", got, err, want)
	}
}

func TestAModuleWithoutLicenceStopsThePackagingByName(t *testing.T) {
	fine := component{name: "fine.example", version: "v1.0.0", files: folder(map[string]string{"LICENSE": "do as you like"})}
	for why, files := range map[string]map[string]string{
		"nothing at all":             {"main.go": "package m"},
		"only authors and a notice":  {"AUTHORS": "I", "NOTICE": "look", "PATENTS": "none"},
		"only that of a part":        {"part/LICENSE": "of the part"},
		"an empty licence":           {"LICENSE": " \n\n"},
		"only that of its test data": {"testdata/LICENSE": "of a test"},
	} {
		bare := component{name: "bare.example", version: "v0.2.0", files: folder(files)}
		_, err := notices("Ogive", "own", []component{bare, fine})
		if err == nil || !strings.Contains(err.Error(), "bare.example v0.2.0") || strings.Contains(err.Error(), "fine.example") {
			t.Errorf("%s: the error %v does not name that module alone", why, err)
		}
	}
}

func TestEveryModuleWithoutLicenceIsNamedAtOnce(t *testing.T) {
	one := component{name: "one.example", version: "v1.0.0", files: folder(nil)}
	two := component{name: "two.example", version: "v1.0.0", files: folder(nil)}
	_, err := notices("Ogive", "own", []component{one, two})
	if err == nil || !strings.Contains(err.Error(), "one.example") || !strings.Contains(err.Error(), "two.example") {
		t.Errorf("the error %v does not name both", err)
	}
}

func TestTheNoticesHoldEveryTextUnderTheNameOfWhatItCovers(t *testing.T) {
	text, err := notices("Ogive", "our own terms", []component{
		{name: "a.example", version: "v1.0.0", files: folder(map[string]string{"LICENSE": "terms of a"})},
		{name: "b.example", version: "v2.0.0", files: folder(map[string]string{"COPYING": "terms of b", "sub/LICENSE": "terms within b"})},
	})
	if err != nil {
		t.Fatal(err)
	}
	rest := string(text)
	for _, want := range []string{
		"a.example v1.0.0", "b.example v2.0.0", "our own terms",
		"a.example v1.0.0", "terms of a", "b.example v2.0.0", "terms of b", "terms within b",
	} {
		before, after, found := strings.Cut(rest, want)
		if !found {
			t.Fatalf("%q is missing, or stands too early, in\n%s", want, text)
		}
		_, rest = before, after
	}
}

func TestOldLicencesReadAsTheirAuthorsWroteThem(t *testing.T) {
	for how, written := range map[string]string{
		"ISO 8859-1":            "copyright Jos\xe9\r\nand others",
		"UTF-8":                 "copyright José\nand others\n",
		"UTF-8 with its mark":   "\ufeffcopyright José\r\nand others",
		"ends of lines of 1984": "copyright José\rand others\r",
	} {
		got, err := readText(folder(map[string]string{"LICENSE": written}), "LICENSE")
		if err != nil || got != "copyright José\nand others" {
			t.Errorf("%s is read as %q, %v", how, got, err)
		}
	}
}

func TestTheGoFontsBringTheirOwnLicence(t *testing.T) {
	files := folder(map[string]string{"LICENSE": "of the module", "font/gofont/ttfs/README": "of the fonts"})
	with := component{name: "golang.org/x/image", files: files, packages: []string{"golang.org/x/image/font/gofont/goregular"}}
	if got, err := with.licences(); err != nil || len(got) != 2 || got[1].text != "of the fonts" {
		t.Errorf("with the fonts compiled in, gathered %q, %v", got, err)
	}
	without := component{name: "golang.org/x/image", files: files, packages: []string{"golang.org/x/image/tiff"}}
	if got, err := without.licences(); err != nil || len(got) != 1 {
		t.Errorf("without the fonts, gathered %q, %v", got, err)
	}
}

func TestGoAndTheWindowsRuntimeAreCovered(t *testing.T) {
	root := t.TempDir()
	if _, err := standardLibrary(root, "go1.26").licences(); err == nil || !strings.Contains(err.Error(), "Go standard library go1.26") {
		t.Errorf("a Go without licence gives the error %v", err)
	}
	system := folder(map[string]string{"usr/share/doc/mingw-w64-x86-64-dev/copyright": "of the runtime"})
	c, err := windowsRuntime(system)
	if err != nil {
		t.Fatal(err)
	}
	if got, err := c.licences(); err != nil || len(got) != 1 || got[0].text != "of the runtime" {
		t.Errorf("gathered %q, %v", got, err)
	}
	if _, err := windowsRuntime(folder(nil)); err == nil || !strings.Contains(err.Error(), "mingw-w64-x86-64-dev") {
		t.Errorf("a system without that licence gives the error %v", err)
	}
}
