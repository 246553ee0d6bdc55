package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"ogive/imaging/agreementchart"
	"ogive/imaging/observations"
	"ogive/imaging/report"
	"ogive/imaging/wholefile"
)

type agreeCommand struct {
	File string `arg:"" name:"FILE.csv" help:"What was measured: columns target, observer, value, and if you like figure and occasion. A unit stands behind the figure: span (mm)."`
	JSON bool   `name:"json" help:"Write JSON."`
	PDF  string `name:"pdf" placeholder:"FILE.pdf" help:"Draw every two observers on every figure, a page each."`
	PNG  string `name:"png" placeholder:"FILE.png" help:"Draw them as pictures. Where there are several, they are numbered: FILE-1.png."`
	SVG  string `name:"svg" placeholder:"FILE.svg" help:"Draw them as drawings, numbered likewise."`
	CSV  string `name:"csv" placeholder:"FILE.csv" help:"Write the figures of every two observers as a table for other programs."`
}

// Validate refuses names of files that say something else than what is written.
func (c agreeCommand) Validate() error {
	for _, o := range c.outputs() {
		if o.path != "" && extension(o.path) != o.extension {
			return fmt.Errorf("--%s is %s; give a name that ends in %s", o.extension[1:], o.path, o.extension)
		}
	}
	return nil
}

// output is a file to be written.
type output struct {
	path, extension string
	write           func(path string, charts []agreementchart.Chart) error
}

func (c agreeCommand) outputs() []output {
	return []output{
		{c.PDF, ".pdf", func(path string, charts []agreementchart.Chart) error {
			return writeFile(path, func(to *bytes.Buffer) error { return agreementchart.PDF(to, charts) })
		}},
		{c.PNG, ".png", func(path string, charts []agreementchart.Chart) error {
			return writeNumbered(path, charts, func(c agreementchart.Chart, to *bytes.Buffer) error { return c.PNG(to) })
		}},
		{c.SVG, ".svg", func(path string, charts []agreementchart.Chart) error {
			return writeNumbered(path, charts, func(c agreementchart.Chart, to *bytes.Buffer) error { return c.SVG(to) })
		}},
		{c.CSV, ".csv", func(path string, charts []agreementchart.Chart) error {
			return writeFile(path, func(to *bytes.Buffer) error { return agreementchart.FiguresCSV(to, charts) })
		}},
	}
}

// Run tells how far the observers agree, and draws it where that is asked for.
func (c agreeCommand) Run(t terminal) error {
	all, err := c.read()
	if err != nil {
		return err
	}
	found := observations.Compare(all)
	charts, _ := agreementchart.Of(all, filepath.Base(c.File))
	if len(charts) == 0 {
		return fmt.Errorf("%s: %w", c.File, firstFault(found))
	}
	for _, o := range c.outputs() {
		if o.path == "" {
			continue
		}
		if err := refuseOverwriting(o.path, c.File); err != nil {
			return err
		}
		if err := o.write(o.path, charts); err != nil {
			return err
		}
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

func (c agreeCommand) read() ([]observations.Observation, error) {
	file, err := os.Open(c.File)
	if err != nil {
		return nil, fmt.Errorf("%w; check the name of the file", err)
	}
	defer file.Close()
	all, err := observations.Read(file)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", c.File, err)
	}
	return all, nil
}

// firstFault is what is wrong where nothing can be compared.
func firstFault(found []observations.Comparison) error {
	for _, c := range found {
		if c.Fault != nil {
			return c.Fault
		}
	}
	return errors.New("nothing can be compared; give what two observers measured on the same targets")
}

func writeFile(path string, write func(to *bytes.Buffer) error) error {
	var out bytes.Buffer
	if err := write(&out); err != nil {
		return fmt.Errorf("%s: %w", path, err)
	}
	return wholefile.Write(path, out.Bytes())
}

// writeNumbered writes one chart under that name, several under numbers.
func writeNumbered(path string, charts []agreementchart.Chart, write func(c agreementchart.Chart, to *bytes.Buffer) error) error {
	for i, c := range charts {
		name := path
		if len(charts) > 1 {
			stem := strings.TrimSuffix(path, filepath.Ext(path))
			name = fmt.Sprintf("%s-%d%s", stem, i+1, filepath.Ext(path))
		}
		if err := writeFile(name, func(to *bytes.Buffer) error { return write(c, to) }); err != nil {
			return err
		}
	}
	return nil
}
