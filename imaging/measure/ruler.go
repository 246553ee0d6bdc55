package measure

import (
	"ogive/geometry/scale"
	"ogive/imaging/ruler"
)

// doubtRuler warns if the ticks between the two ends of the ruler contradict
// the length given for them. Where no ticks are to be seen there is nothing to
// contradict it.
func (s Subject) doubtRuler() []string {
	r, ok := s.Marks.Reference.(scale.Ruler)
	if !ok {
		return nil
	}
	found, err := ruler.FindTicks(s.Photograph, r.From, r.To)
	if err != nil {
		return nil
	}
	if warning := ruler.Check(found, r.Length); warning != "" {
		return []string{warning}
	}
	return nil
}
