package connections

import (
	"cmp"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"time"
)

// straceWorks reports whether strace is there and may watch programs.
func straceWorks() bool {
	_, ok := straceFlags()
	return ok
}

// straceFlags is how strace follows a program and its children: with the help of
// the kernel's filter, by which the program hardly becomes slower, where it knows
// that.
func straceFlags() (flags []string, ok bool) {
	for _, flags := range [][]string{{"-f", "--seccomp-bpf"}, {"-f"}} {
		probe := append(slices.Clone(flags), "-qq", "-o", os.DevNull, "-e", "trace=socket", "true")
		if exec.Command("strace", probe...).Run() == nil {
			return flags, true
		}
	}
	return nil, false
}

// StartByStrace starts the command under strace, which stands beside it as a
// process of its own: the command's process is the program itself, to be killed
// or signalled like any other.
func StartByStrace(c *exec.Cmd) (*Watch, error) {
	log, err := under(c, "-D")
	if err != nil {
		return nil, err
	}
	if err := c.Start(); err != nil {
		return nil, errors.Join(err, os.RemoveAll(filepath.Dir(log)))
	}
	return &Watch{Command: c, end: func() (Seen, error) {
		text, err := completed(log, c.Process.Pid)
		return readCalls(text), errors.Join(err, os.RemoveAll(filepath.Dir(log)))
	}}, nil
}

// runByStrace runs the command to its end with strace as its parent, which ends
// after it with the same status, and not before all is written down.
func runByStrace(c *exec.Cmd) (seen Seen, ended error, err error) {
	log, err := under(c)
	if err != nil {
		return Seen{}, nil, err
	}
	ended = c.Run()
	text, err := os.ReadFile(log)
	return readCalls(string(text)), ended, errors.Join(err, os.RemoveAll(filepath.Dir(log)))
}

// under puts the command under strace, and gives the file that strace writes to,
// in a folder of its own.
func under(c *exec.Cmd, more ...string) (log string, err error) {
	if c.Err != nil {
		return "", c.Err
	}
	strace, err := exec.LookPath("strace")
	if err != nil {
		return "", fmt.Errorf("%w; install strace", err)
	}
	flags, ok := straceFlags()
	if !ok {
		return "", errors.New("strace may not watch programs here; allow it ptrace")
	}
	folder, err := os.MkdirTemp("", "connections")
	if err != nil {
		return "", err
	}
	log = filepath.Join(folder, "calls")
	c.Args = slices.Concat([]string{"strace"}, more, flags, []string{"-q", "-o", log, "-e", "trace=socket,socketpair,connect", "--", c.Path}, c.Args[1:])
	c.Path = strace
	return log, nil
}

// patience is how long strace may take to write down what has ended.
const patience = 10 * time.Second

// completed is the log once it says that the program has ended.
func completed(log string, pid int) (string, error) {
	ended := regexp.MustCompile(fmt.Sprintf(`(?m)^%d +\+\+\+ `, pid))
	for until := time.Now().Add(patience); ; time.Sleep(10 * time.Millisecond) {
		text, err := os.ReadFile(log)
		if err == nil && ended.Match(text) {
			return string(text), nil
		}
		if time.Now().After(until) {
			return string(text), fmt.Errorf("strace has not written down the end of the program (%w)", cmp.Or(err, errors.New("it may have been killed itself")))
		}
	}
}

var family = regexp.MustCompile(`\b(AF|PF)_[A-Z0-9]+|\bsa_family=0x[0-9a-f]+|^\d+ +socket\((0x[0-9a-f]+|\d+)`)

// local are the families of sockets that stay on the machine. A socket that is
// undone after a connection is of AF_UNSPEC.
var local = map[string]bool{"AF_UNIX": true, "AF_LOCAL": true, "AF_NETLINK": true, "AF_ALG": true, "AF_UNSPEC": true}

// readCalls sorts the calls by their family; one of an unknown family counts as
// network.
func readCalls(text string) Seen {
	seen := Seen{By: "strace"}
	for line := range strings.Lines(text) {
		switch found := family.FindString(line); {
		case found == "":
		case local[found]:
			seen.Local++
		default:
			seen.Network = append(seen.Network, strings.TrimSpace(line))
		}
	}
	return seen
}
