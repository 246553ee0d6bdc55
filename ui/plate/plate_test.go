package plate

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/ui/look"
)

// groundOf is the rectangle under the content of a plate.
func groundOf(p *Plate) *canvas.Rectangle {
	return test.WidgetRenderer(p).Objects()[0].(*fyne.Container).Objects[0].(*canvas.Rectangle)
}

func TestAPlateTakesTheColoursOfTheThemeThatIsChosenLater(t *testing.T) {
	app := test.NewTempApp(t)
	app.Settings().SetTheme(look.Theme(theme.VariantLight))
	p := New(look.Card, look.Hairline, widget.NewLabel("content"))
	light := groundOf(p).FillColor
	app.Settings().SetTheme(look.Theme(theme.VariantDark))
	p.Refresh()
	if dark := groundOf(p); dark.FillColor == light || dark.FillColor != look.Colour(look.Card) || dark.StrokeColor != look.Colour(look.Hairline) {
		t.Errorf("light it is %v, dark %v", light, dark.FillColor)
	}
}

func TestAPlateWithoutAnEdgeHasNone(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(look.Theme(theme.VariantLight))
	p := New(look.Card, look.Accent, widget.NewLabel("content"))
	if groundOf(p).StrokeWidth == 0 {
		t.Error("an edge is not seen")
	}
	p.Edge = ""
	p.Refresh()
	if got := groundOf(p).StrokeWidth; got != 0 {
		t.Errorf("without an edge it is %v wide", got)
	}
}
