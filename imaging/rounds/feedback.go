package rounds

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/geometry/plane"
	"ogive/imaging/wording"
)

// Feedback is what is shown after an answer.
type Feedback struct {
	Result Result
	// Lines say of each answer whether it is right, and what is true.
	Lines []Line
	// Look is one sentence on what to look for.
	Look    string
	Drawing Drawing
}

// Line is one answer in words. Words is a whole sentence, with the true figure and
// its limit.
type Line struct {
	Of             Asked
	Web            hand.Web
	Counted, Right bool
	Words          string
}

func feedback(p *Picture, r Result, l Limits, seen marked) Feedback {
	f := Feedback{Result: r, Look: look(r, l), Drawing: drawing(p, l, seen)}
	for _, j := range r.Judged {
		f.Lines = append(f.Lines, Line{j.Of, j.Web, j.Counted, j.Right, r.words(j, l)})
	}
	return f
}

// words is one answer as a sentence.
func (r Result) words(j Judged, l Limits) string {
	name := wording.WebName(j.Web)
	switch {
	case j.Of == Crown && len(r.Landmarks) == 0:
		return name + ": " + j.crownByEye(l)
	case j.Of == Crown:
		if j.Off == nil {
			return name + ": the crown was not marked."
		}
		return name + ": crown " + offWords(*j.Off) + "."
	case !j.Counted:
		return name + ": the width does not count, for a V has no span."
	}
	truth, figures := said(j.True), j.measured(l)+r.gap(j)
	if r.blind() {
		return fmt.Sprintf("%s: %s; %s%s", name, truth, j.readBlind(), figures)
	}
	switch {
	case j.Given == "":
		return fmt.Sprintf("%s: %s; you did not say.%s", name, truth, figures)
	case j.Given == j.True:
		return fmt.Sprintf("%s: %s, as you said.%s", name, truth, figures)
	case j.Right:
		return fmt.Sprintf("%s: %s; you said %s, which the reference's own uncertainty allows.%s", name, truth, said(j.Given), figures)
	}
	return fmt.Sprintf("%s: %s; you said %s.%s", name, truth, said(j.Given), figures)
}

// blind reports whether the answer was given by marks.
func (r Result) blind() bool { return len(r.Landmarks) > 0 || len(r.Figures) > 0 }

// readBlind is what the marks come to, since nothing was said.
func (j Judged) readBlind() string {
	switch {
	case j.Given == "":
		return "your marks tell nothing of it."
	case j.Given == j.True:
		return "your marks read so too."
	case j.Right:
		return "your marks read as " + said(j.Given) + ", which the reference's own uncertainty allows."
	}
	return "your marks read as " + said(j.Given) + "."
}

// said is a finding or a shape as the learner reads it.
func said(finding string) string {
	if finding == norms.WithinLimits {
		return normalWord
	}
	return wording.Term(finding)
}

// normalWord is what a web within limits is called here, so that it can't be taken
// for a right answer.
const normalWord = "normal"

// measured is the true figure and its limits as a sentence, empty for a shape.
func (j Judged) measured(l Limits) string {
	switch j.Of {
	case Place:
		return fmt.Sprintf(" Index %s, normal from %s to %s.", j.figure(2, ""), fixed(l.Index[0], 2), fixed(l.Index[1], 2))
	case Slope:
		return fmt.Sprintf(" Slope %s, normal from %s to %s°.", j.figure(0, "°"), fixed(l.Slope[0], 0), fixed(l.Slope[1], 0))
	case Width:
		return fmt.Sprintf(" Span %s, nearest limit by the other webs %s mm.", j.figure(1, " mm"), fixed(j.Limit, 1))
	}
	return ""
}

// figure is the true figure, with its uncertainty unless it is exact.
func (j Judged) figure(decimals int, unit string) string {
	if j.U95 == 0 {
		return fixed(j.Figure, decimals) + unit
	}
	v, u := wording.Rounded(j.Figure, j.U95, decimals)
	return v + " ± " + u + unit
}

func fixed(x float64, decimals int) string { return strconv.FormatFloat(x, 'f', decimals, 64) }

// gap is what was measured blind, as a sentence; empty by eye and for a shape.
func (r Result) gap(j Judged) string {
	for _, f := range r.Figures {
		if f.Web != j.Web || f.Figure != figureOf[j.Of] {
			continue
		}
		switch j.Of {
		case Place:
			return " Your marks give " + fixed(f.Got, 2) + "."
		case Slope:
			return " Your marks give " + fixed(f.Got, 0) + "°."
		case Width:
			return " Your marks give " + fixed(f.Got, 1) + " mm."
		}
	}
	return ""
}

func (j Judged) crownByEye(l Limits) string {
	if j.Off == nil {
		return "you put no crown."
	}
	band := fmt.Sprintf("index %s, normal from %s to %s", fixed(j.Figure, 2), fixed(l.Index[0], 2), fixed(l.Index[1], 2))
	switch {
	case j.Right:
		return fmt.Sprintf("your crown lies where one is normal (%s)%s.", band, asideWords(*j.Off))
	case j.Off.Distal == 0:
		return fmt.Sprintf("your crown lies at a normal depth (%s), but too far aside%s.", band, asideWords(*j.Off))
	}
	return fmt.Sprintf("your crown lies %s (%s).", offWords(*j.Off), band)
}

func asideWords(o Off) string {
	if w := ulnarWords(o.Ulnar); w != "" {
		return ", " + w
	}
	return ""
}

// Words are the offset with its direction: "1.8 mm too distal, 0.4 mm towards the
// ulnar side".
func (o Off) Words() string { return offWords(o) }

// offWords is an offset in words: "1.8 mm too distal, 0.4 mm towards the ulnar
// side".
func offWords(o Off) string {
	var parts []string
	if w := distalWords(o.Distal); w != "" {
		parts = append(parts, w)
	}
	if w := ulnarWords(o.Ulnar); w != "" {
		parts = append(parts, w)
	}
	if len(parts) == 0 {
		return "where it belongs to a tenth of a millimetre"
	}
	return strings.Join(parts, ", ")
}

func distalWords(d plane.Millimetre) string {
	return sideWords(d, "too distal", "too proximal")
}

func ulnarWords(u plane.Millimetre) string {
	return sideWords(u, "towards the ulnar side", "towards the radial side")
}

// sideWords is empty where nothing is left to the tenth of a millimetre.
func sideWords[N ~float64](x N, positive, negative string) string {
	size := fixed(math.Abs(float64(x)), 1)
	switch {
	case size == "0.0":
		return ""
	case x > 0:
		return size + " mm " + positive
	}
	return size + " mm " + negative
}

// farJoint is the joint that is furthest off, if one is off by more than far.
func (r Result) farJoint(far plane.Millimetre) (Landmark, bool) {
	joints := slices.DeleteFunc(slices.Clone(r.Landmarks), func(l Landmark) bool { return l.Kind == crownKind || l.Size() <= far })
	if len(joints) == 0 {
		return Landmark{}, false
	}
	return slices.MaxFunc(joints, func(a, b Landmark) int {
		if a.Size() < b.Size() {
			return -1
		}
		return 1
	}), true
}
