package plan

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"ogive/ui/flow"
)

// line is things beside each other, those that find no room in the next line.
type line struct {
	widget.BaseWidget
	things []fyne.CanvasObject
}

var _ flow.Tall = (*line)(nil)

func newLine(things ...fyne.CanvasObject) *line {
	l := &line{things: things}
	l.ExtendBaseWidget(l)
	return l
}

// HeightAt is called by flow.
func (l *line) HeightAt(width float32) float32 {
	const between = 4
	x, y, high := float32(0), float32(0), float32(0)
	for _, o := range l.things {
		if o.Visible() {
			high = max(high, o.MinSize().Height)
		}
	}
	for _, o := range l.things {
		if !o.Visible() {
			continue
		}
		least := o.MinSize()
		w := min(least.Width, width)
		if x > 0 && x+w > width {
			x, y = 0, y+high+between
		}
		flow.Put(o, x, y+(high-least.Height)/2, w, least.Height)
		x += w + between
	}
	return y + high + 6
}

// CreateRenderer is called by Fyne.
func (l *line) CreateRenderer() fyne.WidgetRenderer {
	return flow.NewRenderer(l.HeightAt, nil, l.things...)
}
