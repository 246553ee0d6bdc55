package timeline

import (
	"bytes"
	"io"
	"path/filepath"

	"fyne.io/fyne/v2/lang"

	"ogive/imaging/chart"
	"ogive/imaging/wholefile"
	"ogive/ui/saving"
)

// file is a kind of file that the chart is saved as.
type file struct {
	extension string
	write     func(chart.Chart, io.Writer) error
}

var (
	pngFile = file{".png", chart.Chart.PNG}
	svgFile = file{".svg", chart.Chart.SVG}
)

// name is the file's name that is proposed for a chart.
func (f file) name(c chart.Chart) string {
	return saving.Name(c.Case, c.Side.String(), c.Web.String()) + f.extension
}

// askWhere asks where the chart is to be saved.
func (r *Room) askWhere(f file) {
	c := r.chart()
	saving.Ask(r.win, saving.Question{Title: lang.L("Save the chart"), Name: f.name(c), Endings: []string{f.extension}},
		func(path string) { r.write(c, f, path) }, nil)
}

func (r *Room) write(c chart.Chart, f file, path string) {
	r.saved.SetText(lang.L("Drawing {{.Name}}…", map[string]any{"Name": filepath.Base(path)}))
	r.beside(func() func() {
		var drawn bytes.Buffer
		err := f.write(c, &drawn)
		if err == nil {
			err = wholefile.Write(path, drawn.Bytes())
		}
		return func() {
			text := lang.L("The chart is saved as {{.Name}}.", map[string]any{"Name": path})
			if err != nil {
				text = lang.L("The chart is not saved: {{.Problem}}.", map[string]any{"Problem": err.Error()})
			}
			r.saved.SetText(text)
		}
	})
}
