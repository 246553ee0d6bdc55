package main

import (
	"strings"
	"testing"

	"ogive/imaging/measure"
)

func TestAFaultOfTheProgramIsTheFaultOfOneFile(t *testing.T) {
	o := guarded("marks.json", func() (measure.Result, error) { panic("out of range") })
	if o.path != "marks.json" || o.fault == nil || !strings.HasPrefix(o.fault.Error(), "marks.json: the program failed on this file (out of range)") {
		t.Errorf("%+v", o)
	}
}
