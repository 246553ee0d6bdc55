package planskin

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"ogive/geometry/plane"
	"ogive/imaging/planning"
	"ogive/imaging/wording"
	"ogive/ui/column"
	"ogive/ui/flow"
)

// figures are what is short and what makes it up, as a sum is written.
type figures struct {
	each, join, all, flap, remains *column.Figure
	remarks                        *column.Text
}

func newFigures() *figures {
	return &figures{
		each:    column.NewFigure(lang.L("Short for each mm of join")),
		join:    column.NewFigure(lang.L("Length of the join")),
		all:     column.NewFigure(lang.L("Short in all")),
		flap:    column.NewFigure(lang.L("The flap brings")),
		remains: column.NewMainFigure(lang.L("Remains")),
		remarks: column.Remark(""),
	}
}

func (f *figures) objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{f.each, f.join, f.all, f.flap, f.remains, f.remarks}
}

func (f *figures) show(w planning.Web) {
	for _, o := range f.objects() {
		flow.Visible(o, w.Skin != nil)
	}
	if w.Skin == nil {
		return
	}
	b := w.Skin.Budget
	f.each.Set(wording.Millimetres(b.PerMillimetre), lang.L("Both girths are {{.Ratio}} times the skin around the joined digits.", map[string]any{"Ratio": wording.Ratio(b.Ratio)}))
	f.join.Set(wording.Millimetres(b.Join), "")
	f.all.Set(squareCentimetres(b.Shortage), "")
	f.flap.Set(squareCentimetres(b.Flaps), "")
	if b.Flaps.Value == 0 {
		f.flap.Set(lang.L("no flap yet"), "")
	}
	note := lang.L("to be grafted, if nothing else closes it")
	if b.Graft.Low() <= 0 {
		note = lang.L("The interval reaches down to nothing: it is not sure that a graft is needed.")
	}
	f.remains.Set(squareCentimetres(b.Graft), note)
	f.remarks.Set(strings.Join(remarks(w.Skin), "\n"))
}

// squareCentimetres writes an area as grafts are spoken of: "2.2 ± 0.4 cm²".
func squareCentimetres(e plane.Estimate[plane.SquareMillimetre]) string {
	const inOne = 100
	v, u := wording.Rounded(float64(e.Value)/inOne, float64(e.U95)/inOne, 2)
	if u == "" {
		return lang.L("not known")
	}
	return v + " ± " + u + " cm²"
}
