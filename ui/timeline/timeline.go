// Package timeline is the room that shows a case over time: for each web the
// chart of its index, and beside it the sitting under the pointer.
//
//	room := timeline.New(window)
//	room.OnOpen = func(photograph int64) { ... }
//	room.Show(timeline.Model{Code: "S-012", Webs: webs, Norms: table, Thumbnail: load})
//	window.SetContent(room.Object())
//
// The pointer or the arrow keys go from sitting to sitting; a click or Enter
// opens the photograph. All methods are called on Fyne's own goroutine.
package timeline

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/followup"
	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/imaging/chart"
	"ogive/ui/flow"
	"ogive/ui/label"
	"ogive/ui/look"
)

// Model is a case over time.
type Model struct {
	Code  string
	Webs  []Web // those that were joined
	Norms norms.Table
	// Thumbnail loads a small picture of a photograph, and Appraisal tells what
	// was found at a sitting, a line for each finding. Both are called beside
	// Fyne's goroutine; nil: there are none.
	Thumbnail func(photograph int64) (image.Image, error)
	Appraisal func(web Web, p followup.Point) []string
}

// Web is one web over time.
type Web struct {
	Side   hand.Side
	Web    hand.Web
	Series followup.Series
}

// Room is the room. Set the callbacks before it is shown.
type Room struct {
	// OnOpen is asked to open a photograph.
	OnOpen func(photograph int64)
	// OnLeave is asked for the page before this room; nil: it is not offered.
	OnLeave func()

	win    fyne.Window
	beside func(work func() func()) // does work beside Fyne, then what it returns on Fyne
	model  Model
	web    int
	chosen int // the point in the panel, -1 for none

	chooser *chooser
	plot    *plot
	panel   *panel
	save    *fyne.Container
	saved   *widget.Label
	leave   [2]*widget.Button // beside the webs, and where there is nothing to follow
	head    *fyne.Container
	body    *fyne.Container
	empty   *fyne.Container
	full    *fyne.Container
	root    *fyne.Container
}

// New is the room without a case.
func New(win fyne.Window) *Room {
	r := &Room{win: win, beside: besideFyne, chosen: -1}
	r.chooser = newChooser(r.choose)
	r.plot = newPlot(r)
	r.panel = newPanel(r)
	for i := range r.leave {
		r.leave[i] = widget.NewButton(lang.L("Back to the case"), func() { r.OnLeave() })
	}
	r.saved = faint("")
	r.save = container.NewVBox(
		container.NewGridWithColumns(2,
			widget.NewButton(lang.L("Save as PNG…"), func() { r.askWhere(pngFile) }),
			widget.NewButton(lang.L("Save as SVG…"), func() { r.askWhere(svgFile) })),
		r.saved)
	r.empty = container.NewCenter(container.NewVBox(container.New(flow.Wide(440), label.Centred(
		lang.L("Nothing to follow yet. Name the web that was joined and the day of its operation, and mark the photographs of at least two sittings."))),
		container.NewCenter(r.leave[1])))
	column := container.New(flow.Wide(look.Size(look.Column)), container.NewBorder(nil, r.save, nil, nil, r.panel.object))
	r.head = container.NewBorder(nil, nil, container.NewCenter(r.leave[0]), nil, r.chooser.object)
	r.body = container.NewBorder(r.head, nil, nil, column, r.plot)
	r.full = container.New(layout.NewCustomPaddedLayout(10, 12, 14, 14), r.body)
	r.root = container.NewStack(r.full, r.empty)
	r.Show(Model{})
	return r
}

// Object is the room, to fill the window with.
func (r *Room) Object() fyne.CanvasObject { return r.root }

// Show opens the room on a case, at the web that was looked at before where the
// case is the same.
func (r *Room) Show(m Model) {
	at := 0
	if m.Code == r.model.Code && r.web < len(m.Webs) {
		at = r.web
	}
	r.model = m
	for _, b := range r.leave {
		flow.Visible(b, r.OnLeave != nil)
	}
	flow.Visible(r.full, len(m.Webs) > 0)
	flow.Visible(r.empty, len(m.Webs) == 0)
	r.saved.SetText("")
	r.panel.forget()
	r.chooser.show(m)
	flow.Visible(r.head, r.leave[0].Visible() || r.chooser.object.Visible())
	r.head.Refresh() // Fyne lays out anew what has appeared only when it is told
	r.body.Refresh()
	r.empty.Refresh()
	if len(m.Webs) > 0 {
		r.choose(at)
	}
}

// choose shows one web, at its latest sitting.
func (r *Room) choose(web int) {
	r.web = web
	r.chooser.mark(web)
	r.plot.show(r.chart())
	r.point(len(r.model.Webs[web].Series.Points) - 1)
}

func (r *Room) chart() chart.Chart {
	w := r.model.Webs[r.web]
	return chart.Of(r.model.Code, w.Side, w.Web, w.Series, r.model.Norms)
}

// point shows a sitting in the panel and marks it on the chart.
func (r *Room) point(i int) {
	r.chosen = i
	r.plot.mark(i)
	r.panel.show(r.model.Webs[r.web], i)
}

// open asks for the photograph of the chosen point.
func (r *Room) open() {
	points := r.model.Webs[r.web].Series.Points
	if r.chosen >= 0 && r.chosen < len(points) && r.OnOpen != nil {
		r.OnOpen(points[r.chosen].Photograph)
	}
}
