package look

import (
	"image"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

func TestIconsAreDrawnAndDiffer(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(Theme(theme.VariantLight))
	seen := map[string]IconName{}
	for _, name := range Icons {
		w := test.NewTempWindow(t, container.NewGridWrap(fyne.NewSize(24, 24), widget.NewIcon(Icon(name))))
		drawn := string(w.Canvas().Capture().(*image.NRGBA).Pix)
		if other, ok := seen[drawn]; ok {
			t.Errorf("icons %s and %s look the same", name, other)
		}
		seen[drawn] = name
	}
}

func TestIconsTakeTheColourOfTextWithAllTheirLines(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(Theme(theme.VariantDark))
	ink := luminance(Colour(theme.ColorNameForeground))
	for _, name := range Icons {
		w := test.NewTempWindow(t, container.NewGridWrap(fyne.NewSize(48, 48), widget.NewIcon(Icon(name))))
		drawn, full := w.Canvas().Capture(), 0
		for y := range drawn.Bounds().Dy() {
			for x := range drawn.Bounds().Dx() {
				l := luminance(drawn.At(x, y))
				if l < luminance(Colour(theme.ColorNameBackground))*0.9 {
					t.Fatalf("icon %s has something darker than the ground at (%d, %d)", name, x, y)
				}
				if l > ink*0.95 {
					full++
				}
			}
		}
		if full < 20 {
			t.Errorf("icon %s has %d pixels in the colour of text", name, full)
		}
	}
}

func TestIconsAndTypeLookAsTheyDid(t *testing.T) {
	for name, v := range variants {
		test.NewTempApp(t).Settings().SetTheme(Theme(v))
		sheet := container.NewVBox()
		row := container.NewGridWithColumns(10)
		for _, icon := range Icons {
			row.Add(container.NewGridWrap(fyne.NewSize(32, 32), widget.NewIcon(Icon(icon))))
		}
		sheet.Add(row)
		for _, c := range []struct {
			text string
			size fyne.ThemeSizeName
			ink  fyne.ThemeColorName
			bold bool
		}{
			{"Third web", theme.SizeNameHeadingText, theme.ColorNameForeground, true},
			{"0.47 ± 0.02", FigureText, theme.ColorNameForeground, true},
			{"118 ± 6°   54 ± 3 mm²", theme.SizeNameText, theme.ColorNameForeground, false},
			{"dorsal web index", theme.SizeNameCaptionText, SecondInk, false},
			{"Wanted next", theme.SizeNameText, Accent, true},
		} {
			line := canvas.NewText(c.text, Colour(c.ink))
			line.TextSize, line.TextStyle.Bold = Size(c.size), c.bold
			sheet.Add(line)
		}
		buttons := container.NewHBox(widget.NewButton("Skip", nil), &widget.Button{Text: "Accept", Importance: widget.HighImportance})
		sheet.Add(buttons)
		entry := widget.NewEntry()
		entry.SetText("0.45")
		sheet.Add(entry)
		w := test.NewTempWindow(t, sheet)
		w.Resize(fyne.NewSize(420, 330))
		test.AssertRendersToImage(t, "sheet-"+name+".png", w.Canvas())
	}
}
