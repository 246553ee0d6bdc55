package main

import (
	"bytes"
	"fmt"
	"os"

	pairs "ogive/geometry/comparison"
	"ogive/geometry/reading"
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
	operated, a, err := readForPair(c.Operated, settings)
	if err != nil {
		return err
	}
	other, b, err := readForPair(c.Other, settings)
	if err != nil {
		return err
	}
	if err := refuseOnePhotograph(c, a, b); err != nil {
		return err
	}
	compared, err := pairs.Compare(operated, other, settings.Norms.Span)
	if err != nil {
		return fmt.Errorf("%s and %s: %w", c.Operated, c.Other, err)
	}
	write := report.CompareTable
	if c.JSON {
		write = report.CompareJSON
	}
	var out bytes.Buffer
	if err := write(&out, report.Pair{Operated: c.Operated, Other: c.Other, Comparison: compared}); err != nil {
		return err
	}
	if _, err := t.out.Write(out.Bytes()); err != nil {
		return fmt.Errorf("standard output can't be written: %w; check where it goes", err)
	}
	return nil
}

// readForPair measures one marks file and keeps the plane it was measured on.
func readForPair(path string, settings measure.Settings) (pairs.Photograph, measure.Result, error) {
	reader := new(reading.Reader)
	o := guarded(path, func() (measure.Result, error) {
		subject, err := measure.Open(path)
		if err != nil {
			return measure.Result{}, err
		}
		subject.Reader = reader
		result, err := subject.Measure(settings)
		if err != nil {
			return result, fmt.Errorf("%s: %w", path, err)
		}
		return result, nil
	})
	plane, _ := reader.Plane()
	return pairs.Photograph{Marks: o.result.Marks.Marks, Plane: plane, Reading: o.result.Reading}, o.result, o.fault
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
