package round

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"

	"ogive/geometry/hand"
	"ogive/imaging/palette"
)

// legend says what the lines on the photograph are, each beside a piece of it.
type legend struct {
	object *fyne.Container
}

func newLegend() *legend { return &legend{object: container.New(layout.NewCustomPaddedVBoxLayout(-6))} }

// show lists what is drawn over the picture in hand.
func (l *legend) show(t *taking) {
	l.object.RemoveAll()
	d := t.feedback.Drawing
	truth := lang.L("the truth: dash and dot")
	if of := t.picture.Truth; !of.Exact {
		truth = lang.L("as {{.Observer}} has marked it: dash and dot", map[string]any{"Observer": of.By})
	}
	l.add(newSample(palette.Truth, dashAndDot), truth)
	if len(d.Answered) > 0 {
		l.add(newSample(palette.Zigzag, unbroken), lang.L("your marks: unbroken"))
	}
	if t.work != nil && t.picture.Truth.View != hand.WebView {
		l.add(newSample(palette.Plan, lozenge), lang.L("true joints and crowns: diamonds"))
	}
	l.object.Refresh()
}

func (l *legend) add(sample fyne.CanvasObject, words string) {
	l.object.Add(container.NewBorder(nil, nil, container.NewCenter(sample), nil, caption(words)))
}

// stroke is how a piece of a line looks: lengths of pen down and up by turns.
type stroke []float32

var (
	unbroken   = stroke{44, 0}
	dashAndDot = stroke{10, 5, 2, 5}
	lozenge    = stroke(nil)
)

const sampleWidth, sampleHeight = 44, 14

// newSample is a piece of a line on a ground like that of a photograph, on which
// its colour was chosen.
func newSample(ink color.Color, s stroke) fyne.CanvasObject {
	ground := canvas.NewRectangle(palette.Ink)
	ground.CornerRadius = 3
	ground.Resize(fyne.NewSize(sampleWidth+8, sampleHeight))
	parts := container.NewWithoutLayout(ground)
	if s == nil {
		for i := range 4 {
			parts.Add(side(ink, i))
		}
	}
	for x, n := float32(0), 0; s != nil && x < sampleWidth; n++ {
		piece := s[n%len(s)]
		if n%2 == 0 {
			parts.Add(line(ink, fyne.NewPos(4+x, sampleHeight/2), fyne.NewPos(4+min(x+piece, sampleWidth), sampleHeight/2)))
		}
		x += piece
	}
	return container.New(fixedSize{sampleWidth + 8, sampleHeight}, parts)
}

// side is one of the four sides of a diamond.
func side(ink color.Color, i int) *canvas.Line {
	const r = 5
	corners := [4]fyne.Position{{X: 0, Y: -r}, {X: r, Y: 0}, {X: 0, Y: r}, {X: -r, Y: 0}}
	middle := fyne.NewPos(sampleWidth/2+4, sampleHeight/2)
	return line(ink, middle.Add(corners[i]), middle.Add(corners[(i+1)%4]))
}

func line(ink color.Color, from, to fyne.Position) *canvas.Line {
	l := canvas.NewLine(ink)
	l.StrokeWidth, l.Position1, l.Position2 = 2.2, from, to
	return l
}

// fixedSize is a layout for things that have their places already.
type fixedSize struct{ width, height float32 }

// MinSize is called by Fyne.
func (f fixedSize) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(f.width, f.height) }

// Layout is called by Fyne.
func (f fixedSize) Layout([]fyne.CanvasObject, fyne.Size) {}
