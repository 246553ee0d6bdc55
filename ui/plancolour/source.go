package plancolour

import (
	"errors"
	"sync"

	"ogive/imaging/photo"
)

// source opens photographs, each once. It may be used beside Fyne's goroutine.
type source struct {
	open func(name string) (*photo.Photograph, error)

	lock   sync.Mutex
	opened map[string]*photo.Photograph
}

func newSource(open func(string) (*photo.Photograph, error)) *source {
	if open == nil {
		open = func(string) (*photo.Photograph, error) { return nil, errNoOpener }
	}
	return &source{open: open, opened: map[string]*photo.Photograph{}}
}

var errNoOpener = errors.New("no photographs can be opened here")

func (s *source) photograph(name string) (*photo.Photograph, error) {
	s.lock.Lock()
	defer s.lock.Unlock()
	if known := s.opened[name]; known != nil {
		return known, nil
	}
	photograph, err := s.open(name)
	if err == nil {
		s.opened[name] = photograph
	}
	return photograph, err
}

// forget lets go of the photographs, which are large.
func (s *source) forget() {
	s.lock.Lock()
	defer s.lock.Unlock()
	clear(s.opened)
}
