package main

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"ogive/cmd/connections"
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

// running is the program in its window.
type running struct {
	*desktop
	process *exec.Cmd
	watch   *connections.Watch
	clicks  int
}

// start starts the program, gives it the keys, and watches what connections it asks
// for until it is killed or quits.
func (d *desktop) start(args ...string) *running {
	d.t.Helper()
	r := &running{desktop: d, process: exec.Command(d.program, args...)}
	r.process.Env, r.process.Dir = d.environment(), d.folder
	var said strings.Builder
	r.process.Stderr = &said
	var err error
	if r.watch, err = connections.Start(r.process); err != nil {
		d.t.Fatal(err)
	}
	d.t.Cleanup(func() {
		if d.t.Failed() && said.Len() > 0 {
			d.t.Logf("the program said:\n%s", said.String())
		}
	})
	end(d.t, r.process)
	var window string
	d.wait("the window is there", func() bool {
		out, err := d.xdotool("search", "--onlyvisible", "--pid", strconv.Itoa(r.process.Process.Pid))
		window, _, _ = strings.Cut(out, "\n")
		return err == nil && window != ""
	})
	// No window manager runs, so nobody else gives the window the keys.
	d.must("windowfocus", "--sync", window)
	return r
}

// kill ends the program as a failing machine would: it is told nothing.
func (r *running) kill() {
	r.t.Helper()
	if err := r.process.Process.Kill(); err != nil {
		r.t.Fatal(err)
	}
	_ = r.process.Wait() // the error says that it was killed
	r.askedForNothing()
	r.wait("the window is gone", func() bool { return r.look().empty() })
}

// readCaution closes the caution of the first use by the keyboard; it counts as
// the click that most will make.
func (r *running) readCaution() {
	r.t.Helper()
	preferences := filepath.Join(r.folder, ".config", "fyne", details.ID, "preferences.json")
	read := func() bool {
		data, err := os.ReadFile(preferences)
		return err == nil && bytes.Contains(data, []byte(`"caution_read":true`))
	}
	r.read("I have read this")
	r.still()
	r.note("caution")
	if read() {
		r.t.Error("the caution is taken for read before anybody has read it")
	}
	r.press("Return")
	r.wait("the caution is read", read)
	r.clicks++
}

// quit ends the program as its user does.
func (r *running) quit() {
	r.t.Helper()
	ended := make(chan error, 1)
	go func() { ended <- r.process.Wait() }()
	r.press("ctrl+q")
	select {
	case err := <-ended:
		if err != nil {
			r.t.Errorf("the program did not end well: %v", err)
		}
	case <-time.After(patience):
		r.note("does not quit")
		r.t.Fatalf("the program has not ended %v after it was told to quit", patience)
	}
	r.askedForNothing()
}

// askedForNothing looks, once the program has ended, that it asked for no
// connection to any network.
func (r *running) askedForNothing() {
	r.t.Helper()
	seen, err := r.watch.End()
	if err != nil {
		r.t.Fatal(err)
	}
	for _, asked := range seen.Network {
		r.t.Errorf("the program asked for a connection: %s", asked)
	}
	if seen.Local == 0 {
		r.t.Error("not even the program's connection to the screen was seen: it was not watched")
	}
	r.t.Logf("watched by %s: %d sockets of the network, %d of this machine", seen.By, len(seen.Network), seen.Local)
}

// click moves the pointer, waits as a person does until the screen has followed,
// and presses and releases the first button once.
func (r *running) click(x, y int) {
	r.t.Helper()
	r.point(x, y)
	r.clicks++
	r.must("mousedown", "1", "sleep", "0.03", "mouseup", "1")
}

// tremblingClick is a click during which the hand trembles, and comes back to
// where it had aimed.
func (r *running) tremblingClick(x, y int) {
	r.t.Helper()
	r.point(x, y)
	r.clicks++
	r.must("mousedown", "1", "sleep", "0.03", "mousemove_relative", "--", "-3", "1", "sleep", "0.05", "mousemove_relative", "--", "3", "-1", "sleep", "0.05", "mouseup", "1")
}

func (r *running) point(x, y int) {
	r.t.Helper()
	before := r.look()
	r.must("mousemove", strconv.Itoa(x), strconv.Itoa(y))
	r.wait("the window has followed the pointer", func() bool {
		now := r.look()
		return changed(before, now, now.Rect) > 0
	})
	r.still()
}

// aside takes the pointer off the window, so that neither it nor a loupe covers
// anything.
func (r *running) aside() {
	r.t.Helper()
	r.must("mousemove", "1590", "990")
}

func (r *running) press(keys ...string) {
	r.t.Helper()
	r.must(append([]string{"key"}, keys...)...)
}

func (r *running) write(text string) {
	r.t.Helper()
	r.must("type", text)
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
