package rounds

import (
	"fmt"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/norms"
	"ogive/imaging/wording"
)

// Asked is what a question is about, and under what its answer is scored.
type Asked string

// What is asked. Crown is answered by a click; the others by one of their choices.
const (
	Place Asked = "place"
	Width Asked = "width"
	Shape Asked = "shape"
	Slope Asked = "slope"
	Crown Asked = "crown"
)

// AllAsked lists what can be asked, in the order in which it is.
var AllAsked = []Asked{Place, Width, Shape, Slope, Crown}

// The figures of package norms that the questions are about.
const (
	placeFigure = "index"
	widthFigure = "span"
	slopeFigure = "slope"
)

// findings are the choices of a question about a figure, in the order of the
// figure.
var findings = map[Asked][]string{
	Place: {"too deep", norms.WithinLimits, "too shallow"},
	Width: {"too narrow", norms.WithinLimits, "too wide"},
	Slope: {"too flat", norms.WithinLimits, "too steep"},
}

// Choice is one answer to a question: Value is what is kept and compared, Words
// what is shown.
type Choice struct{ Value, Words string }

// Question is asked about one web of a picture.
type Question struct {
	Of      Asked
	Web     hand.Web
	Text    string
	Choices []Choice // none: answered by a click on the photograph
}

// questionsFor lists the questions about one web whose answers are known. In
// the palmar view there is no norm for the place of a web, and so no question.
//
// The width of a V is asked for too, or the missing question would give the shape
// away; the answer does not count.
func questionsFor(t Truth, web WebTruth, asked []Asked) []Question {
	var list []Question
	name := wording.Web(web.Web)
	for _, of := range asked {
		q := Question{Of: of, Web: web.Web}
		switch {
		case of == Place && known(web, Place):
			q.Text, q.Choices = fmt.Sprintf("Where does the %s lie?", name), choices(of)
		case of == Width && (known(web, Width) || web.Shape == arch.V):
			q.Text, q.Choices = fmt.Sprintf("How wide is the %s, beside the other webs of this hand?", name), choices(of)
		case of == Shape && web.Shape != 0:
			q.Text, q.Choices = fmt.Sprintf("Which shape has the %s?", name), choices(of)
		case of == Slope && known(web, Slope):
			q.Text, q.Choices = fmt.Sprintf("How does the skin junction of the %s slope?", name), choices(of)
		case of == Crown && canPlace(t, web.Web):
			q.Text = fmt.Sprintf("Where would you put the crown of the %s, were it to be normal? Click there.", name)
		default:
			continue
		}
		list = append(list, q)
	}
	return list
}

func known(w WebTruth, of Asked) bool {
	_, ok := w.verdicts[of]
	return ok
}

// canPlace reports whether it is known where a normal crown belongs.
func canPlace(t Truth, w hand.Web) bool {
	_, ok := t.frame(w)
	return ok && t.View == hand.Dorsal
}

func choices(of Asked) []Choice {
	var list []Choice
	if of == Shape {
		for _, s := range []arch.Shape{arch.V, arch.Gothic, arch.Round, arch.U} {
			list = append(list, Choice{s.String(), wording.Term(s.String())})
		}
		return list
	}
	for _, f := range findings[of] {
		list = append(list, Choice{f, said(f)})
	}
	return list
}

// asked is what a round asks of each picture.
func (s Setup) asked() []Asked {
	if len(s.Photographs) > 0 {
		return AllAsked
	}
	var list []Asked
	if s.has(TooDeep) || s.has(TooShallow) {
		list = append(list, Place)
	}
	if s.has(TooWide) || s.has(TooNarrow) {
		list = append(list, Width)
	}
	if s.has(Shapes) {
		list = append(list, Shape)
	}
	if s.has(Slopes) {
		list = append(list, Slope)
	}
	return append(list, Crown)
}
