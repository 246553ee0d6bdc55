package main

import (
	"fmt"
	"image"
	"image/color"
	"math"
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
type words []shape

// shape is how much of each pixel ink covers, 0 to 1, with one pixel that has none
// and one that has most.
type shape struct {
	size        image.Point
	cover       []float64
	bare, inked int
	order       []int // in which the pixels are compared
}

func newWords(t *testing.T, text string) words {
	t.Helper()
	paper := look.Theme(theme.VariantLight)
	test.NewTempApp(t).Settings().SetTheme(paper)
	var w words
	for _, size := range []fyne.ThemeSizeName{theme.SizeNameText, theme.SizeNameCaptionText, theme.SizeNameSubHeadingText, theme.SizeNameHeadingText} {
		for _, bold := range []bool{false, true} {
			line := canvas.NewText(text, color.Black)
			line.TextSize, line.TextStyle.Bold = look.Size(size), bold
			w = append(w, newShape(software.Render(line, paper)))
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
	for i := range s.size.X * s.size.Y {
		s.cover = append(s.cover, 1-grey(box.Min.X+i%s.size.X, box.Min.Y+i/s.size.X)/ground)
		if s.cover[i] > s.cover[s.inked] {
			s.inked = i
		}
		if s.cover[i] < s.cover[s.bare] {
			s.bare = i
		}
	}
	const strewn = 7919 // a prime: neighbours come far from each other
	n := len(s.cover)
	for i := range n {
		s.order = append(s.order, i*strewn%n)
	}
	return s
}

// on is where the words are seen within an area of the screen.
func (w words) on(p picture, area image.Rectangle) (image.Rectangle, bool) {
	g := p.grey()
	area = area.Intersect(g.Rect)
	for _, s := range w {
		for y := area.Min.Y; y+s.size.Y <= area.Max.Y; y++ {
			for x := area.Min.X; x+s.size.X <= area.Max.X; x++ {
				if s.at(g, y*g.Stride+x) {
					return image.Rectangle{Max: s.size}.Add(image.Pt(x, y)), true
				}
			}
		}
	}
	return image.Rectangle{}, false
}

// Words are seen where they stand out from the ground by so much, of 255, and where
// the pixels differ from what the words would show by no more, on the mean, than this
// part of it.
const (
	contrast = 30
	strange  = 0.1
)

// at reports whether the words are seen with their upper left corner at a pixel of
// the screen.
func (s shape) at(g *image.Gray, corner int) bool {
	shade := func(i int) float64 { return float64(g.Pix[corner+i/s.size.X*g.Stride+i%s.size.X]) }
	ground, ink := shade(s.bare), shade(s.inked)
	if math.Abs(ink-ground) < contrast {
		return false
	}
	const few = 60 // pixels that are looked at before anything is said
	enough := strange * math.Abs(ink-ground)
	var off float64
	for n, i := range s.order {
		off += math.Abs(shade(i) - ground - s.cover[i]/s.cover[s.inked]*(ink-ground))
		if off > enough*float64(max(n, few)) {
			return false
		}
	}
	return true
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
