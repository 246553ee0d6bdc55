package proof

import (
	"os"
	"testing"
)

func TestRun(t *testing.T) {
	r, err := Run(Plan{Hands: 40, WebViews: 10, ClickSD: 2, Seed: 1}, nil)
	if err != nil {
		t.Fatal(err)
	}
	r.WriteTo(os.Stdout)
}
