package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"ogive/imaging/measure"
	"ogive/imaging/photo"
	"ogive/imaging/planfile"
	"ogive/imaging/planning"
	"ogive/imaging/sheet"
	"ogive/imaging/skin"
	"ogive/imaging/wholefile"
)

type sheetCommand struct {
	Plan  string `arg:"" name:"PLAN.json" help:"The plan file; or a marks file, to print what would be proposed."`
	Into  string `placeholder:"SHEET.pdf" help:"Where the sheet is written; beside the plan file as NAME-sheet.pdf if not given."`
	Paper string `default:"a4" enum:"a4,letter" help:"The paper: a4 or letter."`
	SVG   string `name:"svg" placeholder:"OUTLINES.svg" help:"Write the outlines for a cutter as well."`
	Code  string `placeholder:"CODE" help:"The case's code, never a name; a line to write it on if not given."`
}

// Validate refuses kinds of files that can't be written.
func (c sheetCommand) Validate() error {
	if extension(c.into()) != ".pdf" {
		return fmt.Errorf("--into is %s; give a name that ends in .pdf", c.Into)
	}
	if c.SVG != "" && extension(c.SVG) != ".svg" {
		return fmt.Errorf("--svg is %s; give a name that ends in .svg", c.SVG)
	}
	return nil
}

func (c sheetCommand) into() string {
	if c.Into != "" {
		return c.Into
	}
	return strings.TrimSuffix(strings.TrimSuffix(c.Plan, ".json"), ".plan") + "-sheet.pdf"
}

// Run writes the sheet, and the outlines if they are asked for.
func (c sheetCommand) Run(t terminal) error {
	content, err := c.content()
	if err != nil {
		return err
	}
	pdf, err := content.PDF(sheet.Papers[c.Paper])
	if err != nil {
		return fmt.Errorf("%s: %w", c.Plan, err)
	}
	if err := wholefile.Write(c.into(), pdf); err != nil {
		return err
	}
	if c.SVG != "" {
		if err := c.writeOutlines(content); err != nil {
			return err
		}
	}
	_, err = fmt.Fprintln(t.out, strings.TrimSpace(c.into()+"\n"+c.SVG))
	return err
}

func (c sheetCommand) writeOutlines(content sheet.Content) error {
	svg, err := content.SVG()
	if err != nil {
		return fmt.Errorf("%s: %w", c.Plan, err)
	}
	return wholefile.Write(c.SVG, svg)
}

// content is what the sheet shows.
func (c sheetCommand) content() (sheet.Content, error) {
	settings, err := measure.Defaults()
	if err != nil {
		return sheet.Content{}, err
	}
	opened, err := planning.Open(c.Plan, "", settings)
	if err != nil {
		return sheet.Content{}, err
	}
	marks := c.marksPath(opened.Begun.File)
	path := opened.Here.Marks.PhotographPath(marks)
	for _, out := range []string{c.into(), c.SVG} {
		if out == "" {
			continue
		}
		if err := refuseOverwriting(out, c.Plan, marks, path); err != nil {
			return sheet.Content{}, err
		}
	}
	photograph, err := photo.Open(path)
	if err != nil {
		return sheet.Content{}, err
	}
	words := sheet.Words{Code: c.Code}
	words.Colours, words.ColourRemarks = skin.OfPlan(opened.Begun.File.Patches, func(name string) (*photo.Photograph, error) {
		if name == "" {
			return photograph, nil
		}
		return photo.Open(filepath.Join(filepath.Dir(c.Plan), filepath.FromSlash(name)))
	})
	return sheet.Of(opened.Plan(), opened.Here, photograph, words), nil
}

// marksPath is the marks file that was opened with the plan: the one it names,
// or the one beside it, or, where no plan but marks were given, those.
func (c sheetCommand) marksPath(f planfile.File) string {
	if named := f.MarksPath(c.Plan); named != "" {
		return named
	}
	if !strings.HasSuffix(c.Plan, planfile.Suffix) {
		return c.Plan
	}
	beside := strings.TrimSuffix(c.Plan, planfile.Suffix)
	if _, err := os.Stat(beside + ".marks.json"); errors.Is(err, os.ErrNotExist) {
		return beside + ".json"
	}
	return beside + ".marks.json"
}
