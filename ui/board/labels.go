package board

import (
	"image"
	"math"
	"slices"

	"golang.org/x/image/draw"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/imaging/markshapes"
	"ogive/imaging/palette"
	"ogive/imaging/wording"
	"ogive/ui/marking"
)

// letterSize is the size of labels in units of Fyne's.
const letterSize = 12.5

// lettering makes pictures of words and keeps them.
type lettering struct {
	face markshapes.Face
	made map[string]*image.RGBA
}

func newLettering() *lettering { return &lettering{} }

// words is a picture of light letters in a dark casing, legible on any ground,
// in letters of size screen pixels.
func (l *lettering) words(text string, size float64) *image.RGBA {
	if l.face.Size != size {
		l.face, l.made = markshapes.Bold(size), map[string]*image.RGBA{}
	}
	img, ok := l.made[text]
	if !ok {
		rim, m := math.Ceil(l.face.Casing())+1, l.face.Metrics()
		img = image.NewRGBA(image.Rect(0, 0, int(math.Ceil(l.face.WidthOf(text))+2*rim), (m.Ascent+m.Descent).Ceil()+2*int(rim)))
		markshapes.WriteCased(img, l.face, palette.Paper, xy(rim, rim+float64(m.Ascent)/64), text)
		l.made[text] = img
	}
	return img
}

// labels names what is marked, in few words: each digit once, its joints by
// their letters, the selected mark in full.
func (b *Board) labels(p *pen, at map[marking.Spot]plane.PixelPoint) {
	var taken []image.Rectangle
	for _, q := range at {
		s := p.at(q)
		taken = append(taken, image.Rect(int(s.X), int(s.Y), int(s.X), int(s.Y)).Inset(int(-5*b.scale)))
	}
	slices.SortFunc(taken, func(a, b image.Rectangle) int {
		if a.Min.Y != b.Min.Y {
			return a.Min.Y - b.Min.Y
		}
		return a.Min.X - b.Min.X
	})
	write := func(q spot, text string, gap float64, must bool) {
		if text == "" || !p.sees(q, 0) {
			return
		}
		words := b.letters.words(text, letterSize*b.scale)
		box, free := beside(q, words.Rect.Size(), gap, taken, p.img.Rect)
		if !free && !must {
			return
		}
		taken = append(taken, box)
		draw.Draw(p.img, box, words, image.Point{}, draw.Over)
	}
	for _, h := range b.scene.Handles {
		write(p.at(h.At), h.Label, 12*b.scale, true)
	}
	for _, l := range b.scene.Lines {
		if q, ok := markshapes.Middle(p.path(l.Points)); ok {
			write(q, l.Label, 8*b.scale, true)
		}
	}
	if b.scene.Quiet {
		return
	}
	for _, m := range b.scene.Placed {
		write(p.at(m.At), b.label(m.Spot), b.gap(m.Spot), b.selected(m.Spot))
	}
}

func (b *Board) selected(s marking.Spot) bool {
	return b.scene.Selected != nil && *b.scene.Selected == s
}

// gap is how far from a mark its label stands.
func (b *Board) gap(s marking.Spot) float64 {
	if b.selected(s) {
		return 19 * b.scale
	}
	return 10 * b.scale
}

// label is what stands beside a mark.
func (b *Board) label(s marking.Spot) string {
	view := b.scene.View
	if b.selected(s) {
		return s.Name(view)
	}
	switch {
	case s.Kind == marking.JointPoint && s.Joint == hand.MCP:
		return s.Digit.String()
	case s.Kind == marking.JointPoint:
		return wording.Joint(s.Joint, view)
	case s.Kind == marking.SeedPoint && s.N == 1:
		return s.Web.String()
	}
	return ""
}

// beside is a place for a label around q, in the frame and on nothing that is
// taken; if there is none, the first place.
func beside(q spot, size image.Point, gap float64, taken []image.Rectangle, frame image.Rectangle) (box image.Rectangle, free bool) {
	w, h := float64(size.X)/2, float64(size.Y)/2
	for i, way := range []spot{xy(1, 0), xy(-1, 0), xy(0, 1), xy(0, -1), xy(0.7, 0.9), xy(-0.7, 0.9), xy(0.7, -0.9), xy(-0.7, -0.9)} {
		c := q.Add(xy(way.X*(gap+w), way.Y*(gap+h)))
		corner := image.Pt(int(math.Round(c.X-w)), int(math.Round(c.Y-h)))
		here := image.Rectangle{corner, corner.Add(size)}
		if i == 0 {
			box = here
		}
		if here.In(frame) && !slices.ContainsFunc(taken, here.Overlaps) {
			return here, true
		}
	}
	return box, false
}
