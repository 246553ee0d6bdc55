package main

import (
	"archive/tar"
	"archive/zip"
	"bytes"
	"compress/gzip"
	"debug/pe"
	"errors"
	"go/parser"
	"go/token"
	"image"
	"image/png"
	"io"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
	"time"

	"github.com/tc-hib/winres"
)

const appText = `
[Details]
Icon = "assets/icon.png"
Name = "Ogive"
ID = "org.ogive.ogive"
Version = "0.1.2"
Build = 7

[LinuxAndBSD]
GenericName = "Web measuring"
Categories = ["Science", "MedicalSoftware"]

[CanOpen]
MimeTypes = "image/jpeg;image/png;"

[Migrations]
fyneDo = true
`

// sample is the program that appText describes, with a blank icon.
func sample(t *testing.T) app {
	t.Helper()
	a, err := parseApp(appText)
	if err != nil {
		t.Fatal(err)
	}
	var icon bytes.Buffer
	if err := png.Encode(&icon, image.NewNRGBA(image.Rect(0, 0, 64, 64))); err != nil {
		t.Fatal(err)
	}
	a.icon = icon.Bytes()
	return a
}

func TestTheRepositoryHasAllThatAPackageSays(t *testing.T) {
	a, err := readApp(filepath.Join("..", ".."))
	if err != nil {
		t.Fatal(err)
	}
	if _, err := png.Decode(bytes.NewReader(a.icon)); err != nil {
		t.Errorf("%s is no PNG picture: %v", a.Details.Icon, err)
	}
	if _, err := a.desktopEntry(); err != nil {
		t.Error(err)
	}
}

func TestAnIncompleteDescriptionIsRefusedByName(t *testing.T) {
	for says, change := range map[string][2]string{
		"needs a Name":    {`Name = "Ogive"`, ""},
		"needs a ID":      {`ID = "org.ogive.ogive"`, ""},
		"needs a Icon":    {`Icon = "assets/icon.png"`, `Icon = ""`},
		"form 1.2.3":      {"0.1.2", "0.1.2-beta"},
		"letters, digits": {"org.ogive.ogive", "org/ogive"},
		"of one line":     {`"Ogive"`, `"Ogive\nExec=else"`},
		"between 0 and":   {"Build = 7", "Build = 70000"},
	} {
		_, err := parseApp(strings.Replace(appText, change[0], change[1], 1))
		if err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q for %q gives the error %v, want %q in it", change[1], change[0], err, says)
		}
	}
}

func TestTheDesktopEntrySaysWhatADesktopAsksFor(t *testing.T) {
	got, err := sample(t).desktopEntry()
	// The keys, their order of groups and the trailing semicolons are those of
	// the Desktop Entry Specification 1.5, freedesktop.org.
	const want = `[Desktop Entry]
Type=Application
Version=1.5
Name=Ogive
GenericName=Web measuring
Exec=ogive %f
Icon=org.ogive.ogive
Terminal=false
Categories=Science;MedicalSoftware;
MimeType=image/jpeg;image/png;
StartupWMClass=Ogive
`
	if err != nil || string(got) != want {
		t.Errorf("the entry is\n%s%v, want\n%s", got, err, want)
	}
}

func TestNothingSlipsALineIntoTheDesktopEntry(t *testing.T) {
	a := sample(t)
	a.LinuxAndBSD.Comment = "harmless\nExec=harmful"
	if got, err := a.desktopEntry(); err == nil {
		t.Errorf("a comment of two lines gives\n%s", got)
	}
}

func TestTheMakefileInstallsEveryFileOfThePackage(t *testing.T) {
	a := sample(t)
	folder := t.TempDir()
	for _, name := range []string{"ogive", "ogive-batch"} {
		if err := os.WriteFile(filepath.Join(folder, name), []byte(name), 0o755); err != nil {
			t.Fatal(err)
		}
	}
	files, err := a.linuxFiles("pack", filepath.Join(folder, "ogive"), filepath.Join(folder, "ogive-batch"), pages{})
	if err != nil {
		t.Fatal(err)
	}
	rules := strings.ReplaceAll(string(files[0].data), "$(ID)", a.Details.ID)
	for _, rule := range []string{"\ninstall:\n", "\nuser-install:\n"} {
		_, rest, _ := strings.Cut(rules, rule)
		rest, _, _ = strings.Cut(rest, "\n\n")
		for _, f := range files[1:] {
			if name := strings.TrimPrefix(f.name, "pack/"); !strings.Contains(rest, " "+name+" ") {
				t.Errorf("%s leaves out %s:\n%s", strings.TrimSpace(rule), name, rest)
			}
		}
	}
}

func TestThePackagedProgramKnowsItsNameAndVersion(t *testing.T) {
	source, err := sample(t).metadata()
	if err != nil {
		t.Fatal(err)
	}
	if _, err := parser.ParseFile(token.NewFileSet(), "packaged.go", source, parser.AllErrors); err != nil {
		t.Errorf("the source does not parse: %v", err)
	}
	for _, want := range []string{`"org.ogive.ogive"`, `"Ogive"`, `"0.1.2"`, "7,", `"fyneDo": true`, `\x89PNG`} {
		if !bytes.Contains(source, []byte(want)) {
			t.Errorf("the source lacks %s:\n%s", want, source)
		}
	}
}

var someFiles = []packed{
	{name: "p/read.txt", data: []byte("words")},
	{name: "p/bin/run", data: []byte("deeds"), program: true},
}

func TestATarballBringsBackWhatWasPacked(t *testing.T) {
	at := time.Unix(1_700_000_000, 0)
	data, err := tarball(someFiles, at)
	if err != nil {
		t.Fatal(err)
	}
	plain, err := gzip.NewReader(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	var got []packed
	for archive := tar.NewReader(plain); ; {
		h, err := archive.Next()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatal(err)
		}
		text, err := io.ReadAll(archive)
		if err != nil || !h.ModTime.Equal(at) || h.Uid != 0 {
			t.Errorf("%s: %v, of %v, owned by %d", h.Name, err, h.ModTime, h.Uid)
		}
		got = append(got, packed{h.Name, text, h.Mode == 0o755})
	}
	if !reflect.DeepEqual(got, someFiles) {
		t.Errorf("brought back %v", got)
	}
}

func TestAZipBringsBackWhatWasPacked(t *testing.T) {
	at := time.Unix(1_700_000_000, 0)
	data, err := zipped(someFiles, at)
	if err != nil {
		t.Fatal(err)
	}
	archive, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	var got []packed
	for _, f := range archive.File {
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		text, err := io.ReadAll(r)
		if err != nil || !f.Modified.Equal(at) {
			t.Errorf("%s: %v, of %v", f.Name, err, f.Modified)
		}
		got = append(got, packed{f.Name, text, f.Mode().Perm() == 0o755})
	}
	if !reflect.DeepEqual(got, someFiles) {
		t.Errorf("brought back %v", got)
	}
}

func TestPackingTwiceGivesTheSameBytes(t *testing.T) {
	at := time.Unix(1_700_000_000, 0)
	for name, pack := range map[string]func([]packed, time.Time) ([]byte, error){"tarball": tarball, "zip": zipped} {
		one, err := pack(someFiles, at)
		if err != nil {
			t.Fatal(err)
		}
		if two, err := pack(someFiles, at); err != nil || !bytes.Equal(one, two) {
			t.Errorf("two %ss of the same files differ, %v", name, err)
		}
	}
}

func TestThePackageBearsTheTimeItIsGiven(t *testing.T) {
	set := func(value string) func(string) string { return func(string) string { return value } }
	if at, err := stamp(set("86400"), t.TempDir()); err != nil || !at.Equal(time.Unix(86400, 0)) {
		t.Errorf("the package is of %v, %v", at, err)
	}
	if _, err := stamp(set("yesterday"), t.TempDir()); err == nil || !strings.Contains(err.Error(), "yesterday") {
		t.Errorf("a time in words gives the error %v", err)
	}
	t.Setenv("GIT_CEILING_DIRECTORIES", os.TempDir())
	if at, err := stamp(set(""), t.TempDir()); err != nil || at.Year() != 1980 {
		t.Errorf("without history the package is of %v, %v", at, err)
	}
}

func TestWindowsIsShownIconAndVersion(t *testing.T) {
	set, err := sample(t).resources("ogive.exe", "Ogive", time.Unix(1_700_000_000, 0))
	if err != nil {
		t.Fatal(err)
	}
	var object bytes.Buffer
	if err := set.WriteObject(&object, winres.ArchAMD64); err != nil {
		t.Fatal(err)
	}
	if _, err := pe.NewFile(bytes.NewReader(object.Bytes())); err != nil {
		t.Errorf("the resources are no object file: %v", err)
	}
	if _, err := set.GetIcon(winres.Name("APPICON")); err != nil {
		t.Errorf("the icon: %v", err)
	}
	for _, want := range []string{"Ogive", "0.1.2", "ogive.exe"} {
		if !bytes.Contains(object.Bytes(), utf16(want)) {
			t.Errorf("the version lacks %q", want)
		}
	}
	if got := sample(t).fourNumbers(); got != [4]uint16{0, 1, 2, 7} {
		t.Errorf("the version in numbers is %v", got)
	}
}

// utf16 is how Windows writes plain letters.
func utf16(text string) []byte {
	var out []byte
	for _, b := range []byte(text) {
		out = append(out, b, 0)
	}
	return out
}

func TestAnUnlicensedModuleCannotSlipIntoAProgram(t *testing.T) {
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	if err := licensed(self, nil); err == nil || !strings.Contains(err.Error(), "was not gathered") {
		t.Errorf("a program of unknown modules gives the error %v", err)
	}
}

func TestTheWindowIsBuiltForWindowsWithoutAConsole(t *testing.T) {
	e := edition{target: target{"windows", "amd64"}, cross: windowsCompiler}
	if got := e.linking(); !strings.Contains(got, "-H=windowsgui") {
		t.Errorf("the window is linked with %s", got)
	}
	if got := strings.Join(e.windowEnvironment(), " "); !strings.Contains(got, "GOOS=windows") || !strings.Contains(got, "CC="+windowsCompiler) {
		t.Errorf("the window is built in %s", got)
	}
	if got := (edition{target: target{"linux", "amd64"}}).tags(sample(t)); got != "release,migrated_fynedo" {
		t.Errorf("the tags are %s", got)
	}
}
