package readings

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"flag"
	"image"
	"image/color"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/imaging/casebook"
	"ogive/imaging/marksfile"
	"ogive/imaging/measure"
	"ogive/imaging/photo"
)

var update = flag.Bool("update", false, "write the figures of this version anew")

// painted is a photograph of one web that is a semicircle of radius 50 pixels
// between two straight borders, skin on a green drape; shade tells one from
// another.
func painted(t *testing.T, shade uint8) []byte {
	t.Helper()
	img := image.NewRGBA(image.Rect(0, 0, 400, 440))
	for y := range 440 {
		for x := range 400 {
			grain := uint8((x*7 + y*13) % 5)
			c := color.RGBA{215 + grain, 165 + grain, 140 + shade, 255}
			if dx := math.Abs(float64(x) - 199.5); y < 200 && dx < 50 || y >= 200 && math.Hypot(dx, float64(y)-199.5) < 50 {
				c = color.RGBA{40 + grain, 110 + grain, 90, 255}
			}
			img.SetRGBA(x, y, c)
		}
	}
	var out bytes.Buffer
	if err := png.Encode(&out, img); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

const marks = `{"ogive": 1, "photograph": "photo.png", "hand": "right", "view": "dorsal", "click_sd_px": 1,
 "scale": {"ruler": [[100, 430], [300, 430]], "length_mm": 20},
 "joints": {"middle": {"mcp": [120, 400], "pip": [120, 100], "tip": [125, 4]}, "ring": {"mcp": [280, 400], "pip": [280, 100]}},
 "webs": [{"web": 3, "seeds": [[150, 120], [200, 250], [250, 120]]}]}`

func parsed(t *testing.T, text string) marksfile.File {
	t.Helper()
	f, err := marksfile.Parse([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func settings(t *testing.T) measure.Settings {
	t.Helper()
	s, err := measure.Defaults()
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// marked is a casebook with some photographs of a hand, all marked alike.
func marked(t *testing.T, photographs int) (book *casebook.Casebook, caseID int64, ids []int64) {
	t.Helper()
	book, err := casebook.Open(filepath.Join(t.TempDir(), "book"))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := book.Close(); err != nil {
			t.Error(err)
		}
	})
	if caseID, err = book.AddCase(casebook.Case{Code: "S-1", Hand: casebook.RightHand}); err != nil {
		t.Fatal(err)
	}
	for i := range photographs {
		path := filepath.Join(t.TempDir(), "a.png")
		if err := os.WriteFile(path, painted(t, uint8(i)), 0o666); err != nil {
			t.Fatal(err)
		}
		r, err := book.Import(t.Context(), caseID, []casebook.Item{{Path: path, Hand: hand.Right, View: hand.Dorsal, Date: "2024-05-01"}}, nil)
		if err != nil || r[0].Err != nil {
			t.Fatal(err, r)
		}
		ids = append(ids, r[0].Photograph)
		if err := book.SaveMarks(r[0].Photograph, "AB", parsed(t, marks)); err != nil {
			t.Fatal(err)
		}
	}
	return book, caseID, ids
}

func in(t *testing.T, book *casebook.Casebook, with measure.Settings) *Book {
	t.Helper()
	b, err := In(book, with)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// withoutPhotographs takes the photographs away, so that nothing can be computed.
func withoutPhotographs(t *testing.T, book *casebook.Casebook) {
	t.Helper()
	if err := os.Rename(filepath.Join(book.Folder(), "photographs"), filepath.Join(book.Folder(), "away")); err != nil {
		t.Fatal(err)
	}
}

func TestAReadingIsKeptAndIsWhatItsMarksComeToAgain(t *testing.T) {
	book, _, ids := marked(t, 1)
	b := in(t, book, settings(t))
	first, err := b.Of(ids[0], "AB")
	if err != nil {
		t.Fatal(err)
	}
	if w, ok := first.Web(hand.ThirdWeb); !ok || math.Abs(float64(w.Index.Value)-0.5) > 0.01 || len(w.Edge)+len(w.Curve) > 0 || math.Abs(float64(first.Phalanx[hand.ThirdWeb])-30) > 0.5 || len(first.Bends) != 1 {
		t.Errorf("%+v", first)
	}
	withoutPhotographs(t, book)
	kept, err := b.Of(ids[0], "ab")
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(first, kept); diff != "" {
		t.Errorf("what is kept differs: %s", diff)
	}
}

func TestAReadingIsForgottenWhenItsMarksOrTheWayOfReadingChange(t *testing.T) {
	book, _, ids := marked(t, 1)
	with := settings(t)
	if _, err := in(t, book, with).Of(ids[0], "AB"); err != nil {
		t.Fatal(err)
	}
	other := with
	other.Tilt = plane.Degrees(5)
	wider := settings(t)
	wider.Norms.Span.Least *= 2
	if err := book.SaveMarks(ids[0], "CD", parsed(t, marks)); err != nil { // another's marks change nothing
		t.Fatal(err)
	}
	withoutPhotographs(t, book)
	if _, err := in(t, book, with).Of(ids[0], "AB"); err != nil {
		t.Errorf("with nothing changed: %v", err)
	}
	for name, s := range map[string]measure.Settings{"another tilt": other, "other normal values": wider} {
		if _, err := in(t, book, s).Of(ids[0], "AB"); err == nil {
			t.Errorf("%s: the old reading is given", name)
		}
	}
	if err := book.SaveMarks(ids[0], "AB", parsed(t, strings.Replace(marks, "[120, 400]", "[121, 400]", 1))); err != nil {
		t.Fatal(err)
	}
	if _, err := in(t, book, with).Of(ids[0], "AB"); err == nil {
		t.Error("the reading of other marks is given")
	}
}

func TestAWindowsReadingIsKeptOnlyForTheMarksThatAreSaved(t *testing.T) {
	book, _, ids := marked(t, 1)
	b := in(t, book, settings(t))
	p, err := book.Photograph(ids[0])
	if err != nil {
		t.Fatal(err)
	}
	picture, err := photo.Open(book.Path(p))
	if err != nil {
		t.Fatal(err)
	}
	withoutPhotographs(t, book)
	f := parsed(t, marks)
	r, err := measure.Subject{Marks: f, Photograph: picture}.Measure(settings(t))
	if err != nil {
		t.Fatal(err)
	}
	if err := b.Keep(ids[0], "AB", parsed(t, strings.Replace(marks, "[120, 400]", "[121, 400]", 1)), r); err != nil {
		t.Fatal(err)
	}
	if _, err := b.Of(ids[0], "AB"); err == nil {
		t.Error("a reading of marks that were not saved is kept")
	}
	if err := b.Keep(ids[0], "AB", f, r); err != nil {
		t.Fatal(err)
	}
	if k, err := b.Of(ids[0], "AB"); err != nil || len(k.Reading.Webs) != 1 {
		t.Errorf("%+v %v", k, err)
	}
}

func TestAllAreReadAndWhatCantBeStopsNoOther(t *testing.T) {
	book, caseID, ids := marked(t, 3)
	p, err := book.Photograph(ids[1])
	if err != nil {
		t.Fatal(err)
	}
	if err := os.Remove(book.Path(p)); err != nil {
		t.Fatal(err)
	}
	if err := book.SaveMarks(ids[2], "AB", parsed(t, strings.Replace(marks, `"scale": {"ruler": [[100, 430], [300, 430]], "length_mm": 20},`, "", 1))); err != nil {
		t.Fatal(err)
	}
	b := in(t, book, settings(t))
	computed := 0
	items, err := b.All(t.Context(), func(done, all int) { computed = all })
	if err != nil || len(items) != 3 || computed != 3 {
		t.Fatalf("%+v %v", items, err)
	}
	if items[0].Err != nil || len(items[0].Kept.Reading.Webs) != 1 || items[0].Case != caseID ||
		items[1].Err == nil || items[2].Err != nil || !strings.Contains(items[2].Kept.Lacking, "scale") {
		t.Errorf("%+v", items)
	}
	computed = 0
	again, err := b.Case(t.Context(), caseID, func(done, all int) { computed = all })
	if err != nil || computed != 1 || !cmp.Equal(items[0], again[0]) {
		t.Errorf("%d computed again, %v", computed, err)
	}
	stopped, cancel := context.WithCancel(t.Context())
	cancel()
	if _, err := b.All(stopped, nil); !errors.Is(err, context.Canceled) {
		t.Errorf("when told to stop: %v", err)
	}
}

func TestASecondWindowReadsWhatIsNotKeptAndWritesNothing(t *testing.T) {
	book, _, ids := marked(t, 1)
	second, err := casebook.Open(book.Folder())
	if err != nil {
		t.Fatal(err)
	}
	defer func() {
		if err := second.Close(); err != nil {
			t.Error(err)
		}
	}()
	b := in(t, second, settings(t))
	for range 2 {
		computed := 0
		items, err := b.All(t.Context(), func(done, all int) { computed = done })
		if err != nil || len(items) != 1 || items[0].Err != nil || len(items[0].Kept.Reading.Webs) != 1 || computed != 1 {
			t.Errorf("%+v %v", items, err)
		}
	}
	if k, err := b.Of(ids[0], "AB"); err != nil || len(k.Reading.Webs) != 1 {
		t.Errorf("%+v %v", k, err)
	}
}

// The figures of one photograph are written down. When they change, what is kept
// in casebooks is out of date, and Version must be raised.
func TestTheVersionIsRaisedWhenFiguresChange(t *testing.T) {
	picture, err := photo.Decode(painted(t, 0))
	if err != nil {
		t.Fatal(err)
	}
	r, err := measure.Subject{Marks: parsed(t, marks), Photograph: picture}.Measure(settings(t))
	if err != nil {
		t.Fatal(err)
	}
	type figures struct {
		Version int
		Figures map[string]string
	}
	now := figures{Version, flat(t, Of(r))}
	path := filepath.Join("testdata", "figures.json")
	var then figures
	if data, err := os.ReadFile(path); err == nil {
		if err := json.Unmarshal(data, &then); err != nil {
			t.Fatal(err)
		}
	}
	if *update && (then.Version != Version || cmp.Equal(then, now)) {
		data, err := json.MarshalIndent(now, "", " ")
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, append(data, '\n'), 0o666); err != nil {
			t.Fatal(err)
		}
		then = now
	}
	if diff := cmp.Diff(then, now); diff != "" {
		t.Errorf("the figures have changed since version %d: raise Version, then run go test ./imaging/casebook/readings -update\n%s", then.Version, diff)
	}
}

// flat is every number of a reading by its path, to three decimals; words are left
// out, they may be put better without a figure changing.
func flat(t *testing.T, k Kept) map[string]string {
	t.Helper()
	text, err := encode(k)
	if err != nil {
		t.Fatal(err)
	}
	var tree any
	if err := json.Unmarshal([]byte(text), &tree); err != nil {
		t.Fatal(err)
	}
	out := map[string]string{}
	var walk func(path string, v any)
	walk = func(path string, v any) {
		switch v := v.(type) {
		case map[string]any:
			for name, x := range v {
				walk(path+"."+name, x)
			}
		case []any:
			for i, x := range v {
				walk(path+"["+strconv.Itoa(i)+"]", x)
			}
		case float64:
			out[path] = strconv.FormatFloat(math.Round(v*1000)/1000+0, 'f', 3, 64)
		}
	}
	walk("", tree)
	return out
}
