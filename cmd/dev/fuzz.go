package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"time"
)

const (
	// fuzzTime is how long each target is fuzzed: enough to try the seeds and
	// their near neighbours on every change; longer hunts are run by hand.
	fuzzTime = 3 * time.Second
	// fuzzLimit ends a target that hangs. Building its package does not count.
	fuzzLimit = 20 * time.Second
)

// fuzzTargets is the fuzz targets of one package.
type fuzzTargets struct {
	pkg   string
	names []string
}

// fuzz runs every fuzz target of the repository for a few seconds.
func (w workshop) fuzz() error {
	list := exec.Command("go", "test", "-list", "^Fuzz", "./...")
	list.Dir, list.Stderr = w.root, w.out
	answer, err := list.Output()
	if err != nil {
		return fmt.Errorf("list the fuzz targets: %w", err)
	}
	packages := parseTargets(string(answer))
	if len(packages) == 0 {
		return errors.New("there is no fuzz target; package norms, for one, should have one")
	}
	var faults []error
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
		"-test.fuzztime="+fuzzTime.String(), "-test.fuzzminimizetime=3s")
	c.Dir, c.Cancel, c.WaitDelay = folder, func() error { return interrupt(c.Process) }, 5*time.Second
	report, err := c.CombinedOutput()
	switch {
	case limit.Err() != nil:
		return fmt.Errorf("%s did not end within %s; it hangs on some input\n%s", name, fuzzLimit, report)
	case err != nil:
		return fmt.Errorf("%s: %w\n%s", name, err, report)
	}
	w.say("%s: nothing found within %s", name, fuzzTime)
	return nil
}

// interrupt ends a fuzzing process so that it takes its workers, one of which
// may hang, along; where there are no signals it is killed.
func interrupt(p *os.Process) error {
	if p.Signal(os.Interrupt) == nil {
		return nil
	}
	return p.Kill()
}
