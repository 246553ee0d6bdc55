// Package welcome is the empty window: what to do when no photograph is open.
//
//	page := welcome.New()
//	page.OnOpen = func() { ... }
//	page.ShowRecents([]string{"/photographs/right-dorsal.jpg"}, []string{"/casebook"})
package welcome

import (
	"path/filepath"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/wording"
	"ogive/ui/drawing"
	"ogive/ui/look"
)

// mostRecents is how many recent photographs, and how many recent casebooks, the
// page has room for.
const mostRecents = 3

// Page is the page. What a field is nil for is not offered.
type Page struct {
	// OnOpen asks for a photograph, OnExample opens the example, OnHow shows how
	// a photograph is taken, OnPlan opens an example to plan on.
	OnOpen, OnExample, OnHow, OnPlan func()
	// OnCasebook asks for a casebook, OnExampleCasebook opens the example.
	OnCasebook, OnExampleCasebook func()
	// OnRound begins a teaching round, OnAgreement shows how far observers agree.
	OnRound, OnAgreement func()
	// OnRecent opens a photograph again, OnRecentCasebook a casebook.
	OnRecent, OnRecentCasebook func(path string)

	photographs, casebooks *fyne.Container
	room                   *fyne.Container
}

// New is the page without anything that was opened before. Set its callbacks
// before it is shown.
func New() *Page {
	return &Page{photographs: container.NewVBox(), casebooks: container.NewVBox(), room: container.NewStack()}
}

// Room is the page as an object that fills the window.
func (p *Page) Room() fyne.CanvasObject {
	if len(p.room.Objects) == 0 {
		p.room.Add(p.build())
	}
	return p.room
}

// ShowRecents lists photographs and casebooks that were opened before, the last
// ones first.
func (p *Page) ShowRecents(photographs, casebooks []string) {
	list(p.photographs, photographs, func(path string) { p.OnRecent(path) })
	list(p.casebooks, casebooks, func(path string) { p.OnRecentCasebook(path) })
}

func list(box *fyne.Container, paths []string, open func(path string)) {
	box.RemoveAll()
	if len(paths) > 0 {
		box.Add(quiet(lang.L("Opened before")))
	}
	for _, path := range paths[:min(len(paths), mostRecents)] {
		again := widget.NewButton(short(path), func() { open(path) })
		again.Alignment, again.Importance = widget.ButtonAlignLeading, widget.LowImportance
		box.Add(again)
	}
	box.Refresh()
}

// short is a photograph's name and the folder it lies in.
func short(path string) string {
	const longest = 32
	name := []rune(filepath.Join(filepath.Base(filepath.Dir(path)), filepath.Base(path)))
	if len(name) > longest {
		name = append([]rune("…"), name[len(name)-longest+1:]...)
	}
	return string(name)
}

func (p *Page) build() fyne.CanvasObject {
	name := widget.NewLabelWithStyle("Ogive", fyne.TextAlignLeading, fyne.TextStyle{Bold: true})
	name.SizeName = theme.SizeNameHeadingText
	job := wrapped(lang.L("Measures the webs between the fingers on photographs of a hand with a ruler: how deep, how wide, how pointed, how steep; before an operation, and over the years after it."))
	hand := drawing.New(drawing.Back, fyne.NewSize(100, 120))
	head := container.NewBorder(nil, nil, hand, nil, container.NewCenter(container.NewGridWrap(fyne.NewSize(720, 116), container.NewVBox(name, job))))

	uses := container.New(layout.NewCustomPaddedHBoxLayout(2*look.Size(look.Gap)), p.measuring(), p.following(), p.learning())
	caution := wrapped(wording.Caution)
	caution.SizeName, caution.Importance = theme.SizeNameCaptionText, widget.LowImportance
	return container.NewBorder(nil, container.NewPadded(caution), nil, nil,
		container.NewCenter(container.NewVBox(container.NewCenter(head), gap(), uses)))
}

// measuring is the use of one photograph.
func (p *Page) measuring() fyne.CanvasObject {
	open := action(look.IconOpen, lang.L("Open a photograph…"), p.OnOpen)
	open.Importance = widget.HighImportance
	return use(lang.L("Measure and plan"), lang.L("One photograph: the figures of each web, and the arch to be cut. Open it, or drop it on this window."),
		open,
		action(look.IconExample, lang.L("Try it on an example"), p.OnExample),
		action(look.IconPlan, lang.L("Plan an example"), p.OnPlan),
		action(look.IconCamera, lang.L("How to take the photograph"), p.OnHow),
		p.photographs)
}

// following is the use of a casebook.
func (p *Page) following() fyne.CanvasObject {
	return use(lang.L("Follow over the years"), lang.L("A casebook keeps the photographs of each case: the operated web beside the other hand, and over time."),
		action(look.IconCasebook, lang.L("Open a casebook…"), p.OnCasebook),
		action(look.IconExample, lang.L("See the example casebook"), p.OnExampleCasebook),
		p.casebooks)
}

// learning is the use of rounds.
func (p *Page) learning() fyne.CanvasObject {
	return use(lang.L("Learn to judge"), lang.L("A round of pictures whose truth is known: judge the webs by eye, or mark them blind, and see which way your eye errs."),
		action(look.IconRound, lang.L("Take a round"), p.OnRound),
		action(look.IconAgreement, lang.L("How far observers agree"), p.OnAgreement))
}

// use is a column of the page; an offer that is nil is left out, and so is a
// column without any.
func use(title, words string, offers ...fyne.CanvasObject) fyne.CanvasObject {
	heading := widget.NewLabelWithStyle(title, fyne.TextAlignLeading, fyne.TextStyle{Bold: true})
	heading.SizeName = theme.SizeNameSubHeadingText
	column := container.NewVBox(heading, container.NewGridWrap(fyne.NewSize(columnWidth, wordsHeight), wrapped(words)))
	offered := false
	for _, o := range offers {
		if b, ok := o.(*widget.Button); !ok || b.OnTapped != nil {
			column.Add(o)
			offered = offered || ok
		}
	}
	if !offered {
		return container.NewWithoutLayout()
	}
	return container.New(framed{columnHeight}, column)
}

const columnWidth, wordsHeight, columnHeight = 292, 92, 400

// framed gives a column its height, so that all stand on one line and leave room
// for what was opened before.
type framed struct{ height float32 }

// MinSize is called by Fyne.
func (f framed) MinSize(o []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(columnWidth, max(f.height, o[0].MinSize().Height))
}

// Layout is called by Fyne.
func (f framed) Layout(o []fyne.CanvasObject, size fyne.Size) {
	o[0].Resize(fyne.NewSize(size.Width, o[0].MinSize().Height))
}

func action(icon look.IconName, text string, do func()) *widget.Button {
	b := widget.NewButtonWithIcon(text, look.Icon(icon), do)
	b.Alignment = widget.ButtonAlignLeading
	return b
}

// quiet is a small line above a list.
func quiet(text string) *widget.Label {
	l := widget.NewLabel(text)
	l.SizeName, l.Importance = theme.SizeNameCaptionText, widget.LowImportance
	return l
}

func wrapped(text string) *widget.Label {
	l := widget.NewLabel(text)
	l.Wrapping = fyne.TextWrapWord
	return l
}

func gap() fyne.CanvasObject {
	s := layout.NewSpacer()
	return container.New(layout.NewCustomPaddedLayout(0, look.Size(look.Gap), 0, 0), s)
}
