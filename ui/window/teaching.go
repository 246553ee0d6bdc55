package window

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"image"
	"path/filepath"

	"fyne.io/fyne/v2/lang"

	"ogive/geometry/plane"
	"ogive/imaging/observed"
	"ogive/imaging/rounds"
	"ogive/imaging/rounds/fromcasebook"
	"ogive/ui/agree"
	"ogive/ui/round"
)

// teaching is the rooms of rounds and of agreement, built when they are first
// needed.
type teaching struct {
	rounds    *round.Room
	agreement *agree.Room
	// reader remembers what was observed in the casebook that is open.
	reader *observed.Reader
}

// photographsToLearnOn are those of the casebook that is open which another
// observer has marked: the one who has marked most. It is nil where there are none.
func (w *Window) photographsToLearnOn() *round.Casebook {
	if w.book == nil {
		return nil
	}
	observers, err := w.book.Observers()
	if err != nil {
		return nil // rounds on phantoms can be taken all the same
	}
	var given []rounds.Reference
	for _, who := range observers {
		if who == w.learner() {
			continue
		}
		if marked, err := fromcasebook.Photographs(w.book, who); err == nil && len(marked) > len(given) {
			given = marked
		}
	}
	if len(given) == 0 {
		return nil
	}
	folder := sha256.Sum256([]byte(w.book.Folder()))
	return &round.Casebook{Name: filepath.Base(w.book.Folder()), Key: hex.EncodeToString(folder[:8]), Photographs: given, Library: fromcasebook.Library{Book: w.book}}
}

// showAgreement shows how far observers agree, on the casebook that is open or on
// a file that the user chooses.
func (w *Window) showAgreement() {
	if !w.putAway() {
		return
	}
	if w.agreement == nil {
		w.agreement = agree.New(w.win)
		w.agreement.OnLeave = w.leaveAgreement
	}
	w.stand(w.agreement.Object())
	w.agreement.Show(w.observedHere())
}

// observedHere is what was observed in the casebook that is open.
func (w *Window) observedHere() agree.Source {
	if w.book == nil {
		return agree.Source{}
	}
	if w.reader == nil {
		reader, err := observed.In(w.book, w.settings)
		if err != nil {
			w.cannotOpen(plain(err))
			return agree.Source{}
		}
		w.reader = reader
	}
	reader := w.reader
	return agree.Source{
		Name: lang.L("the casebook {{.Name}}", map[string]any{"Name": filepath.Base(w.book.Folder())}),
		Load: func(ctx context.Context, progress func(done, all int)) (observed.Found, error) {
			return reader.Read(ctx, 0, progress)
		},
	}
}

func (w *Window) leaveAgreement() {
	w.agreement.Leave()
	if w.book != nil {
		w.showCases()
		return
	}
	w.toStart()
}

// showRounds shows the page on which rounds begin and go on.
func (w *Window) showRounds() {
	if !w.putAway() {
		return
	}
	if w.rounds == nil {
		w.rounds = round.New(w.win)
		w.rounds.OnLeave = w.toStart
		w.rounds.OnRepeatability = w.useOwnClick
	}
	w.rounds.UseCasebook(w.photographsToLearnOn())
	w.stand(w.rounds.Object())
	w.rounds.Show(filepath.Join(w.home, "rounds"), w.learner(), w.settings)
}

// Keys of the preferences under which the observer's own scatter is kept, as it
// came out of rounds.
const (
	ownClickKey  = "own_click_sd_px"
	ownLongerKey = "own_click_longer_px"
	ownClicksKey = "own_click_clicks"
	ownRoundsKey = "own_click_rounds"
)

// useOwnClick takes the scatter of the observer's own clicks for readings from now
// on, instead of the default.
func (w *Window) useOwnClick(c rounds.Click) {
	p := w.app.Preferences()
	p.SetFloat(ownClickKey, float64(c.SD))
	p.SetFloat(ownLongerKey, float64(c.Longer))
	p.SetInt(ownClicksKey, c.Clicks)
	p.SetInt(ownRoundsKey, c.Rounds)
}

// forgetOwnClick goes back to what the preferences say.
func (w *Window) forgetOwnClick() { w.app.Preferences().RemoveValue(ownClickKey) }

// ownClick is the scatter that came out of rounds, false where it is not used.
func (w *Window) ownClick() (rounds.Click, bool) {
	p := w.app.Preferences()
	c := rounds.Click{SD: plane.Pixel(p.Float(ownClickKey)), Longer: plane.Pixel(p.Float(ownLongerKey)), Clicks: p.Int(ownClicksKey), Rounds: p.Int(ownRoundsKey)}
	return c, c.SD > 0 && c.Longer > 0
}

// clickSDOn is how far the observer is taken to miss a point on a photograph of
// that size.
func (w *Window) clickSDOn(size image.Point) plane.Pixel {
	if own, known := w.ownClick(); known {
		return plane.Pixel(bounded(float64(own.On(size)), leastClick, mostClick))
	}
	return w.clickSD()
}

// whoseClick is what a reading says of the click deviation, empty where it is not
// the observer's own.
func (w *Window) whoseClick() string {
	own, known := w.ownClick()
	if !known || w.work == nil || w.work.State().ClickSD != w.clickSDOn(w.work.Photograph.Size()) {
		return ""
	}
	return own.Sentence(w.work.Photograph.Size())
}
