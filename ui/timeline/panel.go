package timeline

import (
	"image"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/followup"
	"ogive/imaging/chart"
	"ogive/imaging/wording"
	"ogive/ui/flow"
	"ogive/ui/label"
	"ogive/ui/look"
	"ogive/ui/plate"
)

// panel tells all about one sitting.
type panel struct {
	room     *Room
	object   fyne.CanvasObject
	picture  *canvas.Image
	gone     *widget.Label // instead of the picture
	date     *widget.Label
	months   *widget.Label
	figure   *widget.Label
	name     *widget.Label
	creep    *widget.Label
	caution  *notice
	found    *widget.Label
	open     *widget.Button
	findings *fyne.Container
	words    *fyne.Container
	none     *widget.Label

	pictures map[int64]image.Image
	asked    int // counts what was asked for, so that what comes late is dropped
}

const pictureHeight = 140

func newPanel(r *Room) *panel {
	p := &panel{room: r, pictures: map[int64]image.Image{}}
	p.picture = &canvas.Image{FillMode: canvas.ImageFillContain, ScaleMode: canvas.ImageScaleFastest}
	p.picture.SetMinSize(fyne.NewSize(1, pictureHeight))
	p.gone = label.Centred("")
	p.date = widget.NewLabelWithStyle("", fyne.TextAlignLeading, fyne.TextStyle{Bold: true})
	p.date.SizeName = theme.SizeNameSubHeadingText
	p.months, p.name, p.creep, p.found = faint(""), faint(""), label.Wrapped(""), label.Wrapped("")
	p.found.SizeName = theme.SizeNameCaptionText
	p.figure = widget.NewLabelWithStyle("", fyne.TextAlignLeading, fyne.TextStyle{Bold: true})
	p.figure.SizeName = look.FigureText
	p.caution = newNotice()
	p.open = widget.NewButton(lang.L("Open this photograph"), r.open)
	p.open.Importance = widget.HighImportance
	p.none = label.Wrapped(lang.L("No sitting of this web has been measured yet."))

	p.findings = container.New(layout.NewCustomPaddedVBoxLayout(0),
		faint(lang.L("Found at this sitting")), tight(p.found))
	p.words = container.New(layout.NewCustomPaddedVBoxLayout(0),
		container.NewStack(p.picture, container.NewCenter(container.New(flow.Wide(220), p.gone))),
		p.date, tight(p.months), p.name, tight(p.figure), tight(p.creep), p.caution.object, p.findings)
	inner := container.NewBorder(nil, p.open, nil, nil, container.NewVScroll(container.NewStack(p.words, p.none)))
	p.object = plate.New(look.Card, "", container.New(layout.NewCustomPaddedLayout(8, 10, 8, 8), inner))
	return p
}

// tight lifts a label towards the one above it, which it belongs to.
func tight(l *widget.Label) fyne.CanvasObject {
	return container.New(layout.NewCustomPaddedLayout(-10, 0, 0, 0), l)
}

// forget drops the pictures of the case before.
func (p *panel) forget() {
	p.pictures = map[int64]image.Image{}
	p.asked++
}

// show tells about the point i of a web, about none for -1.
func (p *panel) show(w Web, i int) {
	p.asked++
	there := i >= 0 && i < len(w.Series.Points)
	flow.Visible(p.words, there)
	flow.Visible(p.open, there)
	flow.Visible(p.none, !there)
	if !there {
		return
	}
	at := w.Series.Points[i]
	p.date.SetText(at.Day.String())
	p.months.SetText(wording.Sentence(chart.Months(at, w.Series.Since)) + said(at))
	p.name.SetText(wording.Sentence(wording.IndexName(at.View)))
	p.figure.SetText(wording.Ratio(at.Index))
	p.creep.SetText(creepWords(w.Series, i))
	p.caution.show(differWords(at))
	p.tell(nil)
	p.load(w, at)
}

// said is how the photograph was read, after the time.
func said(at followup.Point) string {
	text := "\n" + lang.L("Scale by {{.Scale}}", map[string]any{"Scale": string(at.Method)})
	if at.Observer != "" {
		text += ", " + lang.L("marked by {{.Observer}}", map[string]any{"Observer": at.Observer})
	}
	return text
}

func creepWords(s followup.Series, i int) string {
	at := s.Points[i]
	switch {
	case at.Creep != nil:
		return wording.Sentence(chart.Creep(at)) + "\n" + wording.Sentence(chart.Grade(at.Grading))
	case at.Before:
		return lang.L("Before the release: no creep is told.")
	case i == s.Baseline:
		return lang.L("The baseline: creep is measured from here.")
	case s.Baseline < 0:
		return lang.L("No sitting since the release to measure creep from.")
	}
	return lang.L("No creep can be told here: the view is another, or the baseline reaches the PIP joints.")
}

// differWords warns of what else has changed since the baseline.
func differWords(at followup.Point) string {
	if len(at.Differs) == 0 {
		return ""
	}
	return lang.L("{{.Differences}} than at the baseline: a change may come from that and not from the web.",
		map[string]any{"Differences": wording.Sentence(chart.Differences(at.Differs))})
}

// load brings the thumbnail and the appraisal, which take a while.
func (p *panel) load(w Web, at followup.Point) {
	m, known, mine := p.room.model, p.pictures[at.Photograph], p.asked
	p.picture.Image = known
	p.picture.Refresh()
	p.gone.SetText("")
	if m.Thumbnail == nil && m.Appraisal == nil {
		return
	}
	p.room.beside(func() func() {
		img, err := known, error(nil)
		if img == nil && m.Thumbnail != nil {
			img, err = m.Thumbnail(at.Photograph)
		}
		var lines []string
		if m.Appraisal != nil {
			lines = m.Appraisal(w, at)
		}
		return func() {
			if mine == p.asked {
				p.loaded(at.Photograph, img, err, lines)
			}
		}
	})
}

func (p *panel) loaded(photograph int64, img image.Image, err error, lines []string) {
	if err != nil {
		p.gone.SetText(lang.L("The photograph can't be shown: {{.Problem}}", map[string]any{"Problem": err.Error()}))
	}
	if img != nil {
		p.pictures[photograph] = img
		p.picture.Image = img
		p.picture.Refresh()
	}
	p.tell(lines)
}

// tell says what was found, nothing for no lines.
func (p *panel) tell(lines []string) {
	p.found.SetText(strings.Join(lines, "\n"))
	flow.Visible(p.findings, len(lines) > 0)
	p.words.Refresh()
}
