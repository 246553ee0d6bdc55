package observed

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"ogive/geometry/hand"
	"ogive/imaging/agreementchart"
	"ogive/imaging/casebook"
	"ogive/imaging/marksfile"
	"ogive/imaging/measure"
	"ogive/imaging/observations"
)

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

// marks are those of the web: joints moved up by so much, seeds by so much, and
// the scale aside.
func marks(t *testing.T, joints, seeds, scale float64) marksfile.File {
	t.Helper()
	f, err := marksfile.Parse(fmt.Appendf(nil, `{"ogive": 1, "photograph": "photo.png", "hand": "right", "view": "dorsal", "click_sd_px": 1,
 "scale": {"ruler": [[%[3]v, 430], [%[4]v, 430]], "length_mm": 20},
 "joints": {"middle": {"mcp": [120, %[1]v], "pip": [120, %[2]v]}, "ring": {"mcp": [280, %[1]v], "pip": [280, %[2]v]}},
 "webs": [{"web": 3, "seeds": [[150, %[5]v], [200, %[6]v], [250, %[5]v]]}]}`,
		400+joints, 100+joints, 100+scale, 300+scale, 120+seeds, 250+seeds))
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// book is a casebook with some photographs of a hand, not marked yet.
type book struct {
	*casebook.Casebook
	folder string
	id     int64
	photos []int64
}

func open(t *testing.T, photographs int) *book {
	t.Helper()
	b := &book{folder: filepath.Join(t.TempDir(), "book")}
	b.again(t)
	t.Cleanup(func() {
		if err := b.Close(); err != nil {
			t.Error(err)
		}
	})
	id, err := b.AddCase(casebook.Case{Code: "S-1", Hand: casebook.RightHand})
	if err != nil {
		t.Fatal(err)
	}
	b.id = id
	for i := range photographs {
		path := filepath.Join(t.TempDir(), "a.png")
		if err := os.WriteFile(path, painted(t, uint8(i)), 0o666); err != nil {
			t.Fatal(err)
		}
		r, err := b.Import(t.Context(), id, []casebook.Item{{Path: path, Hand: hand.Right, View: hand.Dorsal, Date: "2024-05-01"}}, nil)
		if err != nil || r[0].Err != nil {
			t.Fatal(err, r)
		}
		b.photos = append(b.photos, r[0].Photograph)
	}
	return b
}

// again opens the casebook again: another piece of work begins.
func (b *book) again(t *testing.T) {
	t.Helper()
	if b.Casebook != nil {
		if err := b.Close(); err != nil {
			t.Fatal(err)
		}
	}
	var err error
	if b.Casebook, err = casebook.Open(b.folder); err != nil {
		t.Fatal(err)
	}
}

func (b *book) mark(t *testing.T, i int, who string, f marksfile.File) {
	t.Helper()
	if err := b.SaveMarks(b.photos[i], who, f); err != nil {
		t.Fatal(err)
	}
}

func (b *book) reader(t *testing.T) *Reader {
	t.Helper()
	s, err := measure.Defaults()
	if err != nil {
		t.Fatal(err)
	}
	r, err := In(b.Casebook, s)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func (b *book) read(t *testing.T) Found {
	t.Helper()
	f, err := b.reader(t).Read(t.Context(), 0, nil)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func of(all []observations.Observation, figure string) (out []string) {
	for _, o := range all {
		if o.Figure == figure {
			out = append(out, fmt.Sprintf("%s|%s|%s|%.2f", o.Target, o.Observer, o.Occasion, o.Value))
		}
	}
	return out
}

// The crown lies at y = 250 of a hand whose MCP joints were put at 400 and PIP
// joints at 100: an index of (400-250)/300. Joints put 3 pixels lower give
// (403-250)/300.
func TestWhatTwoObserversMarkedIsReadUnderTheCasesCode(t *testing.T) {
	b := open(t, 3)
	for i := range 2 {
		b.mark(t, i, "AB", marks(t, 0, 0, 0))
		b.mark(t, i, "CD", marks(t, 3, 1, 1))
	}
	b.mark(t, 2, "AB", marks(t, 0, 0, 0))
	var steps []int
	f, err := b.reader(t).Read(t.Context(), b.id, func(done, all int) { steps = append(steps, done, all) })
	if err != nil {
		t.Fatal(err)
	}
	got := of(f.Between, "dorsal web index")
	want := []string{
		"S-1 photograph 1, right hand, third web|AB||0.50", "S-1 photograph 1, right hand, third web|CD||0.51",
		"S-1 photograph 2, right hand, third web|AB||0.50", "S-1 photograph 2, right hand, third web|CD||0.51",
	}
	if !slices.Equal(got, want) {
		t.Errorf("observed are\n%s", strings.Join(got, "\n"))
	}
	if f.Photographs != 2 || len(f.Within) != 0 || len(f.Passed) != 0 || f.Shared != 0 {
		t.Errorf("%+v", f)
	}
	if !slices.Equal(steps, []int{1, 2, 2, 2}) {
		t.Errorf("progress goes %v", steps)
	}
	for _, figure := range []string{"dorsal depth (mm)", "span (mm)", "rise (mm)", "crown angle (°)"} {
		if n := len(of(f.Between, figure)); n != 4 {
			t.Errorf("%d values of %s are observed", n, figure)
		}
	}
	for _, o := range f.Between {
		if strings.Contains(o.Target, string(filepath.Separator)) {
			t.Errorf("%q names a file", o.Target)
		}
	}
	charts, lacking := agreementchart.Of(f.Between, "casebook")
	if len(charts) != 5 || len(lacking) != 0 || math.Abs(charts[0].Agreement().Pairs[0].Bias.Value+0.01) > 0.001 {
		t.Errorf("%d charts, lacking %v", len(charts), lacking)
	}
}

func TestAnObserverIsHeldAgainstHerselfOnlyWhereThePointsWerePlacedAnew(t *testing.T) {
	b := open(t, 3)
	for i := range 3 {
		b.mark(t, i, "AB", marks(t, 0, 0, 0))
	}
	b.again(t)
	b.mark(t, 0, "AB", marks(t, 3, 1, 1)) // placed anew
	b.mark(t, 1, "AB", marks(t, 3, 0, 1)) // the web was kept
	b.mark(t, 2, "AB", marks(t, 3, 1, 0)) // the scale was kept
	f := b.read(t)
	if got, want := of(f.Within, "dorsal web index"), []string{
		"S-1 photograph 1, right hand, third web|AB|1|0.50", "S-1 photograph 1, right hand, third web|AB|2|0.51",
		"S-1 photograph 3, right hand, third web|AB|1|0.50", "S-1 photograph 3, right hand, third web|AB|2|0.51",
	}; !slices.Equal(got, want) {
		t.Errorf("observed are\n%s", strings.Join(got, "\n"))
	}
	if got := of(f.Within, "span (mm)"); len(got) != 2 || !strings.HasPrefix(got[0], "S-1 photograph 1,") {
		t.Errorf("spans observed are\n%s", strings.Join(got, "\n"))
	}
	if f.Corrected != 2 || len(f.Between) != 0 || f.Photographs != 2 {
		t.Errorf("%d corrections on %d photographs, %d values between observers", f.Corrected, f.Photographs, len(f.Between))
	}
}

func TestACorrectionTakesThePlaceOfWhatItCorrects(t *testing.T) {
	b := open(t, 1)
	b.mark(t, 0, "AB", marks(t, 0, 0, 0))
	b.again(t)
	b.mark(t, 0, "AB", marks(t, 3, 0, 0))
	b.again(t)
	b.mark(t, 0, "AB", marks(t, -3, 2, 2))
	got := of(b.read(t).Within, "dorsal web index")
	if want := []string{"S-1 photograph 1, right hand, third web|AB|1|0.51", "S-1 photograph 1, right hand, third web|AB|2|0.49"}; !slices.Equal(got, want) {
		t.Errorf("observed are\n%s", strings.Join(got, "\n"))
	}
}

func TestWebsOfTheVerySamePointsAreCounted(t *testing.T) {
	b := open(t, 1)
	b.mark(t, 0, "AB", marks(t, 0, 0, 0))
	b.mark(t, 0, "CD", marks(t, 3, 0, 1))
	if f := b.read(t); f.Shared != 1 || len(f.Between) == 0 {
		t.Errorf("%d webs are shared, %d values", f.Shared, len(f.Between))
	}
}

func TestWhatCannotBeReadIsNamedAndTheRestIsRead(t *testing.T) {
	b := open(t, 3)
	for i := range 3 {
		b.mark(t, i, "AB", marks(t, 0, 0, 0))
		b.mark(t, i, "CD", marks(t, 3, 1, 1))
	}
	unfinished := marks(t, 3, 1, 1)
	unfinished.Reference = nil
	b.mark(t, 1, "CD", unfinished)
	p, err := b.Photograph(b.photos[2])
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(b.Path(p), []byte("no photograph"), 0o666); err != nil {
		t.Fatal(err)
	}
	f := b.read(t)
	said := strings.Join(f.Passed, "\n")
	if len(f.Passed) != 3 || !strings.Contains(said, "S-1 photograph 2, marked by CD: scale") || !strings.Contains(said, "S-1 photograph 3, marked by AB: its photograph") {
		t.Errorf("passed over are\n%s", said)
	}
	if f.Photographs != 1 || len(of(f.Between, "dorsal web index")) != 2 {
		t.Errorf("%d photographs are read", f.Photographs)
	}
}

func TestOlderRevisionsAreMeasuredOnce(t *testing.T) {
	b := open(t, 1)
	b.mark(t, 0, "AB", marks(t, 0, 0, 0))
	b.again(t)
	b.mark(t, 0, "AB", marks(t, 3, 1, 1))
	r := b.reader(t)
	first, err := r.Read(t.Context(), 0, nil)
	if err != nil {
		t.Fatal(err)
	}
	p, err := b.Photograph(b.photos[0])
	if err != nil {
		t.Fatal(err)
	}
	if err := os.Remove(b.Path(p)); err != nil {
		t.Fatal(err)
	}
	second, err := r.Read(t.Context(), 0, nil)
	if err != nil || len(second.Passed) != 0 || !slices.Equal(first.Within, second.Within) || len(first.Within) == 0 {
		t.Errorf("without the photograph %+v, %v", second, err)
	}
}

func TestTheWorkIsBrokenOffWhenAsked(t *testing.T) {
	b := open(t, 1)
	b.mark(t, 0, "AB", marks(t, 0, 0, 0))
	b.mark(t, 0, "CD", marks(t, 3, 1, 1))
	ctx, stop := context.WithCancel(t.Context())
	stop()
	if _, err := b.reader(t).Read(ctx, 0, nil); !errors.Is(err, context.Canceled) {
		t.Errorf("broken off, it says %v", err)
	}
}
