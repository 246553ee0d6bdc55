package window

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/plane"
	"ogive/imaging/ruler"
	"ogive/ui/look"
	"ogive/ui/marking"
)

// lengthPanel asks how long the ruler is between its two points. What the ticks
// between them tell is the first answer offered, and one to be confirmed.
type lengthPanel struct {
	panel   *aside
	entry   *numberEntry
	counted *widget.Button
	remark  *widget.Label
	told    func(plane.Millimetre)
	ends    [2]plane.PixelPoint // between which the ticks were last counted
}

// usualLengths are what rulers are usually marked on, in millimetres.
var usualLengths = []float64{10, 20, 30, 50, 70, 100, 130, 150}

func newLengthPanel(told func(plane.Millimetre)) *lengthPanel {
	l := &lengthPanel{told: told}
	l.entry = newNumberEntry("", func(mm float64) { told(plane.Millimetre(mm)) })
	l.counted = widget.NewButton("", nil)
	l.counted.Importance = widget.HighImportance
	l.remark = widget.NewLabel("")
	l.remark.SizeName = theme.SizeNameCaptionText
	usual := container.NewHBox()
	for _, mm := range usualLengths {
		usual.Add(widget.NewButton(plainNumber(mm), func() { told(plane.Millimetre(mm)) }))
	}
	l.panel = newAside(look.Card, look.Accent, container.NewPadded(container.NewPadded(container.NewVBox(
		heading(lang.L("How many millimetres lie between the two points?")),
		container.NewHBox(l.entry, widget.NewLabel("mm"), layout.NewSpacer(), l.counted),
		l.remark,
		usual))))
	l.panel.Hide()
	return l
}

// counting says that the ticks are being counted.
func (l *lengthPanel) counting() {
	l.counted.Hide()
	l.remark.SetText(lang.L("Counting the ticks between the two points…"))
}

// offer shows what the ticks tell.
func (l *lengthPanel) offer(length plane.Millimetre, certain bool) {
	if !certain {
		l.remark.SetText(lang.L("The ticks cannot be counted for certain: read the length off the ruler's numbers."))
		return
	}
	l.counted.SetText(lang.L("{{.Length}} mm: counted on the ruler", map[string]any{"Length": plainNumber(float64(length))}))
	l.counted.OnTapped = func() { l.told(length) }
	l.counted.Show()
	l.remark.SetText(lang.L("A tick need not be a millimetre: check the count by the ruler's numbers."))
}

// askLength shows the panel while the ruler's length is lacking, out of the way of
// the ruler.
func (w *Window) askLength(s marking.State, lacking bool) {
	l := w.length
	if !lacking {
		l.panel.Hide()
		return
	}
	ends := [2]plane.PixelPoint{s.Points[marking.Spot{Kind: marking.ScalePoint}], s.Points[marking.Spot{Kind: marking.ScalePoint, N: 1}]}
	l.panel.from = func() (a, b fyne.Position) { return w.board.PositionOf(ends[0]), w.board.PositionOf(ends[1]) }
	if !l.panel.Visible() || ends != l.ends {
		w.countTicks(ends)
	}
	if !l.panel.Visible() {
		l.entry.set(0)
		l.panel.Show()
		w.do(func() { w.win.Canvas().Focus(l.entry) })
	}
}

// countTicks counts the ticks between the ruler's ends beside the window.
func (w *Window) countTicks(ends [2]plane.PixelPoint) {
	w.length.ends = ends
	w.length.counting()
	work := w.work
	w.background(func() func() {
		found, err := ruler.FindTicks(work.Photograph, ends[0], ends[1])
		length, certain := found.Length()
		return func() {
			if w.work == work && w.length.ends == ends {
				w.length.offer(length, certain && err == nil)
				w.panels.Refresh()
			}
		}
	})
}
