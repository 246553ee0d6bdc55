package planning

import (
	"errors"
	"fmt"
	"image"
	"io"
	"io/fs"
	"os"
	"strings"

	"ogive/geometry/hand"
	"ogive/imaging/marksfile"
	"ogive/imaging/measure"
	"ogive/imaging/photo"
	"ogive/imaging/planfile"
)

// Opened is a plan with the photographs it is drawn on and compared with.
type Opened struct {
	// Begun is the plan, without proposals where it was read from a file.
	Begun Begun
	// Read reports whether the plan was read from a file.
	Read  bool
	Here  Hand
	Other *Hand
}

// Plan is everything that follows from it.
func (o Opened) Plan() Plan { return Of(o.Begun.File, o.Here, o.Other) }

// Open opens the plan file at path with the marks and the photographs it names,
// or begins a plan for a marks file. Other is the marks file of the other hand,
// empty for the one that the plan names, if any; webs are the webs to begin a
// plan for. The error names the file, the field and the mend.
func Open(path, other string, settings measure.Settings, webs ...hand.Web) (Opened, error) {
	f, isPlan, err := readPlan(path)
	if err != nil {
		return Opened{}, err
	}
	marks := path
	if isPlan {
		marks = marksOf(f, path)
		if other == "" {
			other = f.OtherPath(path)
		}
	}
	var out Opened
	var size image.Point
	if out.Here, size, err = openHand(marks, settings); err != nil {
		return out, err
	}
	if isPlan {
		if err := belongs(f, out.Here, size); err != nil {
			return out, fmt.Errorf("%s: %w", path, err)
		}
	}
	if other != "" {
		o, _, err := openHand(other, settings)
		if err != nil {
			return out, err
		}
		if o.Reading.Side == out.Here.Reading.Side {
			return out, fmt.Errorf("%s: hand: shows the %v hand, as %s does; give the marks of the other hand", other, o.Reading.Side, marks)
		}
		out.Other = &o
	}
	if isPlan {
		out.Begun.File, out.Read = f, true
		return out, nil
	}
	if out.Begun, err = Begin(out.Here, out.Other, webs...); err != nil {
		return out, fmt.Errorf("%s: %w", path, err)
	}
	return out, nil
}

// readPlan reads the file if it is a plan.
func readPlan(path string) (f planfile.File, isPlan bool, err error) {
	data, err := head(path)
	if err != nil {
		return f, false, fmt.Errorf("%s: %w", path, err)
	}
	if !planfile.IsPlan(data) && !strings.HasSuffix(path, planfile.Suffix) {
		return f, false, nil
	}
	f, err = planfile.Read(path)
	return f, true, err
}

// head is the file, as far as either kind may be long.
func head(path string) (data []byte, err error) {
	file, err := os.Open(path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, errors.New("there is no such file; check the name and the folder")
	}
	if err != nil {
		return nil, fmt.Errorf("the file can't be read: %w; check that you may read it", err)
	}
	defer func() { err = errors.Join(err, file.Close()) }()
	info, err := file.Stat()
	if err != nil || !info.Mode().IsRegular() {
		return nil, errors.New("this is not a file; give the name of a plan file or a marks file")
	}
	if data, err = io.ReadAll(io.LimitReader(file, planfile.MaxSize+1)); err != nil {
		return nil, fmt.Errorf("the file can't be read: %w; check that you may read it", err)
	}
	return data, nil
}

// marksOf is the marks file that the plan names, or the one it lies beside.
func marksOf(f planfile.File, path string) string {
	if named := f.MarksPath(path); named != "" {
		return named
	}
	beside := strings.TrimSuffix(path, planfile.Suffix)
	if _, err := os.Stat(beside + ".marks.json"); err == nil {
		return beside + ".marks.json"
	}
	return beside + ".json"
}

// belongs refuses a plan that was drawn on another hand, in another view or on
// another photograph than the one of the marks.
func belongs(f planfile.File, here Hand, size image.Point) error {
	if side := here.Reading.Side; f.Side != side {
		return &marksfile.Refusal{Field: "hand", Problem: fmt.Sprintf("is %q, but its marks are of a %v hand", f.Side, side), Mend: "name the marks that the plan was drawn on, or mend the hand here or there"}
	}
	if view := here.Reading.View; f.View != view {
		return &marksfile.Refusal{Field: "view", Problem: fmt.Sprintf("is %q, but its marks are of the %v view", f.View, view), Mend: "name the marks that the plan was drawn on, or mend the view here or there"}
	}
	return f.CheckWithin(size)
}

func openHand(path string, settings measure.Settings) (Hand, image.Point, error) {
	marks, err := marksfile.Read(path)
	if err != nil {
		return Hand{}, image.Point{}, err
	}
	p, err := photo.Open(marks.PhotographPath(path))
	if err != nil {
		return Hand{}, image.Point{}, fmt.Errorf("%s: photograph: %w", path, err)
	}
	size := p.Size()
	if err := marks.CheckWithin(size); err != nil {
		return Hand{}, size, fmt.Errorf("%s: %w", path, err)
	}
	h, err := Prepare(measure.Subject{Marks: marks, Photograph: p}, settings)
	if err != nil {
		return Hand{}, size, fmt.Errorf("%s: %w", path, err)
	}
	return h, size, nil
}
