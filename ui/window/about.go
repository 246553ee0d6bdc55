package window

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/wording"
)

const cautionKey = "caution_read"

// cautions is what the program does not do, in full.
func cautions() []string {
	return []string{
		wording.Term(wording.Caution),
		lang.L("Ogive draws and measures on photographs. It does not choose an operation. A photograph is flat and a hand is not: measure again on the patient before you cut."),
		lang.L("Whether skin will live, how its vessels run, and what lies beneath in bone and tendon cannot be seen on a photograph and is not assessed here."),
		lang.L("Every figure stands with the interval in which the truth is expected; a verdict marked doubtful is none. Normal values differ between their sources, which are named."),
		lang.L("The local protocol and the responsible surgeon decide."),
	}
}

// cautionOnce shows the caution at the first use.
func (w *Window) cautionOnce() {
	if w.app.Preferences().Bool(cautionKey) {
		return
	}
	page := dialog.NewCustom(lang.L("Before you use this program"), lang.L("I have read this"), paragraphs(cautions()), w.win)
	page.SetOnClosed(func() {
		w.app.Preferences().SetBool(cautionKey, true)
		w.caution = nil
		w.keyboard.take()
	})
	w.caution = page
	page.Resize(w.nearlyWhole(640, 400))
	page.Show()
}

func paragraphs(texts []string) fyne.CanvasObject {
	box := container.NewVBox()
	for _, text := range texts {
		box.Add(wrapping(text))
	}
	return container.NewVScroll(box)
}

// showAbout repeats the caution, with version and licences.
func (w *Window) showAbout() {
	data := w.app.Metadata()
	version := data.Version
	if version == "" {
		version = lang.L("built from source")
	}
	name := widget.NewLabelWithStyle("Ogive", fyne.TextAlignLeading, fyne.TextStyle{Bold: true})
	name.SizeName = theme.SizeNameHeadingText
	box := container.NewVBox(name, widget.NewLabel(lang.L("Version {{.Version}}", map[string]any{"Version": version})))
	for _, text := range cautions() {
		box.Add(wrapping(text))
	}
	box.Add(widget.NewSeparator())
	box.Add(widget.NewLabelWithStyle(lang.L("Licences"), fyne.TextAlignLeading, fyne.TextStyle{Bold: true}))
	box.Add(wrapping(lang.L("Ogive is free under the licence that comes with it. It is built with the works of others, each under its own licence:")))
	for _, l := range licences {
		box.Add(wrapping(l.works + ": " + l.licence))
	}
	page := dialog.NewCustom(lang.L("About Ogive"), lang.L("Close"), container.NewVScroll(box), w.win)
	w.open(page)
	page.Resize(w.nearlyWhole(680, 640))
	page.Show()
}
