package agree

import (
	"bytes"
	"io"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2/lang"

	"ogive/imaging/agreementchart"
	"ogive/imaging/wholefile"
	"ogive/ui/saving"
)

// kind is a kind of file that is saved.
type kind struct {
	button    func() string
	middle    string // of the file's name
	extension string
	write     func(c agreementchart.Chart, all []agreementchart.Chart, to io.Writer) error
}

var kinds = []kind{
	{func() string { return lang.L("Page (PDF)…") }, "", ".pdf", func(c agreementchart.Chart, _ []agreementchart.Chart, to io.Writer) error { return c.PDF(to) }},
	{func() string { return lang.L("Picture (PNG)…") }, "", ".png", func(c agreementchart.Chart, _ []agreementchart.Chart, to io.Writer) error { return c.PNG(to) }},
	{func() string { return lang.L("Drawing (SVG)…") }, "", ".svg", func(c agreementchart.Chart, _ []agreementchart.Chart, to io.Writer) error { return c.SVG(to) }},
	{func() string { return lang.L("Readings (CSV)…") }, "readings-", ".csv", func(c agreementchart.Chart, _ []agreementchart.Chart, to io.Writer) error { return c.ReadingsCSV(to) }},
	{func() string { return lang.L("All figures (CSV)…") }, "figures", ".csv", func(_ agreementchart.Chart, all []agreementchart.Chart, to io.Writer) error {
		return agreementchart.FiguresCSV(to, all)
	}},
}

// name is the file's name that is proposed.
func (k kind) name(c agreementchart.Chart) string {
	of := k.middle
	if k.middle != "figures" {
		of += strings.ToLower(c.Figure.Name) + "-" + c.Who()
	}
	return saving.Name("agreement", of) + k.extension
}

func (r *Room) askWhere(k kind) {
	c, all := r.current(), r.charts
	saving.Ask(r.win, saving.Question{Title: lang.L("Save how far they agree"), Name: k.name(c), Endings: []string{k.extension}},
		func(path string) { r.write(k, c, all, path) }, nil)
}

// write draws and writes beside Fyne.
func (r *Room) write(k kind, c agreementchart.Chart, all []agreementchart.Chart, path string) {
	r.tell(lang.L("Writing {{.Name}}…", map[string]any{"Name": filepath.Base(path)}))
	r.beside(func() func() {
		var drawn bytes.Buffer
		err := k.write(c, all, &drawn)
		if err == nil {
			err = wholefile.Write(path, drawn.Bytes())
		}
		return func() {
			if err != nil {
				r.tell(lang.L("It is not saved: {{.Problem}}.", map[string]any{"Problem": err.Error()}))
				return
			}
			r.tell(lang.L("Saved as {{.Name}}.", map[string]any{"Name": path}))
		}
	})
}

func (r *Room) tell(words string) {
	r.side.saved.Set(words)
	r.side.page.Arrange()
}
