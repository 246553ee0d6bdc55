package window

import (
	"path/filepath"

	"fyne.io/fyne/v2/lang"

	"ogive/geometry/norms"
	"ogive/imaging/measure"
	"ogive/imaging/normals"
	"ogive/ui/values"
)

// editedValues is what the title says when readings are judged by the user's own
// copy of the normal values.
func editedValues() string { return lang.L("(edited normal values)") }

// ownTablePath is where the user's copy of the normal values lies.
func (w *Window) ownTablePath() string {
	return filepath.Join(w.app.Storage().RootURI().Path(), "normal-values.json")
}

// sayTableProblem says when the user's copy could not be read and the program's
// own table judges instead.
func (w *Window) sayTableProblem() {
	if err := w.tableProblem; err != nil {
		w.notices.show(notice{about: aboutValues, text: lang.L("Your copy of the normal values cannot be read, so the program's own are used: {{.Problem}}.", map[string]any{"Problem": plain(err)})})
	}
}

// showValues shows the normal values with their sources; an edited copy counts
// from now on and is kept.
func (w *Window) showValues() {
	values.Show(w.win, w.settings.Norms, func(edited norms.Table) {
		if err := w.keepTable(edited); err != nil {
			w.notices.show(notice{about: aboutValues, text: lang.L("The edited normal values count now but are not kept: {{.Problem}}.", map[string]any{"Problem": plain(err)})})
		}
		w.settings.Norms = edited
		w.useSettings()
	})
}

// keepTable keeps a copy that differs from the program's own table.
func (w *Window) keepTable(edited norms.Table) error {
	own, err := measure.Defaults()
	if err != nil {
		return err
	}
	w.ownTable = !normals.Same(edited, own.Norms)
	if !w.ownTable {
		return normals.Remove(w.ownTablePath())
	}
	return normals.Save(w.ownTablePath(), edited)
}
