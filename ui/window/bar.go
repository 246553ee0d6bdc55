package window

import (
	"fmt"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
	"ogive/ui/look"
	"ogive/ui/marking"
)

// bar is the row over the photograph: which hand it is, from where it is seen
// and what the scale is marked on, always in sight; then the commands.
type bar struct {
	row              fyne.CanvasObject
	back             *widget.Button // to the case, for a photograph of a casebook
	side, view       *choice
	method           *widget.Select
	length           *numberEntry
	width, height    *numberEntry
	ruler, otherCard *fyne.Container
	scale            *fyne.Container // method and what belongs to it
	undo, redo       *widget.Button
	showing          bool // what is set now comes from the state, not from the user
	methods          []string
}

var (
	sides = []hand.Side{hand.Left, hand.Right}
	views = []hand.View{hand.Dorsal, hand.Palmar, hand.WebView}
)

func (w *Window) buildBar() {
	b := &bar{}
	w.bar = b
	b.side = newChoice([]string{lang.L("Left"), lang.L("Right")}, func(i int) {
		w.tellHand(sides[i], w.viewOr(hand.Dorsal))
	})
	b.view = newChoice([]string{lang.L("Back"), lang.L("Palm"), lang.L("Into the web")}, func(i int) {
		if side := w.sideOrAsk(); side != 0 {
			w.tellHand(side, views[i])
		}
	})
	b.methods = []string{lang.L("Ruler"), lang.L("Bank card"), lang.L("Other card")}
	b.method = widget.NewSelect(b.methods, func(string) { w.chooseMethod(true) })
	b.length = newNumberEntry(lang.L("length"), func(mm float64) { w.tellLength(plane.Millimetre(mm)) })
	card := func(float64) { w.chooseMethod(false) }
	b.width, b.height = newNumberEntry(lang.L("width"), card), newNumberEntry(lang.L("height"), card)
	b.ruler = container.NewHBox(b.length, widget.NewLabel("mm"))
	b.otherCard = container.NewHBox(b.width, widget.NewLabel("×"), b.height, widget.NewLabel("mm"))

	b.scale = container.NewHBox(b.method, b.ruler, b.otherCard)
	planning := iconButton(look.IconPlan, w.planHere)
	b.undo = iconButton(look.IconUndo, w.undo)
	b.redo = iconButton(look.IconRedo, w.redo)
	commands := container.New(layout.NewCustomPaddedHBoxLayout(0), planning, b.undo, b.redo,
		iconButton(look.IconFit, func() { w.board.Fit(); w.keyboard.take() }), iconButton(look.IconPixel, func() { w.board.PixelForPixel(); w.keyboard.take() }),
		iconButton(look.IconPicture, w.askForPicture), iconButton(look.IconCopy, w.copyFigures))
	b.back = widget.NewButtonWithIcon("", look.Icon(look.IconCasebook), w.showCases)
	b.back.Hide()
	row := container.New(layout.NewCustomPaddedHBoxLayout(4), b.back, b.side.row, b.view.row, b.scale, layout.NewSpacer(), commands)
	b.row = newPlate(theme.ColorNameBackground, "", 0, container.NewVBox(container.New(layout.NewCustomPaddedLayout(4, 0, 6, 6), row), widget.NewSeparator()))
}

func iconButton(icon look.IconName, do func()) *widget.Button {
	b := widget.NewButtonWithIcon("", look.Icon(icon), do)
	b.Importance = widget.LowImportance
	return b
}

func (w *Window) viewOr(other hand.View) hand.View {
	if w.work != nil && w.work.State().View != 0 {
		return w.work.State().View
	}
	return other
}

// sideOrAsk is the side, or zero after asking for it: a side is never guessed.
func (w *Window) sideOrAsk() hand.Side {
	if !w.ready() {
		return 0
	}
	if s := w.work.State(); s.Side != 0 {
		return s.Side
	}
	w.asked = false
	w.refresh()
	return 0
}

// chooseMethod takes what the scale is marked on from the bar; anew says that the
// kind was chosen, not the size of a card typed.
func (w *Window) chooseMethod(anew bool) {
	b := w.bar
	if b.showing || !w.ready() {
		return
	}
	switch b.method.SelectedIndex() {
	case 0:
		w.tellMethod(scale.ByRuler, w.work.State().Card)
	case 1:
		w.tellMethod(scale.ByCard, marking.BankCard)
	case 2:
		b.ruler.Hide()
		b.otherCard.Show()
		b.scale.Refresh()
		width, ok := b.width.number()
		height, also := b.height.number()
		if ok && also {
			w.tellMethod(scale.ByCard, marking.CardSize{Width: plane.Millimetre(width), Height: plane.Millimetre(height)})
		} else if anew {
			w.win.Canvas().Focus(b.width)
		}
	}
}

// show brings the bar to the state.
func (b *bar) show(s marking.State, undo, redo string) {
	b.showing = true
	defer func() { b.showing = false }()
	b.side.show(indexOf(sides, s.Side))
	b.view.show(indexOf(views, s.View))
	b.ruler.Hide()
	b.otherCard.Hide()
	switch {
	case s.Method != scale.ByCard:
		b.method.SetSelectedIndex(0)
		b.ruler.Show()
		b.length.set(float64(s.Length))
	case s.Card == marking.BankCard:
		b.method.SetSelectedIndex(1)
	default:
		b.method.SetSelectedIndex(2)
		b.otherCard.Show()
		b.width.set(float64(s.Card.Width))
		b.height.set(float64(s.Card.Height))
	}
	b.scale.Refresh()
	b.row.Refresh()
	enable(b.undo, undo != "")
	enable(b.redo, redo != "")
}

func enable(b fyne.Disableable, on bool) {
	if on {
		b.Enable()
	} else {
		b.Disable()
	}
}

func indexOf[T comparable](list []T, one T) int {
	for i, x := range list {
		if x == one {
			return i
		}
	}
	return -1
}

// numberEntry is a short field for a length in millimetres; what is typed counts
// on Enter or when another thing is clicked.
type numberEntry struct {
	widget.Entry
	onNumber func(float64)
	told     string // what was typed when it counted last
	typing   bool
}

func newNumberEntry(place string, onNumber func(float64)) *numberEntry {
	e := &numberEntry{onNumber: onNumber}
	e.ExtendBaseWidget(e)
	e.PlaceHolder = place
	e.OnSubmitted = func(string) { e.tell() }
	return e
}

// MinSize is wide enough for a length.
func (e *numberEntry) MinSize() fyne.Size {
	e.ExtendBaseWidget(e)
	return fyne.NewSize(84, e.Entry.MinSize().Height)
}

// FocusGained is called by Fyne.
func (e *numberEntry) FocusGained() {
	e.typing = true
	e.Entry.FocusGained()
}

// FocusLost makes what was typed count.
func (e *numberEntry) FocusLost() {
	e.typing = false
	e.Entry.FocusLost()
	if e.Text != e.told {
		e.tell()
	}
}

func (e *numberEntry) tell() {
	e.told = e.Text
	if mm, ok := e.number(); ok {
		e.onNumber(mm)
	}
}

// number is what is typed, with a point or a comma.
func (e *numberEntry) number() (float64, bool) {
	mm, err := strconv.ParseFloat(strings.Replace(strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(e.Text), "mm")), ",", ".", 1), 64)
	return mm, err == nil && mm > 0 && mm <= longest
}

// longest is the longest ruler in millimetres.
const longest = 1000

func plainNumber(mm float64) string { return fmt.Sprintf("%g", mm) }

// set shows a length, unless another one is being typed.
func (e *numberEntry) set(mm float64) {
	if e.typing && e.Text != e.told {
		return
	}
	text := ""
	if mm > 0 {
		text = plainNumber(mm)
	}
	e.told = text
	if e.Text != text {
		e.SetText(text)
	}
}
