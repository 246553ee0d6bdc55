// Package skin samples the colour of skin on a photograph, balanced on a white
// or grey patch beside the hand.
//
//	on := skin.On(photograph, "right-dorsal.jpg")
//	err := on.BalanceOn(skin.Neutral{Spot: card, Reflectance: skin.GreyCard})
//	back, err := on.Sample(skincolour.Back, skin.Spot{Centre: p, Radius: 40})
//	back.Colour, back.ITA()     // a skincolour.Sample
//	back.Notes                  // what the reader should know of it
//
// Sample where the hand lies level and does not shine, best on a photograph of
// the back and one of the palm: in a web view slopes make part of the lightness.
//
// Without a neutral patch the samples say so, and the differences between
// photographs mean little. A patch that is clipped, too dark or too small is
// refused, and so is a neutral patch that is coloured more than a room's light
// explains.
package skin

import (
	"errors"
	"fmt"
	"math"

	"ogive/geometry/plane"
	"ogive/geometry/skincolour"
	"ogive/imaging/photo"
)

// Reflectances of neutral patches: an 18 per cent grey card, and white paper or
// a white card (common practice, no source).
const (
	GreyCard  plane.Ratio = 0.18
	WhiteCard plane.Ratio = 0.90
)

// What a neutral patch may be wrong by, as relative standard uncertainties
// (this project's own): its reflectance, and its neutrality in each channel.
const (
	cardLevel   = 0.03
	cardNeutral = 0.01
)

// Neutral is a white or grey patch.
type Neutral struct {
	Spot
	// Reflectance is GreyCard, WhiteCard, or what the card's maker states.
	Reflectance plane.Ratio
}

// Sampler takes samples on one photograph.
type Sampler struct {
	photograph *photo.Photograph
	gain       light
	balance    skincolour.Balance
}

// On is a sampler that is not balanced yet. The name tells photographs apart.
func On(p *photo.Photograph, name string) *Sampler {
	return &Sampler{photograph: p, gain: light{1, 1, 1}, balance: skincolour.Unbalanced(name)}
}

// BalanceOn brings every later sample to neutral light by a patch. On an error
// the balance stays as it was.
func (s *Sampler) BalanceOn(n Neutral) error {
	if !(n.Reflectance > 0 && n.Reflectance <= 1) {
		return fmt.Errorf("the neutral patch's reflectance is %.3g; give more than 0 and at most 1, 0.18 for a grey card", float64(n.Reflectance))
	}
	read, err := n.read(s.photograph, "the neutral patch")
	if err != nil {
		return err
	}
	if m := read.median; !(skincolour.Light{R: m[0], G: m[1], B: m[2]}).OfARoom() {
		return errors.New(NotGrey)
	}
	for i, v := range read.median {
		s.gain[i] = float64(n.Reflectance) / v
	}
	level, channels := read.unsteadiness()
	s.balance = skincolour.Balance{
		Photograph: s.balance.Photograph, Neutral: true,
		Level: math.Hypot(cardLevel, level), Channels: math.Hypot(cardNeutral, channels),
	}
	return nil
}

// Sample is a sampled colour and what the reader should know of it.
type Sample struct {
	skincolour.Sample
	// Doubt says that the colour can be no skin's, and is empty where it can.
	Doubt string
	// Pixels is how many were looked at, Clipped how many of them were as bright
	// as the camera could write.
	Pixels, Clipped int
	Notes           []string
}

// NotGrey is why a coloured patch is refused as a neutral one.
const NotGrey = "the neutral patch is neither white nor grey: no light of a room makes it so strongly coloured, it may be the drape; put it on the grey card, white paper or the white of a ruler"

// notSkin is the note on a sample that can be no skin's.
const notSkin = "The patch of the %v has a colour that skin can't have: it may lie on the drape, or the white or grey of its photograph on something coloured. Move it, or the white or grey; nothing is concluded from it."

// uneven is the spread of lightness from which a patch is said to be uneven.
const uneven = 4.0

// NoNeutral is the note on every sample of a photograph without a neutral patch.
const NoNeutral = "No white or grey patch balances this photograph: the colour of the light is still in it, and a difference to another photograph means little."

// Sample is the colour of the skin in a spot.
func (s *Sampler) Sample(place skincolour.Place, at Spot) (Sample, error) {
	read, err := at.read(s.photograph, "the patch of the "+place.String())
	if err != nil {
		return Sample{}, err
	}
	out := Sample{Pixels: read.pixels, Clipped: read.clipped}
	out.Place, out.Balance = place, s.balance
	out.Colour = s.colour(read.median)
	out.Spread = s.spread(read.parts)
	if !out.Colour.CanBeSkin() {
		out.Doubt = fmt.Sprintf(notSkin, place)
		out.Notes = append(out.Notes, out.Doubt)
	}
	if !s.balance.Neutral {
		out.Notes = append(out.Notes, NoNeutral)
	}
	if read.clipped > 0 {
		out.Notes = append(out.Notes, fmt.Sprintf("%d of %d pixels of the patch of the %v are clipped; they hardly move the median.", read.clipped, read.pixels, place))
	}
	if out.Spread.L > uneven {
		out.Notes = append(out.Notes, fmt.Sprintf("The patch of the %v is uneven: a shadow, a nail or the drape may lie in it.", place))
	}
	return out, nil
}

func (s *Sampler) colour(l light) skincolour.Lab {
	return skincolour.Light{R: l[0] * s.gain[0], G: l[1] * s.gain[1], B: l[2] * s.gain[2]}.Lab()
}
