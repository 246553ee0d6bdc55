//go:build unix

package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// system puts programs of the given shell text before those of this machine and
// returns where they note what they were asked.
func system(t *testing.T, programs map[string]string) string {
	t.Helper()
	folder := t.TempDir()
	note := filepath.Join(folder, "note")
	for name, text := range programs {
		text = "#!/bin/sh\n" + strings.ReplaceAll(text, "NOTE", note)
		if err := os.WriteFile(filepath.Join(folder, name), []byte(text), 0o755); err != nil {
			t.Fatal(err)
		}
	}
	t.Setenv("PATH", folder+":"+os.Getenv("PATH"))
	return note
}

const (
	knowsOnlyGcc = `case "$3" in gcc) printf installed;; xorg-dev) printf not-installed;; *) exit 1;; esac`
	notes        = `echo "$DEBIAN_FRONTEND $@" >> NOTE`
)

func TestOnlyMissingPackagesAreInstalled(t *testing.T) {
	note := system(t, map[string]string{"dpkg-query": knowsOnlyGcc, "apt-get": notes, "sudo": `exec "$@"`})
	w, _ := bench(t, nil)
	if err := w.installDebian(needs{purpose: "test", debian: []string{"gcc", "xorg-dev", "libgl-dev"}}); err != nil {
		t.Fatal(err)
	}
	asked, err := os.ReadFile(note)
	const want = "noninteractive update\nnoninteractive install --yes --no-install-recommends xorg-dev libgl-dev\n"
	if err != nil || string(asked) != want {
		t.Errorf("apt-get was asked %q, %v; want %q", asked, err, want)
	}
}

func TestNothingIsInstalledWhenNothingIsMissing(t *testing.T) {
	note := system(t, map[string]string{"dpkg-query": knowsOnlyGcc, "apt-get": notes, "sudo": `exec "$@"`})
	w, _ := bench(t, nil)
	if err := w.installDebian(needs{purpose: "test", debian: []string{"gcc"}}); err != nil {
		t.Fatal(err)
	}
	if asked, err := os.ReadFile(note); err == nil {
		t.Errorf("apt-get was asked %q", asked)
	}
}

func TestAFailedInstallationIsNoSuccess(t *testing.T) {
	system(t, map[string]string{"dpkg-query": knowsOnlyGcc, "apt-get": "exit 100", "sudo": `exec "$@"`})
	w, _ := bench(t, nil)
	err := w.installDebian(needs{purpose: "build the window", debian: []string{"xorg-dev"}})
	if err == nil || !strings.Contains(err.Error(), "install packages to build the window") {
		t.Errorf("error %v, want one that says what failed", err)
	}
}
