package plansheet

import (
	"bytes"
	"errors"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/imaging/family"
	"ogive/imaging/marksfile"
	"ogive/imaging/measure"
	"ogive/imaging/phantom"
	"ogive/imaging/photo"
	"ogive/imaging/planfile"
	"ogive/imaging/planning"
	"ogive/imaging/sheet"
	"ogive/ui/look"
	"ogive/ui/shots"
)

// drawn is a plan of two webs on an artificial hand, with all that a plan can hold.
type drawn struct {
	here       planning.Hand
	photograph *photo.Photograph
	file       planfile.File
}

var onlyPlan = sync.OnceValues(func() (d drawn, err error) {
	picture, err := phantom.Case{Seed: 7, Size: 40, Reference: phantom.PaperRuler, Width: 800, Height: 600}.Render()
	if err != nil {
		return d, err
	}
	if d.photograph, err = photo.Decode(picture.JPEG); err != nil {
		return d, err
	}
	marks, ref := picture.Truth.Marks(0.5, rand.New(rand.NewPCG(1, 2)))
	marks.Webs = marks.Webs[:1]
	settings, err := measure.Defaults()
	if err != nil {
		return d, err
	}
	d.here, err = planning.Prepare(measure.Subject{Marks: marksfile.File{Photograph: "hand.jpg", Marks: marks, Reference: ref}, Photograph: d.photograph}, settings)
	if err != nil {
		return d, err
	}
	begun, err := planning.Begin(d.here, nil, hand.ThirdWeb, hand.FourthWeb)
	d.file = begun.File
	return d, err
})

type room struct {
	*Panel
	t     *testing.T
	win   fyne.Window
	drawn drawn
	given planning.Plan // what Content was called with last
	fail  error
}

func show(t *testing.T) *room {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(look.Theme(theme.VariantLight))
	d, err := onlyPlan()
	if err != nil {
		t.Fatal(err)
	}
	d.file.Webs = append([]planfile.Web(nil), d.file.Webs...)
	d.file.Webs[0].Girths = &planfile.Girths{Radial: planfile.Girth{Taped: 36}, Ulnar: planfile.Girth{Taped: 34}}
	d.file.Donors = []planfile.Donor{{Name: "groin", Gave: 12}}
	d.file.Family = planfile.Family{Findings: []string{family.JoinedNails}}
	r := &room{t: t, drawn: d}
	r.win = test.NewTempWindow(t, nil)
	r.Panel = New(r.win)
	r.apart, r.do = func(work func()) { work() }, func(work func()) { work() }
	r.Content = func(p planning.Plan) (sheet.Content, error) {
		r.given = p
		return sheet.Of(p, d.here, d.photograph, sheet.Words{Code: "H-07"}), r.fail
	}
	r.win.SetContent(r.Object())
	r.win.Resize(fyne.NewSize(340, 900))
	r.Propose(t.TempDir(), "H-07")
	r.again()
	return r
}

func (r *room) again() {
	r.Show(r.drawn.file, planning.Of(r.drawn.file, r.drawn.here, nil), hand.ThirdWeb)
}

// words are all that the list of pages says.
func (r *room) words() string {
	return outlines(r.shown()) + "\n" + others(r.shown())
}

func TestTheSheetIsSavedOnThePaperThatWasChosen(t *testing.T) {
	r := show(t)
	for i, box := range []string{"/MediaBox [0 0 595.28 841.89]", "/MediaBox [0 0 612.00 792.00]"} {
		r.paper.Choose(i)
		path := filepath.Join(r.folder, "sheet.pdf")
		r.save(asPDF, path)
		data, err := os.ReadFile(path)
		if err != nil || !bytes.HasPrefix(data, []byte("%PDF-")) || !bytes.Contains(data, []byte(box)) {
			t.Errorf("%v: no %s in %d bytes", err, box, len(data))
		}
		if got := r.state.Words(); !strings.HasPrefix(got, "✓ Saved as sheet.pdf in ") || r.problem.Visible() {
			t.Errorf("it says %q, %q", got, r.problem.Words())
		}
	}
}

func TestTheOutlinesAreSavedInMillimetres(t *testing.T) {
	r := show(t)
	path := filepath.Join(r.folder, "outlines.svg")
	r.save(asSVG, path)
	data, err := os.ReadFile(path)
	if err != nil || !bytes.Contains(data, []byte("<svg")) || !bytes.Contains(data, []byte(`id="arch"`)) || !bytes.Contains(data, []byte("mm\"")) {
		t.Errorf("%v: %.300s", err, data)
	}
}

func TestAWebThatIsLeftOutIsNotOnTheSheet(t *testing.T) {
	r := show(t)
	if got := r.words(); !strings.Contains(got, "Third web, proposed: ") || !strings.Contains(got, "Fourth web, proposed: ") || !strings.Contains(got, "Third web: the graft") {
		t.Fatalf("it lists %q", got)
	}
	test.Tap(r.ticks[hand.ThirdWeb])
	r.save(asPDF, filepath.Join(r.folder, "sheet.pdf"))
	if got := r.words(); strings.Contains(got, "Third web") || len(r.given.Webs) != 1 || r.given.Webs[0].Web != hand.FourthWeb || len(r.given.File.Webs) != 1 || len(r.plan.Webs) != 2 {
		t.Errorf("it lists %q and prints %+v", got, r.given.File.Webs)
	}
	test.Tap(r.ticks[hand.FourthWeb])
	if !r.pdf.Disabled() || !r.svg.Disabled() || !strings.Contains(r.nothing.Words(), "nothing to print") {
		t.Errorf("without a web it says %q", r.nothing.Words())
	}
}

// The pages of the list are those of the sheet: every piece and every title of the
// sheet is spoken of.
func TestTheListSpeaksOfAllThatIsPrinted(t *testing.T) {
	r := show(t)
	content, err := r.Content(r.shown())
	if err != nil {
		t.Fatal(err)
	}
	words := r.words()
	for _, piece := range content.Pieces {
		head, what, _ := strings.Cut(piece.Name, ": ")
		if piece.Together {
			what = "First together"
		}
		if strings.HasPrefix(what, "graft") {
			what = "graft"
		}
		if !strings.Contains(words, head+": ") || !strings.Contains(words, what) {
			t.Errorf("%q is printed, the list says\n%s", piece.Name, words)
		}
	}
	if len(content.Pieces) < 8 || len(content.Family) != points(r.shown()) || len(r.list.Parts()) != 4 {
		t.Errorf("%d pieces, %d points, %d kinds of pages", len(content.Pieces), len(content.Family), len(r.list.Parts()))
	}
}

func TestTheFamilysPageCanBeLeftOut(t *testing.T) {
	r := show(t)
	size := func() int {
		path := filepath.Join(r.folder, "sheet.pdf")
		r.save(asPDF, path)
		data, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		return bytes.Count(data, []byte("/Type /Page\n"))
	}
	with := size()
	test.Tap(r.family)
	if without := size(); without != with-1 || len(r.list.Parts()) != 3 {
		t.Errorf("%d pages with the family's, %d without; %d kinds of pages", with, without, len(r.list.Parts()))
	}
}

func TestWhatCannotBeSavedIsSaidAndNothingIsWritten(t *testing.T) {
	r := show(t)
	kept := filepath.Join(r.folder, "hand.pdf")
	if err := os.WriteFile(kept, []byte("as it was"), 0o600); err != nil {
		t.Fatal(err)
	}
	r.Refused = func(path string) bool { return path == kept }
	for path, want := range map[string]string{
		filepath.Join(r.folder, "sheet.txt"): "give a name that ends in .pdf",
		kept:                                 "that file is needed as it is",
		filepath.Join(r.folder, "nowhere", "sheet.pdf"): "sheet.pdf was not saved: ",
	} {
		r.save(asPDF, path)
		if !strings.Contains(r.problem.Words(), want) || r.state.Visible() || r.pdf.Disabled() {
			t.Errorf("%s: it says %q, %q", filepath.Base(path), r.problem.Words(), r.state.Words())
		}
	}
	r.fail = errors.New("the photograph is gone; bring it back")
	r.save(asPDF, filepath.Join(r.folder, "sheet.pdf"))
	if got := r.problem.Words(); got != "sheet.pdf was not saved: the photograph is gone; bring it back." {
		t.Errorf("it says %q", got)
	}
	entries, err := os.ReadDir(r.folder)
	if err != nil || len(entries) != 1 {
		t.Errorf("%v: the folder holds %v", err, entries)
	}
	if data, err := os.ReadFile(kept); err != nil || string(data) != "as it was" {
		t.Errorf("%v: the file that is needed holds %q", err, data)
	}
}

func TestASheetThatIsNoLongerThePlanIsCalledSo(t *testing.T) {
	r := show(t)
	r.save(asPDF, filepath.Join(r.folder, "sheet.pdf"))
	r.again()
	if r.stale.Visible() {
		t.Errorf("nothing has changed, and it says %q", r.stale.Words())
	}
	r.drawn.file.Webs[0].Join = &[2]plane.PixelPoint{{X: 300, Y: 300}, {X: 300, Y: 200}}
	r.again()
	if !r.stale.Visible() {
		t.Error("the plan has changed, and nothing says so")
	}
	r.Begin()
	if r.stale.Visible() || r.state.Visible() {
		t.Error("of another plan it tells what was saved of the one before")
	}
}

func TestOneWebIsNotAskedForAndUnchosenAlternativesAreSaid(t *testing.T) {
	r := show(t)
	r.drawn.file.Webs = r.drawn.file.Webs[:1]
	a := r.drawn.file.Webs[0].Alternatives[0]
	other := a
	other.Name = "narrow"
	r.drawn.file.Webs[0].Alternatives, r.drawn.file.Webs[0].Chosen = []planfile.Alternative{a, other}, ""
	r.again()
	if r.webs.Visible() || !strings.Contains(r.nothing.Words(), "no alternative is chosen, so all 2 are printed") {
		t.Errorf("it says %q", r.nothing.Words())
	}
}

func TestWhereToSaveIsAskedWithTheCasesCode(t *testing.T) {
	r := show(t)
	r.win.Resize(fyne.NewSize(1024, 700))
	test.Tap(r.pdf)
	shots.Keep(t, r.win, "plansheet-asking")
	if r.win.Canvas().Overlays().Top() == nil {
		t.Error("nothing is asked")
	}
}

func TestThePanelHasRoomInLightAndDark(t *testing.T) {
	r := show(t)
	r.save(asPDF, filepath.Join(r.folder, "H-07-sheet.pdf"))
	for name, variant := range map[string]fyne.ThemeVariant{"light": theme.VariantLight, "dark": theme.VariantDark} {
		fyne.CurrentApp().Settings().SetTheme(look.Theme(variant))
		for _, wide := range []float32{380, 312, 340} {
			r.win.Resize(fyne.NewSize(wide, 1300))
			if least := r.Object().MinSize(); least.Width > 312 {
				t.Errorf("the panel needs %v", least)
			}
			if end := r.svg.Position().X + r.svg.MinSize().Width; end > wide {
				t.Errorf("a button ends at %v of %v", end, wide)
			}
		}
		shots.Keep(t, r.win, "plansheet-"+name)
		r.paper.Choose(1)
	}
}
