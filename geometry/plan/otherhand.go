package plan

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"

	"ogive/geometry/arch"
	"ogive/geometry/drawn"
	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/geometry/registration"
	"ogive/geometry/scale"
)

// Fellow is the same web on another photograph: of the other hand, or of this
// hand at another sitting.
type Fellow struct {
	Ground Ground
	Web    reading.Web
}

// FromOtherHand proposes the arch of the other hand, laid over this one by a
// mirrored similarity on MCP and PIP of the two digits (package registration).
// Joined digits lie closer together than free ones, which a similarity can't
// follow; so the arch is then moved along the web's axis to the index it has on
// the other hand, and made as much larger as the phalanges are here.
// It fails if a joint is missing on either photograph, the views differ or no
// arch was read there, and says which.
func FromOtherHand(g Ground, w hand.Web, other Fellow) (Proposal, error) {
	if g.Marks.View != other.Ground.Marks.View {
		return Proposal{}, fmt.Errorf("view: the other hand is shown in the %v view, this one in the %v view; give a photograph of the other hand in the same view", other.Ground.Marks.View, g.Marks.View)
	}
	a, ok := ArchOf(other.Web, other.Ground.Fit.Best)
	if !ok || other.Web.Web != w {
		return Proposal{}, fmt.Errorf("webs: no arch of the %v was read on the other hand; trace its border there", w)
	}
	o := overlay{here: g.jointsOf(w), there: other.Ground.jointsOf(w), g: g, other: other, mirrored: g.Marks.Side != other.Ground.Marks.Side}
	if !o.here.all || !o.there.all {
		return Proposal{}, errors.New("joints: MCP and PIP of both digits must be marked on both hands to lay one over the other; mark them")
	}
	s, err := o.register(o.here, o.there, g.Fit.Best, other.Ground.Fit.Best)
	if err != nil {
		return Proposal{}, err
	}
	return o.proposal(w, a, s), nil
}

// overlay lays the fellow's photograph over this one.
type overlay struct {
	here, there joints
	g           Ground
	other       Fellow
	mirrored    bool
}

func (o overlay) register(here, there joints, onHere, onThere scale.Map) (registration.Similarity, error) {
	h, okH := here.frame(onHere)
	t, okT := there.frame(onThere)
	if !okH || !okT {
		return registration.Similarity{}, errors.New("joints: MCP and PIP of a digit lie on one another; mark them apart")
	}
	fit := registration.Fit
	if o.mirrored {
		fit = registration.FitMirrored
	}
	return fit(t.Joints(), h.Joints())
}

func (o overlay) proposal(w hand.Web, theirs arch.Arch, s registration.Similarity) Proposal {
	frame, _ := o.here.frame(o.g.Fit.Best)
	size := o.size(o.here, o.there, o.g.Fit.Best, o.other.Ground.Fit.Best)
	a := Sized(Moved(theirs, s), size/s.Scale)
	p := Proposal{Arch: a, Origin: OtherHand}
	p.Arch.Crown = o.crown(s, o.here, o.there, o.g.Fit.Best, o.other.Ground.Fit.Best)
	p.Index.Value, p.Span.Value = frame.Index(p.Arch.Crown), a.Span()
	o.doubt(&p, theirs)
	from := "the other hand"
	if !o.mirrored {
		from = "another photograph of this hand"
	}
	p.Reasons = append(p.Reasons,
		fmt.Sprintf("Taken from the %v of %s, laid over this one by MCP and PIP of its two digits; these agree to %.1f mm rms. The index is the one it has there.", w, from, float64(s.RMS)))
	if math.Abs(size-1) > notable {
		p.Reasons = append(p.Reasons, fmt.Sprintf("The arch was made %.0f per cent of its size, as the proximal phalanges are here.", 100*size))
	}
	if s.RMS > poorFit*frame.Phalanx() {
		p.Warnings = append(p.Warnings, "The two hands do not lie well over each other: the digits differ in length or direction, or a joint is misplaced; look at the joints again.")
	}
	p.Warnings = append(p.Warnings, o.contrary(s)...)
	return p
}

const (
	// notable is a difference in size worth a sentence: more than the scales of
	// two photographs usually leave.
	notable = 0.03
	// poorFit is the residual, in parts of the phalanx, from which the overlay is
	// doubted (this project's own).
	poorFit = 0.12
	// tracing is what the tracing of the other hand's border adds to a crown's
	// U95, in pixels there: twice the 0.25 px of package reading along the axis,
	// and as much for the place on it.
	tracing = 1
)

// contrary warns where the landmarks agree far better the other way round.
func (o overlay) contrary(s registration.Similarity) []string {
	o.mirrored = !o.mirrored
	c, err := o.register(o.here, o.there, o.g.Fit.Best, o.other.Ground.Fit.Best)
	if err != nil || s.RMS < 5 || c.RMS > s.RMS/3 {
		return nil
	}
	return []string{"The landmarks agree far better the other way round: check which hand is named on each photograph, and in which view."}
}

// doubt fills the uncertainties: the overlay is repeated with the joints of both
// photographs as the observers may have missed them, on maps as likely as the
// best ones.
func (o overlay) doubt(p *Proposal, theirs arch.Arch) {
	rng := rand.New(rand.NewPCG(0x07e4, overlays))
	frame, _ := o.here.frame(o.g.Fit.Best)
	var crowns, indices, spans []float64
	for i := range overlays {
		// Out of step, so that the tilts of the two photographs are independent.
		onHere, onThere := likely(o.g.Fit, i), likely(o.other.Ground.Fit, (i*overlayStep)%overlays)
		here, there := o.here.missed(o.g.Marks.ClickSD, rng), o.there.missed(o.other.Ground.Marks.ClickSD, rng)
		s, err := o.register(here, there, onHere, onThere)
		if err != nil {
			continue
		}
		crown := o.g.Fit.Best.Position(onHere.Pixel(o.crown(s, here, there, onHere, onThere)))
		crowns = append(crowns, float64(crown.Distance(p.Arch.Crown)))
		indices = append(indices, math.Abs(float64(frame.Index(crown)-p.Index.Value)))
		spans = append(spans, math.Abs(float64(theirs.Span())*o.size(here, there, onHere, onThere)-float64(p.Span.Value)))
	}
	traced := tracing * float64(o.other.Ground.Fit.Best.PerPixel(o.other.Web.Crown)) * o.size(o.here, o.there, o.g.Fit.Best, o.other.Ground.Fit.Best)
	p.CrownU95 = plane.Millimetre(math.Hypot(drawn.Upper95(crowns), traced))
	p.Index.U95 = plane.Ratio(math.Hypot(drawn.Upper95(indices), traced/float64(frame.Phalanx())))
	read := 0.0
	if o.other.Web.Span != nil && theirs.Shape != arch.V {
		read = float64(o.other.Web.Span.U95)
	}
	p.Span.U95 = plane.Millimetre(math.Hypot(drawn.Upper95(spans), read))
}

// overlays is how often the overlay is repeated; overlayStep has no divisor in
// common with it.
const overlays, overlayStep = 300, 67

func likely(fit scale.Fit, i int) scale.Map {
	if len(fit.Likely) == 0 {
		return fit.Best
	}
	return fit.Likely[i*len(fit.Likely)/overlays%len(fit.Likely)]
}

// crown is where the other hand's crown comes to lie, moved to its index there.
func (o overlay) crown(s registration.Similarity, here, there joints, onHere, onThere scale.Map) plane.Position {
	h, _ := here.frame(onHere)
	t, _ := there.frame(onThere)
	theirs := onThere.Position(o.other.Web.Crown)
	return h.Shifted(s.Position(theirs), t.Index(theirs))
}

// size is how much larger the digits are here: the ratio of the phalanges from
// MCP to PIP. The scale of the overlay would not do for it, as joined digits lie
// closer together than free ones.
func (o overlay) size(here, there joints, onHere, onThere scale.Map) float64 {
	h, _ := here.frame(onHere)
	t, _ := there.frame(onThere)
	return float64(h.Phalanx() / t.Phalanx())
}
