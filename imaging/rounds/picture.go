package rounds

import (
	"fmt"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/imaging/marksfile"
	"ogive/imaging/measure"
	"ogive/imaging/phantom"
	"ogive/imaging/photo"
)

// Picture is one picture of a round with its truth, ready to be shown. Do not show
// the truth before the answer.
type Picture struct {
	Number     int // among the drawn pictures
	Photograph *photo.Photograph
	JPEG       []byte // the file of a phantom, nil for a photograph of a casebook
	Truth      Truth
	Web        hand.Web   // the web asked about, by eye
	Questions  []Question // by eye
}

func (p *Picture) longer() plane.Pixel {
	size := p.Photograph.Size()
	return plane.Pixel(max(size.X, size.Y))
}

// Library gives the photographs of a casebook to a round.
type Library interface {
	// Photograph is the photograph of that key.
	Photograph(key string) (*photo.Photograph, error)
	// Marks are an observer's latest marks on it.
	Marks(key, observer string) (marksfile.File, error)
}

// maker makes the pictures of a round, from what does not change while it runs.
type maker struct {
	setup    Setup
	limits   Limits
	cases    []phantom.Case
	settings measure.Settings
	library  Library
}

// picture is the drawn picture of that number.
func (m maker) picture(number int) (*Picture, error) {
	var p *Picture
	var err error
	if len(m.setup.Photographs) > 0 {
		p, err = m.photograph(number)
	} else {
		p, err = m.phantom(number)
	}
	if err != nil {
		return nil, fmt.Errorf("picture %d of the round: %w", number+1, err)
	}
	if m.setup.Kind == ByEye {
		p.ask(m.setup, number)
	}
	return p, nil
}

func (m maker) phantom(number int) (*Picture, error) {
	drawn, err := m.cases[number].Render()
	if err != nil {
		return nil, err
	}
	p, err := photo.Decode(drawn.JPEG)
	if err != nil {
		return nil, err
	}
	return &Picture{Number: number, Photograph: p, JPEG: drawn.JPEG, Truth: ofPhantom(drawn.Truth, m.limits), Web: m.setup.wants()[number].web}, nil
}

func (m maker) photograph(number int) (*Picture, error) {
	given := m.setup.Photographs[number]
	if m.library == nil {
		return nil, fmt.Errorf("its photographs lie in a casebook; open the casebook they were taken from")
	}
	p, err := m.library.Photograph(given.Key)
	if err != nil {
		return nil, err
	}
	marks, err := m.library.Marks(given.Key, given.Observer)
	if err != nil {
		return nil, err
	}
	if err := marks.Complete(); err != nil {
		return nil, fmt.Errorf("the marks of %s: %w", given.Observer, err)
	}
	if err := marks.CheckWithin(p.Size()); err != nil {
		return nil, fmt.Errorf("the marks of %s: %w", given.Observer, err)
	}
	settings := m.settings
	settings.Norms = m.limits.table()
	result, err := measure.Subject{Photograph: p, Marks: marks}.Measure(settings)
	if err != nil {
		return nil, err
	}
	return &Picture{Number: number, Photograph: p, Truth: ofReading(result, given.Observer, m.limits)}, nil
}

// ask chooses the web to ask about, by turns where none was drawn, and the
// questions.
func (p *Picture) ask(s Setup, number int) {
	if p.Web == 0 && len(p.Truth.Webs) > 0 {
		p.Web = p.Truth.Webs[number%len(p.Truth.Webs)].Web
	}
	if web, ok := p.Truth.Web(p.Web); ok {
		p.Questions = questionsFor(p.Truth, web, s.asked())
	}
}
