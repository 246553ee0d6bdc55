package appraise

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"

	"ogive/geometry/hand"
	"ogive/imaging/appraisal"
	"ogive/imaging/wording"
	"ogive/ui/choice"
	"ogive/ui/look"
)

// section is the findings of one scope, of one place at a time.
type section struct {
	form *Form
	at   []appraisal.Place
	now  int
	rows []*row
}

func newSection(f *Form, scope appraisal.Scope, at []appraisal.Place) *section {
	s := &section{form: f, at: at}
	for _, finding := range appraisal.Vocabulary {
		if finding.Scope == scope {
			s.rows = append(s.rows, newRow(f, s, finding))
		}
	}
	return s
}

// addTo stands the section under its heading. Beneath the last of several
// findings that come from one publication stands which it is.
func (s *section) addTo(page *fyne.Container, title string) {
	if len(s.at) == 1 && s.at[0] != appraisal.Patient {
		title += ": " + placeText(s.at[0])
	}
	page.Add(flush(14, heading(title)))
	if len(s.at) > 1 {
		page.Add(s.chooser())
	}
	for i, r := range s.rows {
		page.Add(r)
		last := i == len(s.rows)-1 || s.rows[i+1].finding.Source != r.finding.Source
		if last && r.finding.Key == appraisal.ScarScale[len(appraisal.ScarScale)-1] {
			page.Add(indented(s.form.total))
		}
		if last && r.finding.Scored() {
			page.Add(indented(remark(lang.L("Source: {{.Source}}", map[string]any{"Source": r.finding.Source}))))
		}
	}
}

// chooser chooses the place whose findings are shown.
func (s *section) chooser() fyne.CanvasObject {
	var names []string
	for _, p := range s.at {
		names = append(names, wording.Sentence(placeText(p)))
	}
	c := choice.New(names...)
	c.OnChosen = func(i int) {
		s.now = i
		s.form.refill()
	}
	c.Set(s.now)
	return c
}

func (s *section) fill() {
	for _, r := range s.rows {
		r.fill()
	}
}

// indented is an object under the answers instead of the titles.
func indented(o fyne.CanvasObject) fyne.CanvasObject {
	return container.New(layout.NewCustomPaddedLayout(0, 0, titleWidth-look.Size(theme.SizeNameInnerPadding), 0), o)
}

func placeText(p appraisal.Place) string {
	side := lang.L("right")
	if p.Hand == hand.Left {
		side = lang.L("left")
	}
	switch {
	case p.Web != 0:
		return lang.L("{{.Side}} {{.Web}}", map[string]any{"Side": side, "Web": p.Web.String()})
	case p.Digit != 0:
		return lang.L("{{.Side}} {{.Digit}}", map[string]any{"Side": side, "Digit": digitText(p.Digit)})
	case p.Hand == 0:
		return ""
	}
	return side
}

func digitText(d hand.Digit) string {
	return map[hand.Digit]string{hand.Thumb: lang.L("thumb"), hand.IndexFinger: lang.L("index finger"), hand.Middle: lang.L("middle finger"),
		hand.Ring: lang.L("ring finger"), hand.Little: lang.L("little finger")}[d]
}
