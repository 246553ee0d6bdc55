// Package connections watches a program, with every program it starts, and tells
// which network sockets it asked for. Tests prove with it that nothing leaves
// the machine.
//
//	seen, ended, err := connections.Run(exec.Command("ogive-batch", "demo"))
//	if len(seen.Network) > 0 { ... }
//
// A program that does not end by itself, such as a window, is started and ended:
//
//	watch, err := connections.Start(exec.Command("ogive"))
//	err = watch.Command.Process.Kill()
//	err = watch.Command.Wait()
//	seen, err := watch.End()
//
// Sockets of the machine itself, such as that of the display, and those between
// the kernel and its programs are no network. Programs are watched on Linux only.
package connections

import "os/exec"

// Watch is a program that is being watched. Command is running: wait for it, or
// kill it, before End.
type Watch struct {
	Command *exec.Cmd
	end     func() (Seen, error)
}

// Seen is what a program asked for.
type Seen struct {
	// By is how it was watched: by strace, which misses nothing, or by looking
	// into /proc many times a second, which misses what is open for a moment.
	By string
	// Network is the network sockets, each as it was asked for or found.
	Network []string
	// Local is how many sockets of the machine itself were seen.
	Local int
}

// Start starts the command and watches it by strace, or where that is not there
// or not allowed, by /proc.
func Start(c *exec.Cmd) (*Watch, error) {
	if straceWorks() {
		return StartByStrace(c)
	}
	return StartByProc(c)
}

// End is what was seen. The command must have ended.
func (w *Watch) End() (Seen, error) { return w.end() }

// Run runs the command to its end and tells what was seen and how it ended.
func Run(c *exec.Cmd) (seen Seen, ended error, err error) {
	if straceWorks() {
		return runByStrace(c)
	}
	w, err := StartByProc(c)
	if err != nil {
		return Seen{}, nil, err
	}
	ended = w.Command.Wait()
	seen, err = w.End()
	return seen, ended, err
}
