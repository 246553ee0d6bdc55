// Package plan is the room in which webs are planned on a photograph, before any
// skin is cut: the arch of each web, the flap that is to line it, the zigzag
// incisions, in as many alternatives as the surgeon likes, one of them chosen.
//
//	r := plan.New(win)
//	r.OnSave = func(f planfile.File) error { ... } // after every finished gesture
//	r.OnBack = func() { ... }
//	r.AddPanel(lang.L("Skin"), look.IconPlan, panel, nil)
//	r.Show(plan.Model{Title: code, Photograph: p, Here: hand, File: begun.File, Notes: begun.Notes})
//
// Figures follow a dragged handle at once; everything else is reckoned when it is
// dropped, which is also when the step is named, can be undone, and is kept. When
// the room has come into sight, TakeKeys gives it the keys; before it is left for
// good, Finish waits until the last change is kept.
//
// All methods belong to Fyne's own goroutine; OnSave is called beside it.
package plan

import (
	"sync"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"ogive/geometry/hand"
	"ogive/geometry/plan"
	"ogive/geometry/plane"
	"ogive/imaging/photo"
	"ogive/imaging/planfile"
	"ogive/imaging/planning"
)

// Model is what is planned on.
type Model struct {
	// Title is the case's code or the photograph's file name.
	Title      string
	Photograph *photo.Photograph
	// Here is the photograph, measured and ready; Other is the other hand, nil
	// where there is none.
	Here  planning.Hand
	Other *planning.Hand
	// File is the plan as it was kept, or as it was begun.
	File planfile.File
	// Notes are what could not be proposed when it was begun.
	Notes []string
}

// Room is the room. Its functions may be nil.
type Room struct {
	// OnSave keeps the plan after every finished gesture. It is called in order,
	// beside Fyne's goroutine; of states that wait only the latest is kept.
	OnSave func(planfile.File) error
	// OnBack leaves the room, OnSheet prints the plan.
	OnBack, OnSheet func()
	// OnChanged tells what follows from the plan, when it is shown and after every
	// change, but not while a handle is being dragged.
	OnChanged func(planning.Plan)
	// OnWeb tells that another web, or another alternative of it, is in hand.
	OnWeb func(w hand.Web)

	win   fyne.Window
	model Model
	// shows counts calls of Show, so that what was reckoned for an earlier model
	// is known when it comes late.
	shows int

	file        planfile.File
	plan        planning.Plan
	web         hand.Web // in hand, 0 where none is planned
	alternative int      // of it, in hand
	face        face
	selected    string // the ID of a grip, "" for none
	drag        *drag
	history     history
	notes       map[hand.Web]string
	proposals   map[hand.Web]proposal

	head     *head
	webs     *webBar
	plate    *plate
	column   *sideColumn
	keyboard *keyboard
	left     *fyne.Container // the webs, the photograph and the caution
	root     *fyne.Container

	apart func(work func()) // does work that would hold up the window
	do    func(work func()) // comes back to Fyne's goroutine

	lock   sync.Mutex // guards next and busy
	next   *pending
	busy   bool
	saving sync.WaitGroup
}

// proposal is an arch that can be proposed for a web, or why none can.
type proposal struct {
	plan.Proposal
	curve []plane.PixelPoint // where it lies on the photograph
	why   string             // no arch can be proposed
}

// New is the room without a photograph.
func New(win fyne.Window) *Room {
	r := &Room{win: win, apart: func(work func()) { go work() }, do: fyne.Do}
	r.keyboard = newKeyboard(r)
	r.head = newHead(r)
	r.webs = newWebBar(r)
	r.plate = newPlate(r)
	r.column = newColumn(r)
	r.left = container.New(photographed{}, r.webs, r.plate, caution())
	body := container.New(columns{}, r.left, r.column.object)
	r.root = container.NewStack(r.keyboard, container.NewBorder(r.head.object, nil, nil, nil, body))
	r.refresh()
	return r
}

// Object is what fills the window.
func (r *Room) Object() fyne.CanvasObject { return r.root }

// Show begins to work on a plan. What was undone of another one is forgotten.
func (r *Room) Show(m Model) {
	r.shows++
	r.model, r.file = m, cloned(m.File)
	r.history, r.drag, r.selected = history{}, nil, ""
	r.notes, r.proposals = map[hand.Web]string{}, map[hand.Web]proposal{}
	r.web, r.alternative = 0, 0
	r.plan = planning.Plan{}
	r.reckon()
	r.column.choose(0)
	if len(r.file.Webs) > 0 {
		r.hold(r.file.Webs[0].Web)
	}
	r.head.begin()
	r.plate.begin(m.Photograph)
	r.refresh()
	r.frame()
	r.proposeAll()
	r.tellChanged()
	r.keyboard.take()
}

// File is the plan as it is now.
func (r *Room) File() planfile.File { return cloned(r.file) }

// Plan is what follows from it.
func (r *Room) Plan() planning.Plan { return r.plan }

// Hand is the photograph that is planned on.
func (r *Room) Hand() planning.Hand { return r.model.Here }

// Web is the web in hand, 0 where none is planned.
func (r *Room) Web() hand.Web { return r.web }

// InHand is the name of the alternative in hand, "" where there is none.
func (r *Room) InHand() string {
	if w := r.kept(); w != nil && r.alternative < len(w.Alternatives) {
		return w.Alternatives[r.alternative].Name
	}
	return ""
}

// TakeKeys gives the keys to the photograph: arrows, Tab, Delete, Escape, undo. To
// be called when the room has come into sight.
func (r *Room) TakeKeys() { r.keyboard.take() }

// hold takes a web in hand, with its chosen alternative.
func (r *Room) hold(w hand.Web) {
	r.web, r.alternative, r.selected = w, 0, ""
	if p := r.planned(); p != nil && p.Chosen > 0 {
		r.alternative = p.Chosen
	}
	if r.OnWeb != nil {
		r.OnWeb(w)
	}
}

// kept is the web in hand as it is kept, nil where there is none.
func (r *Room) kept() *planfile.Web { return r.file.Web(r.web) }

// planned is what follows from the web in hand, nil where there is none.
func (r *Room) planned() *planning.Web {
	for i := range r.plan.Webs {
		if r.plan.Webs[i].Web == r.web {
			return &r.plan.Webs[i]
		}
	}
	return nil
}

// now is what follows from the alternative in hand, nil where there is none.
func (r *Room) now() *planning.Alternative {
	if p := r.planned(); p != nil && r.alternative < len(p.Alternatives) {
		return &p.Alternatives[r.alternative]
	}
	return nil
}

func (r *Room) tellChanged() {
	if r.OnChanged != nil {
		r.OnChanged(r.plan)
	}
}

// refresh shows the plan as it is.
func (r *Room) refresh() {
	r.head.show()
	r.webs.show()
	r.column.show()
	r.draw()
}
