// Package beside is the room in which two photographs are held against each
// other: the operated hand with the arches of the other hand as ghosts over its
// own, or one hand at two sittings, and beside them the differences of every
// web, with intervals and verdicts.
//
//	r := beside.New(win)
//	r.OnBack = func() { ... }
//	r.OnOpen = func(s beside.Side) { ... } // to mark this photograph
//	r.UseSettings(settings)
//	r.Show(operated, other)                // at once; figures follow
//
// All methods belong to Fyne's own goroutine.
package beside

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"ogive/geometry/hand"
	"ogive/imaging/compared"
	"ogive/imaging/marksfile"
	"ogive/imaging/measure"
	"ogive/imaging/photo"
	"ogive/ui/flow"
)

// Side is one of the two photographs.
type Side struct {
	// Title names it for the reader, such as by hand or by date.
	Title      string
	Photograph *photo.Photograph
	// Marks are what is marked on it; its edges are traced where they are not.
	Marks marksfile.File
	// Result is its measuring if that is known; where it is nil the room measures
	// the photograph by its marks.
	Result *measure.Result
	// Key is the caller's own name for it, handed back by OnOpen.
	Key string
}

// Room is the room. Its functions may be nil.
type Room struct {
	// OnBack leaves the room.
	OnBack func()
	// OnOpen opens a photograph to be marked.
	OnOpen func(Side)

	win      fyne.Window
	settings measure.Settings
	sides    [2]Side // the operated hand or the later sitting first
	pair     compared.Pair
	ready    bool // pair is that of sides
	showing  int  // counts comparisons, so that a late one is known

	head   *head
	boards *boards
	sheet  *sheet
	plain  *plain
	body   *fyne.Container
	root   *fyne.Container

	apart func(work func()) // does work that would hold up the window
	soon  func(work func()) // comes back to Fyne's goroutine
}

// New is the room without photographs.
func New(win fyne.Window) *Room {
	r := &Room{win: win, apart: func(work func()) { go work() }, soon: fyne.Do}
	if own, err := measure.Defaults(); err == nil {
		r.settings = own
	}
	r.head = newHead(r)
	r.boards = newBoards(r.open)
	r.sheet = newSheet(r.reveal)
	r.plain = newPlain(r)
	r.body = container.New(columns{}, r.boards.object, r.sheet.object)
	r.plain.object.Hide()
	r.root = container.NewBorder(r.head.object, nil, nil, nil, container.NewStack(r.body, r.plain.object))
	return r
}

// Object is what fills the window.
func (r *Room) Object() fyne.CanvasObject { return r.root }

// UseSettings sets the normal values and the tilt that are used from now on, in
// place of the program's own.
func (r *Room) UseSettings(s measure.Settings) { r.settings = s }

// Show holds two photographs against each other, the operated hand first, or the
// later sitting of one hand. It returns at once.
func (r *Room) Show(operated, other Side) {
	r.sides = [2]Side{operated, other}
	r.begin()
}

// swap takes the other photograph as that of the operated hand.
func (r *Room) swap() {
	r.sides[0], r.sides[1] = r.sides[1], r.sides[0]
	r.begin()
}

// begin shows the photographs and compares them apart from the window.
func (r *Room) begin() {
	r.showing++
	r.ready = false
	number, sides, settings := r.showing, r.sides, r.settings
	r.head.waiting(sides)
	r.boards.show(sides)
	r.apart(func() {
		pair, err := compare(sides, settings)
		r.soon(func() {
			if number == r.showing {
				r.finish(pair, err)
			}
		})
	})
}

// compare measures what is not measured yet.
func compare(sides [2]Side, settings measure.Settings) (compared.Pair, error) {
	var results [2]measure.Result
	for i, s := range sides {
		if s.Result != nil {
			results[i] = *s.Result
			continue
		}
		if s.Photograph == nil {
			return compared.Pair{}, compared.Unready{Other: i == 1, Err: compared.ErrNothingRead}
		}
		result, err := compared.Measured(measure.Subject{Photograph: s.Photograph, Marks: s.Marks}, settings)
		if err != nil {
			return compared.Pair{}, compared.Unready{Other: i == 1, Err: err}
		}
		results[i] = result
	}
	return compared.New(results[0], results[1], settings)
}

// finish shows what the comparison came to.
func (r *Room) finish(pair compared.Pair, err error) {
	r.pair, r.ready = pair, err == nil
	flow.Visible(r.body, err == nil)
	flow.Visible(r.plain.object, err != nil)
	if err != nil {
		r.head.failed(r.sides)
		r.plain.show(r.sides, err)
		return
	}
	r.head.show(pair)
	r.boards.compare(pair, r.sides)
	r.sheet.show(pair)
}

// titles name the two photographs in what leaves the room.
func (r *Room) titles() compared.Titles {
	return compared.Titles{Operated: r.sides[0].Title, Other: r.sides[1].Title}
}

// copyTable puts the table into the clipboard.
func (r *Room) copyTable() {
	if r.ready {
		fyne.CurrentApp().Clipboard().SetContent(compared.Table(r.pair, r.titles()))
		r.head.say(copied())
	}
}

// picture is the drawing of the pair, to be made apart from the window.
func (r *Room) picture() func() image.Image {
	photograph, pair, titles := r.sides[0].Photograph, r.pair, r.titles()
	return func() image.Image { return compared.Picture(photograph, pair, titles) }
}

func (r *Room) open(side int) {
	if r.OnOpen != nil {
		r.OnOpen(r.sides[side])
	}
}

func (r *Room) back() {
	if r.OnBack != nil {
		r.OnBack()
	}
}

// reveal brings a web into sight on both photographs.
func (r *Room) reveal(w hand.Web) {
	r.sheet.choose(w)
	r.boards.reveal(r.pair, w)
}
