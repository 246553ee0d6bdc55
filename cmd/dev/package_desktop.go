package main

import (
	"bytes"
	"fmt"
	"strings"
	"text/template"
)

// desktopEntry is what a Linux desktop shows in its menu, as the Desktop Entry
// Specification 1.5 of freedesktop.org has it.
func (a app) desktopEntry() ([]byte, error) {
	lines := []string{"[Desktop Entry]", "Type=Application", "Version=1.5", "Name=" + a.Details.Name}
	for _, f := range []struct{ key, value string }{
		{"GenericName", a.LinuxAndBSD.GenericName},
		{"Comment", a.LinuxAndBSD.Comment},
		// The program takes one photograph as an argument whether or not the
		// desktop is told which kinds.
		{"Exec", programName + " %f"},
		{"Icon", a.Details.ID},
		{"Terminal", "false"},
		{"Categories", semicolons(a.LinuxAndBSD.Categories)},
		{"Keywords", semicolons(a.LinuxAndBSD.Keywords)},
		{"MimeType", a.CanOpen.MimeTypes},
		// A window's class is the title it was made with.
		{"StartupWMClass", a.Details.Name},
	} {
		if strings.ContainsAny(f.value, "\n\r") {
			return nil, fmt.Errorf("%s: what becomes %s must be one line", appFile, f.key)
		}
		if f.value != "" {
			lines = append(lines, f.key+"="+f.value)
		}
	}
	return []byte(strings.Join(lines, "\n") + "\n"), nil
}

// semicolons ends every item with a semicolon.
func semicolons(items []string) string {
	if len(items) == 0 {
		return ""
	}
	return strings.Join(items, ";") + ";"
}

// makefileSource installs as Fyne's own packages do, and the batch program and
// the licences besides. Every line of a rule begins with a tab.
var makefileSource = template.Must(template.New("makefile").Parse(`# {{.Details.Name}} {{.Details.Version}}
#
# It also runs where it was unpacked: usr/local/bin/{{.Program}}
#
# For yourself, into ~/.local:    make user-install    make user-uninstall
# For all users of the machine:   sudo make install    sudo make uninstall
#
# PREFIX says where to install instead, DESTDIR is put before it.

ID := {{.Details.ID}}
PREFIX ?= /usr/local
HOMEDIR := $(DESTDIR)$(HOME)/.local

default:
	@sed -n '1,/^$$/s/^# \{0,1\}//p' Makefile

install:
	install -Dm00755 usr/local/bin/{{.Program}} "$(DESTDIR)$(PREFIX)/bin/{{.Program}}"
	install -Dm00755 usr/local/bin/{{.Program}}-batch "$(DESTDIR)$(PREFIX)/bin/{{.Program}}-batch"
	install -Dm00644 usr/local/share/applications/$(ID).desktop "$(DESTDIR)$(PREFIX)/share/applications/$(ID).desktop"
	install -Dm00644 usr/local/share/pixmaps/$(ID).png "$(DESTDIR)$(PREFIX)/share/pixmaps/$(ID).png"
	install -Dm00644 LICENCES.txt "$(DESTDIR)$(PREFIX)/share/doc/{{.Program}}/LICENCES.txt"
	install -Dm00644 README.md "$(DESTDIR)$(PREFIX)/share/doc/{{.Program}}/README.md"

uninstall:
	rm -f "$(DESTDIR)$(PREFIX)/bin/{{.Program}}" "$(DESTDIR)$(PREFIX)/bin/{{.Program}}-batch"
	rm -f "$(DESTDIR)$(PREFIX)/share/applications/$(ID).desktop" "$(DESTDIR)$(PREFIX)/share/pixmaps/$(ID).png"
	rm -f "$(DESTDIR)$(PREFIX)/share/doc/{{.Program}}/LICENCES.txt" "$(DESTDIR)$(PREFIX)/share/doc/{{.Program}}/README.md"

user-install:
	install -Dm00755 usr/local/bin/{{.Program}} "$(HOMEDIR)/bin/{{.Program}}"
	install -Dm00755 usr/local/bin/{{.Program}}-batch "$(HOMEDIR)/bin/{{.Program}}-batch"
	install -Dm00644 usr/local/share/applications/$(ID).desktop "$(HOMEDIR)/share/applications/$(ID).desktop"
	sed -i 's,^Exec={{.Program}} ,Exec="$(HOME)/.local/bin/{{.Program}}" ,' "$(HOMEDIR)/share/applications/$(ID).desktop"
	install -Dm00644 usr/local/share/pixmaps/$(ID).png "$(HOMEDIR)/share/icons/$(ID).png"
	install -Dm00644 LICENCES.txt "$(HOMEDIR)/share/doc/{{.Program}}/LICENCES.txt"
	install -Dm00644 README.md "$(HOMEDIR)/share/doc/{{.Program}}/README.md"

user-uninstall:
	rm -f "$(HOMEDIR)/bin/{{.Program}}" "$(HOMEDIR)/bin/{{.Program}}-batch"
	rm -f "$(HOMEDIR)/share/applications/$(ID).desktop" "$(HOMEDIR)/share/icons/$(ID).png"
	rm -f "$(HOMEDIR)/share/doc/{{.Program}}/LICENCES.txt" "$(HOMEDIR)/share/doc/{{.Program}}/README.md"

.PHONY: default install uninstall user-install user-uninstall
`))

func (a app) makefile() ([]byte, error) {
	var text bytes.Buffer
	err := makefileSource.Execute(&text, struct {
		app
		Program string
	}{a, programName})
	return text.Bytes(), err
}
