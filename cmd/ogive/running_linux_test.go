package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"time"

	"ogive/cmd/connections"
)

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
