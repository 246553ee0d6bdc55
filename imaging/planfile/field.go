package planfile

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"ogive/geometry/plane"
	"ogive/imaging/marksfile"
	"ogive/imaging/photo"
)

// field is a value of the file with the path it stands at. Its methods give the
// zero value once anything has been refused: the first refusal is what counts.
type field struct {
	value any // members, list, text, json.Number, bool; nil for null or where missing
	path  string
	there bool
	first *error
}

func (f field) refuse(problem, mend string) {
	if *f.first == nil {
		*f.first = &marksfile.Refusal{Field: f.path, Problem: problem, Mend: mend}
	}
}

func (f field) sound() bool { return *f.first == nil }

// wrong refuses a value of another kind than the form.
func (f field) wrong(form string) {
	if !f.there {
		f.refuse("is missing", "give "+form)
		return
	}
	f.refuse("is "+kindOf(f.value), "give "+form)
}

func kindOf(v any) string {
	switch v.(type) {
	case nil:
		return "null"
	case bool:
		return "true or false"
	case json.Number:
		return "a number"
	case string:
		return "a text"
	case []any:
		return "a list"
	}
	return "an object"
}

// object refuses what is no object or holds a name other than those allowed.
func (f field) object(form string, names ...string) bool {
	list, ok := f.value.(members)
	if !ok {
		f.wrong(form)
		return false
	}
	for _, m := range list {
		if !slices.Contains(names, m.name) {
			f.at(m.name).refuse("is not known here", "use one of "+strings.Join(names, ", "))
		}
	}
	return f.sound()
}

// at is the member of that name.
func (f field) at(name string) field {
	out := field{path: inside(f.path, name), first: f.first}
	if list, ok := f.value.(members); ok {
		out.value, out.there = list.find(name)
	}
	return out
}

// list is the elements, refused unless there are least to most of them.
func (f field) list(form string, least, most int) []field {
	items, ok := f.value.([]any)
	if !ok {
		f.wrong(form)
		return nil
	}
	if n := len(items); n < least || n > most {
		f.refuse(fmt.Sprintf("holds %d", n), fmt.Sprintf("give %s, %d to %d", form, least, most))
		return nil
	}
	out := make([]field, len(items))
	for i, v := range items {
		out[i] = field{v, fmt.Sprintf("%s[%d]", f.path, i), true, f.first}
	}
	return out
}

// maybe is the elements of a list that need not be there.
func (f field) maybe(form string, most int) []field {
	if !f.there {
		return nil
	}
	return f.list(form, 0, most)
}

// words is a text of at most most bytes, empty where it is missing and need not
// be there.
func (f field) words(form string, least, most int) string {
	if !f.there && least == 0 {
		return ""
	}
	text, ok := f.value.(string)
	switch {
	case !ok:
		f.wrong(form)
	case len(strings.TrimSpace(text)) < least:
		f.refuse("is empty", "give "+form)
	case len(text) > most:
		f.refuse("is too long", fmt.Sprintf("give %s of at most %d bytes", form, most))
	case strings.ContainsRune(text, 0):
		f.refuse("holds a null character", "give "+form)
	}
	return text
}

// number is a number from low to high.
func (f field) number(form string, low, high float64) float64 {
	n, ok := f.value.(json.Number)
	if !ok {
		f.wrong(form)
		return 0
	}
	x, err := strconv.ParseFloat(n.String(), 64)
	if err != nil || !(x >= low && x <= high) {
		f.refuse(fmt.Sprintf("is %s", shortened(n.String())), fmt.Sprintf("give %s, from %g to %g", form, low, high))
		return 0
	}
	return x
}

func shortened(number string) string {
	if len(number) > 30 {
		return number[:30] + "…"
	}
	return number
}

// positive is a number above zero and at most high, zero where it is missing.
func (f field) positive(form string, high float64) float64 {
	if !f.there {
		return 0
	}
	x := f.number(form, 0, high)
	if x == 0 {
		f.refuse("is 0", "give "+form+" above 0, or leave it out")
	}
	return x
}

// degrees is an angle, kept to a billionth of a degree so that it comes back the
// same from what is saved.
func (f field) degrees(form string, low, high float64) plane.Angle {
	return plane.Degrees(kept(f.number(form, low, high)))
}

func kept(degrees float64) float64 { return math.Round(degrees*1e9) / 1e9 }

// mostPixels is how far from the corner of the photograph anything is drawn: an
// outline may leave the picture, but not by more than the largest picture.
const mostPixels = 2 * photo.MaxSide

func (f field) point() plane.PixelPoint {
	const form = "a point [x, y] in pixels of the upright photograph"
	xy := f.list(form, 2, 2)
	if len(xy) != 2 {
		return plane.PixelPoint{}
	}
	coordinate := func(c field) plane.Pixel {
		return plane.Pixel(c.number("a number of pixels", -mostPixels, mostPixels))
	}
	return plane.Pt(coordinate(xy[0]), coordinate(xy[1]))
}

// points is least to most points that do not all lie at one place.
func (f field) points(form string, least, most int) []plane.PixelPoint {
	var out []plane.PixelPoint
	for _, e := range f.list(form, least, most) {
		out = append(out, e.point())
	}
	if f.sound() && len(out) > 1 && together(out) {
		f.refuse("has all its points at one place", "draw it again")
	}
	return out
}

func together(ps []plane.PixelPoint) bool {
	for _, p := range ps {
		if p != ps[0] {
			return false
		}
	}
	return true
}

// named is the value whose name the field holds.
func named[T any](f field, form string, parse func(string) (T, error)) T {
	var none T
	name := f.words(form, 1, 100)
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

func inside(path, name string) string {
	if len(name) > 40 {
		name = strings.ToValidUTF8(name[:40], "") + "…"
	}
	if name == "" || strings.ContainsFunc(name, func(c rune) bool { return c <= ' ' || c == '"' || c == '.' || c > '~' }) {
		name = strconv.Quote(name)
	}
	if path == "" {
		return name
	}
	return path + "." + name
}
