package cases

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/appraisal"
	"ogive/imaging/casebook"
	"ogive/imaging/wording"
	"ogive/ui/appraise"
)

// appraising is the page on which one sitting is appraised. It stands in the
// place of the list and the case.
type appraising struct {
	room   *Room
	object *fyne.Container
	title  *widget.Label
	about  *widget.Label
	form   *appraise.Form
}

func newAppraising(r *Room) *appraising {
	a := &appraising{room: r, form: appraise.New(), title: widget.NewLabel(""), about: widget.NewLabel("")}
	a.title.TextStyle.Bold, a.title.SizeName = true, theme.SizeNameHeadingText
	a.title.Truncation, a.about.Truncation = fyne.TextTruncateEllipsis, fyne.TextTruncateEllipsis
	back := widget.NewButton(lang.L("Back to the case"), a.close)
	top := container.NewVBox(container.New(layout.NewCustomPaddedLayout(8, 4, 8, 12),
		container.NewBorder(nil, nil, nil, container.NewCenter(back), closely(a.title, a.about))), widget.NewSeparator())
	a.object = container.NewBorder(top, nil, nil, nil, a.form.Object())
	a.object.Hide()
	return a
}

// observer is who is at work.
func (r *Room) observer() string {
	if r.Observer != nil {
		if who := r.Observer(); who != "" {
			return who
		}
	}
	return lang.L("observer")
}

// appraise opens the page for a sitting, with what the observer found before.
func (r *Room) appraise(s casebook.Sitting) {
	c, who := r.page.shown.about, r.observer()
	r.background(func(book *casebook.Casebook) func() {
		all, err := book.Appraisals(c.ID)
		var figures map[appraise.Beside]string
		if err == nil && r.Figures != nil {
			figures = r.Figures(c, s)
		}
		return func() {
			if err != nil {
				r.notice.show(sentence(err.Error()))
				return
			}
			r.appraising.open(book, c, s, ownOf(all, s.ID, who), figures)
		}
	})
}

// ownOf is what an observer found at a sitting, empty if nothing yet.
func ownOf(all []casebook.Appraised, sitting int64, who string) appraisal.Appraisal {
	for _, a := range all {
		if a.Sitting == sitting && a.Appraisal.Observer == who {
			return a.Appraisal
		}
	}
	return appraisal.Appraisal{Observer: who}
}

func (a *appraising) open(book *casebook.Casebook, c casebook.Case, s casebook.Sitting, was appraisal.Appraisal, figures map[appraise.Beside]string) {
	a.title.SetText(lang.L("{{.Code}}, appraisal on {{.Date}}", map[string]any{"Code": c.Code, "Date": dateText(s.Date)}))
	a.about.SetText(lang.L("{{.When}}; what {{.Who}} finds", map[string]any{"When": wording.Sentence(sittingText(s, c.Operated())), "Who": was.Observer}))
	a.form.OnSave = func(now appraisal.Appraisal) error { return book.SaveAppraisal(s.ID, now) }
	a.form.Show(c, was, figures)
	a.form.ReadOnly(!a.room.writable())
	a.room.rooms.Hide()
	a.object.Show()
	a.room.arrange()
}

// close goes back to the case.
func (a *appraising) close() {
	if !a.object.Visible() {
		return
	}
	a.form.Finish()
	a.object.Hide()
	a.room.rooms.Show()
	a.room.Refresh()
	a.room.arrange()
}
