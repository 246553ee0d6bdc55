package main

import (
	"path/filepath"
	"runtime"
)

// start does the main job: in the window where there is one and a display to
// show it on, else on the demo without a window.
func (w workshop) start() error {
	switch {
	case !w.windowed():
		w.say("There is no window yet; the demo hand is measured without one.")
		return w.startDemo()
	case !display():
		w.say("There is no display here; the demo hand is measured without a window.")
		return w.startDemo()
	}
	return w.startWindow()
}

func (w workshop) startWindow() error {
	if err := w.provide(windowNeeds); err != nil {
		return err
	}
	w.say("Building the window; the first time this takes a few minutes.")
	built := filepath.Join(w.root, program("ogive", runtime.GOOS))
	if err := w.run(nil, "go", "build", "-o", built, windowPackage); err != nil {
		return err
	}
	return w.run(nil, built)
}

func (w workshop) startDemo() error {
	built := filepath.Join(w.root, program("ogive-batch", runtime.GOOS))
	if err := w.run([]string{"CGO_ENABLED=0"}, "go", "build", "-o", built, batchPackage); err != nil {
		return err
	}
	if err := w.run(nil, built, "demo", "--into", demoFolder); err != nil {
		return err
	}
	w.say("\nAll of this lies in %s", filepath.Join(w.root, demoFolder))
	return nil
}
