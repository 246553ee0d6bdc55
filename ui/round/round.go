// Package round is the room of teaching rounds: pictures of hands whose truth is
// known are judged by eye or marked blind, each answer is held against the truth
// at once, and at the end the round says which way to correct the eye.
//
//	r := round.New(win)
//	r.OnLeave = func() { ... }
//	r.OnRepeatability = func(c rounds.Click) { ... } // use it in readings
//	r.Show(folder, "AB", settings)                   // the page on which rounds begin
//
// The room keeps every answer in the folder as soon as it is compared with the
// truth, and blind marks with every gesture: it can be left at any time and says so.
//
// All methods belong to Fyne's own goroutine.
package round

import (
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"ogive/imaging/measure"
	"ogive/imaging/rounds"
)

// Room is the room. Its functions may be nil.
type Room struct {
	// OnLeave leaves the room.
	OnLeave func()
	// OnRepeatability is asked to use the observer's own click deviation in
	// readings. It is offered after blind rounds, and not at all where it is nil.
	OnRepeatability func(c rounds.Click)

	win      fyne.Window
	folder   string
	observer string
	settings measure.Settings
	all      []*rounds.Round // in the folder, in the order of time
	page     page
	taking   *taking               // the round under way, nil on the other pages
	turn     int                   // counts what was begun, so that what comes late is known
	busy     bool                  // something is being made or scored
	held     map[string]heldAnswer // by the round's ID
	stands   bool                  // in the window, from the first Show on
	casebook *Casebook
	first    *rounds.First // of the round that the start page is set to

	head     *head
	start    *start
	table    *table
	result   *result
	keyboard *keyboard
	root     *fyne.Container

	beside func(work func() func()) // does work beside Fyne, then what it returns on Fyne
	soon   func(work func())        // does work after the events at hand
	now    func() time.Time
	making func(rounds.Setup, measure.Settings) *rounds.First
}

// page is what the room shows.
type page int

const (
	starting page = iota
	judging
	placing
	telling
	concluding
)

// New is the room without rounds.
func New(win fyne.Window) *Room {
	r := &Room{win: win, beside: besideFyne, soon: fyne.Do, now: time.Now, making: rounds.MakeFirst, held: map[string]heldAnswer{}}
	r.keyboard = newKeyboard(r)
	r.head = newHead(r)
	r.start = newStart(r)
	r.table = newTable(r)
	r.result = newResult(r)
	pages := container.NewStack(r.start.object, r.table.object, r.result.object)
	r.root = container.NewStack(r.keyboard, container.NewBorder(r.head.object, nil, nil, nil, pages))
	r.turnTo(starting)
	return r
}

// Object is what fills the window.
func (r *Room) Object() fyne.CanvasObject { return r.root }

// Show opens the page on which rounds begin and go on, with all rounds that are
// kept in the folder. It returns at once; the room stands in the window by then,
// or the keys could not go to it. A round that was under way is kept.
func (r *Room) Show(folder, observer string, settings measure.Settings) {
	r.stands = true
	r.folder, r.observer, r.settings = folder, observer, settings
	r.all = nil
	r.start.tellObserver(observer)
	r.start.recalled = false
	r.toStart()
}

// shown reports whether the room is to be seen.
func (r *Room) shown() bool { return r.stands && r.root.Visible() }

// turnTo shows a page.
func (r *Room) turnTo(p page) {
	r.page = p
	visible(r.start.object, p == starting)
	visible(r.table.object, p == judging || p == placing || p == telling)
	visible(r.result.object, p == concluding)
	r.head.show()
	r.keyboard.take()
}

// toStart leaves what is under way, which is kept, and reads the rounds anew.
func (r *Room) toStart() {
	r.stop()
	r.turnTo(starting)
	r.start.say("")
	r.start.show()
	r.reread(func() {
		r.start.show()
		r.makeFirst()
	})
}

// reread reads the rounds in the folder beside the window, then does what follows.
func (r *Room) reread(then func()) {
	turn, folder := r.turn, r.folder
	r.beside(func() func() {
		all, refused := rounds.List(folder)
		return func() {
			if turn == r.turn {
				r.all = all
				r.start.tellRefused(refused)
				then()
			}
		}
	})
}

// stop ends the making of pictures and forgets what is on its way.
func (r *Room) stop() {
	r.hold()
	r.turn++
	r.busy = false
	if r.taking != nil {
		r.taking.supply.Close()
		r.taking = nil
	}
}

// leave goes one page back: from a round to the start page, from there out of the
// room.
func (r *Room) leave() {
	switch {
	case r.busy && (r.page == judging || r.page == placing):
		// An answer is on its way to the disk; a moment later it is there.
	case r.page == starting && r.OnLeave != nil:
		r.stop()
		r.OnLeave()
	case r.page == judging || r.page == placing || r.page == telling:
		kept := r.keptSentence()
		r.toStart()
		r.start.say(kept)
	case r.page == concluding:
		r.toStart()
	}
}

func besideFyne(work func() func()) {
	go func() {
		if then := work(); then != nil {
			fyne.Do(then)
		}
	}()
}
