package crowd

import (
	"flag"
	"fmt"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"ogive/imaging/casebook"
)

var largest = flag.Int("photographs", 200, "how many photographs the largest casebook of the measurement holds; the targets are for 10000")

// median is the middle of five times that an action takes.
func median(t *testing.T, action func() error) time.Duration {
	t.Helper()
	var all []time.Duration
	for range 5 {
		from := time.Now()
		if err := action(); err != nil {
			t.Fatal(err)
		}
		all = append(all, time.Since(from))
	}
	slices.Sort(all)
	return all[2]
}

func TestAListOfManyCasesOpensAndIsSearchedAtOnce(t *testing.T) {
	for _, n := range []int{*largest / 10, *largest} {
		folder := filepath.Join(t.TempDir(), "book")
		from := time.Now()
		if err := Fill(folder, n/10, n); err != nil {
			t.Fatal(err)
		}
		filling := time.Since(from)
		opening := median(t, func() error {
			book, err := casebook.Open(folder)
			if err != nil {
				return err
			}
			all, err := book.Cases("")
			if err == nil && len(all) != n/10 {
				err = fmt.Errorf("%d cases, want %d", len(all), n/10)
			}
			if err != nil {
				return err
			}
			return book.Close()
		})
		book, err := casebook.Open(folder)
		if err != nil {
			t.Fatal(err)
		}
		searching := median(t, func() error { _, err := book.Cases("right phal"); return err })
		strip := median(t, func() error {
			photos, err := book.Photographs(1)
			for _, p := range photos {
				if _, err := book.Thumbnail(p); err != nil {
					return err
				}
			}
			return err
		})
		if err := book.Close(); err != nil {
			t.Fatal(err)
		}
		t.Logf("%6d photographs, %4d cases: filled in %v, open to list %v (target 300 ms), search %v (target 50 ms), a case of 10 to thumbnails %v",
			n, n/10, filling.Round(time.Millisecond), opening, searching, strip)
		if opening > 300*time.Millisecond || searching > 50*time.Millisecond {
			t.Errorf("%d photographs: open %v, search %v", n, opening, searching)
		}
	}
}
