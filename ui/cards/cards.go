// Package cards is the live reading beside the photograph: a card for each web
// with a small drawing of its arch, its figures with their intervals, and the
// verdicts in words.
//
//	c := cards.New()
//	c.OnSelectWeb = func(w hand.Web) { ... } // a card was chosen
//	c.OnHelp = func() { ... }                // how to take the photograph
//	beside := container.NewBorder(nil, nil, nil, c.Content(), photograph)
//	c.Show(reading, state)
//
// Show may be called for every movement of a dragged point: it changes what has
// changed and builds nothing anew. All calls are made on Fyne's own goroutine.
package cards

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/hand"
	"ogive/imaging/wording"
	"ogive/ui/flow"
	"ogive/ui/look"
	"ogive/ui/marking"
)

// Cards is the column of cards.
type Cards struct {
	// OnSelectWeb is called when a card is chosen.
	OnSelectWeb func(hand.Web)
	// OnHelp is called by the link under warnings; it leads to the page on how
	// to take the photograph.
	OnHelp func()

	summary *widget.Label // the verdicts of all webs, a line each
	notices *notices
	empty   *placeholder
	cards   map[hand.Web]*card
	stack   *flow.Stack
	scroll  *container.Scroll
	foot    *footnote
	caution [2]*widget.Label // below the cards, and among them
	root    *fyne.Container
	body    *body
	chosen  hand.Web
}

// body is the column as a widget, which Fyne refreshes when the theme changes.
type body struct {
	widget.BaseWidget
	c *Cards
}

func (b *body) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(b.c.root) }

func (b *body) MinSize() fyne.Size {
	return fyne.NewSize(look.Size(look.Column), heightOf(b.c.summary, look.Size(look.Column))+leastCards)
}

// New is an empty column.
func New() *Cards {
	c := &Cards{cards: map[hand.Web]*card{}}
	help := func() {
		if c.OnHelp != nil {
			c.OnHelp()
		}
	}
	c.notices, c.foot = newNotices(help), newFootnote(help)
	c.empty = newPlaceholder()
	c.summary = widget.NewLabel("")
	c.summary.Wrapping, c.summary.TextStyle.Bold = fyne.TextWrapWord, true
	c.summary.Hide()
	objects := []fyne.CanvasObject{c.notices, c.empty}
	for _, w := range hand.Webs {
		c.cards[w] = newCard(w, func() {
			if c.OnSelectWeb != nil {
				c.OnSelectWeb(w)
			}
		})
		c.cards[w].Hide()
		objects = append(objects, c.cards[w])
	}
	c.notices.Hide()
	for i := range c.caution {
		c.caution[i] = widget.NewLabel(wording.Term(wording.Caution))
		c.caution[i].Wrapping = fyne.TextWrapWord
		c.caution[i].SizeName = theme.SizeNameCaptionText
	}
	objects = append(objects, c.foot, c.caution[1])
	c.stack = &flow.Stack{Gap: look.Size(look.Gap)}
	c.scroll = container.NewVScroll(container.New(c.stack, objects...))
	c.stack.OnHeight = c.scroll.Refresh
	c.root = container.New(&column{scrolled: c.caution[1], stack: c.stack}, c.summary, c.scroll, c.caution[0])
	c.body = &body{c: c}
	c.body.ExtendBaseWidget(c.body)
	c.Show(marking.Reading{}, marking.State{})
	return c
}

// Content is what stands in the window.
func (c *Cards) Content() fyne.CanvasObject { return c.body }

// Select marks the card of a web, 0 for none.
func (c *Cards) Select(w hand.Web) {
	c.chosen = w
	for _, web := range hand.Webs {
		c.cards[web].choose(web == w)
	}
}

// Show brings the cards up to date with a reading of s.
func (c *Cards) Show(r marking.Reading, s marking.State) {
	rearranged := c.summarise(summary(r.Webs))
	rearranged = c.notices.show(r) || rearranged
	rearranged = c.foot.show(r) || rearranged
	f := frameFor(r.Webs)
	read := map[hand.Web]bool{}
	for _, w := range r.Webs {
		card, known := c.cards[w.Web]
		if !known {
			continue
		}
		read[w.Web] = true
		rearranged = card.show(w, s, f) || rearranged
	}
	for _, web := range hand.Webs {
		rearranged = flow.Visible(c.cards[web], read[web]) || rearranged
	}
	rearranged = c.empty.say(emptyWords(r, s)) || rearranged
	rearranged = flow.Visible(c.empty, len(read) == 0) || rearranged
	if rearranged {
		c.stack.Arrange()
	}
}

// summarise reports whether the height may have changed.
func (c *Cards) summarise(text string) bool {
	if text == c.summary.Text {
		return false
	}
	c.summary.SetText(text)
	flow.Visible(c.summary, text != "")
	c.root.Refresh() // it stands above the cards and takes of their room
	return true
}

// emptyWords say what will appear and what it waits for.
func emptyWords(r marking.Reading, s marking.State) string {
	switch {
	case s.Side == 0 || s.View == 0:
		return lang.L("The figures wait for the scale, the joints and the webs.")
	case !r.Scaled && len(r.Edges) > 0:
		return lang.L("The borders are traced. The figures wait for the scale.")
	case !r.Scaled:
		return lang.L("The figures wait for the scale: mark a ruler or a card.")
	case s.View == hand.WebView:
		return lang.L("The slope waits for the finger's long axis and for two points or more along the junction.")
	}
	return lang.L("The figures wait for a web: click border, crown and border.")
}
