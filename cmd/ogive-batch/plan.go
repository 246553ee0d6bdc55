package main

import (
	"bytes"
	"fmt"
	"path/filepath"

	"ogive/geometry/hand"
	"ogive/imaging/measure"
	"ogive/imaging/planfile"
	"ogive/imaging/planning"
	"ogive/imaging/planning/written"
)

type planCommand struct {
	Path  string `arg:"" name:"PLAN.json|MARKS.json" help:"A plan file, or a marks file to begin a plan for."`
	Other string `name:"other" placeholder:"OTHER.json" help:"The marks file of the other hand in the same view; else the one that the plan names."`
	Webs  []int  `name:"web" placeholder:"N" help:"A web to begin a plan for, 1 to 4; may be given again. Else every web without a marked border whose two digits have joints; where every border is marked, every marked web. Not with a plan file."`
	Save  string `name:"save" placeholder:"PLAN.json" help:"Write the plan that was begun into this file as well."`
	JSON  bool   `name:"json" help:"Write JSON: figures, and outlines in millimetres and in pixels."`
}

// Validate refuses what is no web.
func (c planCommand) Validate() error {
	for _, n := range c.Webs {
		if !hand.Web(n).Valid() {
			return fmt.Errorf("--web is %d; give 1 (thumb-index), 2, 3 or 4 (ring-little)", n)
		}
	}
	return nil
}

// Run writes the figures of a plan.
func (c planCommand) Run(t terminal) error {
	settings, err := measure.Defaults()
	if err != nil {
		return err
	}
	var opened planning.Opened
	fault := guarded(c.Path, func() (measure.Result, error) {
		var err error
		opened, err = planning.Open(c.Path, c.Other, settings, c.webs()...)
		return measure.Result{}, err
	}).fault
	if fault != nil {
		return fault
	}
	if opened.Read && (c.Save != "" || len(c.Webs) > 0) {
		return fmt.Errorf("%s: is a plan already; give a marks file with --save and --web", c.Path)
	}
	write := written.Table
	if c.JSON {
		write = written.JSON
	}
	var out bytes.Buffer
	if err := write(&out, c.Path, opened); err != nil {
		return err
	}
	if c.Save != "" {
		if err := c.save(opened.Begun.File); err != nil {
			return err
		}
	}
	if _, err := t.out.Write(out.Bytes()); err != nil {
		return fmt.Errorf("standard output can't be written: %w; check where it goes", err)
	}
	return nil
}

func (c planCommand) webs() []hand.Web {
	var out []hand.Web
	for _, n := range c.Webs {
		out = append(out, hand.Web(n))
	}
	return out
}

// save keeps a plan with the names of the marks files as seen from its folder.
func (c planCommand) save(f planfile.File) error {
	seen := func(path string) string {
		if rel, err := filepath.Rel(filepath.Dir(c.Save), path); err == nil && path != "" {
			path = rel
		}
		return filepath.ToSlash(path)
	}
	f.Marks, f.Other = seen(c.Path), seen(c.Other)
	return f.Save(c.Save)
}
