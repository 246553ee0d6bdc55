package main

import (
	"bytes"
	"errors"
	"fmt"
	"go/format"
	"os"
	"runtime"
	"strings"
	"time"
)

// step is one thing that must hold; its error says what does not.
type step struct {
	name string
	run  func() error
}

// outcome is how a step went.
type outcome struct {
	step  string
	took  time.Duration
	fault error
}

// test runs every step, even after one has failed, so that one run shows all
// that is wrong.
func (w workshop) test() error {
	steps := []step{
		{"system packages", w.provideAll},
		{"house", w.house},
		{"gofmt", w.formatted},
		{"vet", func() error { return w.run(nil, "go", "vet", "./...") }},
		{"staticcheck", func() error { return w.run(nil, "go", "tool", "staticcheck", "./...") }},
		{"tests", func() error { return w.run(nil, "go", "test", "./...") }},
		{"fuzzing", w.fuzz},
	}
	for _, t := range targets() {
		steps = append(steps, step{"build for " + t.String(), func() error { return w.build(t) }})
	}
	return w.summarise(w.walk(steps))
}

func (w workshop) walk(steps []step) []outcome {
	var outcomes []outcome
	for _, s := range steps {
		w.say("\n== %s", s.name)
		begun := time.Now()
		fault := s.run()
		if fault != nil {
			w.say("%v", fault)
		}
		outcomes = append(outcomes, outcome{s.name, time.Since(begun), fault})
	}
	return outcomes
}

func (w workshop) summarise(outcomes []outcome) error {
	var failed []string
	w.say("\n== summary")
	for _, o := range outcomes {
		verdict := "passed"
		if o.fault != nil {
			verdict = "FAILED"
			failed = append(failed, o.step)
		}
		w.say("%s  %6.1f s  %s", verdict, o.took.Seconds(), o.step)
	}
	if len(failed) > 0 {
		return fmt.Errorf("failed: %s", strings.Join(failed, ", "))
	}
	w.say("\nEverything passed.")
	return nil
}

func (w workshop) provideAll() error {
	var faults []error
	for _, n := range w.present() {
		faults = append(faults, w.provide(n))
	}
	return errors.Join(faults...)
}

// formatted compares every file with what gofmt would make of it. The formatter
// is the one this command was compiled with, so no other version can disagree.
func (w workshop) formatted() error {
	var unformatted []string
	for _, folder := range []string{"cmd", "ui", "geometry", "imaging", "assets"} {
		err := goFiles(os.DirFS(w.root), folder, func(name string, source []byte) error {
			wanted, err := format.Source(source)
			if err != nil {
				return fmt.Errorf("%s: %w", name, err)
			}
			if !bytes.Equal(source, wanted) {
				unformatted = append(unformatted, name)
			}
			return nil
		})
		if err != nil {
			return err
		}
	}
	if len(unformatted) > 0 {
		return fmt.Errorf("run gofmt -w %s", strings.Join(unformatted, " "))
	}
	return nil
}

// target is a system that ogive-batch is built for.
type target struct{ system, processor string }

func (t target) String() string { return t.system + "/" + t.processor }

func targets() []target {
	all := []target{{"linux", "amd64"}, {"windows", "amd64"}, {"darwin", "arm64"}}
	here := target{runtime.GOOS, runtime.GOARCH}
	for _, t := range all {
		if t == here {
			return all
		}
	}
	return append(all, here)
}

func (w workshop) build(t target) error {
	built := program(fmt.Sprintf("ogive-batch-%s-%s", t.system, t.processor), t.system)
	env := []string{"CGO_ENABLED=0", "GOOS=" + t.system, "GOARCH=" + t.processor}
	return w.run(env, "go", "build", "-trimpath", "-o", built, batchPackage)
}
