// Package measure does the whole job for one marks file: it opens the
// photograph, traces the webs that have only seeds, finds the ticks of the
// ruler, fits the scale and reads every figure.
//
//	settings := measure.Defaults()
//	result, err := measure.File("right-dorsal.marks.json", settings)
//	result.Reading.Webs[0].Index
//
// A window opens a photograph once and measures it again at every gesture:
//
//	subject, err := measure.Open("right-dorsal.marks.json")
//	result, err := subject.Measure(settings)
//
// A web that can't be traced is no failure: it gets a warning, and the figures
// that follow from the clicked crown are given.
package measure

import (
	"fmt"

	"ogive/assets"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/geometry/scale"
	"ogive/imaging/marksfile"
	"ogive/imaging/photo"
)

// Settings is what the user can choose: the normal values to judge by, and the
// tilt between camera and hand to allow for, either way, where the scale sees
// none.
type Settings struct {
	Norms norms.Table
	Tilt  plane.Angle
}

// Defaults is the program's own table of normal values and a tilt of
// scale.DefaultTilt. It fails only if the program was built with a table that
// can't be read.
func Defaults() (Settings, error) {
	table, err := norms.Parse(assets.NormalValues)
	if err != nil {
		return Settings{}, fmt.Errorf("the program's own %w", err)
	}
	return Settings{Norms: table, Tilt: scale.DefaultTilt}, nil
}

// Subject is a photograph with the marks on it, ready to be measured.
type Subject struct {
	Marks      marksfile.File
	Photograph *photo.Photograph
	// Scaling is the scale as inspected before; where it is zero, Measure
	// inspects the one that is marked.
	Scaling Scaling
	// Reader, if not nil, remembers webs from one measuring to the next.
	Reader *reading.Reader
}

// Result is a reading and the marks it was read from, every web that could be
// traced with its edge.
type Result struct {
	Marks   marksfile.File
	Reading reading.Reading
	// Scale is the fit that everything was read by.
	Scale scale.Fit
}

// File measures the marks file at path. The error names the file, the field and
// the mend.
func File(path string, s Settings) (Result, error) {
	subject, err := Open(path)
	if err != nil {
		return Result{}, err
	}
	result, err := subject.Measure(s)
	if err != nil {
		return Result{}, fmt.Errorf("%s: %w", path, err)
	}
	return result, nil
}

// Open reads the marks file at path and the photograph it names. It fails if
// either can't be read or is not fit to be measured; the error names the file,
// the field and the mend.
func Open(path string) (Subject, error) {
	marks, err := marksfile.Read(path)
	if err != nil {
		return Subject{}, err
	}
	if err := marks.Complete(); err != nil {
		return Subject{}, fmt.Errorf("%s: %w", path, err)
	}
	p, err := photo.Open(marks.PhotographPath(path))
	if err != nil {
		return Subject{}, fmt.Errorf("%s: photograph: %w", path, err)
	}
	if err := marks.CheckWithin(p.Size()); err != nil {
		return Subject{}, fmt.Errorf("%s: %w", path, err)
	}
	return Subject{Marks: marks, Photograph: p}, nil
}

// Measure traces, fits and reads. The error names the field and the mend.
func (s Subject) Measure(with Settings) (Result, error) {
	marks := s.Marks
	scaling := s.Scaling
	if scaling.Marked == nil {
		scaling = Inspect(s.Photograph, marks.Reference)
	}
	camera := cameraOf(s.Photograph.Size(), s.Photograph.Facts(), with.Tilt)
	fit, err := scaling.Fit(camera, marks.Marks.ClickSD)
	if err != nil {
		return Result{}, err
	}
	traced := s.trace()
	marks.Marks.Webs = traced.webs
	reader := s.Reader
	if reader == nil {
		reader = new(reading.Reader)
	}
	r := reader.Read(marks.Marks, fit, with.Norms)
	traced.warn(&r)
	return Result{Marks: marks, Reading: r, Scale: fit}, nil
}
