package board

import (
	"image"
	"math"

	"golang.org/x/image/draw"

	"ogive/imaging/markshapes"
	"ogive/imaging/palette"
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

// What a label may cost that may also be left out: it may touch a line, and not
// hide a mark, an arch or another label.
const dearest = 6

// writer writes labels on a frame.
type writer struct {
	markshapes.Placer
	board *Board
	pen   *pen
}

// write puts a label beside q, unless it would hide more than it tells, and gives
// the place it has taken.
func (w *writer) write(q spot, text string, gap float64, must bool) markshapes.Box {
	if text == "" || !w.pen.sees(q, 0) {
		return markshapes.Box{}
	}
	words := w.words(text)
	size := words.Rect.Size()
	box, cost := w.Beside(q, gap, float64(size.X), float64(size.Y))
	if cost > dearest && !must {
		return markshapes.Box{}
	}
	w.set(box, words)
	return box
}

// writeAlong puts a label near the middle of what is seen of a line.
func (w *writer) writeAlong(path []spot, text string, gap float64) {
	if text == "" {
		return
	}
	var longest []spot
	for _, run := range w.pen.Seen(path) {
		if len(run) > len(longest) {
			longest = run
		}
	}
	words := w.words(text)
	size := words.Rect.Size()
	if box, cost := w.BesideLine(longest, gap, float64(size.X), float64(size.Y)); !math.IsInf(cost, 1) {
		w.set(box, words)
	}
}

func (w *writer) words(text string) *image.RGBA {
	return w.board.letters.words(text, letterSize*w.board.scale)
}

func (w *writer) set(box markshapes.Box, words *image.RGBA) {
	w.Take(box)
	corner := image.Pt(int(math.Round(box.Left)), int(math.Round(box.Top)))
	draw.Draw(w.pen.img, image.Rectangle{corner, corner.Add(words.Rect.Size())}, words, image.Point{}, draw.Over)
}
