package round

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/hand"
	"ogive/imaging/rounds"
	"ogive/ui/board"
	"ogive/ui/flow"
	"ogive/ui/guide"
	"ogive/ui/marking"
)

// blind is the column beside a picture that is marked blind: what is wanted next,
// and no figure of any kind.
type blind struct {
	room   *Room
	guide  *guide.Guide
	rest   *card // instead of the guide when all is placed
	scale  *scalePanel
	hint   *widget.Label
	done   *widget.Button
	object *fyne.Container

	step     marking.Step // chosen, 0 for the usual order
	selected *marking.Spot
	placed   []marking.Spot // in the order in which they were placed
	dragging bool
	borders  borders
}

func newBlind(r *Room) *blind {
	b := &blind{room: r, guide: guide.New(), hint: caption("")}
	b.guide.OnSkip = b.skip
	b.guide.OnStep = func(s marking.Step) { b.step = s; b.show(); r.keyboard.take() }
	b.rest = newCard(heading(lang.L("All is placed")),
		wrapped(lang.L("Look at every mark once more, and drag what is off: Tab goes from mark to mark, + magnifies, the arrow keys move a mark by a pixel. Then see how far you are from the truth.")))
	b.rest.Hide()
	b.scale = newScalePanel(b)
	b.done = widget.NewButton("", b.enter)
	b.object = newTower(1, b.scale.object, container.New(topmost{}, b.guide.Content(), b.rest), b.hint, b.done)
	return b
}

// follow gives the gestures on the photograph to the marks.
func (b *blind) follow(p *photograph) {
	p.OnSelect = func(s marking.Spot) {
		if b.inHand() {
			b.choose(&s)
			b.room.keyboard.take()
		}
	}
	p.OnDrag, p.OnDrop = b.drag, b.drop
	p.OnDragEdge, p.OnDropEdge = b.dragEdge, b.dropEdge
}

// begin marks the picture in hand, with what was marked on it before.
func (b *blind) begin() {
	b.step, b.selected, b.placed, b.dragging, b.borders = 0, nil, nil, false, borders{}
	w, truth := b.work(), b.room.taking.picture.Truth
	if s := w.State(); s.Side != truth.Side || s.View != truth.View {
		b.finished(w.SetHand(truth.Side, truth.View))
	}
	b.scale.begin()
	b.show()
}

func (b *blind) work() *marking.Work { return b.room.taking.work }

// inHand reports whether gestures have something to act on.
func (b *blind) inHand() bool { return b.room.page == placing && !b.room.busy }

// wanted is what to place next. In the web view every spot belongs to the web of
// the picture.
func (b *blind) wanted() (marking.Spot, bool) {
	s := b.work().State()
	if s.LacksLength() {
		return marking.Spot{}, false // one thing at a time
	}
	for _, step := range []marking.Step{b.step, 0} {
		for _, spot := range b.order(s) {
			_, placed := s.Points[spot]
			if !placed && !s.Skipped[spot] && (step == 0 || spot.Step() == step) {
				return spot, true
			}
		}
	}
	return marking.Spot{}, false
}

func (b *blind) order(s marking.State) []marking.Spot {
	order := s.Order()
	if p := b.room.taking.picture; p.Truth.View == hand.WebView && p.Web != 0 {
		for i, spot := range order {
			if spot.Web != 0 {
				order[i].Web = p.Web
			}
		}
	}
	return order
}

// finished ends a gesture: it says when marks could not be written.
func (b *blind) finished(err error) {
	problem := ""
	if err != nil {
		problem = lang.L("The marks are not on the disk: {{.Problem}}. They are written again with your next mark.", map[string]any{"Problem": sentenceOf(err)})
	}
	b.room.table.say(problem)
	b.show()
	b.trace()
}

// enter holds the marks against the truth once all are placed.
func (b *blind) enter() {
	if !b.inHand() || !b.ready() {
		return
	}
	f := b.work().File()
	f.Absent = absent(b.work().State())
	b.room.answer(rounds.Answer{Marks: &f})
}

// absent are the joints that were skipped.
func absent(s marking.State) map[hand.Digit]map[hand.Joint]bool {
	out := map[hand.Digit]map[hand.Joint]bool{}
	for _, spot := range s.Order() {
		if spot.Kind != marking.JointPoint || !s.Skipped[spot] {
			continue
		}
		if out[spot.Digit] == nil {
			out[spot.Digit] = map[hand.Joint]bool{}
		}
		out[spot.Digit][spot.Joint] = true
	}
	return out
}

// ready reports whether everything is placed or skipped, with a scale.
func (b *blind) ready() bool {
	_, more := b.wanted()
	return !more && b.work().State().Reference() != nil
}

func (b *blind) scoring(on bool) {
	able(b.done, !on)
	if on {
		b.hint.SetText(lang.L("Your marks are being held against the truth…"))
	}
}

// show brings the column and the photograph up to date with the marks.
func (b *blind) show() {
	s := b.work().State()
	spot, more := b.wanted()
	b.guide.Show(s, spot, more)
	b.scale.show(s)
	left := 0
	for _, o := range b.order(s) {
		if _, placed := s.Points[o]; !placed && !s.Skipped[o] {
			left++
		}
	}
	ready := b.ready()
	able(b.done, ready)
	visible(b.rest, ready)
	visible(b.guide.Content(), !ready && !s.LacksLength())
	b.done.Importance = widget.MediumImportance
	switch {
	case ready:
		b.done.Importance = widget.HighImportance
		b.done.SetText(withKey(lang.L("Done: compare with the truth"), lang.L("Enter")))
		b.hint.SetText(lang.L("You can still drag every mark. What was skipped counts as wrong."))
	case s.LacksLength():
		b.done.SetText(lang.L("The length is lacking"))
		b.hint.SetText(lang.L("Read it off the numbers of the ruler."))
	default:
		b.done.SetText(lang.L("{{.Number}} left to place", map[string]any{"Number": left}))
		b.hint.SetText(lang.L("Backspace takes the last mark back, the arrow keys move it. Each mark is kept at once."))
	}
	b.object.Refresh() // the words may need more lines or fewer
	b.draw()
	able(b.room.head.undo, b.work().UndoName() != "")
	able(b.room.head.redo, b.work().RedoName() != "")
}

// draw shows the marks, and nothing that was computed from them.
func (b *blind) draw() {
	s := b.work().State()
	scene := board.Scene{View: s.View, Placed: s.Placed(), Selected: b.selected, Blind: true}
	scene.Reading.Edges = b.borders.edges
	if spot, more := b.wanted(); more {
		scene.Wanted = &spot
	}
	b.room.table.board.Draw(scene)
}

// topmost stands what is seen of its parts at the top.
type topmost struct{}

// MinSize is called by Fyne.
func (topmost) MinSize(parts []fyne.CanvasObject) fyne.Size {
	return parts[0].MinSize()
}

// Layout is called by Fyne.
func (topmost) Layout(parts []fyne.CanvasObject, size fyne.Size) {
	parts[0].Resize(size)
	flow.Put(parts[1], 0, 0, size.Width, flow.HeightAt(parts[1], size.Width))
}
