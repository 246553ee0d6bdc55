package round

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"ogive/ui/flow"
)

// pile is things over each other in a column that scrolls.
type pile struct {
	list   *fyne.Container
	stack  *flow.Stack
	object *container.Scroll
}

func newPile(objects ...fyne.CanvasObject) *pile {
	p := &pile{stack: &flow.Stack{}}
	p.list = container.New(p.stack, objects...)
	p.object = container.NewVScroll(p.list)
	p.stack.OnHeight = func() { p.list.Refresh(); p.object.Refresh() }
	return p
}

func (p *pile) clear() { p.list.RemoveAll() }

func (p *pile) add(objects ...fyne.CanvasObject) {
	for _, o := range objects {
		p.list.Add(o)
	}
}

// arrange places everything anew after something has changed its height.
func (p *pile) arrange() { p.stack.Arrange() }

// top shows the beginning.
func (p *pile) top() {
	p.arrange()
	p.object.ScrollToTop()
}
