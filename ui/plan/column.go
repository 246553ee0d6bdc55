package plan

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"

	"ogive/ui/flow"
	"ogive/ui/look"
)

// The room's own tabs; panels follow.
const (
	archTab = iota
	flapTab
	zigzagTab
	ownTabs
)

// sideColumn is the side of the room: tabs, and below them the alternatives and the
// part of the plan that is worked on, or a panel.
type sideColumn struct {
	room   *Room
	tab    int
	strip  *strip
	panels []*Panel
	holder *fyne.Container // the panels

	empty        *empty
	alternatives *alternatives
	panes        [ownTabs]pane
	stack        *flow.Stack
	scroll       *container.Scroll
	object       *fyne.Container
}

// pane is what stands below the alternatives in one of the room's own tabs.
type pane interface {
	// objects are its parts, from the top.
	objects() []fyne.CanvasObject
	// show brings them up to date; it reports whether the height may have changed.
	show() bool
}

func newColumn(r *Room) *sideColumn {
	c := &sideColumn{room: r, holder: container.NewStack()}
	c.strip = newStrip(c.open)
	c.strip.add(lang.L("Arch"), signOf(drawArch))
	c.strip.add(lang.L("Flap"), signOf(drawFlap))
	c.strip.add(lang.L("Zigzag"), signOf(drawZigzag))
	c.empty, c.alternatives = newEmpty(r), newAlternatives(r)
	c.panes = [ownTabs]pane{newArchPane(r), newFlapPane(r), newZigzagPane(r)}
	objects := append([]fyne.CanvasObject{}, c.empty.objects()...)
	objects = append(objects, c.alternatives)
	for _, p := range c.panes {
		objects = append(objects, p.objects()...)
	}
	c.stack = &flow.Stack{}
	c.scroll = container.NewVScroll(container.New(c.stack, objects...))
	c.stack.OnHeight = c.scroll.Refresh
	c.object = container.New(topped{}, c.strip, c.scroll, c.holder)
	return c
}

// topped stands the strip above what fills the rest.
type topped struct{}

func (topped) MinSize([]fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(look.Size(look.Column), 200)
}

func (topped) Layout(parts []fyne.CanvasObject, size fyne.Size) {
	h := flow.HeightAt(parts[0], size.Width)
	flow.Put(parts[0], 0, 0, size.Width, h)
	for _, o := range parts[1:] {
		flow.Put(o, 0, h+4, size.Width, size.Height-h-4)
	}
}

// open is a tap on a tab.
func (c *sideColumn) open(i int) {
	c.room.drop()
	c.room.selected = ""
	c.choose(i)
	c.room.refresh()
	c.room.frameIfHidden()
	c.room.keyboard.take()
}

// choose makes the tab at i the open one.
func (c *sideColumn) choose(i int) {
	if c.tab != i {
		c.scroll.ScrollToTop()
	}
	c.tab = i
	c.strip.choose(i)
	own := c.panel() == nil
	flow.Visible(c.scroll, own)
	for n, p := range c.panels {
		flow.Visible(p.Object, n+ownTabs == i)
	}
	if p := c.panel(); p != nil && p.OnShow != nil {
		p.OnShow()
	}
}

// panel is the open panel, nil while one of the room's own tabs is open.
func (c *sideColumn) panel() *Panel {
	if i := c.tab - ownTabs; i >= 0 && i < len(c.panels) {
		return c.panels[i]
	}
	return nil
}

// show brings the column to the plan.
func (c *sideColumn) show() {
	c.strip.choose(c.tab)
	c.empty.show()
	c.alternatives.show()
	for i, p := range c.panes {
		if i == c.tab && c.room.planned() != nil {
			p.show()
			continue
		}
		for _, o := range p.objects() {
			flow.Visible(o, false)
		}
	}
	c.stack.Arrange()
}

// showLive brings to the plan what a dragged handle changes.
func (c *sideColumn) showLive() {
	if c.tab < ownTabs && c.room.planned() != nil && c.panes[c.tab].show() {
		c.stack.Arrange()
	}
}
