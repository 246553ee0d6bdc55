package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"runtime"
	"sync"

	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/imaging/measure"
	"ogive/imaging/report"
)

type measureCommand struct {
	Paths        []string `arg:"" name:"MARKS.json|FOLDER" help:"Marks files, or folders whose *.json files are marks files."`
	JSON         bool     `name:"json" xor:"form" help:"Write JSON: an object for one marks file, an array for several or a folder."`
	CSV          bool     `name:"csv" xor:"form" help:"Write CSV: a row for every web."`
	Tilt         float64  `default:"10" help:"Degrees of tilt between camera and hand to allow for, either way, where the scale sees none (more than 0, at most 45)."`
	NormalValues string   `name:"normal-values" placeholder:"FILE" help:"Judge by this edited copy of the table of normal values."`
}

// Validate refuses what no photograph is tilted by.
func (c measureCommand) Validate() error {
	if !(c.Tilt > 0 && c.Tilt <= 45) {
		return fmt.Errorf("--tilt is %g; give more than 0 and at most 45 degrees", c.Tilt)
	}
	return nil
}

// Run measures every file. What is wrong with one is said and does not stop the
// others.
func (c measureCommand) Run(t terminal) error {
	settings, err := c.settings()
	if err != nil {
		return err
	}
	files, faults := marksFiles(c.Paths)
	results := measureAll(files, settings, newProgress(t.err, len(files)))
	var entries []report.Entry
	for _, r := range results {
		if r.fault != nil {
			faults = append(faults, r.fault)
			continue
		}
		entries = append(entries, report.Entry{Path: r.path, Result: r.result})
	}
	// Written at once: a reader never sees half an answer before a fault.
	var out bytes.Buffer
	if err := c.write(&out, entries, len(files) != 1 || folderAmong(c.Paths)); err != nil {
		return err
	}
	if _, err := t.out.Write(out.Bytes()); err != nil {
		return fmt.Errorf("standard output can't be written: %w; check where it goes", err)
	}
	return faultList(faults).orNil()
}

func (c measureCommand) write(to io.Writer, entries []report.Entry, several bool) error {
	switch {
	case c.CSV:
		return report.CSV(to, entries)
	case c.JSON && several:
		return report.JSONList(to, entries)
	case c.JSON && len(entries) == 1:
		return report.JSON(to, entries[0])
	case c.JSON:
		return nil
	}
	return report.Table(to, entries)
}

func (c measureCommand) settings() (measure.Settings, error) {
	s, err := measure.Defaults()
	if err != nil {
		return s, err
	}
	s.Tilt = plane.Degrees(c.Tilt)
	if c.NormalValues == "" {
		return s, nil
	}
	data, err := os.ReadFile(c.NormalValues)
	if err != nil {
		return s, fmt.Errorf("%w; give the table of normal values", err)
	}
	if s.Norms, err = norms.Parse(data); err != nil {
		return s, fmt.Errorf("%s: %w", c.NormalValues, err)
	}
	return s, nil
}

// outcome is how the measuring of one file went.
type outcome struct {
	path   string
	result measure.Result
	fault  error
}

// measureAll works the files over the cores; the outcomes are in the order of
// the files.
func measureAll(files []string, s measure.Settings, bar progress) []outcome {
	outcomes := make([]outcome, len(files))
	next := make(chan int)
	var workers sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(files)) {
		workers.Go(func() {
			for i := range next {
				outcomes[i] = measureOne(files[i], s)
				bar.step()
			}
		})
	}
	for i := range files {
		next <- i
	}
	close(next)
	workers.Wait()
	bar.finish()
	return outcomes
}

func measureOne(path string, s measure.Settings) outcome {
	return guarded(path, func() (measure.Result, error) { return measure.File(path, s) })
}

// guarded turns a panic, which is a fault of this program, into the fault of one
// file, so that the others are measured all the same.
func guarded(path string, work func() (measure.Result, error)) (o outcome) {
	o.path = path
	defer func() {
		if p := recover(); p != nil {
			o.fault = fmt.Errorf("%s: the program failed on this file (%v); please report it together with the file", path, p)
		}
	}()
	o.result, o.fault = work()
	return o
}
