// Package cases is the casebook's room in the window: the list of cases with
// search, and the case that is open with its photographs, sitting by sitting.
//
//	room := cases.New(window)
//	room.OnOpen = func(p casebook.Photograph) { ... } // mark it
//	room.Show(book)
//	window.SetContent(room.Object())
//	room.ShowCase(id)
//	room.Import(paths) // dropped on the window
//	room.Finish()      // before the casebook is closed
//
// All methods are called on Fyne's own goroutine. Reading and writing the
// casebook runs beside it, and what comes back for something the user has
// already left is dropped.
package cases

import (
	"sync"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/hand"
	"ogive/imaging/casebook"
	"ogive/ui/appraise"
	"ogive/ui/flow"
)

// Room is the room. Set the callbacks before it is shown; those that are nil are
// not offered.
type Room struct {
	// OnOpen is asked to open a photograph for marking and reading.
	OnOpen func(p casebook.Photograph)
	// OnBeside is asked to compare two photographs: a is of the operated hand or
	// of the later sitting, b of the other hand or of the earlier one.
	OnBeside func(a, b casebook.Photograph)
	// OnOverTime is asked for the chart of a case.
	OnOverTime func(caseID int64)
	// OnPlan is asked to plan on a photograph.
	OnPlan func(p casebook.Photograph)
	// OnLeave is asked for the page before this room.
	OnLeave func()
	// Observer tells who is at work; nil or "": "observer".
	Observer func() string
	// Figures are what was measured at a sitting, to stand beside the findings of
	// its appraisal, in words with their intervals; nil: none. It is called beside
	// Fyne's goroutine.
	Figures func(c casebook.Case, s casebook.Sitting) map[appraise.Beside]string
	// Marked tells who has marked a photograph; nil: as the casebook says. It is
	// called beside Fyne's goroutine.
	Marked func(photograph int64) []string

	win  fyne.Window
	do   func(func())
	book *casebook.Casebook
	// bringing is an import that is under way.
	bringing sync.WaitGroup

	index      *index
	page       *page
	appraising *appraising
	errand     *errand
	notice     *notice
	empty      *fyne.Container // instead of everything, while there is no case
	first      *widget.Button  // adds the first case
	bring      *widget.Button  // or brings it in from elsewhere
	rooms      *fyne.Container
	root       *fyne.Container
}

// New is a room without a casebook.
func New(win fyne.Window) *Room {
	r := &Room{win: win, do: fyne.Do}
	r.index = newIndex(r)
	r.page = newPage(r)
	r.appraising = newAppraising(r)
	r.errand = newErrand(r)
	r.notice = newNotice(r.arrange)
	r.first = widget.NewButton(lang.L("New case"), r.newCase)
	r.first.Importance = widget.HighImportance
	r.bring = widget.NewButton(lang.L("Bring a case in…"), r.receive)
	leave := widget.NewButton(lang.L("Back to the start page"), r.goBack)
	r.empty = middle(
		lang.L("No case yet. A case is one patient under a code of your own, with all photographs over the years."), r.first, r.bring, leave)
	r.empty.Hide()
	r.rooms = container.NewBorder(nil, nil, r.index.object, nil, r.page.object)
	r.root = container.NewBorder(container.NewVBox(r.notice.object), r.errand.object, nil, nil, container.NewStack(r.rooms, r.empty, r.appraising.object))
	return r
}

// arrange gives everything its place after something came or went.
func (r *Room) arrange() { r.root.Refresh() }

// Object is the room, to fill the window with.
func (r *Room) Object() fyne.CanvasObject { return r.root }

// Show opens the room on a casebook, at the case that was photographed last.
func (r *Room) Show(book *casebook.Casebook) {
	r.appraising.close()
	r.errand.leave()
	r.book = book
	r.page.leave()
	r.notice.stand(standing(book))
	r.enable()
	r.index.fill(func(found []casebook.Summary) {
		if latest, ok := lastPhotographed(found); ok && r.page.id == 0 {
			r.ShowCase(latest)
		}
	})
}

// ShowCase opens a case.
func (r *Room) ShowCase(id int64) {
	r.index.choose(id)
	r.page.open(id)
}

// Refresh takes up what was changed elsewhere, such as marks.
func (r *Room) Refresh() {
	if r.book == nil {
		return
	}
	r.index.fill(nil)
	r.page.reload()
}

// Finish ends what is under way, so that the casebook can be closed: an import
// stops after the photograph it is at, and the last answer of an appraisal is
// kept.
func (r *Room) Finish() {
	if r.errand.running {
		r.errand.stop()
	}
	r.bringing.Wait()
	r.appraising.form.Finish()
}

// goBack asks for the page before this room.
func (r *Room) goBack() {
	if r.OnLeave != nil {
		r.OnLeave()
	}
}

// writable reports whether the casebook can be written to.
func (r *Room) writable() bool { return r.book != nil && r.book.ReadOnly() == "" }

// enable switches all that writes on or off.
func (r *Room) enable() {
	flow.Visible(r.index.leave, r.OnLeave != nil)
	on := r.writable()
	for _, b := range append([]*widget.Button{r.first, r.bring, r.index.add, r.index.receive}, r.page.writing()...) {
		able(b, on)
	}
}

func able(b fyne.Disableable, on bool) {
	if on {
		b.Enable()
	} else {
		b.Disable()
	}
}

// background runs job beside the window and what it returns on the window's
// goroutine, unless another casebook is open by then.
func (r *Room) background(job func(*casebook.Casebook) func()) {
	book := r.book
	if book == nil {
		return
	}
	go func() {
		after := job(book)
		r.do(func() {
			if r.book == book && after != nil {
				after()
			}
		})
	}()
}

// change writes to the casebook and then takes up what has become of it.
func (r *Room) change(write func(*casebook.Casebook) error) {
	r.background(func(book *casebook.Casebook) func() {
		err := write(book)
		return func() {
			if err != nil {
				r.notice.show(sentence(err.Error()))
			}
			r.Refresh()
		}
	})
}

func (r *Room) markedBy(book *casebook.Casebook, photograph int64) []string {
	if r.Marked != nil {
		return r.Marked(photograph)
	}
	who, err := book.MarkedBy(photograph)
	if err != nil {
		return nil // the photograph is seen all the same, and opening it says why
	}
	return who
}

// standing is what must be said of a casebook as long as it is open.
func standing(book *casebook.Casebook) string {
	if why := book.ReadOnly(); why != "" {
		return lang.L("For reading only: {{.Why}}", map[string]any{"Why": sentence(why)})
	}
	if n := len(book.Findings().Missing); n > 0 {
		return lang.L("{{.Count}} photographs of this casebook are gone from its folder. Their marks are kept; put the files back from a copy.", map[string]any{"Count": n})
	}
	if n := len(book.Findings().Unclaimed); n > 0 {
		return lang.L("{{.Count}} photographs belonged to no case; they now lie in the folder “unclaimed” of this casebook.", map[string]any{"Count": n})
	}
	return ""
}

func lastPhotographed(found []casebook.Summary) (id int64, ok bool) {
	var last casebook.Date
	for _, s := range found {
		if !ok || s.Last > last {
			id, last, ok = s.ID, s.Last, true
		}
	}
	return id, ok
}

// sideOf and viewOf read what a photograph says; zero if it does not say.
func sideOf(p casebook.Photograph) hand.Side {
	s, err := hand.ParseSide(p.Hand)
	if err != nil {
		return 0
	}
	return s
}

func viewOf(p casebook.Photograph) hand.View {
	v, err := hand.ParseView(p.View)
	if err != nil {
		return 0
	}
	return v
}
