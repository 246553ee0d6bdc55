package main

import (
	"bufio"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"
)

// patience is how long anything on the desktop is waited for. It is long because
// other tests share the processors and the picture is drawn without a GPU.
const patience = 60 * time.Second

// desktop is a screen of its own with nothing on it, and a user's folder that no
// program has seen before.
type desktop struct {
	t       *testing.T
	program string // the built program
	folder  string // the user's own
	display string
	frames  string // the file in which the screen keeps its picture
	stages  []stage
}

// stage is the screen at one moment.
type stage struct {
	name string
	seen picture
}

// built builds the program, once for all tests.
var built = sync.OnceValues(func() (string, error) {
	folder, err := os.MkdirTemp("", "ogive-built-")
	if err != nil {
		return "", err
	}
	program := filepath.Join(folder, "ogive")
	if out, err := exec.Command("go", "build", "-o", program, ".").CombinedOutput(); err != nil {
		return "", errors.Join(fmt.Errorf("the program is not built: %w\n%s", err, out), os.RemoveAll(folder))
	}
	leftBehind = append(leftBehind, folder)
	return program, nil
})

// leftBehind are folders of no single test.
var leftBehind []string

func TestMain(m *testing.M) {
	code := m.Run()
	for _, folder := range leftBehind {
		_ = os.RemoveAll(folder) // in the folder for what is passing
	}
	os.Exit(code)
}

// newDesktop builds the program and starts the screen. What was seen is kept as
// pictures if the test fails.
func newDesktop(t *testing.T) *desktop {
	t.Helper()
	for _, name := range []string{"Xvfb", "xdotool"} {
		if _, err := exec.LookPath(name); err != nil {
			t.Fatalf("the window is driven with Xvfb and xdotool, and %s is not there: run go run ./cmd/dev test, or install it (on Debian: sudo apt-get install xvfb xdotool)", name)
		}
	}
	d := &desktop{t: t, folder: t.TempDir()}
	for _, name := range []string{".config", ".cache", ".runtime", "photographs"} {
		if err := os.Mkdir(filepath.Join(d.folder, name), 0o700); err != nil {
			t.Fatal(err)
		}
	}
	var err error
	if d.program, err = built(); err != nil {
		t.Fatal(err)
	}
	d.startScreen()
	t.Cleanup(d.keepStages)
	return d
}

// startScreen starts Xvfb on the first display that is free.
func (d *desktop) startScreen() {
	d.t.Helper()
	frames := d.t.TempDir()
	read, write, err := os.Pipe()
	if err != nil {
		d.t.Fatal(err)
	}
	defer read.Close()
	screen := exec.Command("Xvfb", "-displayfd", "3", "-screen", "0", "1600x1000x24", "-fbdir", frames, "-nolisten", "tcp")
	screen.ExtraFiles = []*os.File{write}
	var said strings.Builder
	screen.Stderr = &said
	if err := screen.Start(); err != nil {
		d.t.Fatal(err)
	}
	write.Close()
	end(d.t, screen)
	number, err := bufio.NewReader(read).ReadString('\n')
	if err != nil {
		_ = screen.Wait()
		d.t.Fatalf("Xvfb found no display that is free: %v\n%s", err, said.String())
	}
	d.display = ":" + strings.TrimSpace(number)
	d.frames = filepath.Join(frames, "Xvfb_screen0")
}

// end stops a program when the test is over, however it was stopped before.
func end(t *testing.T, c *exec.Cmd) {
	t.Cleanup(func() {
		_ = c.Process.Kill() // it may have ended by itself
		_ = c.Wait()
	})
}

// environment is what a program sees that a newcomer starts: nothing of the
// folders and the session of whoever runs the test.
func (d *desktop) environment() []string {
	keep := os.Environ()[:0:0]
	for _, pair := range os.Environ() {
		name, _, _ := strings.Cut(pair, "=")
		if !strings.HasPrefix(name, "XDG_") && !strings.HasPrefix(name, "FYNE_") && !strings.HasPrefix(name, "LC_") &&
			name != "WAYLAND_DISPLAY" && name != "DBUS_SESSION_BUS_ADDRESS" {
			keep = append(keep, pair)
		}
	}
	return append(keep, "DISPLAY="+d.display, "HOME="+d.folder, "LANG=en_GB.UTF-8",
		"XDG_CONFIG_HOME="+filepath.Join(d.folder, ".config"), "XDG_CACHE_HOME="+filepath.Join(d.folder, ".cache"),
		"XDG_RUNTIME_DIR="+filepath.Join(d.folder, ".runtime"), "LIBGL_ALWAYS_SOFTWARE=1")
}

// wait looks again and again until something holds.
func (d *desktop) wait(what string, holds func() bool) {
	d.t.Helper()
	for begun := time.Now(); !holds(); time.Sleep(40 * time.Millisecond) {
		if time.Since(begun) > patience {
			d.note("in vain")
			d.t.Fatalf("waited in vain for %v until %s", patience, what)
		}
	}
}

// xdotool makes events of the pointer and the keys, or asks for a window.
func (d *desktop) xdotool(args ...string) (string, error) {
	command := exec.Command("xdotool", args...)
	command.Env = d.environment()
	out, err := command.Output()
	if err != nil {
		return "", fmt.Errorf("xdotool %s: %w", strings.Join(args, " "), err)
	}
	return strings.TrimSpace(string(out)), nil
}

func (d *desktop) must(args ...string) {
	d.t.Helper()
	if _, err := d.xdotool(args...); err != nil {
		d.t.Fatal(err)
	}
}

// still waits until the screen shows the same for a moment; a blinking caret
// does not count.
func (d *desktop) still() {
	d.t.Helper()
	before := d.look()
	d.wait("the screen is still", func() bool {
		time.Sleep(200 * time.Millisecond)
		now := d.look()
		moved := changed(before, now, now.Rect)
		before = now
		return moved < 0.0005
	})
}

// note remembers what the screen shows now.
func (d *desktop) note(name string) { d.stages = append(d.stages, stage{name, d.look()}) }

// keepStages writes what was seen, if the test failed or the user asks for it.
func (d *desktop) keepStages() {
	folder := *seen
	if folder == "" && d.t.Failed() {
		made, err := os.MkdirTemp("", "ogive-walk-")
		if err != nil {
			d.t.Log(err)
			return
		}
		folder = made
		d.note("at the end")
	}
	if folder == "" {
		return
	}
	for i, s := range d.stages {
		path := filepath.Join(folder, fmt.Sprintf("%02d-%s.png", i+1, strings.ReplaceAll(s.name, " ", "-")))
		if err := s.seen.save(path); err != nil {
			d.t.Log(err)
		}
	}
	d.t.Logf("what the screen showed is kept in %s", folder)
}
