package plancolour

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/skincolour"
	"ogive/imaging/planfile"
	"ogive/imaging/skin"
	"ogive/imaging/wording"
	"ogive/ui/choice"
	"ogive/ui/column"
	"ogive/ui/flow"
	"ogive/ui/look"
)

// row is one patch of the list: where it lies, and what can be done with it.
type row struct {
	*column.Block
	panel *Panel
	key   rowKey

	rule    *canvas.Line
	title   *column.Text
	where   *column.Text
	kind    *choice.Choice // of a neutral patch
	put     *widget.Button
	away    *widget.Button
	wanted  *column.Text // a click
	amiss   *column.Text // the photograph is of the other side of the hand
	size    *widget.Slider
	radius  *canvas.Text
	filling bool
}

// kinds are the neutral patches in the order in which they are offered.
var kinds = []string{skin.GreyPatch, skin.WhitePatch}

func newRow(p *Panel, key rowKey) *row {
	r := &row{panel: p, key: key, rule: canvas.NewLine(nil), title: column.Title(""), where: column.Remark(""), radius: canvas.NewText("", nil)}
	r.wanted, r.amiss = column.Title(""), column.Body("")
	r.put = widget.NewButton("", r.putOrStop)
	r.away = widget.NewButtonWithIcon("", theme.DeleteIcon(), func() { p.remove(key) })
	r.away.Importance = widget.LowImportance
	r.size = widget.NewSlider(float64(leastRadius), float64(leastRadius)+1)
	r.size.OnChanged = func(v float64) { r.sizing(plane.Pixel(v)) }
	r.size.OnChangeEnded = func(v float64) { r.sized(plane.Pixel(v)) }
	r.kind = choice.New(lang.L("Grey card, 18 %"), lang.L("White paper"))
	r.kind.Set(0)
	r.kind.OnChosen = r.named
	r.Block = column.NewBlock(r.stand, r.paint, r.rule, r.title, r.where, r.kind, r.put, r.away, r.wanted, r.amiss, r.size, r.radius)
	return r
}

// asked reports whether a click for this row is wanted.
func (r *row) asked() bool {
	if r.key.place == 0 {
		return r.key.photograph == "" && neutral(r.panel.asking)
	}
	return r.panel.asking == r.key.place.Key()
}

func (r *row) putOrStop() {
	if r.asked() {
		r.panel.Stop()
		return
	}
	r.panel.choosePhotograph(r)
}

// patch is the row's patch, nil while it is not placed.
func (r *row) patch() *planfile.Patch {
	if i := r.key.at(r.panel.file.Patches); i >= 0 {
		return &r.panel.file.Patches[i]
	}
	return nil
}

// name is what the patch is called in a plan file.
func (r *row) name() string {
	if r.key.place != 0 {
		return r.key.place.Key()
	}
	return kinds[max(r.kind.Chosen, 0)]
}

func (r *row) show() {
	patch := r.patch()
	r.title.Set(wording.Sentence(nameOf(r.name())))
	flow.Visible(r.kind, r.key.place == 0)
	if r.key.place == 0 {
		r.title.Set(lang.L("White or grey: {{.Photograph}}", map[string]any{"Photograph": r.panel.title(r.key.photograph)}))
	}
	r.where.Set(lang.L("not placed"))
	r.put.SetText(r.verb(patch != nil))
	r.amiss.Set("")
	r.wanted.Set("")
	if r.asked() {
		r.wanted.Set(lang.L("Now click on the photograph."))
	}
	for _, o := range []fyne.CanvasObject{r.away, r.size, r.radius} {
		flow.Visible(o, patch != nil)
	}
	if patch == nil {
		return
	}
	r.where.Set(lang.L("on {{.Photograph}}", map[string]any{"Photograph": r.panel.title(patch.Photograph)}))
	if r.key.place == 0 {
		r.where.Set(lang.L("placed"))
		r.showKind(patch.Name)
	}
	r.amiss.Set(r.otherSide(patch.Photograph))
	r.showSize(*patch)
}

// otherSide says that the patch lies on a photograph which, by its plan, shows the
// other side of the hand. It may yet be right: a palm can show beside the back.
func (r *row) otherSide(photograph string) string {
	if photograph != "" {
		return "" // its view is not known here
	}
	switch view := r.panel.file.View; {
	case r.key.place == skincolour.Palm && view == hand.Dorsal:
		return "△ " + lang.L("This photograph is of the back of the hand: is it the palm that lies here?")
	case r.key.place == skincolour.Back && view == hand.Palmar:
		return "△ " + lang.L("This photograph is of the palm: is it the back of the hand that lies here?")
	}
	return ""
}

// verb is what the button does.
func (r *row) verb(placed bool) string {
	switch {
	case r.asked():
		return lang.L("Cancel")
	case placed:
		return lang.L("Move…")
	}
	return lang.L("Place…")
}

func (r *row) showKind(name string) {
	for i, k := range kinds {
		if k == name {
			r.kind.Set(i)
		}
	}
	if name == skin.NeutralPatch {
		r.kind.Set(-1)
		r.where.Set(lang.L("of unknown kind, taken for a grey card"))
	}
}

func (r *row) showSize(patch planfile.Patch) {
	r.filling = true
	defer func() { r.filling = false }()
	usual := r.panel.usual(patch.Photograph)
	r.size.Min, r.size.Max = float64(leastRadius), float64(max(3*usual, patch.Radius, leastRadius+1))
	r.size.Step = max(1, float64(usual)/25)
	r.size.SetValue(float64(patch.Radius))
	r.tellSize(patch)
}

// tellSize says how large the patch is, in millimetres where that is known.
func (r *row) tellSize(patch planfile.Patch) {
	r.radius.Text = lang.L("radius {{.Pixels}} px", map[string]any{"Pixels": int(patch.Radius)})
	if per := r.panel.plan.PerPixel.Value; per > 0 && patch.Photograph == "" {
		r.radius.Text = lang.L("radius about {{.Millimetres}} mm", map[string]any{"Millimetres": fmt.Sprintf("%.1f", float64(per)*float64(patch.Radius))})
	}
	r.radius.Refresh()
}

func (r *row) sizing(to plane.Pixel) {
	patch := r.patch()
	if r.filling || patch == nil {
		return
	}
	changed := *patch
	changed.Radius = to
	r.panel.held = &held{key: r.key, patch: changed}
	r.tellSize(changed)
	r.panel.redraw()
}

func (r *row) sized(to plane.Pixel) {
	patch := r.patch()
	r.panel.held = nil
	if r.filling || patch == nil || patch.Radius == to {
		return
	}
	r.panel.edit(r.key, lang.L("size of patch: {{.Patch}}", map[string]any{"Patch": nameOf(patch.Name)}), func(p *planfile.Patch) { p.Radius = to })
}

// named is another kind of neutral patch.
func (r *row) named(i int) {
	r.panel.Stop()
	if i >= 0 && r.patch() != nil {
		r.panel.edit(r.key, lang.L("kind of neutral patch: {{.Patch}}", map[string]any{"Patch": nameOf(kinds[i])}), func(p *planfile.Patch) { p.Name = kinds[i] })
	}
}

func (r *row) paint() {
	r.rule.StrokeColor, r.rule.StrokeWidth = look.Colour(look.Hairline), 1
	r.radius.Color, r.radius.TextSize = look.Colour(look.SecondInk), look.Size(theme.SizeNameCaptionText)
}

func (r *row) stand(room float32) float32 {
	const gap, below, sizeRoom = 6, 8, 140
	r.rule.Position1, r.rule.Position2 = fyne.NewPos(0, 0), fyne.NewPos(room, 0)
	put := r.put.MinSize()
	right := put.Width
	if r.away.Visible() {
		right += r.away.MinSize().Width + gap
		flow.Put(r.away, room-r.away.MinSize().Width, 8, r.away.MinSize().Width, put.Height)
	}
	flow.Put(r.put, room-right, 8, put.Width, put.Height)
	words := room - right - gap
	h := r.title.HeightAt(words)
	flow.Put(r.title, 0, 0, words, h)
	y := h
	h = r.where.HeightAt(words)
	flow.Put(r.where, 0, y, words, h)
	y = max(y+h-4, 8+put.Height) + below
	h = r.wanted.HeightAt(room)
	flow.Put(r.wanted, 0, y, room, h)
	y += h
	h = r.amiss.HeightAt(room)
	flow.Put(r.amiss, 0, y, room, h)
	y += h
	if r.kind.Visible() {
		h = r.kind.HeightAt(room)
		flow.Put(r.kind, 0, y, room, h)
		y += h + below
	}
	if r.size.Visible() {
		h = r.size.MinSize().Height
		flow.Put(r.size, -4, y-6, room-sizeRoom, h)
		flow.Put(r.radius, room-sizeRoom+4, y-6+(h-r.radius.MinSize().Height)/2, sizeRoom, r.radius.MinSize().Height)
		y += h - 6
	}
	return y
}
