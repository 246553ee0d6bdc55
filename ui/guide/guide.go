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
// All calls are made on Fyne's own goroutine.
package guide

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

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
	// SkipKey is the name of the key that does the same as the button, "" for
	// none. Set it before the first Show.
	SkipKey string

	state    marking.State
	wanted   *marking.Spot
	stations []*station

	whose   *canvas.Text
	picture *picture
	head    *widget.Label
	how     *widget.Label
	skip    *widget.Button
	root    *fyne.Container
	body    *body
}

// body is the guide as a widget, which Fyne refreshes when the theme changes.
type body struct {
	widget.BaseWidget
	g *Guide
}

func (b *body) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(b.g.root) }

func (b *body) Refresh() {
	b.g.colour()
	b.BaseWidget.Refresh()
}

// Content is what stands in the window.
func (g *Guide) Content() fyne.CanvasObject { return g.body }

// New is a guide that waits for its first Show.
func New() *Guide {
	g := &Guide{SkipKey: "S"}
	for _, step := range steps {
		g.stations = append(g.stations, newStation(step, func() {
			if g.OnStep != nil {
				g.OnStep(step)
			}
		}))
	}
	g.whose = canvas.NewText("", nil)
	g.whose.TextStyle.Bold = true
	g.picture = newPicture()
	g.head = widget.NewLabelWithStyle("", fyne.TextAlignLeading, fyne.TextStyle{Bold: true})
	g.head.SizeName = theme.SizeNameSubHeadingText
	g.how = widget.NewLabel("")
	g.head.Wrapping, g.how.Wrapping = fyne.TextWrapWord, fyne.TextWrapWord
	g.skip = widget.NewButtonWithIcon("", look.Icon(look.IconSkip), func() {
		if g.OnSkip != nil {
			g.OnSkip()
		}
	})
	g.build()
	g.body = &body{g: g}
	g.body.ExtendBaseWidget(g.body)
	g.colour()
	g.arrange()
	return g
}

func (g *Guide) build() {
	ribbon := container.NewGridWithColumns(len(g.stations))
	for _, s := range g.stations {
		ribbon.Add(s)
	}
	top := container.NewVBox(ribbon, container.NewPadded(g.whose))
	bottom := container.NewVBox(container.New(layout.NewCustomPaddedVBoxLayout(-8), g.head, g.how), g.skip)
	g.root = container.New(column{}, top, g.picture, bottom)
}

// Show says what is wanted next in s; more is false when nothing is.
func (g *Guide) Show(s marking.State, wanted marking.Spot, more bool) {
	g.state, g.wanted = s, nil
	if more {
		g.wanted = &wanted
	}
	g.arrange()
}

// colour takes the colours and sizes of the theme in use.
func (g *Guide) colour() {
	g.whose.Color, g.whose.TextSize = look.Colour(theme.ColorNameForeground), look.Size(theme.SizeNameText)
}

// arrange brings all parts up to date with the state.
func (g *Guide) arrange() {
	known := g.state.Side != 0 && g.state.View != 0
	for _, st := range g.stations {
		done, of := 0, 0
		if known {
			done, of = g.state.Progress(st.step)
		}
		st.show(standing{known, known && g.state.PassedOver(st.step), done, of, st.step == marking.Scale && g.state.LacksLength(), st.step == marking.Webs && len(g.state.Proposed) > 0}, known && g.wanted != nil && g.wanted.Step() == st.step)
	}
	whose := ""
	if known {
		whose = wording.Photograph(g.state.Side, g.state.View)
	}
	changed := g.whose.Text != whose
	if changed {
		g.whose.Text = whose
		g.whose.Refresh()
	}
	changed = show(g.picture, known && g.wanted != nil) || changed
	if known {
		g.picture.show(g.state, g.wanted)
	}
	if g.say(known) || changed {
		g.root.Refresh()
	}
}

// say sets the words and the button that goes with them, and reports whether any
// are other than before.
func (g *Guide) say(known bool) (changed bool) {
	var w words
	switch {
	case !known:
		w = sayHand()
	case g.wanted != nil:
		w = sayWanted(g.state, *g.wanted)
	case len(g.state.Proposed) > 0:
		w = sayProposed()
	default:
		w = sayDone(g.state)
	}
	for _, l := range []struct {
		label *widget.Label
		text  string
	}{{g.head, w.head}, {g.how, w.how}} {
		if l.label.Text != l.text {
			l.label.SetText(l.text)
			changed = true
		}
	}
	if text := withKey(lang.L("Not there or not visible"), g.SkipKey); g.skip.Text != text {
		g.skip.SetText(text)
	}
	return show(g.skip, known && g.wanted != nil) || changed
}

func withKey(text, key string) string {
	if key == "" {
		return text
	}
	return text + "  (" + key + ")"
}

// show reports whether that changed anything.
func show(o fyne.CanvasObject, visible bool) bool {
	if o.Visible() == visible {
		return false
	}
	if visible {
		o.Show()
	} else {
		o.Hide()
	}
	return true
}

// column stands three parts over each other; the middle one, the picture, takes
// what the others leave, up to a square.
type column struct{}

func (column) MinSize(parts []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	for _, p := range parts {
		if !p.Visible() {
			continue
		}
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
		if !p.Visible() {
			continue
		}
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
