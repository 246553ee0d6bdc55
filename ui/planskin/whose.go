package planskin

import (
	"slices"

	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/planfile"
	"ogive/ui/column"
	"ogive/ui/flow"
)

// whose says of which alternative the skin is reckoned, and lets the one that is
// seen on the photograph be chosen where that is another.
type whose struct {
	*column.Block
	panel  *Panel
	said   *column.Text
	choose *widget.Button
}

func newWhose(p *Panel) *whose {
	w := &whose{panel: p, said: column.Body("")}
	w.choose = widget.NewButton(lang.L("Reckon this one: choose it"), w.take)
	w.Block = column.NewBlock(w.stand, nil, w.said, w.choose)
	return w
}

func (w *whose) show(kept planfile.Web) {
	chosen, held := kept.ChosenAlternative(), w.inHand(kept)
	flow.Visible(w.choose, held != "" && (chosen == nil || chosen.Name != held))
	switch {
	case chosen == nil && held == "":
		w.said.Set(lang.L("No alternative is chosen: skin is reckoned for the one that goes on the sheet."))
	case chosen == nil:
		w.said.Set(lang.L("No alternative is chosen: skin is reckoned for the one that goes on the sheet. The photograph shows “{{.Held}}”.", map[string]any{"Held": held}))
	case held == "" || chosen.Name == held:
		w.said.Set(lang.L("For: “{{.Chosen}}”, the one on the sheet.", map[string]any{"Chosen": chosen.Name}))
	default:
		w.said.Set(lang.L("For: “{{.Chosen}}”, the one on the sheet. The photograph shows another, “{{.Held}}”.", map[string]any{"Chosen": chosen.Name, "Held": held}))
	}
}

// inHand is the alternative of the web that is seen, "" where that is not known.
func (w *whose) inHand(kept planfile.Web) string {
	if w.panel.InHand == nil {
		return ""
	}
	name := w.panel.InHand()
	if !slices.ContainsFunc(kept.Alternatives, func(a planfile.Alternative) bool { return a.Name == name }) {
		return ""
	}
	return name
}

// take chooses the alternative that is seen.
func (w *whose) take() {
	web := w.panel.web
	kept := w.panel.file.Web(web)
	if kept == nil {
		return
	}
	name := w.inHand(*kept)
	if name == "" {
		return
	}
	w.panel.change(lang.L("choose “{{.Name}}”", map[string]any{"Name": name}), func(f *planfile.File) {
		if to := f.Web(web); to != nil {
			to.Chosen = name
		}
	})
}

func (w *whose) stand(room float32) float32 {
	const below = 8
	y := w.said.HeightAt(room)
	flow.Put(w.said, 0, 0, room, y)
	if w.choose.Visible() {
		least := w.choose.MinSize()
		flow.Put(w.choose, 0, y, min(least.Width, room), least.Height)
		y += least.Height + below
	}
	return y
}
