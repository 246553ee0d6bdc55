package window

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/scale"
	"ogive/imaging/normals"
	"ogive/ui/look"
)

// Keys of the preferences.
const (
	shadeKey  = "shade" // "", "light" or "dark"
	clickKey  = "click_sd_px"
	tiltKey   = "tilt_deg"
	widthKey  = "window_width"
	heightKey = "window_height"
)

// Bounds on what can be preferred.
const (
	leastClick, mostClick = 0.5, 10
	leastTilt, mostTilt   = 1, 30
)

// usePreferences takes up what the user preferred last time.
func (w *Window) usePreferences() {
	w.applyShade()
	w.settings.Tilt = plane.Degrees(w.tilt())
	table, there, err := normals.Load(w.ownTablePath())
	w.tableProblem = err
	if err == nil && there {
		w.settings.Norms, w.ownTable = table, true
	}
}

func (w *Window) applyShade() {
	var t fyne.Theme
	switch w.app.Preferences().String(shadeKey) {
	case "light":
		t = look.Theme(theme.VariantLight)
	case "dark":
		t = look.Theme(theme.VariantDark)
	default:
		t = look.AsSystem()
	}
	w.app.Settings().SetTheme(t)
}

func (w *Window) clickSD() plane.Pixel {
	return plane.Pixel(bounded(w.app.Preferences().FloatWithFallback(clickKey, float64(hand.DefaultClickSD)), leastClick, mostClick))
}

func (w *Window) tilt() float64 {
	return bounded(w.app.Preferences().FloatWithFallback(tiltKey, scale.DefaultTilt.Degrees()), leastTilt, mostTilt)
}

func bounded(x, low, high float64) float64 { return min(max(x, low), high) }

func (w *Window) rememberedSize() fyne.Size {
	p := w.app.Preferences()
	return fyne.NewSize(float32(p.FloatWithFallback(widthKey, 1280)), float32(p.FloatWithFallback(heightKey, 800)))
}

// close keeps the size of the window and ends the program. It asks nothing: the
// marks are on the disk, or one more attempt is made to write them.
func (w *Window) close() {
	size := w.win.Canvas().Size()
	w.app.Preferences().SetFloat(widthKey, float64(size.Width))
	w.app.Preferences().SetFloat(heightKey, float64(size.Height))
	w.keyboard.take() // a length that is being typed counts
	if w.unsaved && w.work != nil {
		if err := w.work.Save(); err != nil {
			w.askBeforeLosing(err)
			return
		}
	}
	w.finishPlan()
	w.closeCasebook()
	w.win.Close()
}

// askBeforeLosing is the one question at closing, asked only where marks would
// be lost.
func (w *Window) askBeforeLosing(err error) {
	text := wrapping(lang.L("They could not be written: {{.Problem}}. Make room or make the folder writable, then close again.", map[string]any{"Problem": within(w.work.Path, plain(err))}))
	ask := dialog.NewCustomWithoutButtons(lang.L("The marks are not on the disk"), text, w.win)
	lose := widget.NewButton(lang.L("Close and lose them"), w.win.Close)
	stay := widget.NewButton(lang.L("Stay"), func() { ask.Hide(); w.keyboard.take() })
	stay.Importance = widget.HighImportance
	ask.SetButtons([]fyne.CanvasObject{lose, stay})
	ask.Resize(w.nearlyWhole(520, 220))
	ask.Show()
}

func wrapping(text string) *widget.Label {
	l := widget.NewLabel(text)
	l.Wrapping = fyne.TextWrapWord
	return l
}

// showPreferences lets the user change what is preferred; it counts at once.
func (w *Window) showPreferences() {
	p := w.app.Preferences()
	shades := []string{"", "light", "dark"}
	names := []string{lang.L("As the system"), lang.L("Light"), lang.L("Dark")}
	shade := widget.NewRadioGroup(names, nil)
	shade.Horizontal, shade.Required = true, true
	shade.SetSelected(names[max(indexOf(shades, p.String(shadeKey)), 0)])
	shade.OnChanged = func(name string) {
		p.SetString(shadeKey, shades[indexOf(names, name)])
		w.applyShade()
	}
	click := slider(leastClick, mostClick, 0.5, float64(w.clickSD()), "%.1f px", func(v float64) {
		p.SetFloat(clickKey, v)
		w.forgetOwnClick()
		if w.ready() {
			w.done(w.work.UseClickSD(w.clickSDOn(w.work.Photograph.Size())))
		}
	})
	tilt := slider(leastTilt, mostTilt, 1, w.tilt(), "%.0f°", func(v float64) {
		p.SetFloat(tiltKey, v)
		w.settings.Tilt = plane.Degrees(w.tilt())
		w.useSettings()
	})
	form := widget.NewForm(
		&widget.FormItem{Text: lang.L("Look"), Widget: shade},
		&widget.FormItem{Text: lang.L("Click deviation"), Widget: click, HintText: lang.L("how far you usually miss a point, in pixels of the photograph")},
		&widget.FormItem{Text: lang.L("Allowed tilt"), Widget: tilt, HintText: lang.L("how far the camera may have been tilted where the scale cannot tell")},
	)
	page := dialog.NewCustom(lang.L("Preferences"), lang.L("Close"), form, w.win)
	w.open(page)
	page.Resize(w.nearlyWhole(620, 360))
	page.Show()
}

func slider(low, high, step, value float64, format string, ended func(float64)) fyne.CanvasObject {
	s := widget.NewSlider(low, high)
	s.Step, s.Value = step, value
	number := widget.NewLabel(fmt.Sprintf(format, value))
	s.OnChanged = func(v float64) { number.SetText(fmt.Sprintf(format, v)) }
	s.OnChangeEnded = ended
	return sliderRow(s, number)
}

// useSettings reads the open photograph again with changed settings.
func (w *Window) useSettings() {
	w.reader = nil
	if w.work != nil {
		w.work.UseSettings(w.settings)
		w.measure()
	}
	w.title()
}

func sliderRow(s *widget.Slider, number *widget.Label) fyne.CanvasObject {
	return container.NewBorder(nil, nil, nil, container.NewGridWrap(fyne.NewSize(72, number.MinSize().Height), number), s)
}
