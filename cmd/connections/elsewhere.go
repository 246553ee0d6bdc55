//go:build !linux

package connections

import (
	"errors"
	"os/exec"
)

var errElsewhere = errors.New("programs are watched on Linux only; run this there")

func straceWorks() bool { return false }

// StartByStrace fails on this system.
func StartByStrace(*exec.Cmd) (*Watch, error) { return nil, errElsewhere }

func runByStrace(*exec.Cmd) (Seen, error, error) { return Seen{}, nil, errElsewhere }

// StartByProc fails on this system.
func StartByProc(*exec.Cmd) (*Watch, error) { return nil, errElsewhere }
