package main

import (
	"bytes"
	"context"
	"fmt"
	"image/jpeg"
	"math"
	"path/filepath"
	"time"

	"ogive/imaging/measure"
	"ogive/imaging/rounds"
)

// pupil is a round in the window, beside a twin: the same pictures, answered here
// without a window as they were there.
type pupil struct {
	shown
	path   string // of the round
	twin   *rounds.Round
	supply *rounds.Supply
	with   measure.Settings
	right  int // what the score must come to
	count  int
}

func (r *running) roundsFolder() string {
	return filepath.Join(r.folder, ".config", "fyne", details.ID, "rounds")
}

// newPupil waits until the window has begun that many rounds, and takes the last
// one.
func (r *running) newPupil(begun int) *pupil {
	r.t.Helper()
	var round *rounds.Round
	r.wait(fmt.Sprintf("round %d is on the disk", begun), func() bool {
		all, refused := rounds.List(r.roundsFolder())
		if len(refused) > 0 {
			r.t.Fatalf("a round that the program wrote is refused: %v", refused)
		}
		if len(all) == begun {
			round = all[begun-1]
		}
		return round != nil
	})
	return r.pupilOf(round)
}

func (r *running) pupilOf(round *rounds.Round) *pupil {
	r.t.Helper()
	settings, err := measure.Defaults()
	if err != nil {
		r.t.Fatal(err)
	}
	p := &pupil{shown: shown{running: r}, path: round.Path(), with: settings}
	if p.twin, err = rounds.Begin(r.t.TempDir(), round.Observer, round.Setup, settings.Norms, round.Begun); err != nil {
		r.t.Fatal(err)
	}
	p.twin.Order = round.Order
	if p.twin.Limits != round.Limits {
		r.t.Errorf("the window judges by %+v, the normal values are %+v", round.Limits, p.twin.Limits)
	}
	if p.supply, err = p.twin.Supply(context.Background(), settings, nil); err != nil {
		r.t.Fatal(err)
	}
	r.t.Cleanup(p.supply.Close)
	return p
}

// nextPicture waits until the window shows the next picture of the round, and
// knows it.
func (p *pupil) nextPicture() *rounds.Picture {
	p.t.Helper()
	picture, err := p.supply.Next(context.Background())
	if err != nil {
		p.t.Fatal(err)
	}
	img, err := jpeg.Decode(bytes.NewReader(picture.JPEG))
	if err != nil {
		p.t.Fatal(err)
	}
	done, of := p.twin.Progress()
	p.read(fmt.Sprintf("Picture %d of %d", done+1, of))
	p.photograph = newPhotographed(img)
	p.findPhotograph()
	return picture
}

// told waits until the window has kept the answer, and holds what it came to
// against what the twin says.
func (p *pupil) told(picture *rounds.Picture, same rounds.Answer) rounds.Result {
	p.t.Helper()
	want, err := p.twin.Answer(picture, same, p.with, time.Now())
	if err != nil {
		p.t.Fatal(err)
	}
	n := len(p.twin.Results)
	var kept *rounds.Round
	p.wait(fmt.Sprintf("the answer to picture %d is on the disk", n), func() bool {
		if kept, err = rounds.Load(p.path); err != nil {
			p.t.Fatal(err)
		}
		return len(kept.Results) == n
	})
	got := kept.Results[n-1]
	if len(got.Judged) != len(want.Result.Judged) {
		p.t.Fatalf("picture %d: the window kept %+v, the round comes to %+v", n, got.Judged, want.Result.Judged)
	}
	right, counted := 0, 0
	for i, j := range got.Judged {
		w := want.Result.Judged[i]
		if j.Of != w.Of || j.Web != w.Web || j.Given != w.Given || j.True != w.True || j.Counted != w.Counted || j.Right != w.Right {
			p.t.Errorf("picture %d: the window kept %+v, the round comes to %+v", n, j, w)
		}
		if (j.Off == nil) != (w.Off == nil) || j.Off != nil && max(math.Abs(float64(j.Off.Distal-w.Off.Distal)), math.Abs(float64(j.Off.Ulnar-w.Off.Ulnar))) > samePlace {
			p.t.Errorf("picture %d: the window has the crown off by %+v, the round by %+v", n, j.Off, w.Off)
		}
		if j.Counted {
			counted++
		}
		if j.Right {
			right++
		}
	}
	p.right, p.count = p.right+right, p.count+counted
	p.read(fmt.Sprintf("%d of %d right", right, counted))
	p.note(fmt.Sprintf("the truth of picture %d", n))
	return got
}

// samePlace is how far, in millimetres, the window may take a click from where it
// was found to be on the photograph: less than half a pixel of the screen.
const samePlace = 0.1
