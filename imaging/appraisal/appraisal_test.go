package appraisal

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"ogive/geometry/hand"
)

var third = Web(hand.Left, hand.ThirdWeb)

func thorough() Appraisal {
	var a Appraisal
	for _, f := range Vocabulary {
		for _, p := range f.Places(hand.Left) {
			a.Set(Given{Finding: f.Key, Place: p, Choice: f.Choices[len(f.Choices)-1].Key, Note: "a note"})
		}
	}
	a.Remarks = "splint at night\nfor six weeks"
	return a
}

func TestEveryFindingComesBackAsItWasGiven(t *testing.T) {
	a := thorough()
	text, err := a.Encode()
	if err != nil {
		t.Fatal(err)
	}
	back, err := Parse(text)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(a, back); diff != "" {
		t.Error(diff)
	}
	if want := 9*len(hand.Webs) + 4*len(hand.Digits) + 1 + 1; len(back.Findings) != want {
		t.Errorf("%d findings, want %d", len(back.Findings), want)
	}
}

// Sullivan 1990: vascularity 0-3, pigmentation 0-2, pliability 0-5, height 0-3.
func TestTheScarScaleIsTotalledOnlyIfAllItemsAreGiven(t *testing.T) {
	var a Appraisal
	for i, item := range []struct {
		key    Key
		choice string
	}{{Vascularity, "red"}, {Pigmentation, "less"}, {Pliability, "firm"}, {Height, "flat"}} {
		if n, all := a.Total(third); all {
			t.Errorf("with %d of 4 items the total is %d", i, n)
		}
		a.Set(Given{Finding: item.key, Place: third, Choice: item.choice})
	}
	if n, all := a.Total(third); n != 2+1+3+0 || !all {
		t.Errorf("total %d, %v", n, all)
	}
	if _, all := a.Total(Web(hand.Right, hand.ThirdWeb)); all {
		t.Error("the other hand has a total")
	}
	if n, all := thorough().Total(third); n != WorstScar || !all {
		t.Errorf("the worst scar totals %d", n)
	}
	a.Set(Given{Finding: Height, Place: third, Note: "can't be judged under the dressing"})
	if _, all := a.Total(third); all {
		t.Error("a note counts as a score")
	}
}

func TestTheCreepGradesAreZeroToFour(t *testing.T) {
	f, _ := Find(Creep) // asserted below by its choices
	for i, c := range f.Choices {
		if !c.Scored || c.Score != i {
			t.Errorf("%+v at place %d", c, i)
		}
	}
	if len(f.Choices) != 5 || !strings.Contains(f.Source, "from memory") || f.Beside != MeasuredCreep {
		t.Errorf("%+v", f)
	}
}

func TestEveryFindingCanBeShownAndHasItsSource(t *testing.T) {
	seen := map[Key]bool{}
	for _, f := range Vocabulary {
		if seen[f.Key] || f.Title == "" || f.Source == "" || len(f.Choices) < 2 || len(f.Places(hand.Left)) == 0 {
			t.Errorf("%+v", f)
		}
		seen[f.Key] = true
		keys := map[string]bool{}
		for _, c := range f.Choices {
			if c.Key == "" || c.Words == "" || keys[c.Key] || c.Scored != f.Scored() {
				t.Errorf("%s: choice %+v", f.Key, c)
			}
			keys[c.Key] = true
		}
	}
}

func TestTakingBackAndSayingAnewLeaveOneFinding(t *testing.T) {
	var a Appraisal
	a.Set(Given{Finding: Feel, Place: third, Choice: "soft"})
	a.Set(Given{Finding: Feel, Place: third, Choice: "thickened"})
	if g, ok := a.At(Feel, third); !ok || g.Choice != "thickened" || len(a.Findings) != 1 {
		t.Errorf("%+v", a)
	}
	a.Set(Given{Finding: Feel, Place: third})
	if !a.Empty() {
		t.Errorf("%+v", a)
	}
}

var refusals = map[string]string{
	`{`:                                     "no JSON",
	`{}`:                                    "ogive_appraisal: is missing",
	`{"ogive_appraisal": 2}`:                "later program",
	`{"ogive_appraisal": 0}`:                "is 0; give 1",
	`{"ogive_appraisal": "1"}`:              "ogive_appraisal: holds a string",
	`{"ogive_appraisal": 1, "finding": []}`: "unknown field",
	`{"ogive_appraisal": 1, "findings": [{"finding": "smell", "choice": "x"}]}`:                                                                 `findings[0].finding: "smell" is unknown; give`,
	`{"ogive_appraisal": 1, "findings": [{"finding": "feel", "choice": "soft"}]}`:                                                               "findings[0].hand: the finding is said of a web; give",
	`{"ogive_appraisal": 1, "findings": [{"finding": "feel", "hand": "left", "choice": "soft"}]}`:                                               "findings[0].web: the finding is said of a web; give",
	`{"ogive_appraisal": 1, "findings": [{"finding": "feel", "hand": "middle", "web": 3, "choice": "soft"}]}`:                                   "findings[0].hand: ",
	`{"ogive_appraisal": 1, "findings": [{"finding": "feel", "hand": "left", "web": 3, "digit": "ring", "choice": "soft"}]}`:                    "findings[0].digit: the finding is said of a web; leave it out",
	`{"ogive_appraisal": 1, "findings": [{"finding": "nail_folds", "hand": "left", "web": 3, "digit": "ring", "choice": "natural"}]}`:           "findings[0].web: ",
	`{"ogive_appraisal": 1, "findings": [{"finding": "donor_site", "hand": "left", "choice": "fine"}]}`:                                         "findings[0].hand: the finding is said of a patient; leave it out",
	`{"ogive_appraisal": 1, "findings": [{"finding": "feel", "hand": "left", "web": 5, "choice": "soft"}]}`:                                     "findings[0].web: ",
	`{"ogive_appraisal": 1, "findings": [{"finding": "feel", "hand": "left", "web": 3, "choice": "hard"}]}`:                                     `findings[0].choice: "hard" is no choice of feel; give one such as "soft"`,
	`{"ogive_appraisal": 1, "findings": [{"finding": "feel", "hand": "left", "web": 3}]}`:                                                       "neither choice nor note",
	`{"ogive_appraisal": 1, "findings": [{"finding": "feel", "hand": "left", "web": 3, "note": "` + strings.Repeat("x", longestNote+1) + `"}]}`: "findings[0].note: ",
	`{"ogive_appraisal": 1, "findings": [{"finding": "donor_site", "choice": "fine"}, {"finding": "donor_site", "choice": "visible"}]}`:         "findings[1]: says donor_site of the same place a second time",
	`{"ogive_appraisal": 1, "remarks": "` + strings.Repeat("x", longestRemarks+1) + `"}`:                                                        "remarks: ",
}

func TestWhatIsWrongIsRefusedWithItsFieldAndMend(t *testing.T) {
	for text, want := range refusals {
		if _, err := Parse([]byte(text)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%.120s: %v, want %q", text, err, want)
		}
	}
	if _, err := (Appraisal{Findings: []Given{{Finding: "smell"}}}).Encode(); err == nil {
		t.Error("what can't be read again is written")
	}
}

// Whatever the text: it is refused in one line with a mend, or comes back the
// same from what is written.
func FuzzParse(f *testing.F) {
	for text := range refusals {
		f.Add([]byte(text))
	}
	text, err := thorough().Encode()
	if err != nil {
		f.Fatal(err)
	}
	f.Add(text)
	f.Fuzz(func(t *testing.T, data []byte) {
		a, err := Parse(data)
		if err != nil {
			if strings.ContainsAny(err.Error(), "\n\r") || !strings.Contains(err.Error(), ";") {
				t.Errorf("%q is refused with %q", data, err)
			}
			return
		}
		written, err := a.Encode()
		if err != nil {
			t.Fatalf("%q is read but not written: %v", data, err)
		}
		back, err := Parse(written)
		if err != nil {
			t.Fatalf("%s is written but not read: %v", written, err)
		}
		if diff := cmp.Diff(a, back); diff != "" {
			t.Error(diff)
		}
	})
}
