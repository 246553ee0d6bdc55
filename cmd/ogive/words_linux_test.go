package main

import (
	"fmt"
	"image"
	"image/color"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/software"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"

	"ogive/ui/look"
)

// words are the beginning of a line as it is looked for on the screen: set in the
// window's own type, every size and weight of it, whatever their colour is.
type words struct {
	text   string
	shapes []shape
}

// shape is how much of each pixel ink covers, 0 to 1, with one pixel that has none
// and one that has most.
type shape struct {
	size        image.Point
	cover       []float64
	bare, inked image.Point
	order       []int // of pixels in which they are compared: those that tell most first
}

func newWords(t *testing.T, text string) words {
	t.Helper()
	test.NewTempApp(t)
	w := words{text: text}
	for _, size := range []fyne.ThemeSizeName{theme.SizeNameText, theme.SizeNameCaptionText, theme.SizeNameSubHeadingText, theme.SizeNameHeadingText} {
		for _, bold := range []bool{false, true} {
			fyne.CurrentApp().Settings().SetTheme(look.Theme(theme.VariantLight))
			line := canvas.NewText(text, color.Black)
			line.TextSize, line.TextStyle.Bold = look.Size(size), bold
			w.shapes = append(w.shapes, newShape(software.Render(line, look.Theme(theme.VariantLight))))
		}
	}
	return w
}

// newShape takes black words on a lighter ground, whose first pixel has none of
// them.
func newShape(img image.Image) shape {
	b := img.Bounds()
	grey := func(x, y int) float64 { return float64(color.GrayModel.Convert(img.At(x, y)).(color.Gray).Y) }
	ground := grey(b.Min.X, b.Min.Y)
	box := image.Rectangle{}
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			if grey(x, y) < ground-1 {
				box = box.Union(image.Rect(x, y, x+1, y+1))
			}
		}
	}
	s := shape{size: box.Size()}
	most, least := 0.0, 1.0
	for i := range s.size.X * s.size.Y {
		at := image.Pt(i%s.size.X, i/s.size.X)
		c := 1 - grey(box.Min.X+at.X, box.Min.Y+at.Y)/ground
		s.cover = append(s.cover, c)
		if c > most {
			most, s.inked = c, at
		}
		if c < least {
			least, s.bare = c, at
		}
	}
	const strewn = 7919 // a prime: neighbours come far from each other
	n := len(s.cover)
	for i := range n {
		s.order = append(s.order, i*strewn%n)
	}
	return s
}

// strange is the part of the contrast by which a pixel may differ, on the mean, from
// what the words would show there.
const strange = 0.1

// on is where the shape is seen within an area of the screen.
func (s shape) on(p picture, area image.Rectangle) (image.Rectangle, bool) {
	area = area.Intersect(p.Rect)
	for y := area.Min.Y; y+s.size.Y <= area.Max.Y; y++ {
		for x := area.Min.X; x+s.size.X <= area.Max.X; x++ {
			if s.at(p, x, y) {
				return image.Rectangle{Max: s.size}.Add(image.Pt(x, y)), true
			}
		}
	}
	return image.Rectangle{}, false
}

func (s shape) at(p picture, x, y int) bool {
	ground, ink := p.RGBAAt(x+s.bare.X, y+s.bare.Y), p.RGBAAt(x+s.inked.X, y+s.inked.Y)
	contrast := float64(unlike(ground, ink))
	if contrast < 40 {
		return false
	}
	most := s.cover[s.inked.Y*s.size.X+s.inked.X]
	var sum float64
	for n, i := range s.order {
		seen := p.RGBAAt(x+i%s.size.X, y+i/s.size.X)
		share := s.cover[i] / most
		sum += float64(unlike(seen, between(ground, ink, share))) / contrast
		if sum > strange*float64(max(n, 60)) {
			return false
		}
	}
	return true
}

// between is the colour that is so far from a to b.
func between(a, b color.RGBA, share float64) color.RGBA {
	mix := func(x, y uint8) uint8 { return uint8(float64(x) + share*(float64(y)-float64(x)) + 0.5) }
	return color.RGBA{mix(a.R, b.R), mix(a.G, b.G), mix(a.B, b.B), 255}
}

func (w words) on(p picture, area image.Rectangle) (image.Rectangle, bool) {
	for _, s := range w.shapes {
		if at, ok := s.on(p, area); ok {
			return at, true
		}
	}
	return image.Rectangle{}, false
}

// read waits until a line that begins so is on the screen, and gives its place.
func (d *desktop) read(text string) image.Rectangle {
	d.t.Helper()
	return d.readIn(text, image.Rect(0, 0, 1<<20, 1<<20))
}

func (d *desktop) readIn(text string, area image.Rectangle) image.Rectangle {
	d.t.Helper()
	w := newWords(d.t, text)
	var at image.Rectangle
	d.wait(fmt.Sprintf("a line on the screen begins with %q", text), func() (ok bool) {
		at, ok = w.on(d.look(), area)
		return ok
	})
	return at
}

// clickOn clicks on a button by its words, and takes the pointer off it.
func (r *running) clickOn(text string) {
	r.t.Helper()
	r.clickIn(text, image.Rect(0, 0, 1<<20, 1<<20))
}

func (r *running) clickIn(text string, area image.Rectangle) {
	r.t.Helper()
	r.readIn(text, area)
	r.still() // what moves while a page is built is clicked where it comes to rest
	at := r.readIn(text, area)
	r.clickAt(at.Min.Add(at.Max).Div(2))
}

// clickAt clicks where nothing need follow the pointer, and takes it away again.
func (r *running) clickAt(at image.Point) {
	r.t.Helper()
	r.clicks++
	r.must("mousemove", fmt.Sprint(at.X), fmt.Sprint(at.Y), "sleep", "0.1", "mousedown", "1", "sleep", "0.03", "mouseup", "1")
	r.aside()
}
