package plan

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/plane"
	"ogive/ui/board"
	"ogive/ui/look"
	"ogive/ui/marking"
)

// Panel is a tab of the side column that another package fills. It follows the
// plan by the room's OnChanged, and changes it by Change.
type Panel struct {
	Title  string
	Icon   look.IconName
	Object fyne.CanvasObject
	// OnShow is called when the tab is opened. It may be nil, as all that follow.
	OnShow func()
	// Lines and Handles are what the panel has on the photograph while it is open;
	// it asks for them to be drawn anew by the room's Redraw.
	Lines   func() []board.Line
	Handles func() []board.Handle
	// OnDragHandle and OnDropHandle follow a handle of the panel's.
	OnDragHandle func(id string, to plane.PixelPoint)
	OnDropHandle func(id string)
	// OnPlace is a click on the photograph. While Wants reports true, or where it
	// is nil, the pointer is a crosshair with a loupe.
	OnPlace func(at plane.PixelPoint)
	Wants   func() bool
}

// AddPanel adds a tab to the side column.
func (r *Room) AddPanel(title string, icon look.IconName, o fyne.CanvasObject, onShow func()) {
	r.Add(Panel{Title: title, Icon: icon, Object: o, OnShow: onShow})
}

// Add adds a panel to the side column.
func (r *Room) Add(p Panel) {
	c := r.column
	c.panels = append(c.panels, &p)
	p.Object.Hide()
	c.holder.Add(p.Object)
	c.strip.add(p.Title, widget.NewIcon(look.Icon(p.Icon)))
	c.object.Refresh() // the strip may need another line
}

// Redraw draws the photograph anew, with what the open panel has on it.
func (r *Room) Redraw() { r.draw() }

// draw adds what the panel has on the photograph.
func (p *Panel) draw(s *board.Scene) {
	if p.Lines != nil {
		s.Lines = append(s.Lines, p.Lines()...)
	}
	if p.Handles != nil {
		s.Handles = append(s.Handles, p.Handles()...)
	}
	if p.OnPlace != nil && (p.Wants == nil || p.Wants()) {
		s.Wanted = &marking.Spot{}
	}
}
