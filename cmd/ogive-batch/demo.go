package main

import (
	"bytes"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/imaging/marksfile"
	"ogive/imaging/measure"
	"ogive/imaging/phantom"
	"ogive/imaging/picturefile"
	"ogive/imaging/report"
	"ogive/imaging/wholefile"
)

type demoCommand struct {
	Into string `default:"demo" placeholder:"FOLDER" help:"Where the files are written (${default})."`
	Seed uint64 `default:"0" help:"Which artificial hand: 0 is a hand after a release whose third web has crept, every other number draws a hand of its own."`
}

// clickSD is how exactly the demo's observer places points, in pixels.
const clickSD = hand.DefaultClickSD

// Run makes the photographs and the marks, then does the whole job on them as
// it is done on any others.
func (c demoCommand) Run(t terminal) error { return c.show(c.scenes(), t) }

func (c demoCommand) show(scenes []scene, t terminal) error {
	settings, err := measure.Defaults()
	if err != nil {
		return err
	}
	if err := os.MkdirAll(c.Into, 0o777); err != nil {
		return fmt.Errorf("%s: the folder can't be made: %w; give another after --into", c.Into, err)
	}
	var shown []exhibit
	for _, s := range scenes {
		e, err := c.exhibit(s, settings)
		if err != nil {
			return err
		}
		shown = append(shown, e)
	}
	text, err := tell(shown, settings)
	if err != nil {
		return err
	}
	if err := c.writeFigures(shown, text); err != nil {
		return err
	}
	_, err = io.WriteString(t.out, text+c.listing(shown))
	return err
}

// exhibit is one photograph of the demo, measured, with the truth behind it.
type exhibit struct {
	name  string
	entry report.Entry
	truth phantom.Truth
}

// scene is one photograph to be made.
type scene struct {
	name string
	of   phantom.Case
}

func (c demoCommand) scenes() []scene {
	back, web := crept(), slanting()
	if c.Seed != 0 {
		back, web = phantom.Random(c.Seed), phantom.RandomWebView(c.Seed)
		back.View = hand.Dorsal
	}
	return []scene{{"back-of-hand", back}, {"into-web", web}}
}

// crept is a hand after a release: the third web has crept towards the
// fingertips, the fourth was set too deep and wide.
func crept() phantom.Case {
	return phantom.Case{
		Seed: 7, Side: hand.Right, View: hand.Dorsal, Size: 38, Skin: phantom.Fair, Drape: phantom.TheatreGreen,
		Reference: phantom.WhiteRuler, Tilt: plane.Degrees(4), TiltDirection: plane.Degrees(30), NoiseSD: 1.5,
		Light: phantom.Light{Azimuth: plane.Degrees(-130), Elevation: plane.Degrees(50), Shadow: 0.4},
		Webs: map[hand.Web]phantom.WebShape{
			hand.SecondWeb: {Shape: arch.U, Index: 0.52, Span: 9.5, Flat: 0.4},
			hand.ThirdWeb:  {Shape: arch.Gothic, Index: 0.76, Span: 8, Turn: plane.Degrees(60)},
			hand.FourthWeb: {Shape: arch.U, Index: 0.36, Span: 12.5, Flat: 0.45},
		},
	}
}

// slanting is a look into the third web of such a hand.
func slanting() phantom.Case {
	c := crept()
	c.View, c.Webs, c.JunctionSlope = hand.WebView, nil, plane.Degrees(38)
	return c
}

// exhibit makes one photograph and its marks, measures and draws it.
func (c demoCommand) exhibit(s scene, settings measure.Settings) (exhibit, error) {
	picture, err := s.of.Render()
	if err != nil {
		return exhibit{}, err
	}
	marks := filepath.Join(c.Into, s.name+".json")
	if err := wholefile.Write(filepath.Join(c.Into, s.name+".jpg"), picture.JPEG); err != nil {
		return exhibit{}, err
	}
	if err := marked(s.name+".jpg", picture.Truth, s.of.Seed).Save(marks); err != nil {
		return exhibit{}, err
	}
	subject, err := measure.Open(marks)
	if err != nil {
		return exhibit{}, err
	}
	result, err := subject.Measure(settings)
	if err != nil {
		return exhibit{}, err
	}
	if err := picturefile.Write(filepath.Join(c.Into, s.name+"-marked.png"), drawn(subject, result)); err != nil {
		return exhibit{}, err
	}
	return exhibit{s.name, report.Entry{Path: marks, Result: result}, picture.Truth}, nil
}

// marked is what an observer would place on the picture.
func marked(photograph string, truth phantom.Truth, seed uint64) marksfile.File {
	m, reference := truth.Marks(clickSD, rand.New(rand.NewPCG(seed, 0xde40)))
	return marksfile.File{Photograph: photograph, Marks: m, Reference: reference}
}

// tell is the table, what the figures mean and how they stand to the truth.
func tell(shown []exhibit, settings measure.Settings) (string, error) {
	var out strings.Builder
	fmt.Fprintf(&out, "An artificial hand, whose geometry is exactly known, marked by an observer who misses each point by %g pixels or so.\n\n", float64(clickSD))
	if err := report.Table(&out, entriesOf(shown)); err != nil {
		return "", err
	}
	out.WriteString("\nWhat the figures mean for this hand\n\n")
	if err := report.Explain(&out, entriesOf(shown), settings.Norms); err != nil {
		return "", err
	}
	out.WriteString("\nBeside the truth, in one digit more than the figures deserve\n\n")
	for _, e := range shown {
		out.WriteString(e.besideTruth())
	}
	return out.String(), nil
}

func entriesOf(shown []exhibit) []report.Entry {
	var out []report.Entry
	for _, e := range shown {
		out = append(out, e.entry)
	}
	return out
}

// writeFigures writes what was told, and the figures for programs.
func (c demoCommand) writeFigures(shown []exhibit, text string) error {
	var json, csv bytes.Buffer
	if err := report.JSONList(&json, entriesOf(shown)); err != nil {
		return err
	}
	if err := report.CSV(&csv, entriesOf(shown)); err != nil {
		return err
	}
	for name, data := range map[string][]byte{"figures.json": json.Bytes(), "figures.csv": csv.Bytes(), "figures.txt": []byte(text)} {
		if err := wholefile.Write(filepath.Join(c.Into, name), data); err != nil {
			return err
		}
	}
	return nil
}

// listing says where everything lies.
func (c demoCommand) listing(shown []exhibit) string {
	var out strings.Builder
	out.WriteString("\nWhere it lies\n")
	file := func(name, what string) { fmt.Fprintf(&out, "  %-36s %s\n", filepath.Join(c.Into, name), what) }
	for _, e := range shown {
		file(e.name+".jpg", "the photograph")
		file(e.name+".json", "the marks on it")
		file(e.name+"-marked.png", "marks, arches and figures drawn on it")
	}
	file("figures.txt", "what you have just read")
	file("figures.json", "the figures for programs")
	file("figures.csv", "the figures for statistics, a row for every web")
	return out.String()
}
