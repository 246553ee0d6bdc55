package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"strings"
	"time"
)

const (
	// fuzzTries is how many inputs each target is tried on: enough for the seeds
	// and their near neighbours on every change; longer hunts are run by hand.
	// It is a number and not a time: when a time is up Go passes over an input
	// that hangs, while on the way to a number it reports one after 10 seconds.
	fuzzTries = 10000
	// fuzzLimit ends a target that is slow, or hangs. Building its package does
	// not count.
	fuzzLimit = 20 * time.Second
)

// fuzzTargets is the fuzz targets of one package.
type fuzzTargets struct {
	pkg   string
	names []string
}

// fuzz runs every fuzz target of the repository, each for seconds.
func (w workshop) fuzz() error {
	list := exec.Command("go", "test", "-list", "^Fuzz", "./...")
	list.Dir, list.Stderr = w.root, w.out
	answer, err := list.Output()
	var faults []error
	if err != nil {
		faults = append(faults, fmt.Errorf("list the fuzz targets: %w", err))
	}
	packages := parseTargets(string(answer))
	if len(packages) == 0 {
		faults = append(faults, errors.New("there is no fuzz target; package norms, for one, should have one"))
	}
	for _, p := range packages {
		faults = append(faults, w.fuzzPackage(p))
	}
	return errors.Join(faults...)
}

// parseTargets reads what go test -list prints: the names found in a package,
// each on its line, then a line that begins with "ok" and names the package.
func parseTargets(list string) []fuzzTargets {
	var found []fuzzTargets
	var names []string
	for line := range strings.Lines(list) {
		words := strings.Fields(line)
		switch {
		case len(words) == 1 && strings.HasPrefix(words[0], "Fuzz"):
			names = append(names, words[0])
		case len(words) >= 2 && words[0] == "ok":
			if len(names) > 0 {
				found = append(found, fuzzTargets{words[1], names})
			}
			names = nil
		}
	}
	return found
}

func (w workshop) fuzzPackage(p fuzzTargets) error {
	folder := filepath.Join(w.root, filepath.FromSlash(strings.TrimPrefix(p.pkg, module+"/")))
	built := filepath.Join(w.root, program(strings.ReplaceAll(p.pkg, "/", "-")+".test", runtime.GOOS))
	if err := w.run(nil, "go", "test", "-c", "-fuzz=.", "-o", built, p.pkg); err != nil {
		return err
	}
	// A cache of its own, begun anew, makes each run try the same seeds.
	cache := filepath.Join(w.root, buildFolder, "fuzz")
	if err := os.RemoveAll(cache); err != nil {
		return fmt.Errorf("empty the fuzz cache: %w", err)
	}
	var faults []error
	for _, name := range p.names {
		faults = append(faults, w.fuzzTarget(folder, built, cache, name))
	}
	return errors.Join(faults...)
}

func (w workshop) fuzzTarget(folder, built, cache, name string) error {
	limit, cancel := context.WithTimeout(context.Background(), fuzzLimit)
	defer cancel()
	c := exec.CommandContext(limit, built,
		"-test.run=^$", "-test.fuzz=^"+name+"$", "-test.fuzzcachedir="+cache,
		fmt.Sprintf("-test.fuzztime=%dx", fuzzTries), "-test.fuzzminimizetime=1x")
	c.Dir, c.Cancel, c.WaitDelay = folder, func() error { return interrupt(c.Process) }, 5*time.Second
	answer, err := c.CombinedOutput()
	report := string(answer)
	switch {
	case strings.Contains(report, "--- FAIL"), err != nil && limit.Err() == nil:
		return fmt.Errorf("%s: %v\n%s", name, err, report)
	case limit.Err() != nil && stalled(report):
		return fmt.Errorf("%s hangs on some input: it got no further within %s\n%s", name, fuzzLimit, report)
	case limit.Err() != nil:
		w.say("%s: nothing found within %s", name, fuzzLimit)
	default:
		w.say("%s: nothing found in %d tries", name, fuzzTries)
	}
	return nil
}

var progressLine = regexp.MustCompile(`fuzz: elapsed: \d+s, (gathering baseline coverage: \d+|execs: \d+)`)

// stalled reports whether the last five progress lines, 3 seconds apart, all say the
// same: an input that hangs too near the limit for Go to report it.
func stalled(report string) bool {
	const same = 5
	lines := progressLine.FindAllStringSubmatch(report, -1)
	if len(lines) < same {
		return true
	}
	last := lines[len(lines)-1][1]
	for _, l := range lines[len(lines)-same:] {
		if l[1] != last {
			return false
		}
	}
	return true
}

// interrupt ends a fuzzing process so that it takes its workers, one of which
// may hang, along; where there are no signals it is killed.
func interrupt(p *os.Process) error {
	if p.Signal(os.Interrupt) == nil {
		return nil
	}
	return p.Kill()
}
