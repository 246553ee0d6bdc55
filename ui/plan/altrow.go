package plan

import (
	"image"
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
	"github.com/fogleman/gg"

	"ogive/ui/flow"
	"ogive/ui/look"
)

// altRow is one alternative: a ring to choose it, its name to work on it. The one
// in hand is bold with a rail, the chosen one has a filled ring and says so.
type altRow struct {
	widget.BaseWidget
	take, choose          func()
	held, chosen, hovered bool
	name                  string
	ground, rail          *canvas.Rectangle
	ring                  *canvas.Raster
	title, said           *canvas.Text
}

var (
	_ fyne.Tappable      = (*altRow)(nil)
	_ desktop.Hoverable  = (*altRow)(nil)
	_ desktop.Cursorable = (*altRow)(nil)
)

const rowHeight, ringRoom = 38, 40

func newAltRow(take, choose func()) *altRow {
	a := &altRow{take: take, choose: choose, ground: canvas.NewRectangle(nil), rail: canvas.NewRectangle(nil), title: canvas.NewText("", nil), said: canvas.NewText("", nil)}
	a.said.Alignment = fyne.TextAlignTrailing
	a.ring = canvas.NewRaster(a.draw)
	a.ExtendBaseWidget(a)
	return a
}

func (a *altRow) show(name string, held, chosen bool) {
	if a.name == name && a.held == held && a.chosen == chosen {
		return
	}
	a.name, a.held, a.chosen = name, held, chosen
	a.paint()
}

func (a *altRow) paint() {
	a.place(a.Size().Width)
	a.Refresh()
}

func (a *altRow) colour() {
	a.ground.FillColor, a.ground.CornerRadius = color.Transparent, 4
	a.rail.FillColor = color.Transparent
	if a.held {
		a.ground.FillColor, a.rail.FillColor = look.Colour(look.Card), look.Colour(look.Accent)
	}
	a.ground.StrokeColor, a.ground.StrokeWidth = look.Colour(look.Hairline), 1
	if a.hovered {
		a.ground.StrokeColor = look.Colour(look.Accent)
	}
	a.title.Color, a.title.TextSize, a.title.TextStyle.Bold = look.Colour(theme.ColorNameForeground), look.Size(theme.SizeNameText), a.held
	a.said.Color, a.said.TextSize = look.Colour(look.SecondInk), look.Size(theme.SizeNameCaptionText)
	a.said.Text = ""
	if a.chosen {
		a.said.Text = lang.L("goes on the sheet")
	}
}

func (a *altRow) place(width float32) float32 {
	a.colour()
	flow.Put(a.ground, 0, 0, width, rowHeight)
	flow.Put(a.rail, 0, 0, 4, rowHeight)
	flow.Put(a.ring, 12, (rowHeight-20)/2, 20, 20)
	room := width - ringRoom - 10
	if a.said.Text != "" {
		room -= a.said.MinSize().Width + 8
	}
	a.title.Text = shortened(a.name, a.title.TextStyle, room)
	h := a.title.MinSize().Height
	flow.Put(a.title, ringRoom, (rowHeight-h)/2, room, h)
	h = a.said.MinSize().Height
	flow.Put(a.said, ringRoom, (rowHeight-h)/2, width-ringRoom-10, h)
	return rowHeight
}

// shortened is a name in the room there is.
func shortened(name string, style fyne.TextStyle, room float32) string {
	fits := func(s string) bool {
		return fyne.MeasureText(s, look.Size(theme.SizeNameText), style).Width <= room
	}
	if room <= 0 || fits(name) {
		return name
	}
	letters := []rune(name)
	for len(letters) > 1 && !fits(string(letters)+"…") {
		letters = letters[:len(letters)-1]
	}
	return string(letters) + "…"
}

func (a *altRow) draw(w, h int) image.Image {
	c := gg.NewContext(max(w, 1), max(h, 1))
	r := float64(min(w, h)) / 2
	c.DrawCircle(float64(w)/2, float64(h)/2, r*0.8)
	c.SetColor(look.Colour(theme.ColorNameForeground))
	c.SetLineWidth(r * 0.18)
	c.Stroke()
	if a.chosen {
		c.DrawCircle(float64(w)/2, float64(h)/2, r*0.45)
		c.SetColor(look.Colour(look.Accent))
		c.Fill()
	}
	return c.Image()
}

// Tapped chooses the alternative by its ring, and takes it in hand elsewhere.
func (a *altRow) Tapped(e *fyne.PointEvent) {
	if e != nil && e.Position.X < ringRoom {
		a.choose()
		return
	}
	a.take()
}

// MouseIn shows that it can be taken.
func (a *altRow) MouseIn(*desktop.MouseEvent) { a.hovered = true; a.paint() }

// MouseMoved does nothing.
func (a *altRow) MouseMoved(*desktop.MouseEvent) {}

// MouseOut is called by Fyne.
func (a *altRow) MouseOut() { a.hovered = false; a.paint() }

// Cursor is the hand that says: click.
func (a *altRow) Cursor() desktop.Cursor { return desktop.PointerCursor }

// CreateRenderer is called by Fyne.
func (a *altRow) CreateRenderer() fyne.WidgetRenderer {
	return flow.NewRenderer(a.place, a.colour, a.ground, a.rail, a.ring, a.title, a.said)
}
