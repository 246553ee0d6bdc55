// Package window is the program's window: it puts the photograph, the guide and
// the cards together, and turns gestures into work on the marks.
//
//	w, err := window.New(app)
//	w.Open("right-dorsal.jpg") // or nothing: the welcome page
//	w.ShowAndRun()
//
// All of it runs on Fyne's goroutine. What takes long (decoding, measuring,
// drawing the saved picture) runs beside it and comes back through background.
package window

import (
	"path/filepath"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/imaging/measure"
	"ogive/imaging/wording"
	"ogive/ui/board"
	"ogive/ui/cards"
	"ogive/ui/guide"
	"ogive/ui/marking"
	"ogive/ui/welcome"
)

// Window is the program's one window.
type Window struct {
	app fyne.App
	win fyne.Window
	// do runs a function on the window's goroutine; tests put a queue here.
	do func(func())
	// home is the program's own folder.
	home string

	board     *board.Board
	guide     *guide.Guide
	cards     *cards.Cards
	welcome   *welcome.Page
	bar       *bar
	menuShown menuState
	notices   *notices
	keyboard  *keyboard
	foot      *foot
	asking    *asking
	length    *lengthPanel
	rooms     *fyne.Container // one of them is shown
	room      *fyne.Container // of the photograph, shown when one is open
	side      *fyne.Container // guide, offer and cards
	offer     *offer
	more      bool            // a point is wanted
	caution   dialog.Dialog   // the caution of the first use, nil once it is read
	page      dialog.Dialog   // what lies over the window to be read, nil if nothing does
	panels    *fyne.Container // over the photograph
	frame     *fyne.Container // bar, room, panels: laid out anew when one comes or goes

	settings measure.Settings
	ownTable bool // normal values are the user's edited copy
	// tableProblem is why that copy could not be read, nil if it could.
	tableProblem error

	work     *marking.Work // nil while no photograph is open
	inCase   *inCase       // where it belongs, nil if it is in no casebook
	selected *marking.Spot
	step     marking.Step   // the step that the user chose, 0 for the next one
	placed   []marking.Spot // in the order of placing
	asked    bool           // the hand was told, or the question put aside

	books
	plans
	teaching
	opening
	live
	proposals
	pulled  map[hand.Web][]plane.PixelPoint // borders as they were when a drag began
	unsaved bool                            // the last save failed
}

// New builds the window on the app, with the user's preferences. It fails only
// if the program was built with normal values that can't be read.
func New(app fyne.App) (*Window, error) {
	settings, err := measure.Defaults()
	if err != nil {
		return nil, err
	}
	w := &Window{app: app, do: fyne.Do, home: app.Storage().RootURI().Path(), settings: settings, pulled: map[hand.Web][]plane.PixelPoint{}}
	w.usePreferences()
	w.win = app.NewWindow("Ogive")
	w.win.SetMaster()
	w.win.SetPadded(false)
	w.build()
	w.win.Resize(w.rememberedSize())
	w.win.SetOnDropped(func(_ fyne.Position, uris []fyne.URI) { w.dropped(uris) })
	w.win.SetCloseIntercept(w.close)
	w.showWelcome()
	w.sayTableProblem()
	return w, nil
}

// ShowAndRun shows the window and runs the program until it is closed.
func (w *Window) ShowAndRun() {
	w.win.Show()
	w.keyboard.take()
	w.cautionOnce()
	w.app.Run()
}

// background runs job beside the window and what it returns on the window's
// goroutine.
func (w *Window) background(job func() func()) {
	go func() {
		after := job()
		if after != nil {
			w.do(after)
		}
	}()
}

func (w *Window) build() {
	w.keyboard = newKeyboard(w)
	w.notices = newNotices()
	w.foot = newFoot()
	w.buildBoard()
	w.buildBar()
	w.buildColumn()
	w.buildWelcome()
	w.asking = newAsking(w.tellHand)
	w.asking.onLater = func() { w.askLater(true) }
	w.length = newLengthPanel(w.tellLength)

	column := w.buildSide()
	w.room = container.NewBorder(nil, w.foot.row, nil, column, w.board)
	over := container.New(overlay{beside: column, room: w.room}, w.notices.box, w.asking.panel, w.length.panel)
	w.rooms = container.NewStack(w.welcome.Room(), w.room)
	main := container.NewStack(w.rooms, over)
	w.frame = container.NewBorder(w.bar.row, nil, nil, nil, main)
	w.notices.changed = over.Refresh
	w.panels = over
	w.win.SetContent(container.NewStack(w.keyboard, w.frame))
	w.win.Canvas().SetOnTypedKey(w.key)
	w.win.Canvas().SetOnTypedRune(w.typed)
	w.addShortcuts()
	w.refreshMenu()
}

func (w *Window) buildBoard() {
	w.board = board.New()
	w.board.OnPlace = w.place
	w.board.OnSelect = w.selectSpot
	w.board.OnDrag = w.drag
	w.board.OnDrop = w.drop
	w.board.OnDragEdge = w.dragEdge
	w.board.OnDropEdge = w.dropEdge
	w.board.OnView = w.foot.showZoom
}

func (w *Window) buildColumn() {
	w.guide = guide.New()
	w.guide.OnStep = w.chooseStep
	w.guide.OnSkip, w.guide.SkipKey = w.skip, "S"
	w.cards = cards.New()
	w.cards.OnSelectWeb = w.selectWeb
	w.cards.OnHelp = w.showHow
}

func (w *Window) buildWelcome() {
	w.welcome = welcome.New()
	w.welcome.OnCasebook, w.welcome.OnExampleCasebook = w.askForCasebook, w.openExampleCasebook
	w.welcome.OnRecentCasebook = w.openCasebook
	w.welcome.OnPlan, w.welcome.OnRound, w.welcome.OnAgreement = w.planExample, w.showRounds, w.showAgreement
	w.welcome.OnOpen = w.askForPhotograph
	w.welcome.OnExample = func() { w.openExample(firstExample()) }
	w.welcome.OnHow = w.showHow
	w.welcome.OnRecent = w.Open
}

// title names the file, the hand and the view, and says when the normal values
// are not the program's own.
func (w *Window) title() {
	title := "Ogive"
	if w.work != nil {
		title = filepath.Base(w.work.Path)
		if w.inCase != nil {
			title = w.inCase.Name()
		}
		if s := w.work.State(); s.Side != 0 && s.View != 0 {
			title += " – " + wording.Photograph(s.Side, s.View)
		}
		title += " – Ogive"
	}
	if w.ownTable {
		title += " " + editedValues()
	}
	w.win.SetTitle(title)
}

// refresh brings everything on the screen to the state of the work.
func (w *Window) refresh() {
	if w.work == nil {
		return
	}
	s := w.work.State()
	wanted, more := w.wanted()
	w.bar.show(s, w.work.UndoName(), w.work.RedoName())
	w.guide.Show(s, wanted, more)
	w.more = more && s.Side != 0
	w.offer.show(len(s.Proposed))
	w.arrangeSide()
	w.foot.showGesture(w.work.UndoName(), w.unsaved)
	w.askWhatIsMissing(s)
	w.title()
	w.refreshMenu()
	w.draw()
	w.measure()
	w.propose()
}

// draw shows the marks and the last reading on the photograph.
func (w *Window) draw() {
	if w.work == nil || w.previewing {
		return
	}
	s := w.work.State()
	scene := board.Scene{View: s.View, Placed: s.Placed(), Selected: w.selected, Proposed: s.Proposed, Reading: w.reading}
	if wanted, more := w.wanted(); more && s.Side != 0 {
		scene.Wanted = &wanted
	}
	w.board.Draw(scene)
}

// wanted is the spot that the next click places.
func (w *Window) wanted() (marking.Spot, bool) {
	s := w.work.State()
	if w.step != 0 {
		if spot, more := s.NextIn(w.step); more {
			return spot, true
		}
		for _, spot := range s.Order() {
			if spot.Step() == w.step && s.Skipped[spot] {
				return spot, true
			}
		}
	}
	if s.LacksLength() {
		return marking.Spot{}, false // a click now is meant for the ruler, not for a joint
	}
	return s.Next()
}
