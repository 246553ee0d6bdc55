package guide

import (
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/plane"
	"ogive/geometry/scale"
	"ogive/ui/look"
	"ogive/ui/marking"
)

// measure asks what the scale is marked on, and how long that is.
type measure struct {
	widget.BaseWidget
	onLength func(plane.Millimetre)
	onMethod func(scale.Method, marking.CardSize)

	state   marking.State
	ground  *canvas.Rectangle
	method  *widget.RadioGroup
	ask     *widget.Label
	length  *widget.Entry
	width   *widget.Entry
	height  *widget.Entry
	trouble *widget.Label
	ruler   *fyne.Container
	card    *fyne.Container
	root    *fyne.Container
	filling bool // the program writes, not the user
}

// usualLengths are offered at one click, in millimetres.
var usualLengths = []plane.Millimetre{10, 20, 50, 100}

func newMeasure() *measure {
	m := &measure{ground: canvas.NewRectangle(nil)}
	m.method = widget.NewRadioGroup([]string{lang.L("Ruler"), lang.L("Card")}, func(string) { m.choose() })
	m.method.Horizontal, m.method.Required = true, true
	m.ask = widget.NewLabelWithStyle(lang.L("Millimetres between the two ticks"), fyne.TextAlignLeading, fyne.TextStyle{Bold: true})
	m.ask.Wrapping = fyne.TextWrapWord
	m.trouble = widget.NewLabel("")
	m.trouble.Wrapping = fyne.TextWrapWord
	m.trouble.Importance = widget.DangerImportance
	m.trouble.Hide()
	m.length, m.width, m.height = widget.NewEntry(), widget.NewEntry(), widget.NewEntry()
	m.length.OnSubmitted = func(text string) { m.take(text) }
	m.width.OnSubmitted = func(string) { m.takeCard() }
	m.height.OnSubmitted = func(string) { m.takeCard() }
	usual := container.NewGridWithColumns(len(usualLengths))
	for _, l := range usualLengths {
		usual.Add(widget.NewButton(number(l), func() {
			m.length.SetText(number(l))
			m.take(m.length.Text)
		}))
	}
	m.ruler = container.NewVBox(m.ask, container.NewGridWithColumns(2, m.length, widget.NewLabel(lang.L("mm, then Enter"))), usual)
	m.card = container.NewVBox(
		widget.NewLabelWithStyle(lang.L("Long and short side of the card, mm"), fyne.TextAlignLeading, fyne.TextStyle{Bold: true}),
		container.NewGridWithColumns(2, m.width, m.height))
	m.root = container.NewVBox(m.method, m.ruler, m.card, m.trouble)
	m.ExtendBaseWidget(m)
	return m
}

// missing reports whether the ruler is marked and its length is not known.
func missing(s marking.State) bool {
	if s.Method == scale.ByCard || s.Length > 0 {
		return false
	}
	done, of := s.Progress(marking.Scale)
	return of > 0 && done == of && !s.Skipped[marking.Spot{Kind: marking.ScalePoint}] && !s.Skipped[marking.Spot{Kind: marking.ScalePoint, N: 1}]
}

func (m *measure) show(s marking.State) {
	changed := s.Length != m.state.Length || s.Card != m.state.Card || s.Method != m.state.Method
	m.state = s
	byCard := s.Method == scale.ByCard
	show(m.method, m.onMethod != nil)
	show(m.ruler, !byCard && m.onLength != nil)
	show(m.card, byCard && m.onMethod != nil)
	m.colour()
	if !changed && m.method.Selected != "" {
		return
	}
	m.filling = true
	m.method.SetSelected(m.method.Options[0])
	if byCard {
		m.method.SetSelected(m.method.Options[1])
	}
	m.length.SetText("")
	if s.Length > 0 {
		m.length.SetText(number(s.Length))
	}
	m.width.SetText(number(s.Card.Width))
	m.height.SetText(number(s.Card.Height))
	m.filling = false
	m.say("")
}

func (m *measure) colour() {
	m.ground.FillColor = look.Colour(look.Card)
	if missing(m.state) {
		m.ground.FillColor = look.Colour(look.Notice)
	}
	m.ground.CornerRadius = look.Size(theme.SizeNameInputRadius)
	m.ground.Refresh()
}

func (m *measure) choose() {
	if m.filling || m.onMethod == nil {
		return
	}
	chosen := scale.ByRuler
	if m.method.Selected == m.method.Options[1] {
		chosen = scale.ByCard
	}
	if (chosen == scale.ByCard) != (m.state.Method == scale.ByCard) {
		m.onMethod(chosen, m.state.Card)
	}
}

// longest is the longest reference that fits beside a hand.
const longest = 1000

func (m *measure) take(text string) {
	l, ok := length(text)
	if !ok {
		m.say(lang.L("Write the length in millimetres, such as 50."))
		return
	}
	m.say("")
	if m.onLength != nil {
		m.onLength(l)
	}
}

func (m *measure) takeCard() {
	w, okW := length(m.width.Text)
	h, okH := length(m.height.Text)
	if !okW || !okH {
		m.say(lang.L("Write both sides in millimetres; a bank card has 85.6 and 53.98."))
		return
	}
	m.say("")
	if m.onMethod != nil {
		m.onMethod(scale.ByCard, marking.CardSize{Width: max(w, h), Height: min(w, h)})
	}
}

func (m *measure) say(trouble string) {
	m.trouble.SetText(trouble)
	show(m.trouble, trouble != "")
	m.Refresh()
}

// length is what was typed, with a point or a comma.
func length(text string) (plane.Millimetre, bool) {
	v, err := strconv.ParseFloat(strings.Replace(strings.TrimSpace(text), ",", ".", 1), 64)
	return plane.Millimetre(v), err == nil && v > 0 && v <= longest
}

func number(l plane.Millimetre) string { return strconv.FormatFloat(float64(l), 'f', -1, 64) }

func (m *measure) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(container.NewStack(m.ground, container.NewPadded(m.root)))
}
