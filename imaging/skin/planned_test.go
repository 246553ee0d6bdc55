package skin

import (
	"errors"
	"image/color"
	"strings"
	"testing"

	"ogive/assets"
	"ogive/geometry/norms"
	"ogive/geometry/skincolour"
	"ogive/imaging/photo"
	"ogive/imaging/planfile"
)

func patch(name string, at Spot, photograph string) planfile.Patch {
	return planfile.Patch{Name: name, Centre: at.Centre, Radius: at.Radius, Photograph: photograph}
}

func opened(name string) (*photo.Photograph, error) {
	switch name {
	case "":
		return photo.From(card(color.RGBA{120, 110, 80, 255}, color.RGBA{150, 105, 60, 255})), nil
	case "palm.jpg":
		return photo.From(card(color.RGBA{120, 120, 120, 255}, color.RGBA{190, 150, 130, 255})), nil
	}
	return nil, errors.New(name + " is not there; check the folder")
}

func limits(t *testing.T) skincolour.Limits {
	t.Helper()
	table, err := norms.Parse(assets.NormalValues)
	if err != nil {
		t.Fatal(err)
	}
	l, err := skincolour.LimitsOf(table)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

func TestThePatchesOfAPlanAreBalancedPhotographByPhotograph(t *testing.T) {
	samples, remarks := OfPlan([]planfile.Patch{
		patch("back", onSkin, ""), patch("palm", onSkin, "palm.jpg"), patch("graft", onSkin, "gone.jpg"),
		patch(GreyPatch, onGrey, ""), patch("donor", Spot{onSkin.Centre, 1}, ""), patch("unheard-of", onSkin, ""),
	}, opened)
	if len(samples) != 2 || !samples[0].Balance.Neutral || samples[1].Balance.Neutral {
		t.Fatalf("samples %+v", samples)
	}
	if len(remarks) != 2 || !strings.Contains(remarks[0], "gone.jpg is not there") || !strings.Contains(remarks[1], "donor skin is too small") {
		t.Errorf("remarks %q", remarks)
	}
}

func TestWhatSamplesSayIsToldWithDoubtAndReason(t *testing.T) {
	samples, _ := OfPlan([]planfile.Patch{
		patch(GreyPatch, onGrey, ""), patch("back", onSkin, ""), patch(GreyPatch, onGrey, "palm.jpg"), patch("palm", onSkin, "palm.jpg"), patch("graft", onSkin, "palm.jpg"),
	}, opened)
	lines, notes := Tell(samples, limits(t))
	var all []string
	for _, l := range lines {
		all = append(all, l.Name+" = "+l.Value+" | "+l.Note)
		if len(l.Swatches) == 0 || !strings.Contains(l.Value, " ± ") {
			t.Errorf("%+v", l)
		}
	}
	told := strings.Join(append(all, notes...), "\n")
	for _, want := range []string{"Back of the hand, typology angle = ", "Back of the hand to palm, CIEDE2000 = ", "Graft to palm, CIEDE2000 = 0.0 ± ",
		"too small to be seen? (doubtful)", "the choice stays with the surgeon", "a dorsal flap would not"} {
		if !strings.Contains(told, want) {
			t.Errorf("%q is not told in\n%s", want, told)
		}
	}
	if lines, notes := Tell(nil, limits(t)); lines != nil || notes != nil {
		t.Error("nothing sampled is told of")
	}
}
