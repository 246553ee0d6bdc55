package round

import (
	"fyne.io/fyne/v2/lang"

	"ogive/ui/choice"
)

// offerCasebook lets photographs of the casebook be chosen, if there are any.
func (s *start) offerCasebook() {
	s.source = nil
	s.from.RemoveAll()
	if c := s.room.casebook; c != nil && len(c.Photographs) > 0 {
		s.source = choice.New(lang.L("Artificial hands"), c.words())
		s.source.Set(0)
		s.source.OnChosen = func(int) { s.showSource() }
		s.from.Add(strong(lang.L("Which pictures?")))
		s.from.Add(s.source)
	}
	s.showSource()
}

func (s *start) fromCasebook() bool { return s.source != nil && s.source.Chosen == 1 }

// showSource hides what only phantoms have where photographs are taken.
func (s *start) showSource() {
	visible(s.from, s.source != nil)
	visible(s.drawn, !s.fromCasebook())
	visible(s.fold, !s.fromCasebook())
	visible(s.folded, false)
	s.showFold()
	s.room.keyboard.take()
}
