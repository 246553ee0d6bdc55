package plancolour

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/imaging/photo"
	"ogive/imaging/wording"
	"ogive/ui/board"
	"ogive/ui/marking"
)

// elsewhere asks for a click on another photograph, over the window.
func (p *Panel) elsewhere(name string, on Other) {
	p.Stop()
	say := widget.NewLabel(lang.L("Opening {{.Photograph}}…", map[string]any{"Photograph": on.Title}))
	say.Wrapping = fyne.TextWrapWord
	plate := board.New()
	over := dialog.NewCustom(wording.Sentence(nameOf(name)), lang.L("Cancel"), container.NewBorder(say, nil, nil, nil, plate), p.win)
	size := p.win.Canvas().Size()
	over.Resize(fyne.NewSize(min(size.Width-40, 1100), min(size.Height-40, 800)))
	over.Show()
	from := p.source
	p.apart(func() {
		photograph, err := from.photograph(on.Name)
		p.do(func() {
			if err != nil {
				say.SetText(lang.L("{{.Photograph}} can't be opened: {{.Problem}}.", map[string]any{"Photograph": on.Title, "Problem": err.Error()}))
				return
			}
			say.SetText(lang.L("Click where the patch is to lie, on {{.Photograph}}: level skin that does not shine.", map[string]any{"Photograph": on.Title}))
			if neutral(name) {
				say.SetText(lang.L("Click on the white or grey beside the hand, on {{.Photograph}}.", map[string]any{"Photograph": on.Title}))
			}
			plate.ShowPhotograph(photograph)
			plate.OnPlace = func(at plane.PixelPoint) {
				over.Hide()
				p.PlaceOn(on.Name, name, at, p.radiusOn(photograph))
			}
			plate.Draw(board.Scene{View: hand.Dorsal, Wanted: &marking.Spot{}})
		})
	})
}

// radiusOn is the radius that a patch begins with on a photograph whose scale is
// not known: 1 to 2 mm on a hand that fills it.
func (p *Panel) radiusOn(photograph *photo.Photograph) plane.Pixel {
	size := photograph.Size()
	return min(max(plane.Pixel(min(size.X, size.Y))/80, leastRadius), mostRadius)
}
