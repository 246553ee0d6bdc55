package main

// accuracy prints how far the figures miss the truth on phantoms, beside the
// targets.
func (w workshop) accuracy() error {
	w.say("Measuring 120 phantom hands and 40 web views, 120 pairs of hands, 60 plans and 30 hands by two observers; this takes about half an hour.")
	return w.run(nil, "go", "test", "./imaging/proof", "-count=1", "-timeout=120m", "-run=Targets|PairsOf|DigitsOf|Planned|Observers", "-v",
		"-hands=120", "-webviews=40", "-pairs=120", "-plans=60", "-adults=30")
}

// benchmarks are those whose figures the project has set itself targets for.
var benchmarks = []struct{ folder, name string }{
	{"./geometry/reading", "ReadOneWeb"},
	{"./imaging/trace", "BenchmarkWeb"},
	{"./imaging/ruler", "FindTicks"},
	{"./imaging/photo", "Open24Megapixel"},
	{"./imaging/proof", "EndToEnd24Megapixels"},
	{"./imaging/display", "Frame"},
	{"./imaging/display", "BenchmarkOpen"},
	{"./ui/window", "FromDragToFigures"},
	{"./ui/plan", "DragToFigures"},
	{"./imaging/rounds", "FirstPicture"},
	{"./imaging/casebook/crowd", "BenchmarkCasebook"},
}

// speed prints the benchmarks, one after the other so that none disturbs
// another.
func (w workshop) speed() error {
	if err := w.provideAll(); err != nil {
		return err
	}
	for _, b := range benchmarks {
		if err := w.run(nil, "go", "test", b.folder, "-run=^$", "-bench="+b.name, "-benchtime=10x"); err != nil {
			return err
		}
	}
	return nil
}
