package round

import (
	"os"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/rounds"
	"ogive/imaging/wholefile"
	"ogive/imaging/wording"
	"ogive/ui/look"
	"ogive/ui/saving"
)

// result is the page that says what a round came to: first which way to correct
// the eye, then the score, what was taken for what, and the curve over all rounds.
type result struct {
	room  *Room
	round *rounds.Round

	notice  *notice
	home    *pile
	figures *pile
	curve   *curve
	own     *ownClick
	buttons []*widget.Button
	object  fyne.CanvasObject
}

func newResult(r *Room) *result {
	s := &result{room: r, curve: newCurve()}
	s.home, s.figures = newPile(), newPile()
	s.notice = newNotice(func() { s.object.Refresh() })
	s.own = newOwnClick(r)
	another := widget.NewButton(lang.L("Another round"), s.another)
	another.Importance = widget.HighImportance
	again := widget.NewButton(lang.L("Again in another order"), func() { r.again(s.round) })
	copied := widget.NewButtonWithIcon(lang.L("Copy as text"), look.Icon(look.IconCopy), s.copy)
	save := widget.NewButton(lang.L("Save as text…"), s.askWhere)
	s.buttons = []*widget.Button{another, again}
	bar := container.NewHBox(another, again, copied, save)
	foot := container.NewVBox(s.notice.object, inset(bar, 6, 0, 12), caution())
	s.object = container.NewBorder(nil, foot, nil, nil, container.New(halves{}, s.home.object, s.figures.object))
	return s
}

// caution stands under every result.
func caution() *widget.Label { return caption(wording.Term(wording.Caution)) }

// show tells what the round came to.
func (s *result) show(round *rounds.Round) {
	if s.round != round {
		s.notice.show("")
	}
	s.round = round
	sum := round.Summary()
	s.home.clear()
	s.home.add(s.score(sum)...)
	s.curve.show(rounds.Curve(s.room.all, round.Observer, round.Setup.Kind), round.Setup.Kind)
	s.own.show(round)
	s.home.add(s.own, empty(10), s.curve)
	s.home.top()
	s.figures.clear()
	s.figures.add(s.tables(sum)...)
	s.figures.top()
	s.waiting(s.room.busy)
}

// score is what to take home.
func (s *result) score(sum rounds.Summary) []fyne.CanvasObject {
	figure := widget.NewLabelWithStyle(lang.L("{{.Right}} of {{.All}} answers right", map[string]any{"Right": sum.Score.Right, "All": sum.Score.Of}), fyne.TextAlignLeading, fyne.TextStyle{Bold: true})
	figure.SizeName = theme.SizeNameHeadingText
	list := []fyne.CanvasObject{figure, caption(percent(sum.Score))}
	home := newCard(strong(lang.L("To take home")))
	home.ground, home.edge, home.gap = look.Notice, "", -8
	for _, sentence := range sum.Sentences {
		home.objects = append(home.objects, wrapped(sentence))
	}
	if len(sum.Sentences) == 0 {
		home.objects = append(home.objects, wrapped(lang.L("Nothing was mistaken often enough to speak of.")))
	}
	return append(list, home, empty(10))
}

// tables are the score of each question, what was taken for what, and how widely
// blind marks scatter.
func (s *result) tables(sum rounds.Summary) []fyne.CanvasObject {
	rows := [][]string{{lang.L("question"), lang.L("right (interval at 95 per cent)")}}
	for _, t := range sum.By {
		rows = append(rows, []string{wording.Sentence(askedWords(t.Of)), share(t.Share)})
	}
	list := []fyne.CanvasObject{newGrid(lang.L("Question by question"), "", rows, []float32{1, 3}, -1), empty(8)}
	for _, m := range sum.Confusions {
		list = append(list, newConfusion(m), empty(8))
	}
	if len(sum.Landmarks) > 0 {
		list = append(list, newGrid(lang.L("Your marks beside the true ones, in mm"), lang.L("Mean with its interval at 95 per cent; distal and ulnar are +."),
			scatterRows(sum.Landmarks), []float32{1.4, 2, 2, 0.8}, -1), empty(8))
	}
	if len(sum.Figures) > 0 {
		list = append(list, newGrid(lang.L("Figures from your marks, less the true ones"), lang.L("Mean with its interval at 95 per cent."), figureRows(sum.Figures), []float32{1.4, 2.6, 1.2}, -1), empty(8))
	}
	return append(list, caption(againstWords(s.round.Limits)))
}

// waiting says that a round is being made.
func (s *result) waiting(on bool) {
	for _, b := range s.buttons {
		able(b, !on)
	}
}

func (s *result) say(text string) { s.notice.show(text) }

// another begins a round of the same kind with other pictures.
func (s *result) another() {
	setup := s.round.Setup
	if len(setup.Photographs) > 0 {
		s.room.toStart()
		return
	}
	s.room.begin(setup)
}

func (s *result) key(name fyne.KeyName, enter bool) {
	if enter && !s.room.busy {
		s.another()
	}
	if name == fyne.KeyEscape {
		s.room.leave()
	}
}

// text is the result as it leaves the program.
func (s *result) text() string {
	return textOf(s.round, rounds.Curve(s.room.all, s.round.Observer, s.round.Setup.Kind))
}

func (s *result) copy() {
	fyne.CurrentApp().Clipboard().SetContent(s.text())
	s.say(lang.L("The result is copied."))
	s.room.keyboard.take()
}

// askWhere asks where the result is to be saved.
func (s *result) askWhere() {
	folder, err := os.UserHomeDir()
	if err != nil {
		folder = "."
	}
	saving.Ask(s.room.win, saving.Question{
		Title: lang.L("Save the result as text"), Folder: folder,
		Name: "round-" + s.round.Begun.Local().Format("2006-01-02") + ".txt",
	}, s.save, s.room.keyboard.take)
}

func (s *result) save(path string) {
	if filepath.Ext(path) == "" {
		path += ".txt"
	}
	if err := wholefile.Write(path, []byte(s.text())); err != nil {
		s.say(lang.L("The result is not saved: {{.Problem}}.", map[string]any{"Problem": strings.TrimSuffix(err.Error(), ".")}))
		return
	}
	s.say(lang.L("The result is saved as {{.Name}}.", map[string]any{"Name": path}))
}
