package marksfile

import (
	"fmt"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
)

// Unfinished is what a window keeps of work that is not complete yet, so that
// nothing placed is ever lost: single points of a scale, a web or a junction.
// Measuring passes over it.
type Unfinished struct {
	// Points are named by the window that placed them.
	Points []NamedPoint
	// Skipped are the names of points the user went on without.
	Skipped []string
	// Proposed are webs whose seeds the program found and the user has not
	// accepted yet.
	Proposed []hand.Web
	// ScaleOn is the kind of reference chosen, Length the length of the ruler
	// and Card the size of the card, as far as they are known.
	ScaleOn string
	Length  plane.Millimetre
	Card    [2]plane.Millimetre
}

// NamedPoint is a point with its name.
type NamedPoint struct {
	Name string
	At   plane.PixelPoint
}

const (
	longestName = 60
	mostNames   = 500
)

func (f field) unfinished() *Unfinished {
	if f.missing() || !f.object("what is unfinished", "points", "skipped", "proposed", "scale_on", "length_mm", "card_mm") {
		return nil
	}
	var u Unfinished
	for _, e := range f.optional("points", "a list of named points", mostNames) {
		if e.object(`a named point, such as {"name": "scale 0", "at": [x, y]}`, "name", "at") {
			u.Points = append(u.Points, NamedPoint{e.at("name").shortName(), e.at("at").point()})
		}
	}
	for _, e := range f.optional("skipped", "a list of names", mostNames) {
		u.Skipped = append(u.Skipped, e.shortName())
	}
	taken := map[hand.Web]bool{}
	for _, e := range f.optional("proposed", "a list of web numbers", len(hand.Webs)) {
		u.Proposed = append(u.Proposed, e.webNumber(taken))
	}
	if on := f.at("scale_on"); !on.missing() {
		u.ScaleOn = on.shortName()
	}
	if length := f.at("length_mm"); !length.missing() {
		u.Length = plane.Millimetre(length.positive("the length of the ruler in millimetres", maxRuler))
	}
	if card := f.at("card_mm"); !card.missing() {
		for i, e := range card.list("width and height of the card in millimetres", 2, 2) {
			u.Card[i] = plane.Millimetre(e.positive("millimetres", maxRuler))
		}
	}
	return &u
}

func (f field) optional(name, form string, most int) []field {
	if f.at(name).missing() {
		return nil
	}
	return f.at(name).list(form, 0, most)
}

func (f field) shortName() string {
	name := f.textOf("a short name")
	if len(name) > longestName {
		f.refuse("is too long", fmt.Sprintf("give a name of at most %d characters", longestName))
	}
	return name
}

type unfinishedText struct {
	Points   []namedPointText   `json:"points,omitempty"`
	Skipped  []string           `json:"skipped,omitempty"`
	Proposed []hand.Web         `json:"proposed,omitempty"`
	ScaleOn  string             `json:"scale_on,omitempty"`
	Length   plane.Millimetre   `json:"length_mm,omitempty"`
	Card     []plane.Millimetre `json:"card_mm,omitempty"`
}

type namedPointText struct {
	Name string    `json:"name"`
	At   pointText `json:"at"`
}

func (u Unfinished) text() unfinishedText {
	out := unfinishedText{Skipped: u.Skipped, Proposed: u.Proposed, ScaleOn: u.ScaleOn, Length: u.Length}
	for _, p := range u.Points {
		out.Points = append(out.Points, namedPointText{p.Name, pointText(p.At)})
	}
	if u.Card[0] > 0 && u.Card[1] > 0 {
		out.Card = u.Card[:]
	}
	return out
}
