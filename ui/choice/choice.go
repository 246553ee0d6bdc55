// Package choice shows a few answers beside each other, of which one holds or
// none does. The one that holds is filled and ticked.
//
//	hands := choice.New("Left", "Right", "Both")
//	hands.OnChosen = func(i int) { ... } // -1: taken back
//	hands.Set(0)
//
// Answers that find no room go on in the next line; see flow.Tall.
package choice

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"ogive/ui/flow"
)

// Choice is a row of answers.
type Choice struct {
	widget.BaseWidget
	// OnChosen is called when the user has chosen another answer.
	OnChosen func(i int)
	// Optional lets an answer be taken back by choosing it again.
	Optional bool
	// Chosen is the answer that holds, -1 for none. Change it by Set.
	Chosen int

	answers []*answer
}

var _ flow.Tall = (*Choice)(nil)

// New is a choice between answers, none of which holds yet.
func New(names ...string) *Choice {
	c := &Choice{Chosen: -1}
	for i, name := range names {
		c.answers = append(c.answers, newAnswer(name, func() { c.Choose(i) }))
	}
	c.ExtendBaseWidget(c)
	return c
}

// Choose does what a tap on the answer at i does.
func (c *Choice) Choose(i int) {
	if i == c.Chosen && !c.Optional {
		return
	}
	if i == c.Chosen {
		i = -1
	}
	c.Set(i)
	if c.OnChosen != nil {
		c.OnChosen(i)
	}
}

// Set makes the answer at i the one that holds, none if i is negative.
func (c *Choice) Set(i int) {
	c.Chosen = i
	for n, a := range c.answers {
		if a.chosen != (n == i) {
			a.chosen = n == i
			a.paint()
		}
	}
}

// Enable lets the user choose.
func (c *Choice) Enable() { c.disable(false) }

// Disable lets the user look only.
func (c *Choice) Disable() { c.disable(true) }

func (c *Choice) disable(on bool) {
	for _, a := range c.answers {
		a.disabled = on
		a.paint()
	}
}

// Disabled reports whether the user may only look.
func (c *Choice) Disabled() bool { return len(c.answers) > 0 && c.answers[0].disabled }

const between = 3

// HeightAt places the answers in lines of that width.
func (c *Choice) HeightAt(width float32) float32 {
	x, y, line := float32(0), float32(0), float32(0)
	for _, a := range c.answers {
		w := a.full()
		if x > 0 && x+w > width+0.5 {
			x, y, line = 0, y+line+between, 0
		}
		w = min(w, max(width, 1))
		h := a.HeightAt(w)
		flow.Put(a, x, y, w, h)
		line = max(line, h)
		x += w + between
	}
	return y + line
}

// CreateRenderer is called by Fyne.
func (c *Choice) CreateRenderer() fyne.WidgetRenderer { return renderer{c} }

type renderer struct{ c *Choice }

// MinSize is that of all answers in one line.
func (r renderer) MinSize() fyne.Size {
	var size fyne.Size
	for _, a := range r.c.answers {
		least := a.MinSize()
		size.Width += least.Width + between
		size.Height = max(size.Height, least.Height)
	}
	return fyne.NewSize(max(0, size.Width-between), size.Height)
}

func (r renderer) Layout(size fyne.Size) { r.c.HeightAt(size.Width) }
func (r renderer) Destroy()              {}

func (r renderer) Refresh() {
	for _, a := range r.c.answers {
		a.paint()
	}
}

func (r renderer) Objects() []fyne.CanvasObject {
	var out []fyne.CanvasObject
	for _, a := range r.c.answers {
		out = append(out, a)
	}
	return out
}
