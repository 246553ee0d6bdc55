package observations

import (
	"slices"
	"strings"
	"testing"
)

func read(t *testing.T, text string) []Observation {
	t.Helper()
	all, err := Read(strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	return all
}

func TestTwoObserversOfOneFigureAreComparedOnce(t *testing.T) {
	got := Compare(read(t, "target,observer,value\na,X,1\na,Y,2\nb,X,3\nb,Y,5\n"))
	if len(got) != 1 || got[0].Fault != nil || got[0].Within != "" || got[0].Table.Value(1, 1) != 5 {
		t.Errorf("%+v", got)
	}
}

func TestColumnsMayStandInAnyOrderAndSpreadsheetsMayAddAByteOrderMark(t *testing.T) {
	all := read(t, "\ufeffValue, Observer ,target\r\n0.5,X,\"a, left\"\r\n")
	if want := (Observation{Target: "a, left", Observer: "X", Value: 0.5}); all[0] != want {
		t.Errorf("%+v", all[0])
	}
}

func TestAnObserverWhoMeasuredTwiceIsComparedWithHerself(t *testing.T) {
	got := Compare(read(t, "target,observer,occasion,value\na,X,1,1\na,X,2,2\nb,X,1,3\nb,X,2,5\n"))
	if len(got) != 1 || got[0].Within != "X" || !slices.Equal(got[0].Table.Observers, []string{"1", "2"}) {
		t.Errorf("%+v", got)
	}
}

func TestSeveralObserversAreComparedOnTheFirstOccasionOfEach(t *testing.T) {
	got := Compare(read(t, "target,observer,occasion,value\na,X,1,1\na,X,2,9\nb,X,1,3\nb,X,2,9\na,Y,1,2\nb,Y,1,4\n"))
	if len(got) != 2 || got[0].Within != "" || got[0].Table.Value(0, 0) != 1 || got[1].Within != "X" {
		t.Errorf("%+v", got)
	}
}

func TestATargetThatNotAllMeasuredIsLeftOutAndNamed(t *testing.T) {
	c := Compare(read(t, "target,observer,value\na,X,1\na,Y,2\nb,X,3\nb,Y,5\nc,X,7\n"))[0]
	if c.Table.Targets() != 2 || !slices.Equal(c.LeftOut, []string{"c"}) {
		t.Errorf("%d targets, left out %v", c.Table.Targets(), c.LeftOut)
	}
}

func TestWhatCannotBeReadIsRefusedWithThePlaceAndTheMend(t *testing.T) {
	for text, says := range map[string]string{
		"":                                       "line 1: the file is empty",
		"target,observer\na,X":                   `no column "value"`,
		"target,observer,value":                  "line 2: there is no observation",
		"target,observer,value,value\na,X,1,1":   "stands twice",
		"target,observer,value\na,X,1\nb,X,half": `line 3, column value: "half" is no number`,
		"target,observer,value\na,X,NaN":         "is no number",
		"target,observer,value\na,,1":            "line 2, column observer: it is empty",
		"target,observer,value\na,X":             "line 2, it has 2 columns",
		"target,observer,value\na,X,1\na,X,2":    "X has two values of target a",
		"target,observer,value\na,X\"Y,1":        "save the table as plain CSV",
	} {
		if _, err := Read(strings.NewReader(text)); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q is refused with %v, not %q", text, err, says)
		}
	}
}

func FuzzRead(f *testing.F) {
	f.Add("target,observer,value\na,X,1\na,Y,2\n")
	f.Add("target,observer,value,figure,occasion\na,X,1,index,1\n")
	f.Fuzz(func(t *testing.T, text string) {
		all, err := Read(strings.NewReader(text))
		if err != nil {
			return
		}
		for _, c := range Compare(all) {
			if c.Fault == nil && c.Table.Targets() < 2 {
				t.Errorf("%q: a table of %d targets", text, c.Table.Targets())
			}
		}
	})
}
