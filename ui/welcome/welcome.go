// Package welcome is the empty window: what to do when no photograph is open.
//
//	page := welcome.New()
//	page.OnOpen = func() { ... }
//	page.ShowRecents([]string{"/cases/right-dorsal.jpg"})
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

// mostRecents is how many recent photographs the page has room for.
const mostRecents = 4

// Page is the page.
type Page struct {
	// OnOpen asks for a photograph, OnExample opens the example, OnHow shows how
	// a photograph is taken, OnRecent opens a photograph again.
	OnOpen, OnExample, OnHow func()
	OnRecent                 func(path string)

	recents *fyne.Container
	room    fyne.CanvasObject
}

// New is the page without recent photographs.
func New() *Page {
	p := &Page{recents: container.NewVBox()}
	p.room = p.build()
	return p
}

// Room is the page as an object that fills the window.
func (p *Page) Room() fyne.CanvasObject { return p.room }

// ShowRecents lists photographs that were opened before, the last one first.
func (p *Page) ShowRecents(paths []string) {
	p.recents.RemoveAll()
	if len(paths) > 0 {
		p.recents.Add(widget.NewLabelWithStyle(lang.L("Opened before"), fyne.TextAlignLeading, fyne.TextStyle{Bold: true}))
	}
	for _, path := range paths[:min(len(paths), mostRecents)] {
		again := widget.NewButton(short(path), func() { p.OnRecent(path) })
		again.Alignment, again.Importance = widget.ButtonAlignLeading, widget.LowImportance
		p.recents.Add(again)
	}
	p.recents.Refresh()
}

// short is a photograph's name and the folder it lies in.
func short(path string) string {
	const longest = 48
	name := []rune(filepath.Join(filepath.Base(filepath.Dir(path)), filepath.Base(path)))
	if len(name) > longest {
		name = append([]rune("…"), name[len(name)-longest+1:]...)
	}
	return string(name)
}

func (p *Page) build() fyne.CanvasObject {
	name := widget.NewLabelWithStyle("Ogive", fyne.TextAlignLeading, fyne.TextStyle{Bold: true})
	name.SizeName = theme.SizeNameHeadingText
	job := wrapped(lang.L("Measures the webs between the fingers on a photograph of a hand with a ruler: how deep, how wide, how pointed, how steep."))

	open := action(look.IconOpen, lang.L("Open a photograph…"), func() { p.OnOpen() })
	open.Importance = widget.HighImportance
	example := action(look.IconExample, lang.L("Try it on an example"), func() { p.OnExample() })
	how := action(look.IconCamera, lang.L("How to take the photograph"), func() { p.OnHow() })
	drop := wrapped(lang.L("Or drop a photograph on this window."))
	drop.Importance = widget.LowImportance

	caution := wrapped(wording.Caution)
	caution.SizeName, caution.Importance = theme.SizeNameCaptionText, widget.LowImportance

	words := container.NewVBox(name, job, gap(), open, example, how, drop, gap(), p.recents)
	hand := drawing.New(drawing.Back, fyne.NewSize(250, 300))
	return container.NewBorder(nil, container.NewPadded(caution), nil, nil,
		container.NewCenter(container.New(layout.NewCustomPaddedHBoxLayout(48), container.NewCenter(hand), container.NewGridWrap(fyne.NewSize(400, 430), words))))
}

func action(icon look.IconName, text string, do func()) *widget.Button {
	b := widget.NewButtonWithIcon(text, look.Icon(icon), do)
	b.Alignment = widget.ButtonAlignLeading
	return b
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
