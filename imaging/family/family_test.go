package family

import (
	"regexp"
	"strings"
	"testing"
	"unicode"
)

// Words that promise what no surgeon can, that frighten or that blame.
var forbidden = []string{
	"will be normal", "normal", "guarantee", "perfect", "promise", "cure", "completely", "always", "never",
	"certainly", "definitely", "for sure", "no risk", "safe", "risk-free", "as good as new", "like new", "beautiful",
	"don't worry", "no need to worry", "trust us", "best", "successful", "will fix", "will be fine", "easy", "simple",
	"invisible", "deformed", "deformity", "abnormal", "defect", "ugly", "suffer", "victim", "unfortunately",
}

func TestNoTextPromisesFrightensOrBlames(t *testing.T) {
	for _, p := range All() {
		text := strings.ToLower(p.Title + " " + p.Text)
		for _, word := range forbidden {
			if regexp.MustCompile(`\b` + regexp.QuoteMeta(word) + `\b`).MatchString(text) {
				t.Errorf("%s says %q", p.Key, word)
			}
		}
		if strings.Contains(text, "!") {
			t.Errorf("%s shouts", p.Key)
		}
	}
}

// Every finding says what parting the fingers leaves as it is, and what may
// follow or who will watch.
func TestEveryFindingSaysWhatStaysAndWhatMayFollow(t *testing.T) {
	stays := regexp.MustCompile(`does not|stays|can be narrow|are not parted`)
	follows := regexp.MustCompile(`operation|therapist|we will`)
	if len(Findings()) != 7 {
		t.Fatalf("%d findings, want 7", len(Findings()))
	}
	for _, p := range Findings() {
		if !stays.MatchString(p.Text) || !follows.MatchString(p.Text) {
			t.Errorf("%s: %s", p.Key, p.Text)
		}
	}
}

// Flesch-Kincaid grade, 0.39 words per sentence + 11.8 syllables per word -
// 15.59 (Kincaid JP et al. 1975, from memory); grade 6 is read at 11 to 12
// years. Syllables are counted as groups of vowels, a silent e left out.
func TestTheTextsCanBeReadAtTwelve(t *testing.T) {
	for _, p := range All() {
		words := strings.FieldsFunc(p.Text, func(r rune) bool { return !unicode.IsLetter(r) && r != '\'' })
		sentences := len(regexp.MustCompile(`[.?](\s|$)`).FindAllString(p.Text, -1))
		sum := 0
		for _, w := range words {
			sum += syllables(w)
		}
		grade := 0.39*float64(len(words))/float64(sentences) + 11.8*float64(sum)/float64(len(words)) - 15.59
		t.Logf("%s: %d words, grade %.1f", p.Key, len(words), grade)
		if grade > 6 {
			t.Errorf("%s is read at grade %.1f, want 6 or lower", p.Key, grade)
		}
	}
}

func syllables(word string) int {
	word = strings.ToLower(word)
	n := len(regexp.MustCompile(`[aeiouy]+`).FindAllString(word, -1))
	if strings.HasSuffix(word, "e") && !strings.HasSuffix(word, "le") && n > 1 {
		n--
	}
	if strings.HasSuffix(word, "ed") && !strings.HasSuffix(word, "ted") && !strings.HasSuffix(word, "ded") && n > 1 {
		n--
	}
	return max(n, 1)
}

func TestOnlyTickedFindingsAreToldInTheirOrder(t *testing.T) {
	got := Points([]string{Stiffness, Rotation, "unheard-of"}, nil)
	want := []string{Opening, Rotation, Stiffness, AfterOperation, Closing}
	if len(got) != len(want) {
		t.Fatalf("%d points, want %d", len(got), len(want))
	}
	for i, p := range got {
		if p.Key != want[i] {
			t.Errorf("point %d is %s, want %s", i, p.Key, want[i])
		}
	}
}

func TestOwnWordsTakeThePlaceOfTheDraftAndEmptyOnesLeaveItOut(t *testing.T) {
	got := Points([]string{Rotation}, map[string]string{Rotation: "Our own words.", Opening: "", Stiffness: "Not ticked."})
	if got[0].Key != Rotation || got[0].Text != "Our own words." {
		t.Errorf("told first: %+v", got[0])
	}
	if again, _ := Default(Rotation); again.Text == "Our own words." {
		t.Error("the default text has changed")
	}
}

func TestEveryKeyIsThereOnceWithATitle(t *testing.T) {
	seen := map[string]bool{}
	for _, p := range All() {
		if seen[p.Key] || p.Key == "" || p.Title == "" || p.Text == "" {
			t.Errorf("%+v", p)
		}
		seen[p.Key] = true
	}
	if _, ok := Default("unheard-of"); ok {
		t.Error("a key that is not known has a point")
	}
}
