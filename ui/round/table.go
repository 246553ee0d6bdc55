package round

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"

	"ogive/geometry/plane"
	"ogive/ui/board"
	"ogive/ui/look"
)

// table is where one picture is worked on: the photograph fills the left, and the
// column at the right asks, guides or tells.
type table struct {
	room    *Room
	board   *photograph
	judging *questions
	marking *blind
	told    *told
	notice  *notice
	object  *fyne.Container
}

func newTable(r *Room) *table {
	t := &table{room: r}
	t.board = newPhotograph(r)
	t.judging, t.marking, t.told = newQuestions(r), newBlind(r), newTold(r)
	t.marking.follow(t.board)
	column := container.NewStack(t.judging.object, t.marking.object, t.told.object)
	t.notice = newNotice(func() { t.object.Refresh() })
	t.object = container.New(columns{}, t.board, container.NewBorder(t.notice.object, nil, nil, nil, column))
	return t
}

func (t *table) put(o fyne.CanvasObject) {
	t.notice.show("")
	for _, c := range []fyne.CanvasObject{t.judging.object, t.marking.object, t.told.object} {
		visible(c, c == o)
	}
	t.object.Refresh()
}

// judge asks about the picture.
func (t *table) judge() {
	t.put(t.judging.object)
	t.board.begin()
	t.judging.begin()
}

// mark has the picture marked.
func (t *table) mark() {
	t.put(t.marking.object)
	t.board.begin()
	t.marking.begin()
}

// tell shows the truth over the answer.
func (t *table) tell() {
	t.put(t.told.object)
	t.told.show()
	t.board.Draw(t.room.truthScene())
	t.board.frame(t.room.taking.framed())
}

// scoring says that the answer is being held against the truth.
func (t *table) scoring(on bool) {
	t.judging.scoring(on)
	t.marking.scoring(on)
}

func (t *table) say(text string) { t.notice.show(text) }

// photograph is the picture on the board. Gestures go to whoever has the picture
// in hand.
type photograph struct {
	*board.Board
	room *Room
	zoom float64 // screen pixels for a pixel of the photograph, 0 until it is seen
}

var (
	_ fyne.Tappable     = (*photograph)(nil)
	_ desktop.Mouseable = (*photograph)(nil)
)

func newPhotograph(r *Room) *photograph {
	p := &photograph{Board: board.New(), room: r}
	p.OnPlace = func(at plane.PixelPoint) {
		switch r.page {
		case judging:
			r.table.judging.putCrown(at)
		case placing:
			r.table.marking.place(at)
		}
	}
	p.OnView = func(zoom float64) { p.zoom = zoom }
	p.OnDragHandle = func(_ string, to plane.PixelPoint) {
		if r.page == judging {
			r.table.judging.putCrown(to)
		}
	}
	return p
}

// begin shows the picture in hand, whole.
func (p *photograph) begin() {
	p.Draw(board.Scene{})
	p.ShowPhotograph(p.room.taking.picture.Photograph)
	p.Fit()
}

// MouseDown takes the keys for the photograph.
func (p *photograph) MouseDown(e *desktop.MouseEvent) {
	p.room.keyboard.take()
	p.Board.MouseDown(e)
}

// columns gives the side column its width and the photograph the rest.
type columns struct{}

func (columns) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(700, 400) }

func (columns) Layout(parts []fyne.CanvasObject, size fyne.Size) {
	gap := look.Size(look.Gap)
	right := min(max(look.Size(look.Column)+48, size.Width*0.29), 450)
	left := size.Width - right - 3*gap
	parts[0].Move(fyne.NewPos(gap, 0))
	parts[0].Resize(fyne.NewSize(left, size.Height-gap))
	parts[1].Move(fyne.NewPos(left+2*gap, 0))
	parts[1].Resize(fyne.NewSize(right, size.Height-gap))
}
