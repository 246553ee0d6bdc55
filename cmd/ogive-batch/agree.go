package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"

	"ogive/imaging/observations"
	"ogive/imaging/report"
)

type agreeCommand struct {
	File string `arg:"" name:"FILE.csv" help:"What was measured: columns target, observer, value, and if you like figure and occasion."`
	JSON bool   `name:"json" help:"Write JSON."`
}

// Run tells how far the observers agree.
func (c agreeCommand) Run(t terminal) error {
	file, err := os.Open(c.File)
	if err != nil {
		return fmt.Errorf("%w; check the name of the file", err)
	}
	defer file.Close()
	all, err := observations.Read(file)
	if err != nil {
		return fmt.Errorf("%s: %w", c.File, err)
	}
	found := observations.Compare(all)
	if err := noneTells(found); err != nil {
		return fmt.Errorf("%s: %w", c.File, err)
	}
	write := report.AgreeTable
	if c.JSON {
		write = report.AgreeJSON
	}
	var out bytes.Buffer
	if err := write(&out, found); err != nil {
		return err
	}
	if _, err := t.out.Write(out.Bytes()); err != nil {
		return fmt.Errorf("standard output can't be written: %w; check where it goes", err)
	}
	return nil
}

// noneTells is what is wrong if no figure can be compared.
func noneTells(found []observations.Comparison) error {
	var faults []error
	for _, c := range found {
		if c.Fault == nil {
			return nil
		}
		faults = append(faults, c.Fault)
	}
	return errors.Join(faults[:min(1, len(faults))]...)
}
