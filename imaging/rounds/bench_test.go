package rounds

import (
	"context"
	"testing"
)

// The wait from beginning a round of twenty to its first picture; the target is a
// second.
//
//	go test ./imaging/rounds -run '^$' -bench FirstPicture
func BenchmarkFirstPictureOfTwenty(b *testing.B) {
	settings := defaults(b)
	for b.Loop() {
		r, err := Begin(b.TempDir(), "AB", Setup{Kind: ByEye, Count: 20, Seed: 5}, settings.Norms, noon)
		if err != nil {
			b.Fatal(err)
		}
		s, err := r.Supply(context.Background(), settings, nil)
		if err != nil {
			b.Fatal(err)
		}
		if _, err := s.Next(context.Background()); err != nil {
			b.Fatal(err)
		}
		b.StopTimer()
		s.Close()
		for range s.pictures { // the picture in hand must not slow the next run
		}
		b.StartTimer()
	}
}
