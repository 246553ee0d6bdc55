package skin

import (
	"fmt"

	"ogive/geometry/plane"
	"ogive/geometry/skincolour"
	"ogive/imaging/photo"
	"ogive/imaging/planfile"
)

// Names of the patches of a plan file that balance a photograph; the others are
// those of skincolour.Place.
const (
	GreyPatch  = "grey"
	WhitePatch = "white"
	// NeutralPatch is one of unknown reflectance, taken for a grey card.
	NeutralPatch = "neutral"
)

var reflectances = map[string]plane.Ratio{GreyPatch: GreyCard, WhitePatch: WhiteCard, NeutralPatch: GreyCard}

// OfPlan samples the patches of a plan, in their order, each balanced on the
// neutral patch of its own photograph. Open opens a photograph by the name that
// a patch gives, which is empty for the plan's own. What can't be sampled is left
// out, and a remark says why.
func OfPlan(patches []planfile.Patch, open func(name string) (*photo.Photograph, error)) (samples []Sample, remarks []string) {
	on := map[string]*Sampler{}
	remark := func(err error) {
		if err != nil {
			remarks = append(remarks, fmt.Sprintf("Skin colour: %v.", err))
		}
	}
	for _, p := range patches {
		if _, known := on[p.Photograph]; known {
			continue
		}
		on[p.Photograph] = nil
		photograph, err := open(p.Photograph)
		if err != nil {
			remark(err)
			continue
		}
		on[p.Photograph] = On(photograph, p.Photograph)
	}
	for _, p := range patches {
		if part, neutral := reflectances[p.Name]; neutral && on[p.Photograph] != nil {
			remark(on[p.Photograph].BalanceOn(Neutral{Spot{p.Centre, p.Radius}, part}))
		}
	}
	for _, p := range patches {
		place, known := skincolour.PlaceOf(p.Name)
		if !known || on[p.Photograph] == nil {
			continue
		}
		s, err := on[p.Photograph].Sample(place, Spot{p.Centre, p.Radius})
		if err != nil {
			remark(err)
			continue
		}
		samples = append(samples, s)
	}
	return samples, remarks
}
