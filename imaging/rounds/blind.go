package rounds

import (
	"fmt"
	"slices"

	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/geometry/scoring"
	"ogive/imaging/marksfile"
	"ogive/imaging/measure"
)

// near is how far from the true crown a marked one counts as right: this project's
// own, about what a crown's place is worth on a reading.
const near plane.Millimetre = 1

// marked is what blind marks come to, for drawing.
type marked struct {
	reading reading.Reading
	marks   marksfile.File
}

// scoreMarks measures the marks on the picture and scores them.
func (r *Result) scoreMarks(p *Picture, a Answer, l Limits, settings measure.Settings) (marked, error) {
	if a.Marks == nil {
		return marked{}, fmt.Errorf("there are no marks on the picture; mark the scale, the joints and the webs")
	}
	if err := a.Marks.Complete(); err != nil {
		return marked{}, err
	}
	if err := a.Marks.CheckWithin(p.Photograph.Size()); err != nil {
		return marked{}, err
	}
	if m := a.Marks.Marks; m.Side != p.Truth.Side || m.View != p.Truth.View {
		return marked{}, fmt.Errorf("hand and view: the marks say %v hand, %v view, the picture shows a %v hand, %v view; correct the marks", m.Side, m.View, p.Truth.Side, p.Truth.View)
	}
	settings.Norms = l.table()
	got, err := measure.Subject{Photograph: p.Photograph, Marks: *a.Marks}.Measure(settings)
	if err != nil {
		return marked{}, err
	}
	r.Exact, r.Longer = p.Truth.Exact, p.longer()
	r.Web = 0
	r.landmarks(p.Truth, a.Marks.Marks)
	said := ofReading(got, "", l)
	said.judgeWidthsBeside(p.Truth, l)
	for _, truth := range p.Truth.Webs {
		web, _ := said.Web(truth.Web)
		r.scoreWeb(p.Truth, truth, web, a.Marks.Marks, l)
	}
	return marked{got.Reading, got.Marks}, nil
}

// scoreWeb scores one web of the marks; one that was not marked is wrong in all
// that is asked of it.
func (r *Result) scoreWeb(t Truth, truth, said WebTruth, m hand.Marks, l Limits) {
	for _, of := range []Asked{Place, Width, Slope} {
		if _, ok := truth.verdicts[of]; ok {
			r.Judged = append(r.Judged, judged(truth, of, said.verdicts[of].Finding, l))
			if _, marked := said.verdicts[of]; marked {
				r.Figures = append(r.Figures, FigureGap{figureOf[of], truth.Web, said.figure(of).Value, truth.figure(of).Value})
			}
		}
	}
	if truth.Shape == 0 {
		return
	}
	shape := ""
	switch {
	case slices.Contains(said.ShapeAlso, truth.Shape):
		shape = truth.Shape.String() // the border leaves it open, and the learner names none
	case said.Shape != 0:
		shape = said.Shape.String()
	}
	r.Judged = append(r.Judged, judged(truth, Shape, shape, l), r.crown(t, truth, m))
}

// judgeWidthsBeside judges each marked span by the true spans of the other webs, so
// that what is amiss with the marks on one web does not make another one wrong.
func (t *Truth) judgeWidthsBeside(truth Truth, l Limits) {
	for i := range t.Webs {
		own := &t.Webs[i]
		if own.Span == nil {
			continue
		}
		spans := []norms.WebSpan{{Web: own.Web, Span: *own.Span}}
		for _, w := range truth.Webs {
			if w.Span != nil && w.Web != own.Web {
				spans = append(spans, norms.WebSpan{Web: w.Web, Span: *w.Span})
			}
		}
		keep(own.verdicts, Width, l.table().JudgeSpans(spans)[0])
	}
}

var figureOf = map[Asked]string{Place: placeFigure, Width: widthFigure, Slope: slopeFigure}

// crown scores the marked crown of a web against the true one.
func (r *Result) crown(t Truth, truth WebTruth, m hand.Marks) Judged {
	j := Judged{Of: Crown, Web: truth.Web, Counted: true, True: "near"}
	for _, l := range r.Landmarks {
		if l.Kind == crownKind && l.Of == truth.Web.String() {
			o := l.Off
			j.Off, j.Right, j.Given = &o, o.Size() <= near, "far"
			if j.Right {
				j.Given = "near"
			}
		}
	}
	return j
}

// crownKind is the kind of a crown among the landmarks; joints have their own
// names.
const crownKind = "crown"

// landmarks lists how far the joints and the crowns are off: joints along their
// own digit, crowns along the web's axis.
func (r *Result) landmarks(t Truth, m hand.Marks) {
	for _, d := range hand.Digits {
		distal, ok := t.along(d)
		for _, joint := range hand.Joints {
			truth, there := t.Joints[d][joint]
			placed, marked := m.Joint(d, joint)
			if ok && there && marked {
				r.Landmarks = append(r.Landmarks, t.landmark(joint.Label(t.View), d.String(), truth, placed, distal, t.phalanx(d)))
			}
		}
	}
	for _, w := range m.Webs {
		truth, there := t.Web(w.Web)
		f, ok := t.frame(w.Web)
		radial, ulnar := w.Web.Digits()
		if there && ok && truth.Shape != 0 && len(w.Seeds) == 3 {
			r.Landmarks = append(r.Landmarks, t.landmark(crownKind, w.Web.String(), truth.Crown, w.Seeds[1], f.Axis(), (t.phalanx(radial)+t.phalanx(ulnar))/2))
		}
	}
}

// along is the distal direction of a digit on the plane.
func (t Truth) along(d hand.Digit) (plane.Vector[plane.Millimetre], bool) {
	mcp, okM := t.Joints[d][hand.MCP]
	pip, okP := t.Joints[d][hand.PIP]
	v := t.Plane.Position(pip).Sub(t.Plane.Position(mcp))
	return v.Direction(), okM && okP && v.Norm() > 0
}

// phalanx is the length MCP to PIP of a digit on the picture.
func (t Truth) phalanx(d hand.Digit) plane.Pixel {
	return t.Joints[d][hand.PIP].Distance(t.Joints[d][hand.MCP])
}

// ulnar is the direction to the ulnar side, square to distal: to the right of it
// on the back of a right hand, as the picture shows it.
func (t Truth) ulnar(distal plane.Vector[plane.Millimetre]) plane.Vector[plane.Millimetre] {
	right := distal.Turned(plane.RightAngle)
	if (t.Side == hand.Left) != (t.View == hand.Palmar) {
		return right.Scale(-1)
	}
	return right
}

func (t Truth) landmark(kind, of string, truth, placed plane.PixelPoint, distal plane.Vector[plane.Millimetre], phalanx plane.Pixel) Landmark {
	ulnar := t.ulnar(distal)
	at := t.Plane.Position(truth)
	o := scoring.Miss(at, t.Plane.Position(placed), distal, ulnar)
	v := placed.Sub(truth)
	u := t.Plane.Pixel(at.Add(distal)).Sub(truth).Direction()
	w := t.Plane.Pixel(at.Add(ulnar)).Sub(truth).Direction()
	return Landmark{Kind: kind, Of: of, Off: *off(o), DistalPx: v.Dot(u), UlnarPx: v.Dot(w), Phalanx: phalanx}
}
