// Command ogive is the window: the webs between the fingers measured on a
// photograph of a hand.
//
//	ogive [photograph]
package main

import (
	"flag"
	"fmt"
	"os"

	"fyne.io/fyne/v2/app"

	"ogive/ui/language"
	"ogive/ui/window"
)

// id is the program's name for the system, as in FyneApp.toml.
const id = "org.ogive.ogive"

func main() {
	flag.Usage = func() { fmt.Fprintln(os.Stderr, "usage: ogive [photograph]") }
	flag.Parse()
	if flag.NArg() > 1 {
		flag.Usage()
		os.Exit(2)
	}
	if err := run(flag.Arg(0)); err != nil {
		fmt.Fprintln(os.Stderr, "ogive:", err)
		os.Exit(1)
	}
}

func run(photograph string) error {
	a := app.NewWithID(id)
	if err := language.Load(); err != nil {
		return err
	}
	w, err := window.New(a)
	if err != nil {
		return err
	}
	if photograph != "" {
		w.Open(photograph)
	}
	w.ShowAndRun()
	return nil
}
