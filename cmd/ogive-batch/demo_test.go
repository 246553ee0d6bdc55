package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"ogive/imaging/measure"
)

// The demo on smaller pictures, so that it is quick.
func TestTheDemoMeasuresDrawsAndExplainsAHandBesideItsTruth(t *testing.T) {
	c := demoCommand{Into: filepath.Join(t.TempDir(), "demo")}
	scenes := c.scenes()
	for i := range scenes {
		scenes[i].of.Width, scenes[i].of.Height = 800, 600
	}
	var out bytes.Buffer
	if err := c.show(scenes, terminal{out: &out, err: &out}); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{
		"Third web: index too shallow (certain)",
		"Fourth web: index too deep (certain)",
		"slope   ",
		"What the figures mean for this hand",
		"Third web, truly gothic, measured as ",
		"dorsal web index     0.7",
		"inside",
		"responsible surgeon decide",
	} {
		if !strings.Contains(strings.ReplaceAll(out.String(), "surgeon\n", "surgeon "), want) {
			t.Errorf("the demo does not say %q:\n%s", want, out.String())
		}
	}
	for _, line := range strings.Split(after(out.String(), "Where it lies\n"), "\n") {
		if fields := strings.Fields(line); len(fields) > 0 {
			if info, err := os.Stat(fields[0]); err != nil || info.Size() == 0 {
				t.Errorf("%s is said to lie there: %v", fields[0], err)
			}
		}
	}
	settings, err := measure.Defaults()
	if err != nil {
		t.Fatal(err)
	}
	if _, err := measure.File(filepath.Join(c.Into, "back-of-hand.json"), settings); err != nil {
		t.Errorf("the marks of the demo can't be measured again: %v", err)
	}
}

func after(text, mark string) string {
	_, rest, _ := strings.Cut(text, mark)
	return rest
}
