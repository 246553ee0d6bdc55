// Command ogive-batch measures the webs of a hand on photographs, without a
// window.
//
//	ogive-batch measure MARKS.json|FOLDER... [--json|--csv]
//	ogive-batch draw MARKS.json [--out PICTURE.png]
//	ogive-batch compare OPERATED.json OTHER.json [--json]
//	ogive-batch agree FILE.csv [--json]
//	ogive-batch audit CASEBOOK [--into FILE.csv] [--dictionary]
//	ogive-batch plan PLAN.json|MARKS.json [--other OTHER.json] [--json]
//	ogive-batch sheet PLAN.json [--into SHEET.pdf] [--paper a4|letter] [--svg OUTLINES.svg]
//	ogive-batch demo [--into FOLDER] [--seed N]
//
// Exit status 0: done. 1: an input is wrong; a line on standard error names the
// file, the field and the mend. 2: the command was called wrongly.
package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/alecthomas/kong"

	"ogive/imaging/wording"
)

// Exit statuses.
const (
	done       = 0
	wrongInput = 1
	wrongUsage = 2
)

type commands struct {
	Measure measureCommand `cmd:"" help:"Measure the webs that marks files mark on their photographs."`
	Draw    drawCommand    `cmd:"" help:"Draw marks, arches and figures onto a copy of the photograph."`
	Compare compareCommand `cmd:"" help:"Compare the operated hand with the other one, or two sittings of a hand."`
	Agree   agreeCommand   `cmd:"" help:"Tell how far observers agree on what they measured."`
	Audit   auditCommand   `cmd:"" help:"Write a whole casebook as a table for a statistics package."`
	Plan    planCommand    `cmd:"" help:"Print the figures of a plan, or begin one: arch, flap, zigzags, skin."`
	Sheet   sheetCommand   `cmd:"" help:"Print a plan for theatre, its outlines at true size, and draw them for a cutter."`
	Demo    demoCommand    `cmd:"" help:"Make an artificial photograph of a hand, measure it and explain the figures."`
}

// terminal is where output goes.
type terminal struct{ out, err io.Writer }

func main() { os.Exit(run(os.Args[1:], terminal{os.Stdout, os.Stderr})) }

// run is the whole command; it returns the exit status.
func run(args []string, t terminal) (status int) {
	var c commands
	left := -1
	parser, err := kong.New(&c,
		kong.Name("ogive-batch"),
		kong.Description("Measures the webs of a hand on photographs.\n\n"+wording.Caution),
		kong.Writers(t.out, t.err),
		kong.Exit(func(status int) { left = status }),
		kong.Bind(t),
	)
	if err != nil {
		fmt.Fprintf(t.err, "ogive-batch: %v\n", err)
		return wrongUsage
	}
	ctx, err := parser.Parse(args)
	if left >= 0 { // help was asked for
		return left
	}
	if err != nil {
		fmt.Fprintf(t.err, "ogive-batch: %v; see ogive-batch --help\n", err)
		return wrongUsage
	}
	if err := ctx.Run(t); err != nil {
		t.complain(err)
		return wrongInput
	}
	return done
}

// complain writes one line for every fault.
func (t terminal) complain(err error) {
	faults := faultList{err}
	errors.As(err, &faults)
	for _, f := range faults {
		fmt.Fprintln(t.err, oneLine(f.Error()))
	}
}

// faultList is what is wrong with several inputs.
type faultList []error

// Error is all that is wrong.
func (f faultList) Error() string { return errors.Join(f...).Error() }

// orNil is an error only if there is a fault.
func (f faultList) orNil() error {
	if len(f) == 0 {
		return nil
	}
	return f
}

// oneLine keeps a message that quotes a file on one line.
func oneLine(s string) string {
	return strings.Join(strings.FieldsFunc(s, func(r rune) bool { return r == '\n' || r == '\r' }), " ")
}
