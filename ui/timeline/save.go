package timeline

import (
	"bytes"
	"io"
	"os"
	"path/filepath"
	"strings"
	"unicode"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/chart"
	"ogive/imaging/wholefile"
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
	name := strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) || r == '-' || r == '_' {
			return r
		}
		return '-'
	}, strings.Join([]string{c.Case, c.Side.String(), c.Web.String()}, "-"))
	return strings.Trim(name, "-") + f.extension
}

// askWhere asks for a name and a folder. It does not use Fyne's dialog for
// saving, which empties a chosen file before the program can say no.
func (r *Room) askWhere(f file) {
	c := r.chart()
	folder, err := os.UserHomeDir()
	if err != nil {
		folder = "."
	}
	name := widget.NewEntry()
	name.SetText(f.name(c))
	where := widget.NewLabel(folder)
	where.Truncation = fyne.TextTruncateEllipsis
	other := widget.NewButton(lang.L("Another folder…"), func() {
		r.askForFolder(folder, func(path string) { folder = path; where.SetText(path) })
	})
	form := container.NewVBox(widget.NewLabel(lang.L("Name")), name,
		widget.NewLabel(lang.L("Folder")), container.NewBorder(nil, nil, nil, other, where))
	ask := dialog.NewCustomConfirm(lang.L("Save the chart"), lang.L("Save"), lang.L("Cancel"), form, func(yes bool) {
		if yes {
			r.overwriteOrSave(c, f, filepath.Join(folder, name.Text))
		}
	}, r.win)
	name.OnSubmitted = func(string) { ask.Confirm() }
	ask.Resize(r.nearlyWhole(620, 280))
	ask.Show()
	r.win.Canvas().Focus(name)
}

func (r *Room) askForFolder(from string, chosen func(string)) {
	ask := dialog.NewFolderOpen(func(folder fyne.ListableURI, err error) {
		if err == nil && folder != nil {
			chosen(folder.Path())
		}
	}, r.win)
	if at, err := storage.ListerForURI(storage.NewFileURI(from)); err == nil {
		ask.SetLocation(at)
	}
	ask.Show()
	ask.Resize(r.nearlyWhole(900, 680))
}

// nearlyWhole is a size for a dialog, as far as the window has room for it.
func (r *Room) nearlyWhole(width, height float32) fyne.Size {
	size := r.win.Canvas().Size()
	return fyne.NewSize(min(width, size.Width-40), min(height, size.Height-40))
}

// overwriteOrSave asks before another file is written over.
func (r *Room) overwriteOrSave(c chart.Chart, f file, path string) {
	if !strings.EqualFold(filepath.Ext(path), f.extension) {
		path += f.extension
	}
	if _, err := os.Stat(path); err != nil {
		r.write(c, f, path)
		return
	}
	dialog.ShowConfirm(lang.L("There is such a file already"), lang.L("{{.Name}} is there already. Write over it?", map[string]any{"Name": filepath.Base(path)}), func(yes bool) {
		if yes {
			r.write(c, f, path)
		}
	}, r.win)
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
