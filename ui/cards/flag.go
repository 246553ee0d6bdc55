package cards

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
	"github.com/fogleman/gg"

	"ogive/geometry/norms"
	"ogive/imaging/wording"
	"ogive/ui/look"
)

// state is how a verdict is shown.
type state int

// The states, each with a shape, a cut of letters and a colour of its own.
const (
	amiss    state = iota + 1 // a solid flag, bold
	doubtful                  // a dashed outline, slanted
	well                      // a tick, plain
)

func stateOf(v norms.Verdict) state {
	switch {
	case !v.Certain:
		return doubtful
	case v.Finding == norms.WithinLimits:
		return well
	}
	return amiss
}

var flagInk = map[state]fyne.ThemeColorName{amiss: look.OnAmiss, doubtful: look.Doubtful, well: look.Well}

// flag is one verdict with its limit.
type flag struct {
	widget.BaseWidget
	verdict norms.Verdict
	ground  *canvas.Raster
	words   *canvas.Text
	limit   *canvas.Text
}

func newFlag() *flag {
	f := &flag{words: canvas.NewText("", nil), limit: canvas.NewText("", nil)}
	f.ground = canvas.NewRaster(f.draw)
	f.ExtendBaseWidget(f)
	f.Hide()
	return f
}

// show reports nothing: a flag never changes its height.
func (f *flag) show(v norms.Verdict) {
	if f.verdict == v {
		return
	}
	before := stateOf(f.verdict)
	f.verdict = v
	f.colour()
	f.place(f.Size())
	f.words.Refresh()
	f.limit.Refresh()
	if stateOf(v) != before {
		f.ground.Refresh()
		f.Refresh()
	}
}

func (f *flag) colour() {
	s := stateOf(f.verdict)
	ink := look.Colour(flagInk[s])
	f.words.Text = wording.VerdictOf(f.verdict)
	f.limit.Text = lang.L("limit {{.Limit}}", map[string]any{"Limit": wording.Limit(f.verdict)})
	f.words.Color, f.limit.Color = ink, ink
	f.words.TextSize, f.limit.TextSize = look.Size(theme.SizeNameText), look.Size(theme.SizeNameCaptionText)
	f.words.TextStyle = fyne.TextStyle{Bold: s == amiss, Italic: s == doubtful}
	f.limit.TextStyle = fyne.TextStyle{Italic: s == doubtful}
}

func (f *flag) CreateRenderer() fyne.WidgetRenderer { return flagRenderer{f} }

// flagRenderer draws a flag, whose least size follows its words.
type flagRenderer struct{ f *flag }

const (
	flagPad    = 5
	flagIndent = 20
)

func (r flagRenderer) MinSize() fyne.Size {
	w, l := r.f.words.MinSize(), r.f.limit.MinSize()
	return fyne.NewSize(max(w.Width, l.Width)+2*flagIndent, w.Height+l.Height+2*flagPad)
}

func (r flagRenderer) Layout(size fyne.Size) { r.f.place(size) }

func (f *flag) place(size fyne.Size) {
	f.ground.Resize(size)
	x := float32(10)
	if stateOf(f.verdict) == well {
		x = flagIndent
	}
	y := float32(flagPad)
	for _, t := range []*canvas.Text{f.words, f.limit} {
		// The limit may come from a long source; it is written smaller rather
		// than over the edge.
		if w, room := t.MinSize().Width, size.Width-x-4; w > room && room > 0 {
			t.TextSize *= room / w
		}
		h := t.MinSize().Height
		put(t, x, y, size.Width-x, h)
		y += h
	}
}

func (r flagRenderer) Refresh() {
	r.f.colour()
	r.f.place(r.f.Size())
	for _, o := range r.Objects() {
		o.Refresh()
	}
}

func (r flagRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.f.ground, r.f.words, r.f.limit}
}

func (r flagRenderer) Destroy() {}

// draw draws the shape of the state, as on the saved picture.
func (f *flag) draw(w, h int) image.Image {
	c := gg.NewContext(max(w, 1), max(h, 1))
	if f.Size().Width <= 0 {
		return c.Image()
	}
	px := float64(w) / float64(f.Size().Width)
	right, bottom := float64(w), float64(h)
	switch stateOf(f.verdict) {
	case amiss:
		notch := 9 * px
		c.MoveTo(0, 0)
		c.LineTo(right, 0)
		c.LineTo(right-notch, bottom/2)
		c.LineTo(right, bottom)
		c.LineTo(0, bottom)
		c.ClosePath()
		c.SetColor(look.Colour(look.Amiss))
		c.Fill()
	case doubtful:
		c.SetDash(6*px, 4*px)
		c.DrawRoundedRectangle(px, px, right-2*px, bottom-2*px, 5*px)
		c.SetColor(look.Colour(look.Doubtful))
		c.SetLineWidth(1.5 * px)
		c.Stroke()
	case well:
		c.SetLineCapRound()
		c.SetLineJoinRound()
		c.MoveTo(3*px, 14*px)
		c.LineTo(7*px, 19*px)
		c.LineTo(15*px, 8*px)
		c.SetColor(look.Colour(look.Well))
		c.SetLineWidth(2.4 * px)
		c.Stroke()
	}
	return c.Image()
}
