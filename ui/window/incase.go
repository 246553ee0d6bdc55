package window

import (
	"fmt"
	"slices"
	"strings"

	"fyne.io/fyne/v2/lang"

	"ogive/geometry/hand"
	"ogive/imaging/casebook"
	"ogive/imaging/marksfile"
	"ogive/imaging/photo"
	"ogive/ui/marking"
)

// inCase is the photograph of a casebook on which the window works, and keeps
// its marks there.
type inCase struct {
	book       *casebook.Casebook
	photograph casebook.Photograph
	code       string // of the case
	observer   string
	others     []string // who else has marked it, if this observer has not
}

// Load is the observer's latest marks.
func (c *inCase) Load() (marksfile.File, bool, error) {
	return c.book.Marks(c.photograph.ID, c.observer)
}

// Save keeps the marks in the casebook.
func (c *inCase) Save(f marksfile.File) error {
	return c.book.SaveMarks(c.photograph.ID, c.observer, f)
}

// Name is the case and the day.
func (c *inCase) Name() string {
	return lang.L("case {{.Code}}, {{.Date}}", map[string]any{"Code": c.code, "Date": c.photograph.Date})
}

// tell says which hand the photograph shows; a casebook is told before the marks
// are, so that the two never differ.
func (c *inCase) tell(side hand.Side, view hand.View) error {
	if c.photograph.Hand == side.String() && c.photograph.View == view.String() {
		return nil
	}
	if err := c.book.SetHandAndView(c.photograph.ID, side, view); err != nil {
		return err
	}
	c.photograph.Hand, c.photograph.View = side.String(), view.String()
	return nil
}

// openFromCase opens a photograph of the casebook with the observer's marks.
func (w *Window) openFromCase(p casebook.Photograph) {
	if !w.putAway() {
		return
	}
	turn := w.turn.Add(1)
	w.notices.show(notice{about: aboutOpening, lasting: true, text: lang.L("Opening {{.Name}}…", map[string]any{"Name": lang.L("the photograph")})})
	here := &inCase{book: w.book, photograph: p, observer: w.observer()}
	w.background(func() func() {
		work, err := here.open(w)
		return func() {
			switch {
			case w.turn.Load() != turn:
			case err != nil:
				w.cannotOpen(plain(err))
			default:
				w.adopt(work, here)
				w.saved(w.tellFromCase())
				w.offerMarksOfOthers()
			}
		}
	})
}

func (c *inCase) open(w *Window) (*marking.Work, error) {
	of, err := c.book.CaseOf(c.photograph)
	if err != nil {
		return nil, err
	}
	c.code = of.Code
	if c.others, err = c.markedByOthersOnly(); err != nil {
		return nil, err
	}
	path := c.book.Path(c.photograph)
	p, err := photo.Open(path)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", c.Name(), err)
	}
	return marking.KeptBy(path, c, p, w.settings)
}

func (c *inCase) markedByOthersOnly() ([]string, error) {
	all, err := c.book.MarkedBy(c.photograph.ID)
	if err != nil || slices.Contains(all, c.observer) {
		return nil, err
	}
	return all, nil
}

// offerMarksOfOthers asks whether to begin with what somebody else has marked;
// theirs stay as they are.
func (w *Window) offerMarksOfOthers() {
	here := w.inCase
	if len(here.others) == 0 || here.book.ReadOnly() != "" {
		return
	}
	n := notice{about: aboutOpening, lasting: true,
		text:    lang.L("Marked by {{.Who}}, not yet by {{.You}}. Marking it without a look at theirs tells how far you agree.", map[string]any{"Who": strings.Join(here.others, ", "), "You": here.observer}),
		choices: []choiceOf{{lang.L("Mark it myself"), func() { w.notices.close(aboutOpening) }}}}
	for _, who := range here.others {
		n.choices = append(n.choices, choiceOf{lang.L("Take over those of {{.Who}}", map[string]any{"Who": who}), func() { w.takeOver(who) }})
	}
	w.notices.show(n)
}

// takeOver begins the observer's marks with a copy of somebody else's.
func (w *Window) takeOver(who string) {
	here := w.inCase
	marks, any, err := here.book.Marks(here.photograph.ID, who)
	if err == nil && any {
		err = here.book.SaveMarks(here.photograph.ID, here.observer, marks)
	}
	if err != nil {
		w.cannotOpen(plain(err))
		return
	}
	w.openFromCase(here.photograph)
}

// tellFromCase takes up hand and view, which a casebook asks for once.
func (w *Window) tellFromCase() error {
	side, sideErr := hand.ParseSide(w.inCase.photograph.Hand)
	view, viewErr := hand.ParseView(w.inCase.photograph.View)
	if sideErr != nil || viewErr != nil || w.work.State().Side != 0 {
		return nil // it is not said yet, or the marks say it
	}
	err := w.work.SetHand(side, view)
	w.refresh()
	return err
}

// belongs shows the way back to the case, where there is one.
func (b *bar) belongs(of *inCase) {
	show(b.back, of != nil)
	if of != nil {
		b.back.SetText(of.code)
	}
}
