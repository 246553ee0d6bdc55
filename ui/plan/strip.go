package plan

import (
	"image"
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
	"github.com/fogleman/gg"

	"ogive/ui/flow"
	"ogive/ui/look"
)

// strip is the row of tabs, each a sign over a word. Tabs that find no room go on
// in the next line.
type strip struct {
	widget.BaseWidget
	onTap  func(i int)
	tabs   []*tab
	holder *fyne.Container
}

var _ flow.Tall = (*strip)(nil)

func newStrip(onTap func(i int)) *strip {
	s := &strip{onTap: onTap, holder: &fyne.Container{}}
	s.ExtendBaseWidget(s)
	return s
}

func (s *strip) add(title string, sign fyne.CanvasObject) {
	i := len(s.tabs)
	t := newTab(title, sign, func() { s.onTap(i) })
	s.tabs = append(s.tabs, t)
	s.holder.Objects = append(s.holder.Objects, t)
	s.Refresh()
}

func (s *strip) choose(i int) {
	for n, t := range s.tabs {
		if t.chosen != (n == i) {
			t.chosen = n == i
			t.paint()
		}
	}
}

// HeightAt is called by flow: all tabs are as wide as the widest word, and share
// a line's room.
func (s *strip) HeightAt(width float32) float32 {
	widest := float32(1)
	for _, t := range s.tabs {
		widest = max(widest, t.least())
	}
	in := max(int(width/widest), 1)
	lines := (len(s.tabs) + in - 1) / in
	in = (len(s.tabs) + max(lines, 1) - 1) / max(lines, 1)
	cell := min(width/float32(max(in, 1)), 108)
	for i, t := range s.tabs {
		flow.Put(t, cell*float32(i%in), tabHeight*float32(i/in), cell, tabHeight)
	}
	h := tabHeight * float32(lines)
	flow.Put(s.holder, 0, 0, width, h)
	return h + 6
}

// CreateRenderer is called by Fyne.
func (s *strip) CreateRenderer() fyne.WidgetRenderer {
	return flow.NewRenderer(s.HeightAt, nil, s.holder)
}

const tabHeight, signSide = 52, 22

// tab is one of them; the one that is open is underlined and bold.
type tab struct {
	widget.BaseWidget
	do              func()
	chosen, hovered bool
	sign            fyne.CanvasObject
	ground, line    *canvas.Rectangle
	word            *canvas.Text
}

var (
	_ fyne.Tappable     = (*tab)(nil)
	_ desktop.Hoverable = (*tab)(nil)
)

func newTab(title string, sign fyne.CanvasObject, do func()) *tab {
	t := &tab{do: do, sign: sign, ground: canvas.NewRectangle(nil), line: canvas.NewRectangle(nil), word: canvas.NewText(title, nil)}
	t.word.Alignment = fyne.TextAlignCenter
	t.ExtendBaseWidget(t)
	t.colour()
	return t
}

// least is the width that the word needs in bold.
func (t *tab) least() float32 {
	return fyne.MeasureText(t.word.Text, look.Size(theme.SizeNameCaptionText), fyne.TextStyle{Bold: true}).Width + 10
}

func (t *tab) colour() {
	t.word.TextSize = look.Size(theme.SizeNameCaptionText)
	t.word.TextStyle.Bold = t.chosen
	t.word.Color = look.Colour(look.SecondInk)
	t.ground.FillColor, t.line.FillColor = color.Transparent, look.Colour(look.Hairline)
	if t.chosen {
		t.word.Color, t.line.FillColor = look.Colour(theme.ColorNameForeground), look.Colour(look.Accent)
	}
	if t.hovered {
		t.ground.FillColor = look.Colour(look.Card)
	}
}

func (t *tab) paint() {
	t.colour()
	t.place(t.Size().Width)
	t.Refresh()
}

func (t *tab) place(width float32) float32 {
	flow.Put(t.ground, 0, 0, width, tabHeight)
	flow.Put(t.sign, (width-signSide)/2, 5, signSide, signSide)
	flow.Put(t.word, 0, signSide+6, width, t.word.MinSize().Height)
	thick := float32(1)
	if t.chosen {
		thick = 3
	}
	flow.Put(t.line, 0, tabHeight-thick, width, thick)
	return tabHeight
}

// Tapped opens the tab.
func (t *tab) Tapped(*fyne.PointEvent) { t.do() }

// MouseIn shows that it can be opened.
func (t *tab) MouseIn(*desktop.MouseEvent) { t.hovered = true; t.paint() }

// MouseMoved does nothing.
func (t *tab) MouseMoved(*desktop.MouseEvent) {}

// MouseOut is called by Fyne.
func (t *tab) MouseOut() { t.hovered = false; t.paint() }

// CreateRenderer is called by Fyne.
func (t *tab) CreateRenderer() fyne.WidgetRenderer {
	return flow.NewRenderer(t.place, t.colour, t.ground, t.sign, t.word, t.line)
}

// signOf is a small drawing in the colour of text, on a square of 22.
func signOf(draw func(c *gg.Context)) fyne.CanvasObject {
	return canvas.NewRaster(func(w, h int) image.Image {
		c := gg.NewContext(max(w, 1), max(h, 1))
		c.Scale(float64(w)/signSide, float64(h)/signSide)
		c.SetColor(look.Colour(theme.ColorNameForeground))
		c.SetLineWidth(1.8 * float64(w) / signSide)
		c.SetLineCapRound()
		c.SetLineJoinRound()
		draw(c)
		c.Stroke()
		return c.Image()
	})
}

// drawArch is a pointed arch between two borders.
func drawArch(c *gg.Context) {
	c.MoveTo(5, 3)
	c.LineTo(5, 9)
	c.QuadraticTo(5, 15, 11, 19)
	c.QuadraticTo(17, 15, 17, 9)
	c.LineTo(17, 3)
}

// drawFlap is an outline open at its base.
func drawFlap(c *gg.Context) {
	c.MoveTo(4, 19)
	c.LineTo(6, 4)
	c.LineTo(16, 4)
	c.LineTo(18, 19)
}

// drawZigzag is an incision to and fro.
func drawZigzag(c *gg.Context) {
	c.MoveTo(6, 2)
	c.LineTo(17, 7)
	c.LineTo(5, 12)
	c.LineTo(17, 17)
	c.LineTo(10, 20)
}
