package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"slices"
	"strings"
)

// component is something a program contains that others wrote: a Go module, or
// what the compiler adds.
type component struct {
	name, version string
	// files holds its source and its licences.
	files fs.FS
	// known names the licences where they need not be looked for.
	known []string
	// packages are those of a module that are compiled in.
	packages []string
}

// listed is what go list tells of one compiled package.
type listed struct {
	ImportPath string
	Standard   bool
	Module     *struct {
		Path, Version, Dir string
		Main               bool
		Replace            *struct{ Path, Version, Dir string }
	}
}

// modules reads what "go list -deps -json" printed and gives the modules that
// are compiled in, the main module left out, in the order of their names.
func modules(list io.Reader) ([]component, error) {
	found := map[string]*component{}
	for decoder := json.NewDecoder(list); ; {
		var p listed
		err := decoder.Decode(&p)
		if errors.Is(err, io.EOF) {
			return inOrder(found), nil
		}
		if err != nil {
			return nil, fmt.Errorf("read the list of compiled packages: %w", err)
		}
		if p.Standard || p.Module != nil && p.Module.Main {
			continue
		}
		if p.Module == nil {
			return nil, fmt.Errorf("package %s belongs to no module, so its licence is not known", p.ImportPath)
		}
		name, version, folder := p.Module.Path, p.Module.Version, p.Module.Dir
		if r := p.Module.Replace; r != nil {
			name, version, folder = r.Path, r.Version, r.Dir
		}
		if folder == "" {
			return nil, fmt.Errorf("the source of %s %s is not on this machine; run go mod download", name, version)
		}
		if found[name] == nil {
			found[name] = &component{name: name, version: version, files: os.DirFS(folder)}
		}
		found[name].packages = append(found[name].packages, p.ImportPath)
	}
}

func inOrder(found map[string]*component) []component {
	var out []component
	for _, c := range found {
		out = append(out, *c)
	}
	slices.SortFunc(out, func(a, b component) int { return strings.Compare(a.name, b.name) })
	return out
}

// contains reports whether a package at or below the given path is compiled in.
func (c component) contains(under string) bool {
	return slices.ContainsFunc(c.packages, func(p string) bool {
		return p == under || strings.HasPrefix(p, under+"/")
	})
}

// standardLibrary is the part of Go itself that every Go program contains.
func standardLibrary(root, version string) component {
	return component{name: "the Go standard library", version: version, files: os.DirFS(root), known: []string{"LICENSE", "PATENTS"}}
}

// runtimeLicences is where the systems that cross-build for Windows keep the
// licences of the C runtime that becomes part of the program: Debian and its
// kin, then Fedora and Arch from memory.
var runtimeLicences = []string{
	"usr/share/doc/mingw-w64-x86-64-dev/copyright",
	"usr/share/licenses/mingw64-crt/COPYING",
	"usr/share/licenses/mingw-w64-crt/COPYING",
}

// windowsRuntime is the C runtime that a program for Windows contains when it
// was linked by MinGW-w64.
func windowsRuntime(system fs.FS) (component, error) {
	for _, name := range runtimeLicences {
		if text, err := readText(system, name); err == nil && text != "" {
			return component{name: "the MinGW-w64 runtime", files: system, known: []string{name}}, nil
		}
	}
	return component{}, fmt.Errorf("the licence of the MinGW-w64 runtime, which the program for Windows contains, is at none of /%s; install it, or add its place to runtimeLicences in cmd/dev/licences.go",
		strings.Join(runtimeLicences, ", /"))
}

// remark is something to be said beside the licences of a module when a certain
// package of it is compiled in.
type remark struct {
	module, under string
	// files hold licences although their names do not say so.
	files []string
	says  string
}

var remarks = []remark{
	{
		module: "golang.org/x/image", under: "golang.org/x/image/font/gofont",
		files: []string{"font/gofont/ttfs/README"},
		says:  "The program contains fonts of the Go family.",
	},
	{
		module: "fyne.io/fyne/v2", under: "fyne.io/fyne/v2/theme",
		says: "The program contains the fonts in theme/font: Noto Sans, Inter, DejaVu Sans Mono for Powerline and Emoji One Color, each under its own licence below.",
	},
	{
		module: "github.com/gen2brain/heic", under: "github.com/gen2brain/heic",
		says: "This module contains libheif and libde265 as one WebAssembly file. Both are under the GNU Lesser General Public License, version 3, below. " +
			"Their versions, where their source is, every change made to it and the commands that build the file are in lib/Makefile of the module's source. " +
			"Whoever wants to change them can build that file anew, put it in the place of lib/heif.wasm.gz in the module's source, and build this program from its source with \"go build\" and a replace line in go.mod. " +
			"That file also holds parts of the C and C++ libraries of the WASI SDK (wasi-libc, libc++), whose licence texts the module does not carry.",
	},
}

// remarks that apply to the component.
func (c component) remarks() []remark {
	return slices.DeleteFunc(slices.Clone(remarks), func(r remark) bool {
		return r.module != c.name || !c.contains(r.under)
	})
}

// notices is the text of all licences, or an error that names every component
// without one.
func notices(program, own string, components []component) ([]byte, error) {
	var out strings.Builder
	fmt.Fprintf(&out, "%s and what it contains, with the licence of each\n\n", program)
	fmt.Fprintf(&out, "  %s itself\n", program)
	for _, c := range components {
		fmt.Fprintf(&out, "  %s\n", c.title())
	}
	heading(&out, program)
	fmt.Fprintln(&out, strings.TrimSpace(own))
	var faults []error
	for _, c := range components {
		texts, err := c.licences()
		if err != nil {
			faults = append(faults, err)
			continue
		}
		heading(&out, c.title())
		for _, r := range c.remarks() {
			fmt.Fprintf(&out, "%s\n\n", r.says)
		}
		for _, t := range texts {
			fmt.Fprintf(&out, "--- %s ---\n\n%s\n\n", t.name, t.text)
		}
	}
	return []byte(out.String()), errors.Join(faults...)
}

func (c component) title() string { return strings.TrimSpace(c.name + " " + c.version) }

func heading(out io.Writer, title string) {
	line := strings.Repeat("=", 72)
	fmt.Fprintf(out, "\n%s\n%s\n%s\n\n", line, title, line)
}
