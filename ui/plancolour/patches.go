package plancolour

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"ogive/geometry/plane"
	"ogive/geometry/skincolour"
	"ogive/imaging/planfile"
	"ogive/imaging/skin"
)

// rowKey is what a row of the list is about: a place of the skin, or the white or
// grey of one photograph.
type rowKey struct {
	place      skincolour.Place // 0 for a neutral patch
	photograph string           // of a neutral patch
}

// keys are the rows that are to be seen: the neutral patch of each photograph in
// use, then all places.
func (p *Panel) keys() []rowKey {
	out := []rowKey{{}}
	for _, patch := range p.file.Patches {
		key := rowKey{photograph: patch.Photograph}
		if !slices.Contains(out, key) {
			out = append(out, key)
		}
	}
	for _, place := range skincolour.Places {
		out = append(out, rowKey{place: place})
	}
	return out
}

// at is where the row's patch stands in the plan, -1 while it is not placed. The
// first of its kind counts.
func (k rowKey) at(patches []planfile.Patch) int {
	return slices.IndexFunc(patches, func(patch planfile.Patch) bool {
		if k.place == 0 {
			return neutral(patch.Name) && patch.Photograph == k.photograph
		}
		return patch.Name == k.place.Key()
	})
}

func neutral(name string) bool {
	return name == skin.GreyPatch || name == skin.WhitePatch || name == skin.NeutralPatch
}

// nameOf is a patch by its name in a plan file, within a sentence.
func nameOf(patch string) string {
	if place, ok := skincolour.PlaceOf(patch); ok {
		return place.String()
	}
	switch patch {
	case skin.GreyPatch:
		return lang.L("grey card")
	case skin.WhitePatch:
		return lang.L("white paper")
	case skin.NeutralPatch:
		return lang.L("neutral patch")
	}
	return patch
}

func (p *Panel) showRows() {
	var objects []fyne.CanvasObject
	for _, key := range p.keys() {
		r := p.rows[key]
		if r == nil {
			r = newRow(p, key)
			p.rows[key] = r
		}
		r.show()
		objects = append(objects, r)
	}
	p.list.Replace(objects...)
}

// put places a patch, or moves the one that is there, as one step.
func (p *Panel) put(to planfile.Patch) {
	key := rowKey{photograph: to.Photograph}
	if place, ok := skincolour.PlaceOf(to.Name); ok {
		key = rowKey{place: place}
	}
	gaps := map[string]any{"Patch": nameOf(to.Name)}
	step := lang.L("place patch: {{.Patch}}", gaps)
	if key.at(p.file.Patches) >= 0 {
		step = lang.L("move patch: {{.Patch}}", gaps)
	}
	p.change(step, func(f *planfile.File) {
		f.Patches = slices.Clone(f.Patches)
		if i := key.at(f.Patches); i >= 0 {
			f.Patches[i] = to
			return
		}
		f.Patches = append(f.Patches, to)
	})
}

func (p *Panel) remove(key rowKey) {
	p.Stop()
	i := key.at(p.file.Patches)
	if i < 0 {
		return
	}
	p.change(lang.L("remove patch: {{.Patch}}", map[string]any{"Patch": nameOf(p.file.Patches[i].Name)}), func(f *planfile.File) {
		f.Patches = slices.Clone(f.Patches)
		if i := key.at(f.Patches); i >= 0 {
			f.Patches = slices.Delete(f.Patches, i, i+1)
		}
	})
}

// edit is a step that changes the patch of a row.
func (p *Panel) edit(key rowKey, step string, by func(*planfile.Patch)) {
	p.change(step, func(f *planfile.File) {
		f.Patches = slices.Clone(f.Patches)
		if i := key.at(f.Patches); i >= 0 {
			by(&f.Patches[i])
		}
	})
}

// Sizes of a patch on the plan's photograph where its scale is known, else in
// pixels: large enough for a median, small enough to lie on one finger.
const (
	usualSize   plane.Millimetre = 2.5
	usualRadius plane.Pixel      = 25
	leastRadius plane.Pixel      = 6
	mostRadius  plane.Pixel      = 500
)

// usual is the radius that a patch begins with.
func (p *Panel) usual(photograph string) plane.Pixel {
	if per := p.plan.PerPixel.Value; photograph == "" && per > 0 {
		return min(max(plane.Pixel(usualSize/per), leastRadius), mostRadius)
	}
	return usualRadius
}
