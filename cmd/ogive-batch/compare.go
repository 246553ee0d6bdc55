package main

import (
	"bytes"
	"fmt"
	"os"

	"ogive/imaging/compared"
	"ogive/imaging/measure"
	"ogive/imaging/report"
)

type compareCommand struct {
	Operated string `arg:"" name:"OPERATED.json" help:"The marks file of the operated hand."`
	Other    string `arg:"" name:"OTHER.json" help:"The marks file of the other hand in the same view, or of the same hand at another sitting."`
	JSON     bool   `name:"json" help:"Write JSON: the differences, operated minus other."`
}

// Run measures both photographs and writes their differences.
func (c compareCommand) Run(t terminal) error {
	settings, err := measure.Defaults()
	if err != nil {
		return err
	}
	operated, err := readForPair(c.Operated, settings)
	if err != nil {
		return err
	}
	other, err := readForPair(c.Other, settings)
	if err != nil {
		return err
	}
	if err := refuseOnePhotograph(c, operated, other); err != nil {
		return err
	}
	found, err := compared.Results(operated, other, settings)
	if err != nil {
		return fmt.Errorf("%s and %s: %w", c.Operated, c.Other, err)
	}
	found.Warnings = append(found.Warnings, found.Reminders...)
	write := report.CompareTable
	if c.JSON {
		write = report.CompareJSON
	}
	var out bytes.Buffer
	if err := write(&out, report.Pair{Operated: c.Operated, Other: c.Other, Comparison: found}); err != nil {
		return err
	}
	if _, err := t.out.Write(out.Bytes()); err != nil {
		return fmt.Errorf("standard output can't be written: %w; check where it goes", err)
	}
	return nil
}

// readForPair measures one marks file.
func readForPair(path string, settings measure.Settings) (measure.Result, error) {
	o := guarded(path, func() (measure.Result, error) { return measure.File(path, settings) })
	return o.result, o.fault
}

// refuseOnePhotograph refuses the same hand on one and the same photograph,
// which is no second sitting.
func refuseOnePhotograph(c compareCommand, a, b measure.Result) error {
	if a.Reading.Side != b.Reading.Side {
		return nil
	}
	one, errA := os.Stat(a.Marks.PhotographPath(c.Operated))
	two, errB := os.Stat(b.Marks.PhotographPath(c.Other))
	if errA == nil && errB == nil && os.SameFile(one, two) {
		return fmt.Errorf("%s: photograph: shows the same %v hand as %s, on the same photograph; give a photograph of the other hand or of another sitting", c.Other, a.Reading.Side, c.Operated)
	}
	return nil
}
