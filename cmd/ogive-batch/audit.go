package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"

	"ogive/imaging/audit"
	"ogive/imaging/casebook"
	"ogive/imaging/measure"
	"ogive/imaging/wholefile"
	"ogive/imaging/wording"
)

type auditCommand struct {
	Casebook   string `arg:"" optional:"" name:"CASEBOOK" help:"The folder of the casebook."`
	Into       string `placeholder:"FILE.csv" help:"Write to this file, which is replaced if it is there; to standard output if not given."`
	Dictionary bool   `help:"Write what every column means instead, as CSV; this needs no casebook."`
}

// Help says what the table is.
func (auditCommand) Help() string {
	return "Writes CSV for a statistics package: a row for every web at every sitting, by hand, view and observer. " +
		"It holds codes, ages and times since the operation, and no name, date, free text or path. " +
		"A text that begins with = + - @ or an apostrophe has an apostrophe before it, so that no spreadsheet takes it for a formula. " +
		"Photographs that are marked and were not measured before are measured first.\n\n" + wording.Caution
}

// Validate refuses a call that names nothing to read.
func (c auditCommand) Validate() error {
	if c.Casebook == "" && !c.Dictionary {
		return errors.New("give the folder of the casebook, or --dictionary")
	}
	return nil
}

// Run writes the table. What can't be read is said and does not stop the rest.
func (c auditCommand) Run(t terminal) error {
	var out bytes.Buffer
	if c.Dictionary {
		if err := audit.Dictionary(&out); err != nil {
			return err
		}
		return c.write(t, out.Bytes())
	}
	a, err := c.read(t)
	if err != nil {
		return err
	}
	if err := a.CSV(&out); err != nil {
		return err
	}
	if err := c.write(t, out.Bytes()); err != nil {
		return err
	}
	var faults faultList
	for _, f := range a.Faults {
		faults = append(faults, fmt.Errorf("%s: %w", c.Casebook, f))
	}
	return faults.orNil()
}

func (c auditCommand) read(t terminal) (a audit.Audit, err error) {
	book, err := openThere(c.Casebook)
	if err != nil {
		return a, err
	}
	defer func() { err = errors.Join(err, book.Close()) }()
	settings, err := measure.Defaults()
	if err != nil {
		return a, err
	}
	var bar progress
	begun := false
	a, err = audit.Of(context.Background(), book, settings, func(done, all int) {
		if !begun {
			bar, begun = newProgress(t.err, all), true
		}
		bar.step()
		if done == all {
			bar.finish()
		}
	})
	if err != nil {
		return a, fmt.Errorf("%s: %w", c.Casebook, err)
	}
	return a, nil
}

// openThere opens a casebook that is there; a mistyped name does not make one.
func openThere(folder string) (*casebook.Casebook, error) {
	if _, err := os.Stat(filepath.Join(folder, casebook.DatabaseName)); err != nil {
		return nil, fmt.Errorf("%s: there is no casebook; give the folder in which %s lies", folder, casebook.DatabaseName)
	}
	book, err := casebook.Open(folder)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", folder, err)
	}
	return book, nil
}

func (c auditCommand) write(t terminal, data []byte) error {
	if c.Into != "" {
		return wholefile.Write(c.Into, data)
	}
	if _, err := t.out.Write(data); err != nil {
		return fmt.Errorf("standard output can't be written: %w; check where it goes", err)
	}
	return nil
}
