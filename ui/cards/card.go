package cards

import (
	"image"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/reading"
	"ogive/imaging/annotate"
	"ogive/imaging/wording"
	"ogive/ui/flow"
	"ogive/ui/look"
	"ogive/ui/marking"
	"ogive/ui/sign"
)

// mostSigns is the most verdicts that one web can have: index, span, slope.
const mostSigns = 3

// card is the reading of one web.
type card struct {
	widget.BaseWidget
	web             hand.Web
	onTap           func()
	chosen, hovered bool

	ground    *canvas.Rectangle
	rail      *canvas.Rectangle // at the left of the chosen card
	title     *canvas.Text
	sub       *canvas.Text
	leading   *canvas.Text // the figure the card is about
	leadName  *canvas.Text
	arch      *canvas.Raster
	bar       *canvas.Text
	drawing   drawing
	rows      []*row
	signs     []*sign.Sign
	warnings  *widget.Label
	remark    string
	rowsShown int
}

const barText = 11

// row is the name of a figure and its value.
type row struct{ name, value *canvas.Text }

var (
	_ fyne.Tappable      = (*card)(nil)
	_ desktop.Hoverable  = (*card)(nil)
	_ desktop.Cursorable = (*card)(nil)
)

func newCard(w hand.Web, onTap func()) *card {
	c := &card{web: w, onTap: onTap}
	c.ground, c.rail = canvas.NewRectangle(nil), canvas.NewRectangle(nil)
	for _, t := range []**canvas.Text{&c.title, &c.sub, &c.leading, &c.leadName, &c.bar} {
		*t = canvas.NewText("", nil)
	}
	c.title.Text = wording.WebName(w)
	c.title.TextStyle.Bold, c.leading.TextStyle.Bold = true, true
	c.leading.Alignment, c.leadName.Alignment = fyne.TextAlignTrailing, fyne.TextAlignTrailing
	c.arch = canvas.NewRaster(func(w, h int) image.Image { return c.drawing.draw(w, h) })
	for range 5 {
		r := &row{canvas.NewText("", nil), canvas.NewText("", nil)}
		r.value.Alignment = fyne.TextAlignTrailing
		r.value.TextStyle.Bold = true
		c.rows = append(c.rows, r)
	}
	for range mostSigns {
		c.signs = append(c.signs, sign.New())
	}
	c.warnings = widget.NewLabel("")
	c.warnings.Wrapping = fyne.TextWrapWord
	c.warnings.SizeName = theme.SizeNameCaptionText
	c.warnings.Importance = widget.MediumImportance
	c.rail.Hide()
	c.ExtendBaseWidget(c)
	c.colour()
	return c
}

// figures are the rows of a card: a leading one and the rest. A V has no span:
// its 0 is no measurement.
func figures(w reading.Web, v hand.View) (leading wording.Figure, rest []wording.Figure) {
	shown := map[string]bool{wording.IndexName(v): true, wording.Depth: true, wording.Span: true, wording.CrownAngle: true, wording.Slope: true}
	for _, f := range wording.Figures(w, v) {
		switch {
		case !shown[f.Name] || f.Name == wording.Span && w.Shape == arch.V:
		case leading.Name == "":
			leading = f
		default:
			rest = append(rest, f)
		}
	}
	if s := shape(w); s != "" {
		rest = append(rest, wording.Figure{Name: lang.L("shape"), Value: s})
	}
	return leading, rest
}

// shape is the arch's shape, with those that explain the border as well.
func shape(w reading.Web) string {
	if w.Shape == 0 || w.ShapeSure || len(w.ShapeAlso) == 0 {
		return wording.Shape(w)
	}
	names := []string{wording.Term(w.Shape.String())}
	for _, s := range w.ShapeAlso {
		names = append(names, wording.Term(s.String()))
	}
	return strings.Join(names, lang.L(" or "))
}

// show reports whether the card's height may have changed.
func (c *card) show(w reading.Web, s marking.State, f frame) bool {
	sub := wording.WebDigits(w.Web)
	if s.Proposed[w.Web] {
		sub += lang.L(", proposed")
	}
	set(c.sub, sub)
	leading, rest := figures(w, s.View)
	set(c.leading, leading.Value)
	set(c.leadName, wording.Term(leading.Name))
	rest = rest[:min(len(rest), len(c.rows))]
	for i, r := range rest {
		set(c.rows[i].name, wording.Sentence(wording.Term(r.Name)))
		set(c.rows[i].value, r.Value)
	}
	rearranged := c.rowsShown != len(rest)
	for i, r := range c.rows {
		flow.Visible(r.name, i < len(rest))
		flow.Visible(r.value, i < len(rest))
	}
	c.rowsShown = len(rest)
	for i, s := range c.signs {
		if i < len(w.Verdicts) {
			rearranged = s.Say(w.Verdicts[i]) || rearranged
		}
		rearranged = flow.Visible(s, i < len(w.Verdicts)) || rearranged
	}
	if remark := strings.Join(w.Warnings, "\n"); remark != c.remark {
		c.remark = remark
		c.warnings.SetText(remark)
		rearranged = true
	}
	flow.Visible(c.warnings, c.remark != "")
	rearranged = c.drawArch(w, f) || rearranged
	if width := c.Size().Width; width > 0 && !rearranged {
		c.HeightAt(width)
	}
	return rearranged
}

func (c *card) drawArch(w reading.Web, f frame) bool {
	line, ok := annotate.ArchLine(w, f.reach)
	c.drawing = drawing{line: line, f: f}
	changed := flow.Visible(c.arch, ok)
	flow.Visible(c.bar, ok)
	if ok {
		set(c.bar, lang.L("{{.Length}} mm", map[string]any{"Length": int(f.bar())}))
		c.arch.Refresh()
	}
	return changed
}

// set changes a text only where it differs.
func set(t *canvas.Text, text string) {
	if t.Text != text {
		t.Text = text
		t.Refresh()
	}
}

func (c *card) choose(chosen bool) {
	if c.chosen != chosen {
		c.chosen = chosen
		c.Refresh()
	}
}

func (c *card) colour() {
	ink, second := look.Colour(theme.ColorNameForeground), look.Colour(look.SecondInk)
	c.ground.FillColor = look.Colour(look.Card)
	c.ground.CornerRadius = look.Size(theme.SizeNameInputRadius)
	c.ground.StrokeColor, c.ground.StrokeWidth = look.Colour(look.Hairline), 1
	if c.hovered || c.chosen {
		c.ground.StrokeColor = look.Colour(look.Accent)
	}
	c.rail.FillColor = look.Colour(look.Accent)
	flow.Visible(c.rail, c.chosen)
	body, caption := look.Size(theme.SizeNameText), look.Size(theme.SizeNameCaptionText)
	style := func(t *canvas.Text, size float32, bright bool) {
		t.TextSize, t.Color = size, second
		if bright {
			t.Color = ink
		}
	}
	style(c.title, look.Size(theme.SizeNameSubHeadingText), true)
	style(c.sub, caption, false)
	style(c.leading, look.Size(look.FigureText), true)
	style(c.leadName, caption, false)
	style(c.bar, barText, true)
	for _, r := range c.rows {
		style(r.name, caption, false)
		style(r.value, body, true)
	}
}

func (c *card) Tapped(*fyne.PointEvent)        { c.onTap() }
func (c *card) MouseIn(*desktop.MouseEvent)    { c.hovered = true; c.frame() }
func (c *card) MouseMoved(*desktop.MouseEvent) {}
func (c *card) MouseOut()                      { c.hovered = false; c.frame() }
func (c *card) Cursor() desktop.Cursor         { return desktop.PointerCursor }

func (c *card) frame() {
	c.colour()
	c.ground.Refresh()
}

const cardPad = 10

// HeightAt places everything for that width and tells the height: the web and its
// leading figure at the top, the other figures beside the arch, then verdicts and
// remarks.
func (c *card) HeightAt(width float32) float32 {
	inner := width - 2*cardPad
	y := c.placeHeader(inner)
	y = c.placeFigures(y+4, width) + 6
	for _, s := range c.signs {
		if s.Visible() {
			h := s.HeightAt(inner)
			flow.Put(s, cardPad, y, inner, h)
			y += h + 4
		}
	}
	if c.warnings.Visible() {
		const labelPad = 8
		h := flow.HeightAt(c.warnings, inner+2*labelPad)
		flow.Put(c.warnings, cardPad-labelPad, y-labelPad/2, inner+2*labelPad, h)
		y += h - labelPad
	}
	y += cardPad - 4
	flow.Put(c.ground, 0, 0, width, y)
	flow.Put(c.rail, 0, 0, 4, y)
	return y
}

func (c *card) placeHeader(inner float32) (bottom float32) {
	const top = cardPad - 2
	large, caption := max(c.title.MinSize().Height, c.leading.MinSize().Height), c.sub.MinSize().Height
	flow.Put(c.title, cardPad, top, inner, large)
	flow.Put(c.leading, cardPad, top, inner, large)
	flow.Put(c.sub, cardPad, top+large, inner, caption)
	flow.Put(c.leadName, cardPad, top+large, inner, caption)
	return top + large + caption
}

func (c *card) placeFigures(y, width float32) (bottom float32) {
	room := width - 2*cardPad
	bottom = y
	if c.arch.Visible() {
		left := width - cardPad - archSide
		flow.Put(c.arch, left, y, archSide, archRise)
		flow.Put(c.bar, left+6, y+archRise-22, 60, c.bar.MinSize().Height)
		room -= archSide + cardPad
		bottom = y + archRise
	}
	for _, r := range c.rows[:c.rowsShown] {
		h := r.value.MinSize().Height
		// Two alternatives of a shape may need more room than there is.
		r.value.TextSize = look.Size(theme.SizeNameText)
		if w, left := r.value.MinSize().Width, room-r.name.MinSize().Width-6; w > left && left > 0 {
			r.value.TextSize *= left / w
		}
		flow.Put(r.name, cardPad, y, room, h)
		flow.Put(r.value, cardPad, y, room, h)
		y += h + 2
	}
	return max(bottom, y)
}

func (c *card) CreateRenderer() fyne.WidgetRenderer {
	objects := []fyne.CanvasObject{c.ground, c.rail, c.title, c.sub, c.leading, c.leadName, c.arch, c.bar}
	for _, row := range c.rows {
		objects = append(objects, row.name, row.value)
	}
	for _, s := range c.signs {
		objects = append(objects, s)
	}
	return flow.NewRenderer(c.HeightAt, c.colour, append(objects, c.warnings)...)
}
