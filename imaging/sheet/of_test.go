package sheet

import (
	"bytes"
	"math/rand/v2"
	"slices"
	"strings"
	"sync"
	"testing"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
	"ogive/imaging/family"
	"ogive/imaging/marksfile"
	"ogive/imaging/measure"
	"ogive/imaging/phantom"
	"ogive/imaging/photo"
	"ogive/imaging/planfile"
	"ogive/imaging/planning"
	"ogive/imaging/skin"
)

// drawnPlan is a plan with the hand and the photograph it was drawn on.
type drawnPlan struct {
	plan       planning.Plan
	here       planning.Hand
	photograph *photo.Photograph
	words      Words
}

// content is the sheet of the plan.
func (d drawnPlan) content() Content { return Of(d.plan, d.here, d.photograph, d.words) }

// planned is a plan for the third web of an artificial hand, with all that a
// plan can hold. Tests that change it work on a copy of its webs.
func planned(t *testing.T) drawnPlan {
	t.Helper()
	d, err := onlyPlan()
	if err != nil {
		t.Fatal(err)
	}
	d.plan.Webs = slices.Clone(d.plan.Webs)
	return d
}

var onlyPlan = sync.OnceValues(func() (d drawnPlan, err error) {
	picture, err := phantom.Case{Seed: 71, Size: 24, Build: 1.05, Skin: phantom.Tan, Drape: phantom.Blue, Reference: phantom.PaperRuler,
		GreyPatch: 0.18, Width: 1000, Height: 750}.Render()
	if err != nil {
		return d, err
	}
	photograph, err := photo.Decode(picture.JPEG)
	if err != nil {
		return d, err
	}
	marks, ref := picture.Truth.Marks(1, rand.New(rand.NewPCG(1, 2)))
	marks.Webs = slices.DeleteFunc(marks.Webs, func(w hand.WebMarks) bool { return w.Web == hand.ThirdWeb })
	settings, err := measure.Defaults()
	if err != nil {
		return d, err
	}
	here, err := planning.Prepare(measure.Subject{Marks: marksfile.File{Photograph: "secret-name.jpg", Marks: marks, Reference: ref}, Photograph: photograph}, settings)
	if err != nil {
		return d, err
	}
	proposal, err := here.Propose(hand.ThirdWeb, nil)
	if err != nil {
		return d, err
	}
	a := proposal.Arch
	girths := &planfile.Girths{Radial: planfile.Girth{Taped: 36}, Ulnar: planfile.Girth{Taped: 34}}
	drawnFlap, _ := here.BeginFlap(hand.ThirdWeb, a, false, girths)
	join := here.BeginJoin(hand.ThirdWeb, a)
	grey := picture.Truth.Grey
	f := planfile.File{
		Photograph: "secret-name.jpg", Side: marks.Side, View: marks.View,
		Webs: []planfile.Web{{Web: hand.ThirdWeb, Join: join, Girths: girths, Chosen: "wide",
			Alternatives: []planfile.Alternative{
				{Name: "wide", Arch: planfile.ArchOn(a, here.Ground.Fit.Best), Flap: drawnFlap, Zigzag: here.BeginZigzag(hand.ThirdWeb, *join)},
				{Name: "narrow", Arch: planfile.ArchOn(a, here.Ground.Fit.Best)},
			}}},
		Donors: []planfile.Donor{{Name: "groin", Gave: 12, Drawbacks: "darker skin, hair later"}},
		Patches: []planfile.Patch{{Name: skin.GreyPatch, Centre: grey.Centre, Radius: grey.Radius},
			{Name: "back", Centre: picture.Truth.Joints[hand.Middle][hand.MCP].Add(plane.Vec[plane.Pixel](0, 60)), Radius: 25}},
		Family: planfile.Family{Findings: []string{family.JoinedNails, family.Stiffness}, Texts: []planfile.Text{{Key: family.Stiffness, Text: "Our own words about the stiff joint."}}},
	}
	words := Words{Code: "H-07"}
	words.Colours, words.ColourRemarks = skin.OfPlan(f.Patches, func(string) (*photo.Photograph, error) { return photograph, nil })
	return drawnPlan{planning.Of(f, here, nil), here, photograph, words}, nil
})

func TestASheetTellsAllThatIsPlannedAndNoMore(t *testing.T) {
	c := planned(t).content()
	var names []string
	for _, piece := range c.Pieces {
		names = append(names, piece.Name)
	}
	want := []string{
		"Third web, wide: all in place", "Third web, wide: arch", "Third web, wide: dorsal flap", "Third web, wide: zigzag, back of the hand",
		"Third web, wide: zigzag, palm", "Third web: graft, middle finger", "Third web: graft, ring finger",
	}
	if !slices.Equal(names, want) {
		t.Errorf("pieces %q", names)
	}
	rows := map[string]Row{}
	for _, table := range append(slices.Clone(c.Tables), c.Main...) {
		for _, r := range table.Rows {
			rows[r.Name] = r
		}
	}
	for _, name := range []string{"dorsal web index", "depth", "span", "crown angle", "dorsal flap, length", "dorsal flap, area", "graft", "Back of the hand, typology angle"} {
		if !strings.Contains(rows[name].Value, " ± ") {
			t.Errorf("%s is %q: want a figure with its interval", name, rows[name].Value)
		}
	}
	if !strings.Contains(rows["dorsal web index"].Note, ": 0.") || rows["groin"].Value != "gave 12 cm²" {
		t.Errorf("index %+v, groin %+v", rows["dorsal web index"], rows["groin"])
	}
	if len(c.Sources) < 5 || !strings.Contains(strings.Join(c.Sources, "\n"), "Bae DS") || c.Caution == "" || c.Scale == "" {
		t.Errorf("sources %q", c.Sources)
	}
	if len(c.Family) != 5 || c.Family[1].Text != "Our own words about the stiff joint." {
		t.Errorf("the family is told %d points: %+v", len(c.Family), c.Family[1])
	}
	svg := string(cut(t, c))
	if strings.Contains(svg, "secret") || !strings.Contains(svg, "Case H-07") {
		t.Error("the drawing names the photograph's file or lacks the code")
	}
}

// The outlines on paper are those of the plan in shape and size, however they
// are turned; what lies on the face turned away is turned over.
func TestPiecesAreTurnedButKeepTheirSize(t *testing.T) {
	d := planned(t)
	c := d.content()
	a := d.plan.Webs[0].Alternatives[0]
	piece := func(name string) Outline {
		i := slices.IndexFunc(c.Pieces, func(p Piece) bool { return strings.HasSuffix(p.Name, name) })
		return c.Pieces[i].Outlines[0]
	}
	for _, pair := range []struct {
		claim    string
		from     []plane.Position
		to       Outline
		turnOver bool
	}{
		{"arch", a.Arch.Curve, piece(": arch"), false}, {"flap", a.Flap.Flap.Outline, piece("dorsal flap"), false},
		{"dorsal zigzag", a.Dorsal.Zigzag.Points, piece("zigzag, back of the hand"), false}, {"palmar zigzag", a.Palmar.Zigzag.Points, piece("zigzag, palm"), true},
	} {
		if len(pair.from) != len(pair.to.Points) {
			t.Fatalf("%s: %d points of %d", pair.claim, len(pair.to.Points), len(pair.from))
		}
		for i := range pair.from {
			k := (i + 1) % len(pair.from)
			if by := pair.from[i].Distance(pair.from[k]) - pair.to.Points[i].Distance(pair.to.Points[k]); by > 1e-9 || by < -1e-9 {
				t.Errorf("%s: a side changed by %g mm", pair.claim, float64(by))
			}
		}
		turn := func(ps []plane.Position) bool { return ps[1].Sub(ps[0]).Cross(ps[2].Sub(ps[1])) > 0 }
		mid := len(pair.from) / 2
		if (turn(pair.from[mid-1:]) != turn(pair.to.Points[mid-1:])) != pair.turnOver {
			t.Errorf("%s: turned over %v, want %v", pair.claim, !pair.turnOver, pair.turnOver)
		}
	}
}

// areaByStrips is the area of a polygon by cutting it into level strips and
// summing the widths between its sides: nothing in common with the formula that
// the figures use.
func areaByStrips(points []plane.Position) float64 {
	b := Piece{Outlines: []Outline{{Points: points}}}.bounds()
	const strips = 4000
	height, sum := b.height()/strips, 0.0
	for i := range strips {
		y := plane.Millimetre(b.top + (float64(i)+0.5)*height)
		var cuts []float64
		for k, p := range points {
			q := points[(k+1)%len(points)]
			if (p.Y > y) != (q.Y > y) {
				cuts = append(cuts, float64(p.X+(q.X-p.X)*(y-p.Y)/(q.Y-p.Y)))
			}
		}
		slices.Sort(cuts)
		for k := 1; k < len(cuts); k += 2 {
			sum += (cuts[k] - cuts[k-1]) * height
		}
	}
	return sum
}

func TestAreasOnTheSheetAreThoseOfItsOutlines(t *testing.T) {
	d := planned(t)
	web := d.plan.Webs[0]
	graft := 0.0
	for _, p := range d.content().Pieces {
		switch o := p.Outlines[0]; {
		case o.Kind == FlapOutline && !p.Together:
			got, want := areaByStrips(o.Points), float64(web.Alternatives[0].Flap.Figures.Area.Value)
			if got < 0.998*want || got > 1.002*want {
				t.Errorf("the flap's outline holds %.2f mm², its figure says %.2f", got, want)
			}
		case o.Kind == GraftOutline:
			graft += areaByStrips(o.Points)
		}
	}
	if want := float64(web.Skin.Budget.Graft.Value); graft < 0.998*want || graft > 1.002*want {
		t.Errorf("the graft's outlines hold %.2f mm², its figure says %.2f", graft, want)
	}
}

func TestAllAlternativesAreShownWhileNoneIsChosen(t *testing.T) {
	d := planned(t)
	d.plan.Webs[0].Chosen, d.plan.Webs[0].Skin = -1, nil
	c := d.content()
	notes := strings.Join(c.Notes, "\n")
	if !strings.Contains(notes, "No alternative is chosen for the third web yet: all 2 are shown.") {
		t.Errorf("notes %s", notes)
	}
	if len(c.Main) != 2 || c.Main[1].Title != "Third web, narrow" {
		t.Errorf("main figures %+v", c.Main)
	}
}

func TestAPlannedSheetIsTheSameEachTimeAndOnBothPapers(t *testing.T) {
	d := planned(t)
	first := made(t, d.content(), A4)
	if !bytes.Equal(first, made(t, d.content(), A4)) {
		t.Error("two sheets of one plan differ")
	}
	if bytes.Equal(first, made(t, d.content(), Letter)) {
		t.Error("both papers give the same file")
	}
}

func TestAnEmptyPlanGivesASheetThatSaysWhatItShows(t *testing.T) {
	here := planning.Hand{}
	here.Ground.Fit = scale.Fit{}
	c := Of(planning.Plan{Side: hand.Left, View: hand.Palmar}, here, nil, Words{Code: "H-08"})
	if c.Title != "Left hand, palm" || len(c.Pieces) != 0 || len(c.Family) != 0 {
		t.Errorf("%+v", c)
	}
	made(t, c, A4)
}
