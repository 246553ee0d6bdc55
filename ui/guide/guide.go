// Package guide always says the next step: four stations in a ribbon, a small
// drawing of the hand that rings the wanted point, and a sentence that says how
// to find it on skin.
//
//	g := guide.New()
//	g.OnStep = func(step marking.Step) { ... } // a station was chosen
//	g.OnSkip = func() { ... }                  // not there or not visible
//	beside := container.NewBorder(nil, nil, g.Content(), nil, photograph)
//	g.Show(state, wanted, more)
//
// It asks which hand it is, and from where it is seen, as long as the state does
// not say, if OnHand is set; it asks whether proposed webs are right if OnAccept
// is set. All calls are made on Fyne's own goroutine.
package guide

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
	"ogive/imaging/wording"
	"ogive/ui/look"
	"ogive/ui/marking"
)

// Guide is the column that says the next step.
type Guide struct {
	// OnStep is called when a station is chosen, OnSkip when the wanted point is
	// not there or not visible.
	OnStep func(marking.Step)
	OnSkip func()
	// OnHand is called with the hand and the view that the user chose.
	OnHand func(hand.Side, hand.View)
	// OnLength is called with the length of the ruler between its two points.
	OnLength func(plane.Millimetre)
	// OnMethod is called with what the scale is marked on and the card's size.
	OnMethod func(scale.Method, marking.CardSize)
	// OnAccept and OnRefuse answer whether proposed webs are right.
	OnAccept, OnRefuse func()
	// SkipKey and AcceptKey are the names of the keys that do the same as the
	// buttons, "" for none. Set them before the first Show.
	SkipKey, AcceptKey string

	state    marking.State
	wanted   *marking.Spot
	stations []*station

	whose   *canvas.Text
	change  *widget.Button
	measure *measure
	picture *picture
	choice  *choice
	head    *widget.Label
	how     *widget.Label
	skip    *widget.Button
	accept  *widget.Button
	refuse  *widget.Button
	root    *fyne.Container
	body    *body
	asking  bool // the user wants to change hand or view
	scaling bool // the user has chosen the first station
}

// body is the guide as a widget, which Fyne refreshes when the theme changes.
type body struct {
	widget.BaseWidget
	g *Guide
}

func (b *body) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(b.g.root) }

func (b *body) Refresh() {
	b.g.arrange()
	b.BaseWidget.Refresh()
}

// Content is what stands in the window.
func (g *Guide) Content() fyne.CanvasObject { return g.body }

// New is a guide that waits for its first Show.
func New() *Guide {
	g := &Guide{SkipKey: "N", AcceptKey: "Enter"}
	for _, step := range steps {
		g.stations = append(g.stations, newStation(step, func() {
			g.asking, g.scaling = false, step == marking.Scale
			g.arrange()
			if g.OnStep != nil {
				g.OnStep(step)
			}
		}))
	}
	g.whose = canvas.NewText("", nil)
	g.whose.TextStyle.Bold = true
	g.change = widget.NewButton(lang.L("Change"), func() { g.asking = !g.asking; g.arrange() })
	g.change.Importance = widget.LowImportance
	g.measure = newMeasure()
	g.picture = newPicture()
	g.choice = newChoice(func(s hand.Side, v hand.View) {
		g.asking = false
		if g.OnHand != nil {
			g.OnHand(s, v)
		}
	})
	g.head = widget.NewLabelWithStyle("", fyne.TextAlignLeading, fyne.TextStyle{Bold: true})
	g.head.SizeName = theme.SizeNameSubHeadingText
	g.how = widget.NewLabel("")
	g.head.Wrapping, g.how.Wrapping = fyne.TextWrapWord, fyne.TextWrapWord
	g.skip = widget.NewButtonWithIcon("", look.Icon(look.IconSkip), func() {
		if g.OnSkip != nil {
			g.OnSkip()
		}
	})
	g.accept = widget.NewButton("", func() {
		if g.OnAccept != nil {
			g.OnAccept()
		}
	})
	g.accept.Importance = widget.HighImportance
	g.refuse = widget.NewButton(lang.L("Take them away"), func() {
		if g.OnRefuse != nil {
			g.OnRefuse()
		}
	})
	g.build()
	g.body = &body{g: g}
	g.body.ExtendBaseWidget(g.body)
	g.arrange()
	return g
}

func (g *Guide) build() {
	ribbon := container.NewGridWithColumns(len(g.stations))
	for _, s := range g.stations {
		ribbon.Add(s)
	}
	top := container.NewVBox(ribbon, container.NewBorder(nil, nil, nil, g.change, container.NewPadded(g.whose)), g.measure)
	bottom := container.NewVBox(container.New(layout.NewCustomPaddedVBoxLayout(-8), g.head, g.how), g.accept, g.refuse, g.skip)
	g.root = container.New(column{}, top, container.NewStack(g.picture, g.choice), bottom)
}

// Show says what is wanted next in s; more is false when nothing is.
func (g *Guide) Show(s marking.State, wanted marking.Spot, more bool) {
	moved := g.wanted == nil || !more || wanted != *g.wanted
	g.state, g.wanted = s, nil
	if more {
		g.wanted = &wanted
	}
	if moved && more && wanted.Step() != marking.Scale {
		g.scaling = false
	}
	g.arrange()
}

// arrange brings all parts up to date with the state.
func (g *Guide) arrange() {
	known := g.state.Side != 0 && g.state.View != 0
	for _, st := range g.stations {
		done, of := 0, 0
		if known {
			done, of = g.state.Progress(st.step)
		}
		st.show(standing{known, done, of, st.step == marking.Scale && missing(g.state)}, known && g.wanted != nil && g.wanted.Step() == st.step)
	}
	asks := g.OnHand != nil && (g.asking || !known)
	show(g.change, known && g.OnHand != nil)
	g.whose.Text = ""
	if known {
		g.whose.Text = wording.Photograph(g.state.Side, g.state.View)
	}
	g.whose.Color, g.whose.TextSize = look.Colour(theme.ColorNameForeground), look.Size(theme.SizeNameText)
	g.whose.Refresh()
	g.measure.onLength, g.measure.onMethod = g.OnLength, g.OnMethod
	measures := known && !asks && (g.OnLength != nil || g.OnMethod != nil)
	measures = measures && (g.scaling || missing(g.state) || g.wanted != nil && g.wanted.Step() == marking.Scale)
	show(g.measure, measures)
	if measures {
		g.measure.show(g.state)
	}
	show(g.choice, asks)
	show(g.picture, !asks && known)
	switch {
	case asks:
		g.choice.mark(g.state.Side, g.state.View)
	case known:
		g.picture.show(g.state, g.wanted)
	}
	g.say(known, asks)
	g.root.Refresh()
}

// say sets the words and the buttons that go with them.
func (g *Guide) say(known, asks bool) {
	proposed := known && !asks && len(g.state.Proposed) > 0 && g.OnAccept != nil
	wanted := known && !asks && !proposed && g.wanted != nil
	var w words
	switch {
	case asks, !known:
		w = sayHand()
	case proposed:
		w = sayProposed()
	case wanted:
		w = sayWanted(g.state, *g.wanted)
	default:
		w = sayDone(g.state)
	}
	setText(g.head, w.head)
	setText(g.how, w.how)
	show(g.skip, wanted)
	show(g.accept, proposed)
	show(g.refuse, proposed && g.OnRefuse != nil)
	setLabel(g.skip, withKey(lang.L("Not there or not visible"), g.SkipKey))
	setLabel(g.accept, withKey(lang.L("They are right"), g.AcceptKey))
}

func withKey(text, key string) string {
	if key == "" {
		return text
	}
	return text + "  (" + key + ")"
}

func show(o fyne.CanvasObject, visible bool) {
	if visible {
		o.Show()
		return
	}
	o.Hide()
}

func setText(l *widget.Label, text string) {
	if l.Text != text {
		l.SetText(text)
	}
}

func setLabel(b *widget.Button, text string) {
	if b.Text != text {
		b.SetText(text)
	}
}

// column stands three parts over each other; the middle one, the picture, takes
// what the others leave, up to a square.
type column struct{}

func (column) MinSize(parts []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	for _, p := range parts {
		m := p.MinSize()
		size = fyne.NewSize(max(size.Width, m.Width), size.Height+m.Height)
	}
	return size.Max(fyne.NewSize(look.Size(look.Column), 0)).Add(fyne.NewSize(0, 2*look.Size(look.Gap)))
}

func (column) Layout(parts []fyne.CanvasObject, size fyne.Size) {
	gap := look.Size(look.Gap)
	parts[2].Resize(fyne.NewSize(size.Width, parts[2].MinSize().Height))
	y := float32(0)
	for i, p := range parts {
		h := p.MinSize().Height
		if i == 1 {
			spare := size.Height - parts[0].MinSize().Height - parts[2].MinSize().Height - 2*gap
			h = min(max(h, spare), size.Width)
		}
		p.Move(fyne.NewPos(0, y))
		p.Resize(fyne.NewSize(size.Width, h))
		y += h + gap
	}
}
