// Command ogive is the window: the webs between the fingers measured on a
// photograph of a hand.
//
//	ogive [photograph]
package main

import (
	"flag"
	"fmt"
	"os"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/app"

	"ogive/assets"
	"ogive/ui/language"
	"ogive/ui/window"
)

// details are those of FyneApp.toml, which a plain go build does not read.
var details = fyne.AppMetadata{
	ID: "org.ogive.ogive", Name: "Ogive", Version: "0.1.0", Build: 1,
	Icon:       fyne.NewStaticResource("icon.png", assets.Icon),
	Migrations: map[string]bool{"fyneDo": true},
}

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
	app.SetMetadata(details)
	a := app.NewWithID(details.ID)
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
