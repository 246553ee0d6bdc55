package example_test

import (
	"context"
	"errors"
	"math"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"ogive/geometry/followup"
	"ogive/geometry/hand"
	"ogive/geometry/scale"
	"ogive/imaging/casebook"
	"ogive/imaging/casebook/course"
	"ogive/imaging/casebook/example"
	"ogive/imaging/casebook/readings"
	"ogive/imaging/measure"
)

// made is the example, made once for all tests.
var made = sync.OnceValues(func() (string, error) {
	folder, err := os.MkdirTemp("", "example")
	if err != nil {
		return "", err
	}
	folder = filepath.Join(folder, "casebook")
	return folder, example.Make(context.Background(), folder, nil)
})

func TestMain(m *testing.M) {
	code := m.Run()
	if folder, err := made(); err == nil {
		_ = os.RemoveAll(filepath.Dir(folder))
	}
	os.Exit(code)
}

// followed is the example's case, opened as the program opens it.
func followed(t *testing.T) course.Course {
	t.Helper()
	folder, err := made()
	if err != nil {
		t.Fatal(err)
	}
	book, err := casebook.Open(folder)
	if err != nil {
		t.Fatal(err)
	}
	defer book.Close()
	cases, err := book.Cases("")
	if err != nil || len(cases) != 1 || cases[0].Code != example.Code {
		t.Fatalf("the example holds the cases %v (%v)", cases, err)
	}
	settings, err := measure.Defaults()
	if err != nil {
		t.Fatal(err)
	}
	read, err := readings.In(book, settings)
	if err != nil {
		t.Fatal(err)
	}
	c, err := course.Of(context.Background(), book, read, cases[0].ID)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func TestOneWebOfTheExampleHasCreptForCertainAndTheOtherNot(t *testing.T) {
	c := followed(t)
	if len(c.Webs) != 2 || len(c.Unread) != 0 {
		t.Fatalf("%d webs are followed, %v could not be read", len(c.Webs), c.Unread)
	}
	for _, w := range c.Webs {
		if p := w.Series.Plan; p == nil || math.Abs(float64(*p)-0.46) > 0.01 {
			t.Errorf("the %v was planned at %v, want 0.46", w.Web, p)
		}
		last, ok := w.Series.Latest()
		if !ok || len(w.Series.Points) != 5 || len(w.Series.Band) != 5 {
			t.Fatalf("the %v has %d points and %d of the other hand", w.Web, len(w.Series.Points), len(w.Series.Band))
		}
		switch w.Web {
		case hand.FourthWeb:
			if last.Grading.Movement != followup.Advanced || last.Grading.Grade != 3 || !last.Grading.Certain {
				t.Errorf("the creeping web is graded %+v by %v", last.Grading, *last.Creep)
			}
			// The truth: from 0.47 to 0.72, 0.25 of the 0.53 that were left.
			if !last.Creep.Holds(0.25 / 0.53) {
				t.Errorf("creep %v does not hold the truth 0.472", *last.Creep)
			}
		case hand.SecondWeb:
			for _, p := range w.Series.Points {
				if p.Grading.Movement == followup.Advanced || p.Grading.Movement == followup.Deepened {
					t.Errorf("the web that stays is said to have moved by %s: %v", p.Day, *p.Creep)
				}
			}
			if last.Feel != followup.Soft || last.Grading.Grade != 0 {
				t.Errorf("the web that stays is graded %+v", last.Grading)
			}
		default:
			t.Errorf("the %v was not operated on", w.Web)
		}
	}
}

func TestOneFollowUpOfTheExampleWasReadByAnotherScale(t *testing.T) {
	for _, w := range followed(t).Webs {
		var marked []followup.Day
		for _, p := range w.Series.Points {
			if len(p.Differs) == 1 && p.Differs[0] == followup.OtherScale && p.Method == scale.ByCard {
				marked = append(marked, p.Day)
			} else if len(p.Differs) > 0 {
				t.Errorf("%v, %v differs by %v", w.Web, p.Day, p.Differs)
			}
		}
		if len(marked) != 1 {
			t.Errorf("%v: another scale on %v", w.Web, marked)
		}
	}
}

func TestWhatWasFoundInTheExampleCanBeRead(t *testing.T) {
	c := followed(t)
	creeping := c.Webs[1]
	last := creeping.Series.Points[4]
	said := strings.Join(c.Found(creeping, last.Photograph), "\n")
	for _, want := range []string{"How the web feels: Thickened", "Vancouver Scar Scale: 7 of 13", "Deviation of the digit, little finger: None", "spreading the fingers"} {
		if !strings.Contains(said, want) {
			t.Errorf("at the last sitting %q is not among what was found:\n%s", want, said)
		}
	}
	if found := c.Found(creeping, creeping.Series.Points[0].Photograph); len(found) != 0 {
		t.Errorf("before the operation was found: %v", found)
	}
}

func TestAnExampleThatIsThereIsLeftAsItIs(t *testing.T) {
	folder, err := made()
	if err != nil {
		t.Fatal(err)
	}
	before, err := os.Stat(filepath.Join(folder, "casebook.sqlite"))
	if err != nil {
		t.Fatal(err)
	}
	if err := example.Make(context.Background(), folder, func(int, int) { t.Error("it is made again") }); err != nil {
		t.Fatal(err)
	}
	after, err := os.Stat(filepath.Join(folder, "casebook.sqlite"))
	if err != nil || !os.SameFile(before, after) || before.ModTime() != after.ModTime() {
		t.Error("the casebook that was there has changed")
	}
}

func TestBreakingOffLeavesNothing(t *testing.T) {
	parent := t.TempDir()
	ctx, stop := context.WithCancel(context.Background())
	err := example.Make(ctx, filepath.Join(parent, "example"), func(int, int) { stop() })
	if !errors.Is(err, context.Canceled) {
		t.Errorf("broken off it says: %v", err)
	}
	left, err := os.ReadDir(parent)
	if err != nil || len(left) != 0 {
		t.Errorf("left behind are %v (%v)", left, err)
	}
}

func TestAFolderOfOtherThingsIsNotTouched(t *testing.T) {
	folder := t.TempDir()
	if err := os.WriteFile(filepath.Join(folder, "letter.txt"), []byte("x"), 0o600); err != nil {
		t.Fatal(err)
	}
	err := example.Make(context.Background(), folder, nil)
	if err == nil || !strings.Contains(err.Error(), "choose another folder") {
		t.Errorf("it says: %v", err)
	}
	if left, err := os.ReadDir(folder); err != nil || len(left) != 1 {
		t.Errorf("the folder holds %v (%v)", left, err)
	}
}
