package main

import (
	"os"
	"os/exec"
	"reflect"
	"strings"
	"testing"

	"ogive/cmd/connections"
)

const underWatch = "OGIVE_BATCH_WATCHED"

// Every command does its work under watch: all scripts, which run the program
// itself, and the demo. Not one network socket is asked for.
func TestNothingLeavesTheMachine(t *testing.T) {
	if os.Getenv(underWatch) != "" {
		return // it is this test that is watching
	}
	c := exec.Command(os.Args[0], "-test.run=^(TestScripts|TestTheDemo.*)$", "-test.v", "-test.count=1")
	c.Env = append(os.Environ(), underWatch+"=1")
	var said strings.Builder
	c.Stdout, c.Stderr = &said, &said
	seen, ended, err := connections.Run(c)
	if err != nil {
		t.Fatal(err)
	}
	if ended != nil {
		t.Fatalf("under watch the work fails: %v\n%s", ended, said.String())
	}
	if len(seen.Network) > 0 {
		t.Errorf("network sockets, seen by %s:\n%s", seen.By, strings.Join(seen.Network, "\n"))
	}
	for i := range reflect.TypeFor[commands]().NumField() {
		name := strings.ToLower(reflect.TypeFor[commands]().Field(i).Name)
		if !strings.Contains(said.String(), " ogive-batch "+name) && !strings.Contains(said.String(), "--- PASS: TestThe"+strings.ToUpper(name[:1])+name[1:]) {
			t.Errorf("ogive-batch %s was not run under watch; add a script for it", name)
		}
	}
	t.Logf("watched by %s", seen.By)
}
