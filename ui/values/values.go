// Package values shows the normal values with their sources and lets the limits
// be edited in a copy.
//
//	values.Show(window, settings.Norms, func(t norms.Table) { ... }) // keep t.Encode()
//
// What is edited no longer claims to be published: verdicts say that the limit is
// the user's own.
package values

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/assets"
	"ogive/geometry/norms"
	"ogive/imaging/wording"
	"ogive/ui/look"
)

// Show opens the table over parent. When the user takes other limits into use,
// onChange gets the table with them; it is called with a table that norms.Parse
// accepts.
func Show(parent fyne.Window, current norms.Table, onChange func(norms.Table)) {
	own, err := norms.Parse(assets.NormalValues)
	if err != nil {
		dialog.ShowError(err, parent)
		return
	}
	open(parent, current, own, onChange)
}

func open(parent fyne.Window, current, own norms.Table, onChange func(norms.Table)) *form {
	f := newForm(current, own)
	var d *dialog.CustomDialog
	use := widget.NewButton(lang.L("Use these limits"), func() {
		if table, ok := f.take(); ok {
			d.Hide()
			onChange(table)
		}
	})
	use.Importance = widget.HighImportance
	back := widget.NewButton(lang.L("Back to the program's own values"), f.reset)
	cancel := widget.NewButton(lang.L("Close without changing"), func() { d.Hide() })
	f.use, f.back = use, back
	buttons := container.NewHBox(back, layout.NewSpacer(), cancel, use)
	page := container.NewBorder(nil, container.NewVBox(f.trouble, buttons), nil, nil, container.NewVScroll(f.content))
	f.placed = page.Refresh
	d = dialog.NewCustomWithoutButtons(lang.L("Normal values"), page, parent)
	size := parent.Canvas().Size()
	d.Resize(fyne.NewSize(min(860, size.Width-40), min(760, size.Height-40)))
	d.Show()
	return f
}

// rows lists the table's rows as they can be read: value, figure, source, trust.
func rows(table norms.Table) fyne.CanvasObject {
	list := container.NewVBox()
	for _, r := range table.Rows {
		value := widget.NewLabelWithStyle(r.Value, fyne.TextAlignLeading, fyne.TextStyle{Bold: true})
		source := widget.NewLabel(r.Source)
		trust := widget.NewLabelWithStyle(r.Trust, fyne.TextAlignLeading, fyne.TextStyle{Italic: true})
		for _, l := range []*widget.Label{value, source, trust} {
			l.Wrapping = fyne.TextWrapWord
		}
		if r.Source == r.Trust {
			trust.Hide()
		}
		figure := widget.NewLabel(wording.Sentence(r.Figure))
		figure.Wrapping = fyne.TextWrapWord
		list.Add(container.NewGridWithColumns(2,
			container.New(layout.NewCustomPaddedVBoxLayout(-10), value, figure),
			container.New(layout.NewCustomPaddedVBoxLayout(-10), source, trust)))
		list.Add(rule())
	}
	return list
}

func rule() fyne.CanvasObject {
	l := canvas.NewRectangle(look.Colour(look.Hairline))
	l.SetMinSize(fyne.NewSize(0, 1))
	return l
}

func heading(text string) *widget.Label {
	l := widget.NewLabelWithStyle(text, fyne.TextAlignLeading, fyne.TextStyle{Bold: true})
	l.SizeName = theme.SizeNameSubHeadingText
	return l
}

func remark(text string) *widget.Label {
	l := widget.NewLabel(text)
	l.Wrapping = fyne.TextWrapWord
	l.SizeName = theme.SizeNameCaptionText
	return l
}
