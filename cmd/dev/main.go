// Command dev is what a contributor, and a stranger with a fresh clone, types:
//
//	go run ./cmd/dev start   the main job: the window, or the demo without one
//	go run ./cmd/dev test    everything that must hold before a change is kept
//
// Without an argument it lists its commands. It needs Go and nothing else; what
// the system lacks beyond that it installs on Debian and Ubuntu, and names on
// other systems.
package main

import (
	"fmt"
	"io"
	"os"
)

// command is one word of the command line; add a row to commands to add one.
type command struct {
	name, does string
	run        func(workshop) error
}

var commands = []command{
	{"start", "do the main job: open the window, or measure the demo hand without one", workshop.start},
	{"test", "check, test, fuzz and build everything", workshop.test},
	{"accuracy", "print how far the figures miss the truth on phantoms", workshop.accuracy},
	{"speed", "print the benchmarks that have a target", workshop.speed},
	{"package", "pack the programs for Linux and Windows into build, with all licences", workshop.pack},
	{"house", "check what lies at the top level and who imports whom", workshop.house},
}

func main() {
	if len(os.Args) != 2 {
		usage(os.Stderr)
		os.Exit(2)
	}
	for _, c := range commands {
		if c.name == os.Args[1] {
			os.Exit(status(c))
		}
	}
	fmt.Fprintf(os.Stderr, "dev: there is no command %q\n\n", os.Args[1])
	usage(os.Stderr)
	os.Exit(2)
}

func status(c command) int {
	w, err := openWorkshop(os.Stdout)
	if err == nil {
		err = c.run(w)
	}
	if err != nil {
		fmt.Fprintf(os.Stderr, "dev %s: %v\n", c.name, err)
		return 1
	}
	return 0
}

func usage(to io.Writer) {
	fmt.Fprintln(to, "usage: go run ./cmd/dev COMMAND")
	for _, c := range commands {
		fmt.Fprintf(to, "  %-8s %s\n", c.name, c.does)
	}
}
