package round

import (
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/rounds"
	"ogive/ui/choice"
)

// start is the page on which a round begins, goes on, or is looked at again.
type start struct {
	room   *Room
	kinds  [2]*tile
	kind   rounds.Kind
	from   *fyne.Container // which pictures, where there is a choice
	source *choice.Choice  // 0 phantoms, 1 the casebook
	drawn  *fyne.Container // what only phantoms have
	hard   *choice.Choice
	means  *widget.Label
	counts *choice.Choice
	faults *widget.CheckGroup
	fold   *widget.Button
	folded *fyne.Container
	who    *widget.Entry
	begins *widget.Button
	notice *notice
	begun  *begun
	curve  *curve
	left   *pile
	right  *pile
	page   *fyne.Container // all of the left

	recalled bool // it is set as the latest round was
	object   fyne.CanvasObject
}

// counted are the numbers of pictures that are offered.
var counted = []int{5, rounds.DefaultCount, 20}

func newStart(r *Room) *start {
	s := &start{room: r, kind: rounds.ByEye}
	s.kinds[0] = newTile(rounds.ByEye, func() { s.choose(rounds.ByEye) })
	s.kinds[1] = newTile(rounds.Blind, func() { s.choose(rounds.Blind) })
	s.means = caption("")
	s.buildChoices()
	s.who = widget.NewEntry()
	s.who.OnChanged = s.name
	s.who.OnSubmitted = func(string) { s.begin() }
	s.begins = widget.NewButton("", s.begin)
	s.begins.Importance = widget.HighImportance
	s.begun, s.curve = newBegun(r), newCurve()
	s.notice = newNotice(func() { s.page.Refresh() })
	s.from = container.NewVBox()
	s.from.Hide()
	s.drawn = container.New(layout.NewCustomPaddedVBoxLayout(0), strong(lang.L("How hard?")), s.hard, s.means)
	s.left = newPile(
		heading(lang.L("A new round")),
		container.NewGridWithColumns(2, s.kinds[0], s.kinds[1]), empty(8),
		s.from, s.drawn,
		strong(lang.L("How many pictures?")), s.counts, empty(6),
		s.fold, s.folded,
		strong(lang.L("Who takes it?")), container.New(narrow(200), s.who), empty(8))
	s.right = newPile(s.begun.object, empty(8), s.curve)
	s.page = newTower(1, s.notice.object, s.left.object, s.begins)
	s.object = container.New(halves{}, s.page, s.right.object)
	s.choose(rounds.ByEye)
	s.hard.Set(0)
	s.setHard(0)
	s.counts.Set(1)
	return s
}

func (s *start) buildChoices() {
	var names, numbers, faults []string
	for _, d := range rounds.Difficulties {
		names = append(names, difficultyWords(d))
	}
	for _, n := range counted {
		numbers = append(numbers, fixed(float64(n), 0))
	}
	for _, f := range rounds.Faults {
		faults = append(faults, faultWords(f))
	}
	s.hard, s.counts = choice.New(names...), choice.New(numbers...)
	s.hard.OnChosen = s.setHard
	s.counts.OnChosen = func(int) { s.room.keyboard.take() }
	s.faults = widget.NewCheckGroup(faults, nil)
	s.faults.SetSelected(faults)
	s.faults.OnChanged = func([]string) { s.showFold() }
	s.fold = quiet("", func() {
		visible(s.folded, !s.folded.Visible())
		s.showFold()
	})
	s.fold.Alignment = widget.ButtonAlignLeading
	s.folded = container.NewVBox(s.faults)
	s.folded.Hide()
	s.showFold()
}

func (s *start) setHard(i int) {
	s.means.SetText(difficultyMeans(rounds.Difficulties[i]))
	s.arrange()
	s.room.keyboard.take()
}

// showFold says in one line what occurs, under which the list can be opened.
func (s *start) showFold() {
	text := lang.L("What may occur: everything")
	if n := len(s.faults.Selected); n < len(rounds.Faults) {
		text = lang.L("What may occur: {{.Number}} of {{.All}} kinds of fault", map[string]any{"Number": n, "All": len(rounds.Faults)})
	}
	mark := "▸ "
	if s.folded.Visible() {
		mark = "▾ "
	}
	s.fold.SetText(mark + text)
	s.show()
	s.arrange()
}

func (s *start) arrange() {
	if s.left != nil {
		s.left.arrange()
	}
}

// choose takes a kind of round.
func (s *start) choose(k rounds.Kind) {
	s.kind = k
	for _, t := range s.kinds {
		t.choose(t.kind == k)
	}
	s.show()
	s.room.keyboard.take()
}

// typed chooses by the keys 1 and 2.
func (s *start) typed(c rune) {
	switch c {
	case '1':
		s.choose(rounds.ByEye)
	case '2':
		s.choose(rounds.Blind)
	}
}

// tellObserver sets who takes the round.
func (s *start) tellObserver(name string) {
	s.who.SetText(name)
	s.name(name)
}

func (s *start) name(text string) {
	s.room.observer = strings.TrimSpace(text)
	s.show()
}

// setup is what the page is set to.
func (s *start) setup() rounds.Setup {
	out := rounds.Setup{Kind: s.kind, Count: counted[max(0, s.counts.Chosen)], Difficulty: rounds.Difficulties[max(0, s.hard.Chosen)]}
	for i, f := range rounds.Faults {
		for _, name := range s.faults.Selected {
			if name == s.faults.Options[i] {
				out.Faults = append(out.Faults, f)
			}
		}
	}
	return out
}

// lacks says what is lacking before a round can begin, "" for nothing.
func (s *start) lacks() string {
	switch {
	case s.room.observer == "":
		return lang.L("Say who takes the round first")
	case len(s.faults.Selected) == 0 && !s.fromCasebook():
		return lang.L("Tick something that may occur first")
	}
	return ""
}

func (s *start) begin() {
	if s.lacks() != "" || s.room.busy {
		return
	}
	s.notice.show("")
	setup := s.setup()
	if s.fromCasebook() {
		setup.Casebook = s.room.casebook.Key
		setup.Photographs = s.room.casebook.some(setup.Count, rounds.FreshSeed(s.room.all))
	}
	s.room.begin(setup)
}

// show brings the page up to date with the rounds of the observer.
func (s *start) show() {
	if s.curve == nil {
		return // the page is being built
	}
	s.waiting(s.room.busy)
	own := rounds.Of(s.room.all, s.room.observer)
	s.recall(own)
	s.begun.show(own)
	s.curve.show(rounds.Curve(s.room.all, s.room.observer, s.kind), s.kind)
	s.right.arrange()
}

// recall sets the page as the latest round was, once.
func (s *start) recall(own []*rounds.Round) {
	if s.recalled || len(own) == 0 {
		return
	}
	s.recalled = true
	last := own[len(own)-1].Setup
	if i := slices.Index(rounds.Difficulties, last.Difficulty); i >= 0 {
		s.hard.Set(i)
		s.means.SetText(difficultyMeans(last.Difficulty))
	}
	s.kind = last.Kind
	for _, t := range s.kinds {
		t.choose(t.kind == s.kind)
	}
	s.arrange()
}

// waiting says that the first picture is being made.
func (s *start) waiting(on bool) {
	lacks := s.lacks()
	able(s.begins, !on && lacks == "")
	switch {
	case on:
		s.begins.SetText(lang.L("The first picture is being made…"))
	case lacks != "":
		s.begins.SetText(lacks)
	default:
		s.begins.SetText(withKey(lang.L("Begin the round"), lang.L("Enter")))
	}
	s.begun.waiting(on)
}

func (s *start) say(text string) { s.notice.show(text) }

// tellRefused says which rounds in the folder can't be read.
func (s *start) tellRefused(refused []error) {
	if len(refused) > 0 && s.notice.label.Text == "" {
		s.say(lang.L("{{.Problem}}. The other rounds are there.", map[string]any{"Problem": sentenceOf(refused[0])}))
	}
}
