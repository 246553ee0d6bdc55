package rounds

import (
	"context"
	"errors"
	"strings"
	"testing"
	"time"

	"ogive/imaging/marksfile"
	"ogive/imaging/photo"
)

// slow is a library that counts what was asked of it.
type slow struct{ asked chan string }

func (s slow) Photograph(key string) (*photo.Photograph, error) {
	s.asked <- key
	return blank, nil
}

func (s slow) Marks(key, observer string) (marksfile.File, error) {
	return marksfile.File{}, errors.New("no marks of " + observer)
}

func TestAPictureThatCanNotBeMadeIsAnErrorThatNamesIt(t *testing.T) {
	r := begin(t, Setup{Kind: ByEye, Photographs: []Reference{{"a", "CD"}, {"b", "CD"}}})
	s, err := r.Supply(t.Context(), defaults(t), slow{make(chan string, 9)})
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	for range 2 {
		if _, err := s.Next(t.Context()); err == nil || !strings.Contains(err.Error(), "picture 1 of the round: no marks of CD") {
			t.Errorf("%v", err)
		}
	}
	none, err := r.Supply(t.Context(), defaults(t), nil)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := none.Next(t.Context()); err == nil || !strings.Contains(err.Error(), "open the casebook") {
		t.Errorf("%v", err)
	}
}

func TestNoMorePicturesAreMadeAheadThanStatedNorAnyAfterClosing(t *testing.T) {
	ctx, stop := context.WithCancel(t.Context())
	begun, pictures := make(chan int), make(chan made, ahead)
	go produce(ctx, []int{4, 3, 2, 1, 0}, func(n int) (*Picture, error) {
		begun <- n
		return &Picture{Number: n}, nil
	}, pictures)
	for _, want := range []int{4, 3, 2} {
		if got := <-begun; got != want {
			t.Errorf("picture %d is made, want %d", got, want)
		}
	}
	select { // two wait and the third is held
	case got := <-begun:
		t.Errorf("picture %d is made while nobody takes any", got)
	case <-time.After(30 * time.Millisecond):
	}
	if m := <-pictures; m.picture.Number != 4 {
		t.Errorf("picture %d comes first", m.picture.Number)
	}
	<-begun
	stop()
	for m := range pictures { // closed once the maker has gone
		if m.picture.Number == 0 {
			t.Error("a picture is made after closing")
		}
	}
}

func TestWaitingForAPictureEndsWithTheContext(t *testing.T) {
	ctx, stop := context.WithCancel(t.Context())
	stop()
	s := &Supply{pictures: make(chan made), stop: stop}
	if _, err := s.Next(ctx); !errors.Is(err, context.Canceled) {
		t.Errorf("%v", err)
	}
}
