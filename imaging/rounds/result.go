package rounds

import (
	"fmt"
	"math"
	"slices"
	"time"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/scoring"
)

// Result is how one picture was answered: all that is kept of an answer, and
// enough for the summary, so that no picture need be made again for it.
type Result struct {
	Picture int       `json:"picture"` // its number among the drawn ones
	At      time.Time `json:"at"`
	Web     hand.Web  `json:"web,omitempty"` // the web asked about, by eye
	Judged  []Judged  `json:"judged,omitempty"`
	// Landmarks are how far the marks lie from where they belong, Figures how far
	// the figures that follow from them lie from the true ones.
	Landmarks []Landmark  `json:"landmarks,omitempty"`
	Figures   []FigureGap `json:"figures,omitempty"`
	// Exact is true where the truth is that of a phantom, and Longer the longer
	// side of the picture in pixels.
	Exact  bool        `json:"exact,omitempty"`
	Longer plane.Pixel `json:"longer_px,omitempty"`
}

// Judged is one answer held against the truth. One that does not count has no
// truth to be right by, such as the width of a V.
type Judged struct {
	Of    Asked    `json:"of"`
	Web   hand.Web `json:"web"`
	Given string   `json:"given,omitempty"` // empty: not answered
	True  string   `json:"true,omitempty"`
	// Also are findings that the reference's uncertainty allows as well.
	Also    []string `json:"also,omitempty"`
	Counted bool     `json:"counted,omitempty"`
	Right   bool     `json:"right,omitempty"`
	// Figure is what is true, U95 how well it is known (0: exactly), and Limit the
	// nearest limit; of no meaning for a shape. Ratio, millimetres or degrees.
	Figure float64 `json:"figure,omitempty"`
	U95    float64 `json:"u95,omitempty"`
	Limit  float64 `json:"limit,omitempty"`
	// Off is how far a placed crown lies from where it belongs: by eye from where
	// the crown of a normal web may lie, blind from the true crown.
	Off *Off `json:"off,omitempty"`
}

// Off is an offset on the hand: distal and towards the ulnar side are positive.
type Off struct {
	Distal plane.Millimetre `json:"distal_mm"`
	Ulnar  plane.Millimetre `json:"ulnar_mm"`
}

func off(o scoring.Offset) *Off { return &Off{o.Distal, o.Ulnar} }

// Size is the length of the offset.
func (o Off) Size() plane.Millimetre { return scoring.Offset(o).Size() }

// Landmark is how far one marked point lies from where it is. Kind is "MCP",
// "PIP", "DIP", "tip", in the palm "basal digital crease" or "PIP crease", or
// "crown"; Of is the digit or the web by its name.
type Landmark struct {
	Kind string `json:"kind"`
	Of   string `json:"of"`
	Off
	// DistalPx and UlnarPx are the same on the picture, in pixels.
	DistalPx plane.Pixel `json:"distal_px"`
	UlnarPx  plane.Pixel `json:"ulnar_px"`
	// Phalanx is the true length MCP to PIP of the digit, or the mean of both
	// digits of the web, on the picture.
	Phalanx plane.Pixel `json:"phalanx_px"`
}

// FigureGap is one figure that follows from the marks, beside the true one.
type FigureGap struct {
	Figure string   `json:"figure"` // "index", "span" or "slope"
	Web    hand.Web `json:"web"`
	Got    float64  `json:"got"`
	True   float64  `json:"true"`
}

// Score is the part of the answers that counted which are right, NaN where none
// counted.
func (r Result) Score() float64 {
	right, counted := r.right()
	return float64(right) / float64(counted)
}

func (r Result) right() (right, counted int) {
	for _, j := range r.Judged {
		if j.Counted {
			counted++
			if j.Right {
				right++
			}
		}
	}
	return right, counted
}

// farthest is more than any point of a picture can lie from another, in
// millimetres or pixels; figures beyond it are damage.
const farthest = 1e6

// check refuses what no scoring comes to.
func (r Result) check() error {
	if len(r.Judged) > 100 || len(r.Landmarks) > 100 || len(r.Figures) > 100 {
		return fmt.Errorf("more than 100 answers to one picture; no picture asks so much")
	}
	if !(r.Longer >= 0 && r.Longer < farthest) {
		return fmt.Errorf("longer_px: %g is the side of no picture", float64(r.Longer))
	}
	for _, j := range r.Judged {
		if err := j.check(); err != nil {
			return err
		}
	}
	for _, l := range r.Landmarks {
		if !bounded(float64(l.Distal), float64(l.Ulnar), float64(l.DistalPx), float64(l.UlnarPx), float64(l.Phalanx)) || l.Phalanx <= 0 || !slices.Contains(landmarkKinds, l.Kind) || len(l.Of) > 40 {
			return fmt.Errorf("landmarks: %.40q is no landmark or is off by more than a picture is wide", l.Kind)
		}
	}
	for _, f := range r.Figures {
		if !bounded(f.Got, f.True) || len(f.Figure) > 40 {
			return fmt.Errorf("figures: %.40q has a value that none has", f.Figure)
		}
	}
	return nil
}

func (j Judged) check() error {
	switch {
	case !slices.Contains(AllAsked, j.Of):
		return fmt.Errorf("judged: there is no question about %.40q", j.Of)
	case !j.Web.Valid():
		return fmt.Errorf("judged: there is no web %d", int(j.Web))
	case len(j.Given) > 40 || len(j.True) > 40 || len(j.Also) > 4:
		return fmt.Errorf("judged: the answer %.40q is none of the choices", j.Given)
	case !bounded(j.Figure, j.U95, j.Limit), j.Off != nil && !bounded(float64(j.Off.Distal), float64(j.Off.Ulnar)):
		return fmt.Errorf("judged: the %s has a figure that none has", j.Of)
	case j.Right && !j.Counted:
		return fmt.Errorf("judged: the %s is right and does not count", j.Of)
	}
	return nil
}

func bounded(values ...float64) bool {
	for _, v := range values {
		if !(math.Abs(v) < farthest) {
			return false
		}
	}
	return true
}
