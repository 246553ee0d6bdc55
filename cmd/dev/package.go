package main

import (
	"debug/buildinfo"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"time"

	"ogive/imaging/wholefile"
)

// crossNeeds is what building the window for Windows needs. The names for other
// systems are from memory.
var crossNeeds = needs{
	purpose:  "build the window for Windows",
	debian:   []string{"gcc-mingw-w64-x86-64"},
	programs: []string{windowsCompiler},
	elsewhere: map[string]string{
		"fedora": "sudo dnf install mingw64-gcc",
		"suse":   "sudo zypper install mingw64-cross-gcc",
		"arch":   "sudo pacman -S mingw-w64-gcc",
	},
}

const windowsCompiler = "x86_64-w64-mingw32-gcc"

// pack makes a package for Linux and one for Windows, each with both programs
// and the licences of all they contain.
func (w workshop) pack() error {
	if runtime.GOOS != "linux" {
		return errors.New("packages are made on Linux, which builds for Windows too; run this on Debian or Ubuntu, which may be a virtual machine or a container")
	}
	if !w.windowed() {
		return fmt.Errorf("there is no window in %s to be packed", windowPackage)
	}
	a, err := readApp(w.root)
	if err != nil {
		return err
	}
	at, err := stamp(os.Getenv, w.root)
	if err != nil {
		return err
	}
	for _, n := range []needs{windowNeeds, crossNeeds} {
		if err := w.provide(n); err != nil {
			return err
		}
	}
	editions := []edition{
		{target: target{"linux", runtime.GOARCH}},
		{target: target{"windows", "amd64"}, cross: windowsCompiler},
	}
	for _, e := range editions {
		if err := w.packEdition(e, a, at); err != nil {
			return fmt.Errorf("pack %s for %s: %w", a.Details.Name, e, err)
		}
	}
	return nil
}

func (w workshop) packEdition(e edition, a app, at time.Time) error {
	// Licences come first: they take a second, and building takes minutes.
	components, err := w.contents(e, a)
	if err != nil {
		return err
	}
	texts, err := w.texts(a, components)
	if err != nil {
		return err
	}
	folder, err := os.MkdirTemp("", "ogive-package-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(folder)
	w.say("Building for %s; the first time this takes some minutes.", e)
	window, err := w.buildWindow(e, a, folder)
	if err != nil {
		return err
	}
	batch, err := w.buildBatch(e, folder)
	if err != nil {
		return err
	}
	for _, built := range []string{window, batch} {
		if err := licensed(built, components); err != nil {
			return err
		}
	}
	name, archive, err := e.archive(a, at, window, batch, texts)
	if err != nil {
		return err
	}
	return w.keep(name, archive)
}

// pages are the texts that go with the programs.
type pages struct{ licences, readme []byte }

func (w workshop) texts(a app, components []component) (pages, error) {
	own, err := os.ReadFile(filepath.Join(w.root, "LICENSE"))
	if err != nil {
		return pages{}, fmt.Errorf("read the program's own licence: %w", err)
	}
	readme, err := os.ReadFile(filepath.Join(w.root, "README.md"))
	if err != nil {
		return pages{}, fmt.Errorf("read the README: %w", err)
	}
	licences, err := notices(a.Details.Name, string(own), components)
	return pages{licences, readme}, err
}

// licensed compares the modules that a built program says it contains with
// those whose licences were gathered, so that none can slip past.
func licensed(built string, components []component) error {
	info, err := buildinfo.ReadFile(built)
	if err != nil {
		return fmt.Errorf("ask %s what it contains: %w", filepath.Base(built), err)
	}
	for _, m := range info.Deps {
		if m.Replace != nil {
			m = m.Replace
		}
		known := func(c component) bool { return c.name == m.Path && c.version == m.Version }
		if !slices.ContainsFunc(components, known) {
			return fmt.Errorf("%s contains %s %s, whose licence was not gathered; this is a fault of cmd/dev", filepath.Base(built), m.Path, m.Version)
		}
	}
	return nil
}

// archive is the package's file name and bytes.
func (e edition) archive(a app, at time.Time, window, batch string, texts pages) (string, []byte, error) {
	name := fmt.Sprintf("%s-%s-%s-%s", a.Details.Name, a.Details.Version, e.system, e.processor)
	if e.system == "windows" {
		files, err := a.windowsFiles(name, window, batch, texts, at)
		if err != nil {
			return "", nil, err
		}
		data, err := zipped(files, at)
		return name + ".zip", data, err
	}
	files, err := a.linuxFiles(name, window, batch, texts)
	if err != nil {
		return "", nil, err
	}
	data, err := tarball(files, at)
	return name + ".tar.gz", data, err
}

// linuxFiles lie as in the packages that Fyne's own tool makes.
func (a app) linuxFiles(folder, window, batch string, texts pages) ([]packed, error) {
	entry, err := a.desktopEntry()
	if err != nil {
		return nil, err
	}
	makefile, err := a.makefile()
	if err != nil {
		return nil, err
	}
	windowProgram, err := os.ReadFile(window)
	if err != nil {
		return nil, err
	}
	batchProgram, err := os.ReadFile(batch)
	if err != nil {
		return nil, err
	}
	local := folder + "/usr/local/"
	return []packed{
		{name: folder + "/Makefile", data: makefile},
		{name: folder + "/README.md", data: texts.readme},
		{name: folder + "/LICENCES.txt", data: texts.licences},
		{name: local + "bin/" + programName, data: windowProgram, program: true},
		{name: local + "bin/" + programName + "-batch", data: batchProgram, program: true},
		{name: local + "share/applications/" + a.Details.ID + ".desktop", data: entry},
		{name: local + "share/pixmaps/" + a.Details.ID + ".png", data: a.icon},
	}, nil
}

// windowsFiles lie in one folder, from which the program is run as it is.
func (a app) windowsFiles(folder, window, batch string, texts pages, at time.Time) ([]packed, error) {
	files := []packed{
		{name: folder + "/README.txt", data: texts.readme},
		{name: folder + "/LICENCES.txt", data: texts.licences},
	}
	for _, p := range []struct{ built, describes string }{
		{window, a.Details.Name},
		{batch, a.Details.Name + " without a window"},
	} {
		name := filepath.Base(p.built)
		set, err := a.resources(name, p.describes, at)
		if err != nil {
			return nil, err
		}
		whole, err := withResources(p.built, set)
		if err != nil {
			return nil, err
		}
		files = append(files, packed{name: folder + "/" + name, data: whole, program: true})
	}
	return files, nil
}

func (w workshop) keep(name string, data []byte) error {
	folder := filepath.Join(w.root, buildFolder)
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return err
	}
	path := filepath.Join(folder, name)
	if err := wholefile.Write(path, data); err != nil {
		return err
	}
	w.say("%s  %.1f MB", path, float64(len(data))/1e6)
	return nil
}
