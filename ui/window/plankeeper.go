package window

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"ogive/geometry/hand"
	"ogive/imaging/casebook"
	"ogive/imaging/marksfile"
	"ogive/imaging/measure"
	"ogive/imaging/photo"
	"ogive/imaging/planfile"
	"ogive/imaging/planning"
	"ogive/ui/plancolour"
)

// planKeeper keeps the plan of one photograph and knows what lies beside it. Load,
// save, other, photographs and open are called beside the window's goroutine.
type planKeeper interface {
	title() string
	code() string // of the case, empty for a photograph by itself
	word() string // with which the names of saved files begin
	// owns reports whether a file belongs to the photograph and its marks, and must
	// not be written over.
	owns(path string) bool
	load() (planfile.File, bool, error)
	save(planfile.File) error
	// other is the other hand in the same view, nil where there is none.
	other(f planfile.File, with measure.Settings) (*planning.Hand, error)
	// photographs are the others on which skin can be sampled; open opens one by
	// its name.
	photographs() ([]plancolour.Other, error)
	open(name string) (*photo.Photograph, error)
}

// besideMarks keeps a plan beside the marks file of a photograph.
type besideMarks struct{ photograph, marks string }

func (k besideMarks) title() string { return filepath.Base(k.photograph) }
func (k besideMarks) code() string  { return "" }
func (k besideMarks) word() string {
	return strings.TrimSuffix(filepath.Base(k.photograph), filepath.Ext(k.photograph))
}
func (k besideMarks) owns(path string) bool {
	return slices.Contains([]string{k.photograph, k.marks, planfile.PathFor(k.marks)}, path)
}

func (k besideMarks) load() (planfile.File, bool, error) {
	path := planfile.PathFor(k.marks)
	if _, err := os.Stat(path); errors.Is(err, fs.ErrNotExist) {
		return planfile.File{}, false, nil
	}
	f, err := planfile.Read(path)
	return f, err == nil, err
}

func (k besideMarks) save(f planfile.File) error {
	f.Photograph, f.Marks = filepath.Base(k.photograph), filepath.Base(k.marks)
	return f.Save(planfile.PathFor(k.marks))
}

func (k besideMarks) other(f planfile.File, with measure.Settings) (*planning.Hand, error) {
	path := f.OtherPath(planfile.PathFor(k.marks))
	if path == "" {
		return nil, nil
	}
	s, err := measure.Open(path)
	if err != nil {
		return nil, err
	}
	h, err := planning.Prepare(s, with)
	return &h, err
}

func (k besideMarks) photographs() ([]plancolour.Other, error) { return nil, nil }

func (k besideMarks) open(name string) (*photo.Photograph, error) {
	return photo.Open(filepath.Join(filepath.Dir(k.photograph), filepath.Base(name)))
}

// inBook keeps the plan of a photograph of a casebook for an observer.
type inBook struct {
	book       *casebook.Casebook
	photograph casebook.Photograph
	of         casebook.Case
	observer   string
}

func (k inBook) title() string { return k.of.Code + ", " + string(k.photograph.Date) }
func (k inBook) code() string  { return k.of.Code }
func (k inBook) word() string  { return k.of.Code }
func (k inBook) owns(path string) bool {
	inside, err := filepath.Rel(k.book.Folder(), path)
	return err == nil && filepath.IsLocal(inside)
}

func (k inBook) load() (planfile.File, bool, error) {
	text, any, err := k.book.Plan(k.photograph.ID, k.observer)
	if err != nil || !any {
		return planfile.File{}, false, err
	}
	f, err := planfile.Parse([]byte(text))
	return f, err == nil, err
}

func (k inBook) save(f planfile.File) error {
	f.Photograph, f.Marks, f.Other = k.photograph.File(), "", ""
	data, err := f.Encode()
	if err != nil {
		return err
	}
	return k.book.SavePlan(k.photograph.ID, k.observer, string(data))
}

// other is the marked photograph of the other hand in the same view that was
// taken on the same day, else nearest to it.
func (k inBook) other(_ planfile.File, with measure.Settings) (*planning.Hand, error) {
	all, err := k.book.Photographs(k.of.ID)
	if err != nil {
		return nil, err
	}
	var nearest casebook.Photograph
	var marks marksfile.File
	for _, p := range all {
		if p.View != k.photograph.View || p.Hand == k.photograph.Hand || p.Hand == "" {
			continue
		}
		if nearest.ID != 0 && daysApart(p, k.photograph) >= daysApart(nearest, k.photograph) {
			continue
		}
		m, err := marksOf(k.book, p, k.observer)
		if err != nil {
			return nil, err
		}
		if m.Marks.Side != 0 {
			nearest, marks = p, m
		}
	}
	if nearest.ID == 0 || oppositeJoined(k.of, marks.Marks.Side) {
		return nil, nil
	}
	image, err := photo.Open(k.book.Path(nearest))
	if err != nil {
		return nil, err
	}
	h, err := planning.Prepare(measure.Subject{Marks: marks, Photograph: image}, with)
	return &h, err
}

// oppositeJoined reports whether webs of that hand were joined too, which makes it
// no model for the other.
func oppositeJoined(c casebook.Case, side hand.Side) bool {
	for _, j := range c.Joins {
		if j.Hand == side {
			return true
		}
	}
	return false
}

func daysApart(a, b casebook.Photograph) float64 {
	apart := a.Date.Time().Sub(b.Date.Time()).Hours() / 24
	return max(apart, -apart)
}

func (k inBook) photographs() ([]plancolour.Other, error) {
	all, err := k.book.Photographs(k.of.ID)
	var out []plancolour.Other
	for _, p := range all {
		if p.ID != k.photograph.ID {
			out = append(out, plancolour.Other{Name: casebook.NameOf(p), Title: p.Hand + " " + p.View + ", " + string(p.Date)})
		}
	}
	return out, err
}

func (k inBook) open(name string) (*photo.Photograph, error) {
	return k.book.OpenNamed(k.photograph)(name)
}
