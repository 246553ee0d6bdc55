package main

import (
	"fmt"
	"image"
	"os"
	"path/filepath"
	"strings"

	"ogive/imaging/annotate"
	"ogive/imaging/measure"
	"ogive/imaging/picturefile"
)

type drawCommand struct {
	Marks string `arg:"" name:"MARKS.json" help:"The marks file."`
	Out   string `placeholder:"PICTURE.png" help:"Where the picture is written, as .png or .jpg; beside the marks file as NAME-marked.png if not given."`
}

// Validate refuses a kind of picture that can't be written.
func (c drawCommand) Validate() error {
	if !picturefile.Known(c.out()) {
		return fmt.Errorf("--out is %s; give a name that ends in .png or .jpg", c.Out)
	}
	return nil
}

// Run draws the marked picture.
func (c drawCommand) Run(t terminal) error {
	settings, err := measure.Defaults()
	if err != nil {
		return err
	}
	subject, err := measure.Open(c.Marks)
	if err != nil {
		return err
	}
	if err := refuseOverwriting(c.out(), c.Marks, subject.Marks.PhotographPath(c.Marks)); err != nil {
		return err
	}
	result, err := subject.Measure(settings)
	if err != nil {
		return fmt.Errorf("%s: %w", c.Marks, err)
	}
	if err := picturefile.Write(c.out(), drawn(subject, result)); err != nil {
		return err
	}
	_, err = fmt.Fprintln(t.out, c.out())
	return err
}

func (c drawCommand) out() string {
	if c.Out != "" {
		return c.Out
	}
	return strings.TrimSuffix(c.Marks, filepath.Ext(c.Marks)) + "-marked.png"
}

func drawn(s measure.Subject, r measure.Result) *image.RGBA {
	return annotate.Draw(s.Photograph, r.Marks.Marks, r.Marks.Reference, r.Reading)
}

// refuseOverwriting keeps the photograph and the marks from being drawn over,
// by whatever name they are reached.
func refuseOverwriting(out string, inputs ...string) error {
	there, err := os.Stat(out)
	if err != nil {
		return nil
	}
	for _, in := range inputs {
		if info, err := os.Stat(in); err == nil && os.SameFile(info, there) {
			return fmt.Errorf("%s: this is the file that is read and is not drawn over; give another name after --out", out)
		}
	}
	return nil
}

func extension(path string) string { return strings.ToLower(filepath.Ext(path)) }
