package readings

import (
	"context"
	"fmt"
	"runtime"
	"sync"

	"ogive/imaging/casebook"
	"ogive/imaging/marksfile"
	"ogive/imaging/measure"
	"ogive/imaging/photo"
)

// Item is the reading of one observer's marks on one photograph.
type Item struct {
	Case, Sitting, Photograph int64
	Observer                  string
	Kept                      Kept
	// Err says why it could not be read: its photograph is missing or damaged.
	Err error
}

// All is the readings of all cases, by case, date, photograph and observer.
// After each that had to be computed, progress (which may be nil) is called with
// how many of how many are done.
func (b *Book) All(ctx context.Context, progress func(done, all int)) ([]Item, error) {
	return b.some(ctx, 0, progress)
}

// Case is the readings of one case.
func (b *Book) Case(ctx context.Context, caseID int64, progress func(done, all int)) ([]Item, error) {
	return b.some(ctx, caseID, progress)
}

func (b *Book) some(ctx context.Context, caseID int64, progress func(done, all int)) ([]Item, error) {
	marked, err := b.book.Marked(caseID, b.way)
	if err != nil {
		return nil, err
	}
	var stale []int
	for i, m := range marked {
		if m.Reading == "" {
			stale = append(stale, i)
		}
	}
	items := make([]Item, len(marked))
	spread(len(marked), func(i int) {
		m := &marked[i]
		items[i] = Item{Case: m.Case, Sitting: m.Sitting, Photograph: m.Photograph, Observer: m.Observer}
		if m.Reading != "" {
			items[i].Kept, items[i].Err = parse(m.Reading)
			m.Reading = "" // of ten thousand photographs the texts are tens of megabytes
		}
	})
	return items, b.refresh(ctx, items, stale, progress)
}

// together is how many readings are kept at a time: few enough that little is
// lost when the work is broken off, enough that the disk does not slow it.
const together = 64

// refresh computes what is not kept.
func (b *Book) refresh(ctx context.Context, items []Item, stale []int, progress func(done, all int)) error {
	done := 0
	for from := 0; from < len(stale); from += together {
		if err := ctx.Err(); err != nil {
			return err
		}
		batch := stale[from:min(from+together, len(stale))]
		made := make([]casebook.NewReading, len(batch))
		var one sync.Mutex
		spread(len(batch), func(n int) {
			if ctx.Err() != nil {
				return
			}
			it := &items[batch[n]]
			made[n], it.Kept, it.Err = b.compute(it.Photograph, it.Observer)
			one.Lock()
			defer one.Unlock()
			if done++; progress != nil {
				progress(done, len(stale))
			}
		})
		if err := ctx.Err(); err != nil {
			return err
		}
		if err := b.keepAll(items, batch, made); err != nil {
			return err
		}
	}
	return nil
}

func (b *Book) keepAll(items []Item, batch []int, made []casebook.NewReading) error {
	if b.book.ReadOnly() != "" {
		return nil
	}
	var sound []casebook.NewReading
	for n, i := range batch {
		if items[i].Err != nil {
			continue
		}
		text, err := encode(items[i].Kept)
		if err != nil {
			return err
		}
		made[n].Text = text
		sound = append(sound, made[n])
	}
	return b.book.KeepReadings(b.way, sound...)
}

// spread spreads work over the cores.
func spread(n int, work func(i int)) {
	next := make(chan int)
	var workers sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), n) {
		workers.Go(func() {
			for i := range next {
				work(i)
			}
		})
	}
	for i := range n {
		next <- i
	}
	close(next)
	workers.Wait()
}

// measured reads the marks in text on the photograph at path. A panic, which is
// a fault of this program, is the error of this one.
func measured(text []byte, path string, with measure.Settings) (k Kept, err error) {
	defer func() {
		if p := recover(); p != nil {
			k, err = Kept{}, fmt.Errorf("the program failed on these marks (%v); please report it", p)
		}
	}()
	f, err := marksfile.Parse(text)
	if err != nil {
		return Kept{}, err
	}
	if lack := f.Complete(); lack != nil {
		return Kept{Lacking: lack.Error()}, nil
	}
	picture, err := photo.Open(path)
	if err != nil {
		return Kept{}, fmt.Errorf("its photograph %w", err)
	}
	if err := f.CheckWithin(picture.Size()); err != nil {
		return Kept{Lacking: err.Error()}, nil
	}
	r, err := measure.Subject{Marks: f, Photograph: picture}.Measure(with)
	if err != nil {
		return Kept{Lacking: err.Error()}, nil
	}
	return Of(r), nil
}
