package connections

import (
	"fmt"
	"os"
	"os/exec"
	"syscall"
	"testing"
	"time"
)

const askFor = "OGIVE_CONNECTIONS_SOCKET"

func TestMain(m *testing.M) {
	families := map[string]int{"internet": syscall.AF_INET, "internet 6": syscall.AF_INET6, "local": syscall.AF_UNIX}
	if f, ok := families[os.Getenv(askFor)]; ok {
		if _, err := syscall.Socket(f, syscall.SOCK_DGRAM, 0); err != nil {
			fmt.Println(err)
		}
		time.Sleep(200 * time.Millisecond)
		os.Exit(3)
	}
	os.Exit(m.Run())
}

func asking(family string, through ...string) *exec.Cmd {
	words := append(through, os.Args[0])
	c := exec.Command(words[0], words[1:]...)
	c.Env = append(os.Environ(), askFor+"="+family)
	return c
}

// Whoever watches must see a socket of the internet, also in a program that the
// program starts, and must not take a local one for it.
func TestANetworkSocketIsSeenAndALocalOneIsNone(t *testing.T) {
	watches := map[string]func(*exec.Cmd) (*Watch, error){"/proc": StartByProc}
	if straceWorks() {
		watches["strace"] = StartByStrace
	} else {
		t.Log("strace is not there or not allowed; only /proc is tried")
	}
	for by, start := range watches {
		for _, c := range []struct {
			family  string
			through []string
			network bool
		}{
			{"internet", nil, true}, {"internet 6", nil, true}, {"local", nil, false},
			{"internet", []string{"sh", "-c", `"$0"; exit $?`}, true}, {"local", []string{"sh", "-c", `"$0"; exit $?`}, false},
		} {
			w, err := start(asking(c.family, c.through...))
			if err != nil {
				t.Fatal(err)
			}
			_ = w.Command.Wait() // its status is looked at below
			seen, err := w.End()
			if err != nil {
				t.Fatal(err)
			}
			if len(seen.Network) > 0 != c.network || !c.network && seen.Local == 0 || seen.By != by {
				t.Errorf("%s, a %s socket through %q: %+v", by, c.family, c.through, seen)
			}
			if status := w.Command.ProcessState.ExitCode(); status != 3 {
				t.Errorf("%s: the program's status became %d", by, status)
			}
		}
	}
}

func TestARunEndsAsTheProgramDoesAndTellsTheSame(t *testing.T) {
	for family, network := range map[string]bool{"internet": true, "local": false} {
		c := asking(family)
		seen, ended, err := Run(c)
		if err != nil || ended == nil || c.ProcessState.ExitCode() != 3 || len(seen.Network) > 0 != network {
			t.Errorf("%s: %+v, ended %v, %v", family, seen, ended, err)
		}
	}
	if _, ended, err := Run(exec.Command("sh", "-c", "kill -9 $$")); err != nil || ended == nil {
		t.Errorf("a program that kills itself: %v %v", ended, err)
	}
}

func TestAProgramThatIsKilledIsSeenToItsEnd(t *testing.T) {
	w, err := Start(asking("internet"))
	if err != nil {
		t.Fatal(err)
	}
	time.Sleep(100 * time.Millisecond)
	if err := w.Command.Process.Kill(); err != nil {
		t.Fatal(err)
	}
	_ = w.Command.Wait() // it was killed
	if seen, err := w.End(); err != nil || len(seen.Network) == 0 {
		t.Errorf("%+v %v", seen, err)
	}
}

func TestACallOfAnUnknownFamilyCountsAsNetwork(t *testing.T) {
	seen := readCalls(`851   socket(AF_UNIX, SOCK_STREAM|SOCK_CLOEXEC, 0) = 3
851   connect(3, {sa_family=AF_UNIX, sun_path="/tmp/.X11-unix/X0"}, 110) = 0
851   socketpair(AF_UNIX, SOCK_STREAM, 0, [4, 5]) = 0
852   socket(AF_NETLINK, SOCK_RAW|SOCK_CLOEXEC, NETLINK_KOBJECT_UEVENT) = 6
851   socket(AF_INET6, SOCK_DGRAM, IPPROTO_IP) = 7
851   socket(AF_PACKET, SOCK_RAW, 0) = -1 EPERM (Operation not permitted)
851   socket(0x2f, SOCK_DGRAM, 0) = 8
851   +++ exited with 0 +++
`)
	if seen.Local != 4 || len(seen.Network) != 3 {
		t.Errorf("%+v", seen)
	}
}
