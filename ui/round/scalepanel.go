package round

import (
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/plane"
	"ogive/geometry/scale"
	"ogive/ui/choice"
	"ogive/ui/marking"
)

// scalePanel asks what the scale is marked on, and how long the ruler is between
// its two points. It is there only while the scale is in hand.
type scalePanel struct {
	blind  *blind
	on     *choice.Choice
	ask    *widget.Label
	length *widget.Entry
	usual  *choice.Choice
	typing *fyne.Container
	object *card
}

// usualLengths are what rulers are usually marked on, in millimetres.
var usualLengths = []float64{10, 20, 30, 50, 100}

func newScalePanel(b *blind) *scalePanel {
	p := &scalePanel{blind: b, on: choice.New(lang.L("Ruler"), lang.L("Bank card"))}
	p.on.OnChosen = p.tellMethod
	p.ask = strong(lang.L("How many millimetres lie between the two points?"))
	p.length = widget.NewEntry()
	p.length.OnSubmitted = func(text string) { p.tellTyped(text) }
	var names []string
	for _, mm := range usualLengths {
		names = append(names, strconv.FormatFloat(mm, 'f', -1, 64))
	}
	p.usual = choice.New(names...)
	p.usual.OnChosen = func(i int) {
		if i >= 0 {
			p.tellLength(plane.Millimetre(usualLengths[i]))
		}
	}
	set := widget.NewButton(lang.L("Set"), func() { p.tellTyped(p.length.Text) })
	p.typing = container.NewBorder(nil, nil, nil, container.NewHBox(widget.NewLabel("mm"), set), p.length)
	p.object = newCard(strong(lang.L("What lies beside the hand?")), p.on, p.ask, p.usual, p.typing)
	p.object.ground, p.object.gap = theme.ColorNameBackground, 4 // on which a button is seen
	return p
}

func (p *scalePanel) begin() { p.length.SetText("") }

// show is there while the scale is wanted or lacks its length.
func (p *scalePanel) show(s marking.State) {
	spot, more := p.blind.wanted()
	lacking := s.LacksLength()
	wanted := lacking || more && spot.Step() == marking.Scale
	card := 0
	if s.Method == scale.ByCard {
		card = 1
	}
	p.on.Set(card)
	before, asked := p.object.Visible(), p.ask.Visible()
	visible(p.object, wanted)
	for _, o := range []fyne.CanvasObject{p.ask, p.usual, p.typing} {
		visible(o, lacking)
	}
	if before != wanted || asked != lacking {
		p.usual.Set(-1)
		p.object.Refresh()
	}
	if lacking && (!asked || !before) {
		p.blind.room.win.Canvas().Focus(p.length)
	}
}

func (p *scalePanel) tellMethod(i int) {
	b := p.blind
	if !b.inHand() || i < 0 {
		return
	}
	method := scale.ByRuler
	if i == 1 {
		method = scale.ByCard
	}
	b.finished(b.work().SetMethod(method, marking.BankCard))
	b.room.keyboard.take()
}

// tellTyped takes a typed length; what is no length is left to be mended.
func (p *scalePanel) tellTyped(text string) {
	mm, err := strconv.ParseFloat(strings.Replace(strings.TrimSpace(text), ",", ".", 1), 64)
	if err != nil || mm < 1 || mm > 1000 {
		p.blind.room.table.say(lang.L("A length of 1 to 1000 mm is needed, such as 50."))
		return
	}
	p.tellLength(plane.Millimetre(mm))
}

func (p *scalePanel) tellLength(length plane.Millimetre) {
	if b := p.blind; b.inHand() {
		b.finished(b.work().SetLength(length))
		b.room.keyboard.take()
	}
}
