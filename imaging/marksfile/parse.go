package marksfile

import (
	"fmt"
	"strings"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
)

// Parse reads the text of a marks file. The error is a *Refusal.
func Parse(data []byte) (File, error) {
	tree, err := parseTree(data)
	if err != nil {
		return File{}, err
	}
	root := field{tree, "", &err}
	f := root.file()
	if err != nil {
		return File{}, err
	}
	return f, nil
}

func (f field) file() File {
	f.checkVersion()
	f.object("a marks file", "ogive", "photograph", "hand", "view", "click_sd_px", "scale", "joints", "webs", "junctions", "unfinished")
	out := File{Photograph: f.at("photograph").photograph()}
	m := &out.Marks
	m.Side = named(f.at("hand"), `"left" or "right"`, hand.ParseSide)
	m.View = named(f.at("view"), `"dorsal", "palmar" or "web"`, hand.ParseView)
	m.ClickSD = f.at("click_sd_px").clickSD()
	out.Reference = f.at("scale").reference()
	m.Joints, out.Absent = f.at("joints").joints()
	m.Webs = f.at("webs").webs()
	m.Junctions = f.at("junctions").junctions()
	out.Unfinished = f.at("unfinished").unfinished()
	return out
}

// checkVersion comes first: a file of a later form is not to be blamed for
// fields that are unknown here.
func (f field) checkVersion() {
	if !f.of(anObject, "a marks file, an object that begins with \"ogive\": 1") {
		return
	}
	v := f.at("ogive")
	if v.missing() {
		v.refuse("is missing, so this is not a marks file", `give a marks file, or add "ogive": 1`)
		return
	}
	n := v.numberOf("the number 1")
	switch {
	case n == Version:
	case n > Version:
		v.refuse(fmt.Sprintf("is %g: the file was written by a later program than this one, which reads form %d", n, Version), "use the later program")
	default:
		v.refuse(fmt.Sprintf("is %g", n), fmt.Sprintf("give %d", Version))
	}
}

func (f field) photograph() string {
	const form = "the photograph's file name, as seen from this file"
	name := f.textOf(form)
	switch {
	case strings.TrimSpace(name) == "":
		f.refuse("is empty", "give "+form)
	case len(name) > 4096 || strings.ContainsRune(name, 0):
		f.refuse("is no file name", "give "+form)
	}
	return name
}

// maxClickSD is far beyond what an observer misses a point by, in pixels.
const maxClickSD = 100

func (f field) clickSD() plane.Pixel {
	if f.missing() {
		return hand.DefaultClickSD
	}
	return plane.Pixel(f.positive("the standard deviation of placing a point in pixels", maxClickSD))
}
