package main

import (
	"io"
	"os"

	"github.com/schollz/progressbar/v3"
	"golang.org/x/term"
)

// progress shows on a terminal how many files are done; elsewhere it is silent.
type progress struct{ bar *progressbar.ProgressBar }

func newProgress(to io.Writer, files int) progress {
	f, ok := to.(*os.File)
	if !ok || files < 2 || !term.IsTerminal(int(f.Fd())) {
		return progress{progressbar.DefaultSilent(int64(files))}
	}
	return progress{progressbar.NewOptions(files,
		progressbar.OptionSetWriter(f),
		progressbar.OptionSetDescription("measuring"),
		progressbar.OptionShowCount(),
		progressbar.OptionClearOnFinish(),
	)}
}

// What the bar can't show is no reason to stop measuring.
func (p progress) step() { _ = p.bar.Add(1) }

func (p progress) finish() { _ = p.bar.Finish() }
