package language

import (
	"bytes"
	"encoding/json"
	"flag"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/reading"
	"ogive/imaging/wording"
	"ogive/ui/marking"
)

const english = "../../assets/translation/en.json"

var update = flag.Bool("update", false, "write the English translation anew from the sources")

func TestEveryEnglishSentenceOfTheWindowIsInTheTranslation(t *testing.T) {
	inSources := sentences(t)
	if *update {
		write(t, inSources)
	}
	data, err := os.ReadFile(english)
	if err != nil {
		t.Fatal(err)
	}
	var translated map[string]string
	if err := json.Unmarshal(data, &translated); err != nil {
		t.Fatalf("%s is no translation file: %v", english, err)
	}
	for s, where := range inSources {
		if translated[s] == "" {
			t.Errorf("%s says %q, which %s lacks (go test ./ui/language -update writes it)", where, s, english)
		}
	}
	for s := range translated {
		if _, used := inSources[s]; !used {
			t.Errorf("%s translates %q, which no source says", english, s)
		}
	}
	if len(inSources) < 20 {
		t.Errorf("only %d sentences were found in the sources", len(inSources))
	}
}

func TestTheTranslationsCanBeLoaded(t *testing.T) {
	if err := Load(); err != nil {
		t.Fatal(err)
	}
	if got := lang.L("Undo {{.Gesture}}", map[string]any{"Gesture": "move ring PIP"}); got != "Undo move ring PIP" {
		t.Errorf("a sentence with a gap reads %q", got)
	}
}

// A language in which everything is in capitals: what still is small was not let
// through.
func TestTheWordsOfImagingComeInTheUsersLanguage(t *testing.T) {
	deep := norms.Verdict{Figure: "index", Finding: "too deep", Against: "published values", Limit: 0.45}
	speak(t, inCapitals)
	defer func() {
		speak(t, func(s string) string { return s })
		if got := wording.VerdictOf(deep); got != "index: too deep? (doubtful)" {
			t.Errorf("in English a verdict reads %q", got)
		}
	}()
	for _, got := range []string{wording.VerdictOf(deep), wording.Limit(deep), wording.WebName(hand.ThirdWeb), wording.Term(wording.CrownAngle),
		wording.JointOf(hand.Ring, hand.PIP, hand.Dorsal), wording.Photograph(hand.Left, hand.WebView), wording.Shape(reading.Web{Shape: arch.Gothic}),
		marking.Spot{Kind: marking.SeedPoint, Web: hand.ThirdWeb}.Name(hand.Dorsal)} {
		if got != strings.ToUpper(got) {
			t.Errorf("%q stays English", got)
		}
	}
}

// speak makes English what in makes of every sentence.
func speak(t *testing.T, in func(string) string) {
	t.Helper()
	if err := Load(); err != nil {
		t.Fatal(err)
	}
	all := map[string]string{}
	for s := range sentences(t) {
		all[s] = in(s)
	}
	data, err := json.Marshal(all)
	if err != nil {
		t.Fatal(err)
	}
	if err := lang.AddTranslations(fyne.NewStaticResource("en.json", data)); err != nil {
		t.Fatal(err)
	}
}

// inCapitals leaves the gaps as they are.
func inCapitals(s string) string {
	parts := strings.Split(s, "{{")
	for i, part := range parts {
		gap, rest, ok := strings.Cut(part, "}}")
		if !ok {
			parts[i] = strings.ToUpper(part)
			continue
		}
		parts[i] = gap + "}}" + strings.ToUpper(rest)
	}
	return strings.Join(parts, "{{")
}

// sentences are all keys of lang.L in ui and all that package wording says, each
// with a place where it is said.
func sentences(t *testing.T) map[string]string {
	t.Helper()
	found := map[string]string{}
	for _, term := range wording.Terms() {
		found[term] = "wording.Terms"
	}
	collect(t, "..", found, translates)
	collect(t, "../../imaging/wording", found, says)
	return found
}

func collect(t *testing.T, folder string, found map[string]string, translates func(ast.Expr) bool) {
	t.Helper()
	files := token.NewFileSet()
	err := filepath.WalkDir(folder, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") || filepath.Base(path) == "language.go" {
			return err
		}
		file, err := parser.ParseFile(files, path, nil, 0)
		if err != nil {
			return err
		}
		ast.Inspect(file, func(n ast.Node) bool {
			call, ok := n.(*ast.CallExpr)
			if !ok || !translates(call.Fun) {
				return true
			}
			where := files.Position(call.Pos()).String()
			s, ok := literal(call.Args[0])
			if word, variable := call.Args[0].(*ast.Ident); variable && word.Name == "word" && folder != ".." {
				return true // one of wording.Terms
			}
			if !ok {
				t.Errorf("%s translates what is no literal, so that nobody can collect it", where)
				return true
			}
			found[s] = where
			return true
		})
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}

// says reports whether package wording says something there.
func says(fun ast.Expr) bool {
	f, ok := fun.(*ast.Ident)
	return ok && f.Name == "say"
}

func translates(fun ast.Expr) bool {
	s, ok := fun.(*ast.SelectorExpr)
	if !ok {
		return false
	}
	room, ok := s.X.(*ast.Ident)
	return ok && room.Name == "lang" && (s.Sel.Name == "L" || s.Sel.Name == "Localize")
}

// literal is the text of a string literal, or of several joined by +.
func literal(e ast.Expr) (string, bool) {
	switch e := e.(type) {
	case *ast.BasicLit:
		s, err := strconv.Unquote(e.Value)
		return s, err == nil && e.Kind == token.STRING
	case *ast.BinaryExpr:
		left, ok := literal(e.X)
		right, also := literal(e.Y)
		return left + right, ok && also && e.Op == token.ADD
	case *ast.ParenExpr:
		return literal(e.X)
	}
	return "", false
}

func write(t *testing.T, inSources map[string]string) {
	t.Helper()
	var keys []string
	for s := range inSources {
		keys = append(keys, s)
	}
	slices.Sort(keys)
	var out bytes.Buffer
	out.WriteString("{\n")
	for i, s := range keys {
		out.WriteString("  " + quoted(t, s) + ": " + quoted(t, s))
		if i < len(keys)-1 {
			out.WriteByte(',')
		}
		out.WriteByte('\n')
	}
	out.WriteString("}\n")
	if err := os.WriteFile(english, out.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
}

func quoted(t *testing.T, s string) string {
	t.Helper()
	var out bytes.Buffer
	enc := json.NewEncoder(&out)
	enc.SetEscapeHTML(false)
	if err := enc.Encode(s); err != nil {
		t.Fatal(err)
	}
	return strings.TrimSpace(out.String())
}

func BenchmarkVerdict(b *testing.B) {
	if err := Load(); err != nil {
		b.Fatal(err)
	}
	deep := norms.Verdict{Figure: "index", Finding: "too deep", Against: "published values", Limit: 0.45}
	for b.Loop() {
		wording.VerdictOf(deep)
	}
}
