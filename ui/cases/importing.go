package cases

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/storage"

	"ogive/imaging/casebook"
	"ogive/imaging/photo"
	"ogive/ui/overlay"
)

// endings are the endings of files in which photographs come.
var endings = []string{".jpg", ".jpeg", ".png", ".tif", ".tiff", ".webp", ".heic", ".heif"}

// offerImport opens the ways in which photographs are brought in.
func (r *Room) offerImport(under fyne.CanvasObject) {
	r.menuAt(under,
		fyne.NewMenuItem(lang.L("All photographs in a folder…"), r.importFolder),
		fyne.NewMenuItem(lang.L("One photograph…"), r.importOne))
}

func (r *Room) importFolder() {
	ask := dialog.NewFolderOpen(func(folder fyne.ListableURI, err error) {
		r.chosenPath(folder, err)
	}, r.win)
	ask.SetTitleText(lang.L("All photographs in which folder?"))
	overlay.ShowFiles(r.win, ask)
}

func (r *Room) importOne() {
	ask := dialog.NewFileOpen(func(file fyne.URIReadCloser, err error) {
		if file == nil {
			r.chosenPath(nil, err)
			return
		}
		r.chosenPath(file.URI(), errors.Join(err, file.Close()))
	}, r.win)
	ask.SetFilter(storage.NewExtensionFileFilter(endings))
	ask.SetTitleText(lang.L("Import a photograph"))
	overlay.ShowFiles(r.win, ask)
}

func (r *Room) chosenPath(at fyne.URI, err error) {
	switch {
	case err != nil:
		r.notice.show(sentence(err.Error()))
	case at != nil:
		r.Import([]string{at.Path()})
	}
}

// Import brings photographs, and all photographs of folders, into the case that
// is open.
func (r *Room) Import(paths []string) {
	switch {
	case r.book == nil:
		return
	case !r.writable():
		r.notice.show("") // it says already why nothing is written
		return
	case r.page.id == 0:
		r.notice.show(lang.L("Choose the case first that the photographs belong to, or make a new one."))
		return
	case r.errand.running:
		r.notice.show(lang.L("Photographs are still being brought in; wait until that is done, then bring in these."))
		return
	}
	r.bringIn(destination{r.page.id, r.page.shown.about.Code}, paths, "")
}

// destination is the case that photographs are brought into.
type destination struct {
	id   int64
	code string
}

// bringIn imports into a case; the date is for photographs that tell none.
func (r *Room) bringIn(into destination, paths []string, date casebook.Date) {
	ctx, stop := context.WithCancel(context.Background())
	r.errand.start(stop)
	r.bringing.Add(1)
	r.background(func(book *casebook.Casebook) func() {
		defer r.bringing.Done()
		items, err := itemsOf(paths, date)
		var results []casebook.Result
		if err == nil {
			results, err = book.Import(ctx, into.id, items, func(done, all int, last casebook.Result) {
				name := filepath.Base(last.Item.Path)
				r.do(func() { r.errand.progress(done, all, name) })
			})
		}
		h := harvestOf(into.code, results, len(items))
		stop()
		return func() {
			if err != nil && !errors.Is(err, context.Canceled) {
				h.trouble = sentence(err.Error())
			}
			r.errand.end(into, h)
			r.Refresh()
		}
	})
}

// itemsOf is the photographs at the paths; a folder stands for those in it.
func itemsOf(paths []string, date casebook.Date) ([]casebook.Item, error) {
	var items []casebook.Item
	for _, path := range paths {
		info, err := os.Stat(path)
		if err != nil || !info.IsDir() {
			items = append(items, casebook.Item{Path: path, Date: date}) // the import says what is wrong
			continue
		}
		files, err := os.ReadDir(path)
		if err != nil {
			return nil, errors.New(lang.L("the folder {{.Name}} can't be read; check that you may read it", map[string]any{"Name": filepath.Base(path)}))
		}
		found := 0
		for _, f := range files {
			if !f.IsDir() && slices.Contains(endings, strings.ToLower(filepath.Ext(f.Name()))) {
				items = append(items, casebook.Item{Path: filepath.Join(path, f.Name()), Date: date})
				found++
			}
		}
		if found == 0 {
			return nil, errors.New(lang.L("the folder {{.Name}} holds no photograph; choose the folder in which they lie themselves", map[string]any{"Name": filepath.Base(path)}))
		}
	}
	return items, nil
}

// harvest is what became of an import.
type harvest struct {
	code            string // of the case
	all, in, unseen int
	twice, bad      []string // in words, one for each
	undated         []string // paths of photographs that can be read but tell no date
	trouble         string
}

func harvestOf(code string, results []casebook.Result, all int) harvest {
	h := harvest{code: code, all: all, unseen: all - len(results)}
	for _, r := range results {
		name := filepath.Base(r.Item.Path)
		switch {
		case r.Twice != nil:
			h.twice = append(h.twice, lang.L("{{.Name}} is in case {{.Case}}, {{.Date}}", map[string]any{"Name": name, "Case": r.Twice.Case, "Date": dateText(r.Twice.Date)}))
		case r.Err == nil:
			h.in++
		case r.Item.Date == "" && tellsNoDate(r.Item.Path):
			h.undated = append(h.undated, r.Item.Path)
		default:
			h.bad = append(h.bad, strings.TrimRight(r.Err.Error(), "."))
		}
	}
	return h
}

// tellsNoDate reports whether the date is all that a photograph lacks.
func tellsNoDate(path string) bool {
	p, err := photo.Open(path)
	return err == nil && p.Facts().Taken.IsZero()
}

// lines is the harvest in words, the longest lists last.
func (h harvest) lines() []string {
	var out []string
	say := func(n int, one, many string) {
		switch {
		case n == 1:
			out = append(out, one)
		case n > 1:
			out = append(out, many)
		}
	}
	count := func(n int) map[string]any { return map[string]any{"Count": n, "Case": h.code} }
	if h.trouble != "" {
		out = append(out, h.trouble)
	}
	if h.in == 0 && h.trouble == "" {
		out = append(out, lang.L("No photograph was brought into {{.Case}}.", count(0)))
	}
	say(h.in, lang.L("1 photograph was brought into {{.Case}}.", count(1)), lang.L("{{.Count}} photographs were brought into {{.Case}}.", count(h.in)))
	if h.trouble == "" {
		say(h.unseen, lang.L("1 photograph was not looked at any more."), lang.L("{{.Count}} photographs were not looked at any more.", count(h.unseen)))
	}
	say(len(h.twice), lang.L("1 photograph was there already:"), lang.L("{{.Count}} photographs were there already:", count(len(h.twice))))
	for _, t := range h.twice {
		out = append(out, "    "+t)
	}
	say(len(h.bad), lang.L("1 photograph could not be brought in:"), lang.L("{{.Count}} photographs could not be brought in:", count(len(h.bad))))
	for _, b := range h.bad {
		out = append(out, "    "+b)
	}
	return out
}
