package marksfile

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"ogive/geometry/plane"
	"ogive/imaging/photo"
)

// field is a value with the path it stands at. Its methods give the zero value
// once anything in the file has been refused, so that a caller need not ask
// after every step: the first refusal is what counts.
type field struct {
	*node // nil where the field is missing
	path  string
	first *error
}

func (f field) refuse(problem, mend string) {
	if *f.first == nil {
		*f.first = &Refusal{f.path, problem, mend}
	}
}

func (f field) missing() bool { return f.node == nil }

// of reports whether the field holds that kind; if not it is refused with the
// form to give.
func (f field) of(k kind, form string) bool {
	switch {
	case *f.first != nil:
		return false
	case f.missing():
		f.refuse("is missing", "give "+form)
		return false
	case f.kind != k:
		f.refuse("is "+f.kind.String(), "give "+form)
		return false
	}
	return true
}

// object refuses what is no object or holds a name other than those allowed.
func (f field) object(form string, names ...string) bool {
	if !f.of(anObject, form) {
		return false
	}
	for _, m := range f.members {
		if !slices.Contains(names, m.name) {
			f.at(m.name).refuse("is not known here", "use one of "+strings.Join(names, ", "))
			return false
		}
	}
	return true
}

// at is the member of that name.
func (f field) at(name string) field {
	out := field{path: inside(f.path, name), first: f.first}
	if !f.missing() {
		for _, m := range f.members {
			if m.name == name {
				out.node = m.value
			}
		}
	}
	return out
}

// list is the elements, refused unless there are least to most of them.
func (f field) list(form string, least, most int) []field {
	if !f.of(aList, form) {
		return nil
	}
	if n := len(f.items); n < least || n > most {
		f.refuse(fmt.Sprintf("holds %d", n), "give "+form)
		return nil
	}
	out := make([]field, len(f.items))
	for i, n := range f.items {
		out[i] = field{n, element(f.path, i), f.first}
	}
	return out
}

func (f field) textOf(form string) string {
	if !f.of(aText, form) {
		return ""
	}
	return f.text
}

// numberOf is the number; it is finite.
func (f field) numberOf(form string) float64 {
	if !f.of(aNumber, form) {
		return 0
	}
	x, err := strconv.ParseFloat(f.number.String(), 64)
	if err != nil || math.IsInf(x, 0) {
		f.refuse("is larger than any number this program holds", "give "+form)
		return 0
	}
	return x
}

// positive is a number above zero and at most most.
func (f field) positive(form string, most float64) float64 {
	x := f.numberOf(form)
	if x <= 0 || x > most {
		f.refuse(fmt.Sprintf("is %g", x), fmt.Sprintf("give %s, above 0 and at most %g", form, most))
	}
	return x
}

const pointForm = "a point [x, y] in pixels of the upright photograph"

// point is a place on a photograph of any size.
func (f field) point() plane.PixelPoint {
	xy := f.list(pointForm, 2, 2)
	if len(xy) != 2 {
		return plane.PixelPoint{}
	}
	return plane.Pt(xy[0].coordinate(), xy[1].coordinate())
}

func (f field) coordinate() plane.Pixel {
	x := f.numberOf("a number of pixels")
	if x < 0 || x > photo.MaxSide {
		f.refuse(fmt.Sprintf("is %g, outside any photograph", x), fmt.Sprintf("give 0 to %d pixels from the top-left corner", photo.MaxSide))
	}
	return plane.Pixel(x)
}

// points is least to most points.
func (f field) points(form string, least, most int) []plane.PixelPoint {
	var out []plane.PixelPoint
	for _, e := range f.list(form, least, most) {
		out = append(out, e.point())
	}
	return out
}

// sound reports whether nothing has been refused so far, which is when checks
// on values taken together make sense.
func (f field) sound() bool { return *f.first == nil }

// named is the value whose name the field holds.
func named[T any](f field, form string, parse func(string) (T, error)) T {
	var none T
	name := f.textOf(form)
	if !f.sound() {
		return none
	}
	v, err := parse(name)
	if err != nil {
		f.refuse(fmt.Sprintf("%q is not known", name), "give "+form)
		return none
	}
	return v
}
