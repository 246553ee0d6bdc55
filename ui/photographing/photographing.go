// Package photographing is the page on how to take a photograph that can be
// measured, drawn and in words.
//
//	photographing.Show(window)
package photographing

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"ogive/ui/drawing"
)

// rule is one thing to heed: its drawing, its name and what to do.
type rule struct {
	picture    drawing.Name
	height     float32
	name, text string
}

func rules() []rule {
	return []rule{
		{drawing.Square, 176, lang.L("Camera square to the hand"),
			lang.L("Hold the camera straight above the web, half a metre away or more, and zoom in. From the side every length comes out too short, and a ruler does not show it.")},
		{drawing.Height, 116, lang.L("Ruler at the height of the web"),
			lang.L("Lay the ruler or card on something, so that it lies as high as the web. What is nearer to the camera looks larger. A card shows how far the camera was tilted; a ruler does so only along itself.")},
		{drawing.Drape, 168, lang.L("Plain drape"),
			lang.L("One plain colour that is not that of the skin, in even light, so that the border of the skin can be followed. Avoid hard shadows between the fingers.")},
		{drawing.Fingers, 168, lang.L("Fingers apart"),
			lang.L("Spread the fingers as far as they go without force; ask somebody to hold them if need be, with hands off the webs. Where fingers touch there is no border to see.")},
		{drawing.Views, 150, lang.L("Back, palm, and into the web"),
			lang.L("Back and palm: the whole hand flat, from fingertips to wrist, with the ruler. Into the web: one web from the side, with the long axis of the finger in sight, for the slope of the skin.")},
	}
}

// Page is the page.
func Page() fyne.CanvasObject {
	page := container.NewVBox()
	for i, r := range rules() {
		if i > 0 {
			page.Add(widget.NewSeparator())
		}
		name := widget.NewLabelWithStyle(r.name, fyne.TextAlignLeading, fyne.TextStyle{Bold: true})
		name.SizeName = "subHeadingText"
		text := widget.NewLabel(r.text)
		text.Wrapping = fyne.TextWrapWord
		picture := drawing.New(r.picture, fyne.NewSize(330, r.height))
		page.Add(container.NewBorder(nil, nil, container.NewCenter(picture), nil, container.NewVBox(name, text)))
	}
	last := widget.NewLabel(lang.L("Before you leave the table, look whether every web is sharp, whether the ruler's ticks can be told apart, and whether it is written down which hand it is."))
	last.Wrapping = fyne.TextWrapWord
	page.Add(widget.NewSeparator())
	page.Add(last)
	return page
}

// Show opens the page over a window, and gives it so that a key can close it.
func Show(parent fyne.Window) dialog.Dialog {
	scroll := container.NewVScroll(Page())
	page := dialog.NewCustom(lang.L("How to take the photograph"), lang.L("Close"), scroll, parent)
	size := parent.Canvas().Size()
	page.Resize(fyne.NewSize(min(860, size.Width-40), min(900, size.Height-40)))
	page.Show()
	return page
}
