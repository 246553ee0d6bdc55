package main

import (
	"bytes"
	"errors"
	"fmt"
	"go/format"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"text/template"

	"github.com/BurntSushi/toml"
)

const (
	appFile = "FyneApp.toml"
	// programName is the file name of the window's program, without its ending.
	programName = "ogive"
)

// app is what FyneApp.toml says of the program. The names are Fyne's.
type app struct {
	Details struct {
		Icon, Name, ID, Version string
		Build                   int
	}
	// LinuxAndBSD is said in the menu of a Linux desktop.
	LinuxAndBSD struct {
		GenericName, Comment string
		Categories, Keywords []string
	}
	// CanOpen lists the media types of files, each followed by a semicolon.
	CanOpen    struct{ MimeTypes string }
	Migrations map[string]bool

	icon []byte
}

var (
	// number is a version as Windows can hold it: up to three whole numbers.
	number = regexp.MustCompile(`^[0-9]{1,4}(\.[0-9]{1,4}){0,2}$`)
	// plainID becomes file names and a word of a Makefile.
	plainID = regexp.MustCompile(`^[A-Za-z0-9.-]+$`)
)

// readApp reads FyneApp.toml and the icon it names from the repository's folder.
func readApp(root string) (app, error) {
	text, err := os.ReadFile(filepath.Join(root, appFile))
	if err != nil {
		return app{}, fmt.Errorf("read what the program is called: %w", err)
	}
	a, err := parseApp(string(text))
	if err != nil {
		return app{}, fmt.Errorf("%s: %w", appFile, err)
	}
	if a.icon, err = os.ReadFile(filepath.Join(root, filepath.FromSlash(a.Details.Icon))); err != nil {
		return app{}, fmt.Errorf("%s: the icon: %w", appFile, err)
	}
	return a, nil
}

func parseApp(text string) (app, error) {
	var a app
	if _, err := toml.Decode(text, &a); err != nil {
		return app{}, err
	}
	var faults []error
	for _, f := range []struct{ name, value string }{
		{"Name", a.Details.Name}, {"ID", a.Details.ID}, {"Version", a.Details.Version}, {"Icon", a.Details.Icon},
	} {
		if f.value == "" || strings.ContainsAny(f.value, "\n\r") {
			faults = append(faults, fmt.Errorf("[Details] needs a %s of one line", f.name))
		}
	}
	if a.Details.Version != "" && !number.MatchString(a.Details.Version) {
		faults = append(faults, fmt.Errorf("the Version %q is not of the form 1.2.3", a.Details.Version))
	}
	if a.Details.ID != "" && !plainID.MatchString(a.Details.ID) {
		faults = append(faults, fmt.Errorf("the ID %q must hold only letters, digits, points and hyphens", a.Details.ID))
	}
	if a.Details.Build < 0 || a.Details.Build > 65535 {
		faults = append(faults, fmt.Errorf("the Build %d is not between 0 and 65535", a.Details.Build))
	}
	return a, errors.Join(faults...)
}

// fourNumbers is version and build as Windows holds them.
func (a app) fourNumbers() [4]uint16 {
	var out [4]uint16
	for i, n := range strings.Split(a.Details.Version, ".") {
		// parseApp let only short whole numbers through.
		v, _ := strconv.ParseUint(n, 10, 16)
		out[i] = uint16(v)
	}
	out[3] = uint16(a.Details.Build)
	return out
}

// metadataSource is a file of the window's main package that tells Fyne the
// program's name, version and icon. Fyne reads FyneApp.toml by itself only
// where the repository lies, which is not where a package is unpacked.
var metadataSource = template.Must(template.New("metadata").Parse(`package main

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/app"
)

func init() {
	app.SetMetadata(fyne.AppMetadata{
		ID:      {{printf "%q" .Details.ID}},
		Name:    {{printf "%q" .Details.Name}},
		Version: {{printf "%q" .Details.Version}},
		Build:   {{.Details.Build}},
		Icon:    fyne.NewStaticResource("icon.png", []byte({{printf "%q" .Picture}})),
		Release: true,
		Migrations: map[string]bool{
			{{- range $name, $done := .Migrations}}
			{{printf "%q" $name}}: {{$done}},
			{{- end}}
		},
	})
}
`))

func (a app) metadata() ([]byte, error) {
	var source bytes.Buffer
	err := metadataSource.Execute(&source, struct {
		app
		Picture string
	}{a, string(a.icon)})
	if err != nil {
		return nil, err
	}
	return format.Source(source.Bytes())
}
