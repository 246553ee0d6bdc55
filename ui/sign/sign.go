// Package sign shows verdicts. What is certain, what is doubtful and what is well
// are told apart by shape and letters, never by colour alone.
//
//	s := sign.New()
//	s.Say(verdict)
//	height := s.HeightAt(width)
package sign

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ogive/geometry/norms"
	"ogive/imaging/wording"
	"ogive/ui/flow"
	"ogive/ui/look"
)

// Sign is one verdict, with its limit below. It has two lines, however long they
// are.
type Sign struct {
	widget.BaseWidget
	// Quiet writes small that no difference can be told, for a column in which
	// most figures come to that.
	Quiet bool

	verdict      norms.Verdict
	ground       *canvas.Raster
	words, limit *canvas.Text
}

var _ flow.Tall = (*Sign)(nil)

// New is a sign without a verdict, hidden.
func New() *Sign {
	s := &Sign{words: canvas.NewText("", nil), limit: canvas.NewText("", nil)}
	s.ground = canvas.NewRaster(s.draw)
	s.ExtendBaseWidget(s)
	s.Hide()
	return s
}

// Say shows a verdict in the words it has everywhere, and reports whether the
// height may have changed.
func (s *Sign) Say(v norms.Verdict) bool {
	words := wording.VerdictOf(v)
	if v.Finding == norms.NoDifference {
		words = wording.Term(v.Figure) + ": " + wording.Term(v.Finding)
	}
	return s.SayAs(v, words, lang.L("limit {{.Limit}}", map[string]any{"Limit": wording.Limit(v)}))
}

// SayAs shows a verdict in other words.
func (s *Sign) SayAs(v norms.Verdict, words, limit string) bool {
	if s.verdict == v {
		return false
	}
	first, before, rim := s.verdict == norms.Verdict{}, s.State(), s.rim()
	s.verdict, s.words.Text, s.limit.Text = v, words, limit
	s.HeightAt(s.Size().Width)
	s.words.Refresh()
	s.limit.Refresh()
	if s.State() != before {
		s.ground.Refresh()
	}
	return first || s.rim() != rim
}

// State is how the verdict is shown.
func (s *Sign) State() State { return Of(s.verdict) }

// Words are the two lines.
func (s *Sign) Words() (verdict, limit string) { return s.words.Text, s.limit.Text }

func (s *Sign) small() bool { return s.Quiet && s.State() == Equal }

// rim is how far the words are from the upper and the lower edge.
func (s *Sign) rim() float32 {
	if s.small() {
		return 0
	}
	return 5
}

func (s *Sign) colour() {
	state := s.State()
	body, caption := look.Size(theme.SizeNameText), look.Size(theme.SizeNameCaptionText)
	ink := look.Colour(inkOf[state])
	s.words.Color, s.limit.Color = ink, ink
	s.words.TextSize, s.limit.TextSize = body, caption
	if s.small() {
		s.words.TextSize = caption
	}
	s.words.TextStyle = fyne.TextStyle{Bold: state == Amiss, Italic: state == Doubtful}
	s.limit.TextStyle = fyne.TextStyle{Italic: state == Doubtful}
}

// HeightAt is called by flow.
func (s *Sign) HeightAt(width float32) float32 {
	s.colour()
	x, right := float32(10), float32(12) // inside the flag's notch
	if state := s.State(); state == Well || state == Equal {
		x, right = 20, 4
	}
	y := s.rim()
	for _, t := range []*canvas.Text{s.words, s.limit} {
		// The limit may come from a long source; it is written smaller rather
		// than over the edge.
		if w, room := t.MinSize().Width, width-x-right; w > room && room > 0 {
			t.TextSize *= room / w
		}
		h := t.MinSize().Height
		flow.Put(t, x, y, width-x, h)
		y += h
	}
	y += s.rim()
	flow.Put(s.ground, 0, 0, width, y)
	return y
}

// CreateRenderer is called by Fyne.
func (s *Sign) CreateRenderer() fyne.WidgetRenderer {
	colour := func() { s.HeightAt(s.Size().Width) }
	return flow.NewRenderer(s.HeightAt, colour, s.ground, s.words, s.limit)
}
