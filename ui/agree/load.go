package agree

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/widget"

	"ogive/imaging/agreementchart"
	"ogive/imaging/observations"
	"ogive/imaging/observed"
	"ogive/ui/flow"
)

// load gathers the readings of the open casebook.
func (r *Room) load() {
	load, name := r.source.Load, r.source.Name
	flow.Visible(r.again, false)
	r.gather(name, func(ctx context.Context, progress func(done, all int)) (observed.Found, []agreementchart.Chart, []string, error) {
		f, err := load(ctx, progress)
		if err != nil {
			return f, nil, nil, err
		}
		charts, lacking := chartsOf(f, name)
		return f, charts, lacking, nil
	})
}

// chartsOf holds observers against each other, and then each against herself.
func chartsOf(f observed.Found, name string) (charts []agreementchart.Chart, lacking []string) {
	charts, lacking = agreementchart.Of(f.Between, name)
	again, short := agreementchart.Of(f.Within, name)
	for _, c := range again {
		if c.Within != "" {
			charts = append(charts, c)
		}
	}
	return charts, append(lacking, short...)
}

// gather does work beside Fyne while its progress is shown.
func (r *Room) gather(source string, work func(ctx context.Context, progress func(done, all int)) (observed.Found, []agreementchart.Chart, []string, error)) {
	r.Leave()
	mine := r.asked
	ctx, stop := context.WithCancel(context.Background())
	r.stop = stop
	r.wait.show(0, 0)
	r.only(r.wait.object)
	progress := func(done, all int) {
		r.later(func() {
			if mine == r.asked {
				r.wait.show(done, all)
			}
		})
	}
	r.beside(func() func() {
		f, charts, lacking, err := work(ctx, progress)
		return func() {
			if mine != r.asked {
				return
			}
			stop()
			r.stop = nil
			if err != nil {
				r.fail(err)
				return
			}
			r.lacking = lacking
			r.take(f, charts, source)
		}
	})
}

// fail says what went wrong, above how to come to something.
func (r *Room) fail(err error) {
	r.lacking = nil
	r.take(observed.Found{}, nil, "")
	r.empty.problem.Set(lang.L("The readings can't be gathered: {{.Problem}}.", map[string]any{"Problem": err.Error()}))
	r.empty.first.Set("") // what there is is not known
	r.empty.page.Arrange()
}

// askForFile asks for a table of readings.
func (r *Room) askForFile() {
	ask := dialog.NewFileOpen(func(file fyne.URIReadCloser, err error) {
		if err != nil {
			r.fail(err)
			return
		}
		if file == nil {
			return
		}
		path := file.URI().Path()
		// The dialog opens the file to read; it is read anew, beside Fyne.
		if err := file.Close(); err != nil {
			r.fail(err)
			return
		}
		r.read(path)
	}, r.win)
	ask.SetFilter(storage.NewExtensionFileFilter([]string{".csv", ".CSV", ".txt"}))
	if home, err := os.UserHomeDir(); err == nil {
		if at, err := storage.ListerForURI(storage.NewFileURI(home)); err == nil {
			ask.SetLocation(at)
		}
	}
	ask.Show()
	size := r.win.Canvas().Size()
	ask.Resize(fyne.NewSize(min(900, size.Width-40), min(680, size.Height-40)))
}

// read reads a table of readings.
func (r *Room) read(path string) {
	flow.Visible(r.again, r.source.Load != nil)
	name := filepath.Base(path)
	r.gather(name, func(context.Context, func(done, all int)) (f observed.Found, charts []agreementchart.Chart, lacking []string, err error) {
		file, err := os.Open(path)
		if err != nil {
			return f, nil, nil, err
		}
		defer func() { err = errors.Join(err, file.Close()) }()
		all, err := observations.Read(file)
		if err != nil {
			return f, nil, nil, fmt.Errorf("%s: %w", name, err)
		}
		charts, lacking = agreementchart.Of(all, name)
		return f, charts, lacking, nil
	})
}

// wait is what is seen while readings are gathered.
type wait struct {
	object fyne.CanvasObject
	words  *widget.Label
	bar    *widget.ProgressBar
}

func newWait() *wait {
	w := &wait{words: widget.NewLabel(""), bar: widget.NewProgressBar()}
	w.words.Alignment = fyne.TextAlignCenter
	w.object = container.NewCenter(container.New(wide(420), container.NewVBox(w.words, w.bar)))
	return w
}

func (w *wait) show(done, all int) {
	flow.Visible(w.bar, all > 0)
	if all == 0 {
		w.words.SetText(lang.L("Looking for what was marked twice…"))
		return
	}
	w.bar.Max = float64(all)
	w.bar.SetValue(float64(done))
	w.words.SetText(lang.L("Reading photographs that were marked twice: {{.Done}} of {{.All}}", map[string]any{"Done": done, "All": all}))
}
