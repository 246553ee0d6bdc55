package main

import (
	"os"
	"testing"

	"github.com/BurntSushi/toml"
)

func TestTheProgramSaysOfItselfWhatItsPackageSays(t *testing.T) {
	data, err := os.ReadFile("../../FyneApp.toml")
	if err != nil {
		t.Fatal(err)
	}
	var packaged struct {
		Details struct {
			ID, Name, Version string
			Build             int
		}
		Migrations map[string]bool
	}
	if err := toml.Unmarshal(data, &packaged); err != nil {
		t.Fatal(err)
	}
	p := packaged.Details
	if p.ID != details.ID || p.Name != details.Name || p.Version != details.Version || p.Build != details.Build {
		t.Errorf("the package says %+v, the program %+v", p, details)
	}
	if !packaged.Migrations["fyneDo"] {
		t.Error("the package does not say that the window keeps to Fyne's own goroutine")
	}
}
