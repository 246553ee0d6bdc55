package timeline

import (
	"image"
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/chart"
	"ogive/imaging/wording"
	"ogive/ui/flow"
	"ogive/ui/look"
)

// chooser is a row of the case's webs, each drawn where it lies now, with its
// latest creep in words.
type chooser struct {
	object *fyne.Container
	row    *fyne.Container
	tiles  []*tile
	pick   func(int)
}

func newChooser(pick func(int)) *chooser {
	c := &chooser{row: container.New(layout.NewCustomPaddedHBoxLayout(8)), pick: pick}
	// Within the scroll there is room for the tiles' outlines.
	outlined := container.New(layout.NewCustomPaddedLayout(4, 4, 4, 4), c.row)
	c.object = container.New(layout.NewCustomPaddedLayout(0, 6, 0, 0), container.NewHScroll(outlined))
	return c
}

func (c *chooser) show(m Model) {
	c.tiles = nil
	c.row.RemoveAll()
	for i, w := range m.Webs {
		t := newTile(w, func() { c.pick(i) })
		c.tiles = append(c.tiles, t)
		c.row.Add(t)
	}
	// One web needs no choosing: the chart's title names it.
	flow.Visible(c.object, len(m.Webs) > 1)
}

func (c *chooser) mark(i int) {
	for n, t := range c.tiles {
		t.chosen = n == i
		t.Refresh()
	}
}

// tile is one web to choose.
type tile struct {
	widget.BaseWidget
	web                      Web
	do                       func()
	chosen, hovered, focused bool
}

var (
	_ fyne.Tappable      = (*tile)(nil)
	_ fyne.Focusable     = (*tile)(nil)
	_ desktop.Hoverable  = (*tile)(nil)
	_ desktop.Cursorable = (*tile)(nil)
)

func newTile(w Web, do func()) *tile {
	t := &tile{web: w, do: do}
	t.ExtendBaseWidget(t)
	return t
}

// words are what stands beside the drawing.
func (t *tile) words() (name, creep string) {
	name = wording.Sentence(lang.L("{{.Hand}} hand, {{.Web}}", map[string]any{"Hand": t.web.Side.String(), "Web": t.web.Web.String()}))
	if p, ok := t.web.Series.Latest(); ok {
		return name, wording.Sentence(chart.Creep(p))
	}
	return name, lang.L("No creep yet")
}

// Tapped chooses the web.
func (t *tile) Tapped(*fyne.PointEvent) { t.do() }

// TypedKey chooses the web.
func (t *tile) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeySpace, fyne.KeyReturn, fyne.KeyEnter:
		t.do()
	}
}

// TypedRune does nothing.
func (t *tile) TypedRune(rune) {}

// FocusGained shows that keys go here.
func (t *tile) FocusGained() { t.focused = true; t.Refresh() }

// FocusLost is called by Fyne.
func (t *tile) FocusLost() { t.focused = false; t.Refresh() }

// MouseIn shows that the tile can be tapped.
func (t *tile) MouseIn(*desktop.MouseEvent) { t.hovered = true; t.Refresh() }

// MouseMoved does nothing.
func (t *tile) MouseMoved(*desktop.MouseEvent) {}

// MouseOut is called by Fyne.
func (t *tile) MouseOut() { t.hovered = false; t.Refresh() }

// Cursor is called by Fyne.
func (t *tile) Cursor() desktop.Cursor { return desktop.PointerCursor }

// CreateRenderer is called by Fyne.
func (t *tile) CreateRenderer() fyne.WidgetRenderer {
	r := &tileRenderer{tile: t, ground: canvas.NewRectangle(nil), name: canvas.NewText("", nil), creep: canvas.NewText("", nil), tick: canvas.NewText("✓", nil)}
	r.arch = canvas.NewRaster(func(w, h int) image.Image { return archOf(t.web.Series).draw(w, h) })
	r.arch.SetMinSize(fyne.NewSize(54, 46))
	lines := container.New(layout.NewCustomPaddedVBoxLayout(2), r.name, r.creep)
	content := container.New(layout.NewCustomPaddedLayout(6, 6, 8, 14),
		container.New(layout.NewCustomPaddedHBoxLayout(10), container.NewCenter(r.arch), container.NewCenter(lines), container.NewCenter(r.tick)))
	r.WidgetRenderer = widget.NewSimpleRenderer(container.NewStack(r.ground, content))
	r.colour()
	return r
}

type tileRenderer struct {
	fyne.WidgetRenderer
	tile        *tile
	ground      *canvas.Rectangle
	arch        *canvas.Raster
	name, creep *canvas.Text
	tick        *canvas.Text // so that the chosen one is not told by colour alone
}

func (r *tileRenderer) colour() {
	name, creep := r.tile.words()
	r.name.Text, r.creep.Text = name, creep
	r.name.TextStyle.Bold = true
	r.name.TextSize, r.creep.TextSize = look.Size(theme.SizeNameText), look.Size(theme.SizeNameCaptionText)
	r.name.Color, r.creep.Color = look.Colour(theme.ColorNameForeground), look.Colour(look.SecondInk)
	r.tick.TextSize, r.tick.Color = look.Size(theme.SizeNameSubHeadingText), color.Transparent
	if r.tile.chosen {
		r.tick.Color = look.Colour(look.Accent)
	}
	r.ground.FillColor, r.ground.CornerRadius = look.Colour(look.Card), look.Size(theme.SizeNameInputRadius)
	r.ground.StrokeColor, r.ground.StrokeWidth = look.Colour(look.Hairline), 1
	if r.tile.hovered {
		r.ground.StrokeColor = look.Colour(look.SecondInk)
	}
	if r.tile.chosen || r.tile.focused {
		r.ground.StrokeColor, r.ground.StrokeWidth = look.Colour(look.Accent), 2
	}
	if r.tile.focused {
		r.ground.StrokeWidth = 3
	}
}

// Refresh takes the colours of the theme anew.
func (r *tileRenderer) Refresh() {
	r.colour()
	r.WidgetRenderer.Refresh()
	r.arch.Refresh()
}
