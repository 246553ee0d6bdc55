package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
)

const (
	windowPackage = "./cmd/ogive"
	batchPackage  = "./cmd/ogive-batch"
	// buildFolder and demoFolder are written by the commands and kept out of
	// version control.
	buildFolder = "build"
	demoFolder  = "demo"
)

// workshop is the repository's folder and where the commands speak.
type workshop struct {
	root string
	out  io.Writer
}

func openWorkshop(out io.Writer) (workshop, error) {
	answer, err := exec.Command("go", "env", "GOMOD").Output()
	if err != nil {
		return workshop{}, fmt.Errorf("ask go where the module lies: %w", err)
	}
	mod := strings.TrimSpace(string(answer))
	if filepath.Base(mod) != "go.mod" {
		return workshop{}, errors.New("this is not inside the repository; change to its folder first")
	}
	return workshop{root: filepath.Dir(mod), out: out}, nil
}

func (w workshop) say(format string, args ...any) { fmt.Fprintf(w.out, format+"\n", args...) }

// has reports whether there is Go source in the package at path.
func (w workshop) has(path string) bool {
	found, err := filepath.Glob(filepath.Join(w.root, path, "*.go"))
	return err == nil && len(found) > 0
}

// run runs a program in the repository's folder, in the given additional
// environment, and shows what it prints.
func (w workshop) run(env []string, name string, args ...string) error {
	c := exec.Command(name, args...)
	c.Dir, c.Env = w.root, append(os.Environ(), env...)
	c.Stdin, c.Stdout, c.Stderr = os.Stdin, w.out, w.out
	if err := c.Run(); err != nil {
		return fmt.Errorf("%s: %w", strings.Join(append([]string{name}, args...), " "), err)
	}
	return nil
}

func (w workshop) windowed() bool { return w.has(windowPackage) }

// display reports whether a window can be shown here.
func display() bool {
	switch runtime.GOOS {
	case "windows", "darwin":
		return true
	}
	return os.Getenv("DISPLAY") != "" || os.Getenv("WAYLAND_DISPLAY") != ""
}

// program is the path of a built program on the given system.
func program(name, system string) string {
	if system == "windows" {
		name += ".exe"
	}
	return filepath.Join(buildFolder, name)
}
