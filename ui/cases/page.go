package cases

import (
	"image"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/casebook"
	"ogive/ui/flow"
)

// page is the case that is open: its heading, its sittings, and what can be done
// with the photograph that is chosen.
type page struct {
	room   *Room
	object fyne.CanvasObject

	id     int64 // the case that was asked for, 0 for none
	turn   int
	shown  contents
	small  *pictures
	thumbs map[int64]*thumb
	chosen int64 // photograph
	tapped time.Time

	head   *head
	asking *asking
	strips *fyne.Container
	stack  *flow.Stack
	scroll *container.Scroll
	foot   *foot
	none   *fyne.Container
	bare   *fyne.Container // the case has no photograph
	bring  *widget.Button
	body   *fyne.Container
}

// contents is all that the page shows of a case.
type contents struct {
	about       casebook.Case
	sittings    []casebook.Sitting
	photographs []casebook.Photograph
	marked      map[int64][]string // by photograph
	appraised   map[int64][]string // by sitting
}

func newPage(r *Room) *page {
	p := &page{room: r, small: newPictures(), thumbs: map[int64]*thumb{}}
	p.head = newHead(r)
	p.foot = newFoot(r)
	p.asking = newAsking(r)
	p.bring = widget.NewButton(lang.L("Import photographs…"), func() { p.room.offerImport(p.bring) })
	p.bring.Importance = widget.HighImportance
	p.bare = middle(lang.L("No photograph yet. Import them, or drop them on this window: each tells its own date, and the originals stay as they are."), p.bring)
	p.stack = &flow.Stack{}
	p.strips = container.New(p.stack)
	p.scroll = container.NewVScroll(container.New(layout.NewCustomPaddedLayout(0, 0, 16, 8), p.strips))
	p.stack.OnHeight = func() { p.strips.Refresh(); p.scroll.Refresh() }
	p.none = middle(lang.L("Choose a case at the left."))
	p.body = container.NewBorder(p.head.bar, p.foot.object, nil, nil, p.scroll)
	p.body.Hide()
	p.object = container.NewStack(p.body, p.none)
	return p
}

func (p *page) writing() []*widget.Button {
	return append([]*widget.Button{p.bring}, p.head.writing()...)
}

// leave shows no case.
func (p *page) leave() {
	p.id, p.chosen, p.shown, p.thumbs = 0, 0, contents{}, map[int64]*thumb{}
	p.turn++
	p.body.Hide()
	p.none.Show()
}

// open shows a case.
func (p *page) open(id int64) {
	if id != p.id {
		p.id, p.chosen = id, 0
		p.scroll.ScrollToTop()
		p.room.notice.show("")
	}
	p.reload()
}

// reload reads the case that is open anew.
func (p *page) reload() {
	p.turn++
	turn, id := p.turn, p.id
	if id == 0 {
		return
	}
	p.room.background(func(book *casebook.Casebook) func() {
		c, err := p.room.read(book, id)
		return func() {
			switch {
			case turn != p.turn:
			case err != nil:
				p.leave()
				p.room.notice.show(sentence(err.Error()))
			default:
				p.show(c)
			}
		}
	})
}

func (r *Room) read(book *casebook.Casebook, id int64) (c contents, err error) {
	if c.about, err = book.Case(id); err != nil {
		return c, err
	}
	if c.sittings, err = book.Sittings(id); err != nil {
		return c, err
	}
	if c.photographs, err = book.Photographs(id); err != nil {
		return c, err
	}
	c.marked = map[int64][]string{}
	for _, p := range c.photographs {
		c.marked[p.ID] = r.markedBy(book, p.ID)
	}
	appraised, err := book.Appraisals(id)
	c.appraised = map[int64][]string{}
	for _, a := range appraised {
		if !a.Appraisal.Empty() {
			c.appraised[a.Sitting] = append(c.appraised[a.Sitting], a.Appraisal.Observer)
		}
	}
	return c, err
}

// show lays out what has been read, then fills in the pictures as they come.
func (p *page) show(c contents) {
	p.shown = c
	if _, there := p.photograph(p.chosen); !there {
		p.chosen = 0
	}
	focused := p.focused()
	p.head.show(c)
	p.asking.show(c)
	p.thumbs = map[int64]*thumb{}
	p.strips.RemoveAll()
	p.strips.Add(p.head.facts)
	p.strips.Add(p.asking.panel)
	for i, s := range c.sittings {
		var thumbs []*thumb
		for _, ph := range byViewAndHand(ofSitting(c.photographs, s.ID)) {
			thumbs = append(thumbs, p.newThumb(ph))
		}
		strip := newStrip(s.Stage, p.sittingWords(s), thumbs)
		strip.first, strip.last = i == 0, i == len(c.sittings)-1
		p.strips.Add(strip)
	}
	if len(c.photographs) == 0 {
		p.strips.Add(container.New(layout.NewCustomPaddedLayout(60, 0, 0, 0), p.bare))
	}
	p.foot.show()
	p.none.Hide()
	p.body.Show()
	p.stack.Arrange()
	p.strips.Refresh()
	if t := p.thumbs[focused]; t != nil {
		p.room.win.Canvas().Focus(t)
	}
	p.loadPictures()
}

// focused is the photograph to which keys go, 0 if they go elsewhere.
func (p *page) focused() int64 {
	for id, t := range p.thumbs {
		if t.focused {
			return id
		}
	}
	return 0
}

func ofSitting(all []casebook.Photograph, sitting int64) []casebook.Photograph {
	var out []casebook.Photograph
	for _, p := range all {
		if p.Sitting == sitting {
			out = append(out, p)
		}
	}
	return out
}

// atOnce is the time within which a second tap opens what the first has chosen.
const atOnce = 450 * time.Millisecond

func (p *page) newThumb(ph casebook.Photograph) *thumb {
	t := newThumb(showsText(ph), markedText(p.shown.marked[ph.ID]))
	t.onChoose = func() {
		again := p.chosen == ph.ID && time.Since(p.tapped) < atOnce
		p.tapped = time.Now()
		p.choose(ph.ID)
		if again {
			p.openChosen()
		}
	}
	t.onOpen = func() { p.choose(ph.ID); p.openChosen() }
	t.chosen = p.chosen == ph.ID
	t.colour()
	t.show(p.small.at(ph.Hash))
	p.thumbs[ph.ID] = t
	return t
}

func (p *page) choose(id int64) {
	p.chosen = id
	for other, t := range p.thumbs {
		t.choose(other == id)
	}
	p.foot.show()
}

func (p *page) openChosen() {
	if ph, ok := p.photograph(p.chosen); ok && p.room.OnOpen != nil {
		p.room.OnOpen(ph)
	}
}

func (p *page) photograph(id int64) (casebook.Photograph, bool) {
	for _, ph := range p.shown.photographs {
		if ph.ID == id {
			return ph, true
		}
	}
	return casebook.Photograph{}, false
}

// batch is how many pictures are put on the screen at a time.
const batch = 8

// loadPictures reads the small pictures beside the window.
func (p *page) loadPictures() {
	turn, all := p.turn, p.shown.photographs
	var lacking []casebook.Photograph
	for _, s := range p.shown.sittings {
		for _, ph := range byViewAndHand(ofSitting(all, s.ID)) {
			if p.small.at(ph.Hash) == nil {
				lacking = append(lacking, ph)
			}
		}
	}
	for from := 0; from < len(lacking); from += batch {
		part := lacking[from:min(from+batch, len(lacking))]
		p.room.background(func(book *casebook.Casebook) func() {
			loaded := map[int64]image.Image{}
			for _, ph := range part {
				loaded[ph.ID] = p.small.load(book, ph)
			}
			return func() {
				if turn == p.turn {
					p.place(loaded)
				}
			}
		})
	}
}

func (p *page) place(loaded map[int64]image.Image) {
	for id, m := range loaded {
		if t := p.thumbs[id]; t != nil {
			t.show(m)
		}
		p.asking.place(id, m)
	}
}
