package skincolour

import "ogive/geometry/plane"

// Close is the difference of back and palm in CIEDE2000 up to which they are
// called close in colour (this project's own; nothing is published).
const Close = 5.0

// Flap is a flap that the colours may speak for.
type Flap int

// The flaps; NoFlap where the colours speak for none.
const (
	NoFlap Flap = iota
	DorsalFlap
	PalmarFlap
)

// String is the flap in words.
func (f Flap) String() string {
	switch f {
	case DorsalFlap:
		return "dorsal flap"
	case PalmarFlap:
		return "palmar flap"
	}
	return "neither flap"
}

// Reason is what the colours of back and palm speak for (common practice, no
// source). It is one reason among others; the choice stays with the surgeon.
type Reason struct {
	Favours Flap
	// Certain is true only if no 95 per cent interval reaches over a limit.
	Certain    bool
	Difference plane.Estimate[float64] // CIEDE2000
	Back, Palm Tone
	// Neutral is false where a photograph had no neutral patch.
	Neutral bool
	// Possible is false where one of the two colours can be no skin's: then nothing
	// speaks for a flap.
	Possible bool
	// Because says it in a sentence.
	Because string
}

// Reasons in words.
const (
	becauseClose = "Back and palm are fair and close in colour: a palmar flap would hardly show, and it spares the back of the hand a scar."
	becauseClear = "Back and palm differ clearly in colour: palmar skin would show on the back of the hand, and a dorsal flap would not."
	becauseNone  = "The colours speak for no flap: one of the two patches has a colour that skin can't have, so the patch or its white or grey lies wrong."
	becauseBoth  = "Back and palm are close in colour, but not fair: the colours speak for neither flap."
)

// Reasoning weighs the colours of back and palm: fair and close in colour
// favours a palmar flap, a clear difference a dorsal one.
func Reasoning(back, palm Sample) Reason {
	c := Compare(back, palm)
	ita, itaPalm := back.ITA(), palm.ITA()
	r := Reason{Difference: c.CIEDE2000, Back: ToneOf(ita.Value), Palm: ToneOf(itaPalm.Value), Neutral: c.Neutral()}
	if r.Possible = back.Colour.CanBeSkin() && palm.Colour.CanBeSkin(); !r.Possible {
		r.Because = becauseNone
		return r
	}
	if c.CIEDE2000.Value > Close {
		r.Favours, r.Because, r.Certain = DorsalFlap, becauseClear, c.CIEDE2000.Low() > Close
		return r
	}
	near := c.CIEDE2000.High() <= Close
	if r.Back.Fair() && r.Palm.Fair() {
		r.Favours, r.Because = PalmarFlap, becauseClose
		r.Certain = near && ToneOf(ita.Low()).Fair() && ToneOf(itaPalm.Low()).Fair()
		return r
	}
	r.Because = becauseBoth
	r.Certain = near && (!ToneOf(ita.High()).Fair() || !ToneOf(itaPalm.High()).Fair())
	return r
}
