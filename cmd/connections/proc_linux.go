package connections

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"time"
)

// StartByProc starts the command and looks into /proc while it runs.
func StartByProc(c *exec.Cmd) (*Watch, error) {
	if err := c.Start(); err != nil {
		return nil, err
	}
	stop, done := make(chan struct{}), make(chan struct{})
	s := sockets{seen: Seen{By: "/proc"}, known: map[string]bool{}}
	go func() {
		defer close(done)
		for {
			select {
			case <-stop:
				return
			case <-time.After(2 * time.Millisecond):
				for _, pid := range kin(c.Process.Pid) {
					s.look(pid)
				}
			}
		}
	}()
	return &Watch{Command: c, end: func() (Seen, error) {
		close(stop)
		<-done
		return s.seen, nil
	}}, nil
}

// sockets is what has been found so far, by the number of the socket.
type sockets struct {
	seen  Seen
	known map[string]bool
}

// look sorts the sockets that a process holds. A process that ends meanwhile
// has none.
func (s *sockets) look(pid int) {
	held, err := filepath.Glob(fmt.Sprintf("/proc/%d/fd/*", pid))
	if err != nil {
		return
	}
	for _, fd := range held {
		link, err := os.Readlink(fd)
		number, ok := strings.CutPrefix(link, "socket:[")
		number = strings.TrimSuffix(number, "]")
		if err != nil || !ok || s.known[number] {
			continue
		}
		isLocal := listed(pid, "unix", number) || listed(pid, "netlink", number)
		if again, err := os.Readlink(fd); err != nil || again != link {
			continue // closed before it could be looked up
		}
		s.known[number] = true
		if isLocal {
			s.seen.Local++
			continue
		}
		s.seen.Network = append(s.seen.Network, fmt.Sprintf("process %d holds socket %s, which is none of the machine's own", pid, number))
	}
}

// listed reports whether the kernel's table of that kind holds the socket. All
// sockets of the machine itself are listed from their beginning; those of the
// network only once they are used.
func listed(pid int, table, number string) bool {
	text, err := os.ReadFile(fmt.Sprintf("/proc/%d/net/%s", pid, table))
	return err == nil && slices.Contains(strings.Fields(string(text)), number)
}

// kin is a process and all that it and they have started.
func kin(pid int) []int {
	out := []int{pid}
	lists, err := filepath.Glob(fmt.Sprintf("/proc/%d/task/*/children", pid))
	if err != nil {
		return out
	}
	for _, list := range lists {
		text, err := os.ReadFile(list)
		if err != nil {
			continue
		}
		for _, word := range strings.Fields(string(text)) {
			if child, err := strconv.Atoi(word); err == nil {
				out = append(out, kin(child)...)
			}
		}
	}
	return out
}
