package plan

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/hand"
	"ogive/imaging/wording"
	"ogive/ui/choice"
	"ogive/ui/flow"
)

// webBar is the webs that are planned, of which one is in hand, and the way to
// plan another.
type webBar struct {
	widget.BaseWidget
	room    *Room
	shown   []hand.Web
	choice  *choice.Choice
	another *widget.Button
	holder  *fyne.Container
}

var _ flow.Tall = (*webBar)(nil)

func newWebBar(r *Room) *webBar {
	b := &webBar{room: r, choice: choice.New(), holder: &fyne.Container{}}
	b.another = widget.NewButtonWithIcon(lang.L("Another web"), theme.ContentAddIcon(), b.offer)
	b.another.Importance = widget.LowImportance
	b.ExtendBaseWidget(b)
	return b
}

// show brings the bar to the plan.
func (b *webBar) show() {
	var webs []hand.Web
	for _, w := range b.room.file.Webs {
		webs = append(webs, w.Web)
	}
	slices.Sort(webs)
	if b.room.left != nil && !slices.Equal(webs, b.shown) {
		b.rebuild(webs)
	}
	b.choice.Set(slices.Index(webs, b.room.web))
	if flow.Visible(b.another, len(webs) > 0 && len(webs) < len(hand.Webs)) && b.room.left != nil {
		b.room.left.Refresh()
	}
}

func (b *webBar) rebuild(webs []hand.Web) {
	b.shown = webs
	var names []string
	for _, w := range webs {
		names = append(names, wording.WebName(w))
	}
	b.choice = choice.New(names...)
	b.choice.OnChosen = func(i int) { b.room.take(webs[i]) }
	b.holder.Objects = []fyne.CanvasObject{b.choice}
	b.room.left.Refresh() // the bar may need another line
}

// take takes a web in hand.
func (r *Room) take(w hand.Web) {
	r.drop()
	r.hold(w)
	r.refresh()
	r.frame()
	r.keyboard.take()
}

// offer shows the webs that are not planned yet.
func (b *webBar) offer() {
	menu := fyne.NewMenu("")
	for _, w := range b.room.unplanned() {
		menu.Items = append(menu.Items, fyne.NewMenuItem(wording.WebName(w)+" ("+wording.WebDigits(w)+")", func() { b.room.planWeb(w) }))
	}
	at := fyne.CurrentApp().Driver().AbsolutePositionForObject(b.another)
	widget.ShowPopUpMenuAtPosition(menu, b.room.win.Canvas(), at.AddXY(0, b.another.Size().Height))
}

// unplanned are the webs that are not planned yet.
func (r *Room) unplanned() []hand.Web {
	var out []hand.Web
	for _, w := range hand.Webs {
		if r.file.Web(w) == nil {
			out = append(out, w)
		}
	}
	return out
}

// HeightAt is called by flow.
func (b *webBar) HeightAt(width float32) float32 {
	button := b.another.MinSize()
	room := width
	if b.another.Visible() {
		room -= button.Width + 8
	}
	h := flow.HeightAt(b.choice, room)
	flow.Put(b.choice, 0, 0, room, h)
	flow.Put(b.holder, 0, 0, room, h)
	flow.Put(b.another, min(b.choice.MinSize().Width+8, room), max(h-button.Height, 0)/2, button.Width, button.Height)
	return max(h, button.Height)
}

// CreateRenderer is called by Fyne.
func (b *webBar) CreateRenderer() fyne.WidgetRenderer {
	return flow.NewRenderer(b.HeightAt, nil, b.holder, b.another)
}
