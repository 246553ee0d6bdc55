package plancolour

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/plane"
	"ogive/imaging/planfile"
	"ogive/imaging/wording"
	"ogive/ui/board"
)

// held is a patch that is being dragged or sized, as it is now.
type held struct {
	key   rowKey
	patch planfile.Patch
}

// choosePhotograph asks on which photograph the row's patch is to be placed,
// where there is more than one for it.
func (p *Panel) choosePhotograph(r *row) {
	name := r.name()
	switch {
	case r.key.place == 0 && r.key.photograph != "":
		p.elsewhere(name, Other{r.key.photograph, p.title(r.key.photograph)})
	case r.key.place == 0 || len(p.others) == 0:
		p.Ask(name)
	default:
		items := []*fyne.MenuItem{fyne.NewMenuItem(lang.L("On this photograph"), func() { p.Ask(name) })}
		for _, o := range p.others {
			items = append(items, fyne.NewMenuItem(lang.L("On {{.Photograph}}…", map[string]any{"Photograph": o.Title}), func() { p.elsewhere(name, o) }))
		}
		widget.ShowPopUpMenuAtRelativePosition(fyne.NewMenu("", items...), p.win.Canvas(), fyne.NewPos(0, r.put.Size().Height), r.put)
	}
}

// Ask wants a click on the plan's photograph for the patch of that name.
func (p *Panel) Ask(name string) {
	p.asking = name
	p.told()
}

// Stop wants no click any longer.
func (p *Panel) Stop() {
	if p.asking != "" {
		p.asking = ""
		p.told()
	}
}

func (p *Panel) told() {
	p.showRows()
	p.page.Arrange()
	if p.OnPlace != nil {
		p.OnPlace(p.asking)
	}
	p.redraw()
}

// Wants reports whether a click on the plan's photograph is wanted.
func (p *Panel) Wants() bool { return p.asking != "" }

// Place is a click on the plan's photograph. It does nothing while none is
// wanted.
func (p *Panel) Place(at plane.PixelPoint) {
	if name := p.asking; name != "" {
		p.Stop()
		p.PlaceOn("", name, at, p.usual(""))
	}
}

// PlaceOn places the patch of that name on a photograph, "" for the plan's own. A
// patch that is there already keeps its size.
func (p *Panel) PlaceOn(photograph, name string, at plane.PixelPoint, radius plane.Pixel) {
	to := planfile.Patch{Name: name, Centre: at, Radius: radius, Photograph: photograph}
	for _, old := range p.file.Patches {
		if old.Name == name && old.Photograph == photograph {
			to.Radius = old.Radius
		}
	}
	p.put(to)
}

// now are the patches with what is being dragged, each with its row.
func (p *Panel) now() []held {
	var out []held
	for _, key := range p.keys() {
		i := key.at(p.file.Patches)
		if i < 0 {
			continue
		}
		h := held{key, p.file.Patches[i]}
		if p.held != nil && p.held.key == key {
			h = *p.held
		}
		out = append(out, h)
	}
	return out
}

// around is how many corners a patch is drawn with.
const around = 40

// Lines are the patches on the plan's photograph.
func (p *Panel) Lines() []board.Line {
	var out []board.Line
	for _, h := range p.now() {
		if h.patch.Photograph != "" {
			continue
		}
		line := board.Line{Style: board.PatchLine, Closed: true}
		for i := range around {
			a := 2 * math.Pi * float64(i) / around
			line.Points = append(line.Points, h.patch.Centre.Add(plane.Vec(plane.Pixel(math.Cos(a)), plane.Pixel(math.Sin(a))).Scale(float64(h.patch.Radius))))
		}
		out = append(out, line)
	}
	return out
}

// Handles are those by which the patches are dragged.
func (p *Panel) Handles() []board.Handle {
	var out []board.Handle
	for _, h := range p.now() {
		if h.patch.Photograph == "" {
			out = append(out, board.Handle{ID: handleOf(h.patch), At: h.patch.Centre, Shape: board.RoundHandle, Label: wording.Sentence(nameOf(h.patch.Name))})
		}
	}
	return out
}

func handleOf(patch planfile.Patch) string { return "patch " + patch.Name }

// DragHandle moves a patch while it is dragged.
func (p *Panel) DragHandle(id string, to plane.PixelPoint) {
	for _, h := range p.now() {
		if h.patch.Photograph == "" && handleOf(h.patch) == id {
			h.patch.Centre = to
			p.held = &h
			p.redraw()
			return
		}
	}
}

// DropHandle takes the place to which a patch was dragged.
func (p *Panel) DropHandle(string) {
	if h := p.held; h != nil {
		p.held = nil
		p.put(h.patch)
	}
}
