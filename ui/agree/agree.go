// Package agree is the room that shows how far observers agree: two on the same
// photographs, or one who marked them again.
//
//	room := agree.New(window)
//	room.OnLeave = func() { ... }
//	room.Show(agree.Source{Name: "the casebook Hand clinic", Load: func(ctx context.Context, progress func(done, all int)) (observed.Found, error) {
//		return reader.Read(ctx, 0, progress)
//	}})
//	window.SetContent(room.Object())
//	room.Leave() // when another room takes its place
//
// Readings come from the open casebook or from a CSV file that the user chooses.
// All methods are called on Fyne's own goroutine; readings are gathered beside it.
package agree

import (
	"context"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/agreementchart"
	"ogive/imaging/observed"
	"ogive/ui/flow"
)

// Source is where readings come from.
type Source struct {
	// Name says where from, on what is saved too: "the casebook Hand clinic".
	Name string
	// Load gathers them from the open casebook, beside Fyne's goroutine; nil: none
	// is open.
	Load func(ctx context.Context, progress func(done, all int)) (observed.Found, error)
}

// Room is the room. Set the callback before it is shown.
type Room struct {
	// OnLeave is asked for the page before this room; nil: it is not offered.
	OnLeave func()

	win    fyne.Window
	beside func(work func() func()) // does work beside Fyne, then what it returns on Fyne
	later  func(func())             // on Fyne, from beside it

	source Source
	stop   context.CancelFunc // of the gathering under way, if there is one
	asked  int                // counts what was asked for, so that what comes late is dropped

	found   observed.Found
	charts  []agreementchart.Chart
	lacking []string
	groups  []group
	group   int
	chart   int // in the group

	leave  *widget.Button
	open   *widget.Button // a file, where there is something to see already
	again  *widget.Button // back from a file to the casebook
	head   *fyne.Container
	side   *side
	plots  *plots
	wait   *wait
	empty  *empty
	full   fyne.CanvasObject
	bodies *fyne.Container
	root   *fyne.Container
}

// group is the figures on which the same two were held against each other.
type group struct {
	who    string
	charts []agreementchart.Chart
}

// New is the room without readings.
func New(win fyne.Window) *Room {
	r := &Room{win: win, beside: besideFyne, later: fyne.Do}
	r.leave = widget.NewButton(lang.L("Back"), func() { r.OnLeave() })
	title := widget.NewLabelWithStyle(lang.L("How far observers agree"), fyne.TextAlignLeading, fyne.TextStyle{Bold: true})
	title.SizeName = theme.SizeNameSubHeadingText
	r.again = widget.NewButton(lang.L("Back to the casebook's readings"), r.load)
	r.open = widget.NewButton(lang.L("Open a file…"), r.askForFile)
	r.side = newSide(r)
	r.plots = newPlots(r)
	r.wait = newWait()
	r.empty = newEmpty(r)
	r.full = container.New(split{}, r.side.object, r.plots)
	r.bodies = container.NewStack(r.full, r.wait.object, r.empty.object)
	r.head = container.NewBorder(nil, nil, container.NewHBox(r.leave, title), container.NewHBox(r.again, r.open))
	r.root = container.New(layout.NewCustomPaddedLayout(10, 12, 14, 14), container.NewBorder(r.head, nil, nil, nil, container.New(layout.NewCustomPaddedLayout(10, 0, 0, 0), r.bodies)))
	r.Show(Source{})
	return r
}

// Object is the room, to fill the window with.
func (r *Room) Object() fyne.CanvasObject { return r.root }

// Show opens the room on the open casebook, and gathers its readings. The pair
// and the figure looked at before stay, where they are there again.
func (r *Room) Show(s Source) {
	r.source = s
	flow.Visible(r.leave, r.OnLeave != nil)
	if s.Load == nil {
		r.Leave()
		flow.Visible(r.again, false)
		r.lacking = nil
		r.take(observed.Found{}, nil, "")
		return
	}
	r.load()
}

// Leave breaks off what is being gathered.
func (r *Room) Leave() {
	r.asked++
	if r.stop != nil {
		r.stop()
		r.stop = nil
	}
}

// only shows one of the bodies.
func (r *Room) only(body fyne.CanvasObject) {
	for _, o := range r.bodies.Objects {
		flow.Visible(o, o == body)
	}
	flow.Visible(r.open, body == r.full)
	r.head.Refresh() // Fyne lays out anew what has appeared only when it is told
	r.bodies.Refresh()
}

// take shows what was found, or how to come to something.
func (r *Room) take(f observed.Found, charts []agreementchart.Chart, source string) {
	before := r.current()
	r.found, r.charts, r.groups = f, charts, grouped(charts)
	if len(r.groups) == 0 {
		r.empty.show(r.source.Load != nil, source, f, r.lacking)
		r.only(r.empty.object)
		return
	}
	r.group = max(0, groupOf(r.groups, before))
	r.only(r.full)
	r.side.offer()
	r.choose(r.group, before.Figure)
}

// grouped is the charts by who is held against whom.
func grouped(charts []agreementchart.Chart) (out []group) {
	at := map[string]int{}
	for _, c := range charts {
		i, ok := at[c.Who()]
		if !ok {
			i = len(out)
			at[c.Who()] = i
			out = append(out, group{who: c.Who()})
		}
		out[i].charts = append(out[i].charts, c)
	}
	return out
}

func groupOf(all []group, c agreementchart.Chart) int {
	for i, g := range all {
		if len(c.Targets) > 0 && g.who == c.Who() {
			return i
		}
	}
	return -1
}

// current is the chart that is shown, an empty one if there is none.
func (r *Room) current() agreementchart.Chart {
	if r.group < len(r.groups) && r.chart < len(r.groups[r.group].charts) {
		return r.groups[r.group].charts[r.chart]
	}
	return agreementchart.Chart{}
}

// choose shows a group, at a figure if it has it.
func (r *Room) choose(i int, f agreementchart.Figure) {
	r.group, r.chart = i, 0
	for n, c := range r.groups[i].charts {
		if c.Figure == f {
			r.chart = n
		}
	}
	r.side.show()
	r.plots.show(r.current())
}
