package phantom

import (
	"fmt"
	"math"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/plane"
)

// Case is everything that makes one artificial photograph. A person can write
// one by hand: every zero field takes the value its comment names, and Webs
// that are not given are normal ones.
type Case struct {
	// Seed chooses everything that has no field: wrinkles, veins, folds, grain.
	Seed uint64
	Side hand.Side // zero: right
	View hand.View // zero: dorsal

	// Size is the length MCP to PIP of the middle finger: about 14 mm in an
	// infant, 45 mm in a grown man. Zero: 40 mm.
	Size plane.Millimetre
	// Build scales the thickness of the fingers: 1 is slender, 1.15 chubby.
	// Zero: 1.
	Build plane.Ratio
	Skin  SkinTone // zero: Fair

	// Webs holds the second to fourth web; for the web view the one web that is
	// looked into (none given: the third).
	Webs map[hand.Web]WebShape
	// JunctionSlope is the slope of the junction between glabrous and pigmented
	// skin against the digit's long axis, for the web view. Zero: 45 degrees.
	JunctionSlope plane.Angle

	Drape     Drape     // zero: TheatreGreen
	Light     Light     // zero: a soft lamp from the upper left
	Reference Reference // zero: WhiteRuler
	// GreyPatch is the reflectance of a neutral patch that lies beside the hand:
	// 0.18 for a grey card, 0.9 for a white one. Zero: no patch.
	GreyPatch plane.Ratio
	// Cast colours the whole picture. Zero: none.
	Cast Cast

	// Turn rotates the hand in the picture, clockwise.
	Turn plane.Angle
	// Tilt is the angle between the camera's axis and the normal of the plane of
	// the web; TiltDirection says which way the plane falls back, from the
	// picture's x axis towards its y axis.
	Tilt, TiltDirection plane.Angle
	// Distance is from the camera to the middle of the plane. Zero: such that
	// the hand and the reference fill the frame.
	Distance plane.Millimetre
	// FocalPx is the focal length in pixels. Zero: 1.6 times the longer side.
	FocalPx plane.Pixel
	// Width and Height are the size of the picture in pixels. Zero: 2000 x 1500.
	Width, Height int
	// BlurSD is the standard deviation of the lens blur. Zero: 0.8 px.
	BlurSD plane.Pixel
	// NoiseSD is the standard deviation of the sensor's noise in mid-grey, in
	// steps of 255. Zero: none.
	NoiseSD float64
	// JPEGQuality is 1 to 100. Zero: 92.
	JPEGQuality int
	// Plain leaves out all shading, texture and shadow: flat colours only.
	Plain bool

	// lookedInto is the web of a web view.
	lookedInto hand.Web
}

// WebShape is the shape and the place of one web.
type WebShape struct {
	Shape arch.Shape // zero: gothic
	// Index is the web index in this view: between the MCP and PIP joints in the
	// dorsal view, between the basal and the PIP crease in the palmar view.
	// Zero means just there: at the MCP joints.
	Index plane.Ratio
	// Span is the distance between the springings; a V has none.
	Span plane.Millimetre
	// Flare is the angle of each border to the arch's axis. Zero: as follows
	// from the span, the index and a natural distance between the knuckles.
	Flare plane.Angle
	// Turn is half the crown angle of a gothic web. Zero: 60 degrees.
	Turn plane.Angle
	// Flat is the part of the span that the flat of a U takes. Zero: 0.4.
	Flat plane.Ratio
}

// Light is the lamp: one soft source and the light of the room.
type Light struct {
	// Azimuth is where the lamp stands, from the picture's x axis towards its y
	// axis; zero Elevation stands for a lamp at the upper left, 50 degrees high.
	Azimuth, Elevation plane.Angle
	// Shadow is how dark the shadow beside the hand is, 0 to 1.
	Shadow float64
	// Softness widens the penumbra; 1 is a theatre lamp. Zero: 1.
	Softness float64
}

// Reference is the object of known size in the picture.
type Reference int

// The references. Rulers have millimetre ticks and figures each 10 mm; a card
// has the size of ISO/IEC 7810 ID-1.
const (
	WhiteRuler Reference = iota + 1
	SteelRuler
	PaperRuler
	IDCard
)

// CardWidth and CardHeight are the size of an ID-1 card, CardCorner the radius
// of its corners (ISO/IEC 7810).
const (
	CardWidth  plane.Millimetre = 85.60
	CardHeight plane.Millimetre = 53.98
	CardCorner plane.Millimetre = 3.18
)

// filled is c with every zero field given its value.
func (c Case) filled() Case {
	orInt(&c.Side, hand.Right)
	orInt(&c.View, hand.Dorsal)
	orFloat(&c.Size, 40)
	orFloat(&c.Build, 1)
	orInt(&c.Skin, Fair)
	orFloat(&c.JunctionSlope, plane.Degrees(45))
	orInt(&c.Drape, TheatreGreen)
	orInt(&c.Reference, WhiteRuler)
	if c.Light.Elevation == 0 {
		c.Light.Azimuth, c.Light.Elevation = plane.Degrees(-130), plane.Degrees(50)
	}
	orFloat(&c.Light.Softness, 1)
	orInt(&c.Width, 2000)
	orInt(&c.Height, 1500)
	orFloat(&c.FocalPx, plane.Pixel(1.6*float64(max(c.Width, c.Height))))
	orFloat(&c.BlurSD, 0.8)
	orInt(&c.JPEGQuality, 92)
	c.lookedInto = hand.ThirdWeb
	for _, w := range hand.Webs {
		if _, given := c.Webs[w]; given {
			c.lookedInto = w
			break
		}
	}
	c.Webs = c.filledWebs()
	return c
}

func (c Case) filledWebs() map[hand.Web]WebShape {
	webs := map[hand.Web]WebShape{}
	for _, w := range measured {
		s, given := c.Webs[w]
		if !given {
			s = normalWeb(w, c.Size, c.View)
		}
		orInt(&s.Shape, arch.Gothic)
		switch s.Shape {
		case arch.V:
			s.Span = 0
			orFloat(&s.Flare, plane.Degrees(7))
		case arch.Gothic:
			orFloat(&s.Turn, plane.Degrees(60))
		case arch.U:
			orFloat(&s.Flat, 0.4)
		}
		webs[w] = s
	}
	return webs
}

// measured are the webs that follow the family of arches.
var measured = []hand.Web{hand.SecondWeb, hand.ThirdWeb, hand.FourthWeb}

// normalWeb follows what surgeons describe: second and fourth U, third more
// pointed, narrower and more distal (common practice, no source for the spans).
func normalWeb(w hand.Web, size plane.Millimetre, v hand.View) WebShape {
	s := WebShape{Shape: arch.U, Index: 0.5, Span: 0.25 * size, Flat: 0.35}
	if w == hand.ThirdWeb {
		s = WebShape{Shape: arch.Gothic, Index: 0.54, Span: 0.21 * size, Turn: plane.Degrees(62)}
	}
	if v == hand.Palmar {
		s.Index = (s.Index - basalCrease) / (1 - basalCrease)
	}
	return s
}

// check refuses what no hand can be.
func (c Case) check() error {
	switch {
	case c.Side != hand.Left && c.Side != hand.Right:
		return fmt.Errorf("phantom: side %d is neither left nor right; use hand.Left or hand.Right", int(c.Side))
	case c.View < hand.Dorsal || c.View > hand.WebView:
		return fmt.Errorf("phantom: there is no view %d; use hand.Dorsal, hand.Palmar or hand.WebView", int(c.View))
	case !(c.Size >= 8 && c.Size <= 70):
		return fmt.Errorf("phantom: size %.3g mm is no finger; give 8 to 70 mm from MCP to PIP", float64(c.Size))
	case !(c.Build >= 0.7 && c.Build <= 1.4):
		return fmt.Errorf("phantom: build %.3g is no finger; give 0.7 to 1.4", float64(c.Build))
	case !c.Skin.valid():
		return fmt.Errorf("phantom: there is no skin tone %d; give %d to %d", int(c.Skin), int(VeryFair), int(VeryDark))
	case !c.Drape.valid():
		return fmt.Errorf("phantom: there is no drape %d; give %d to %d", int(c.Drape), int(TheatreGreen), int(Checked))
	case c.Reference < WhiteRuler || c.Reference > IDCard:
		return fmt.Errorf("phantom: there is no reference %d; give %d to %d", int(c.Reference), int(WhiteRuler), int(IDCard))
	case c.Width < 64 || c.Height < 64 || c.Width > 12000 || c.Height > 12000:
		return fmt.Errorf("phantom: a picture of %d x %d px can't be made; give 64 to 12000 px each way", c.Width, c.Height)
	case !(math.Abs(c.Tilt.Degrees()) <= 45):
		return fmt.Errorf("phantom: a tilt of %.3g degrees hides the hand; give at most 45", c.Tilt.Degrees())
	case !(c.BlurSD >= 0 && c.BlurSD <= 20) || !(c.NoiseSD >= 0 && c.NoiseSD <= 50):
		return fmt.Errorf("phantom: blur %.3g px, noise %.3g; give at most 20 px and 50 steps", float64(c.BlurSD), c.NoiseSD)
	case c.JPEGQuality < 1 || c.JPEGQuality > 100:
		return fmt.Errorf("phantom: JPEG quality %d; give 1 to 100", c.JPEGQuality)
	case !(c.FocalPx > 0) || !(c.Distance >= 0):
		return fmt.Errorf("phantom: focal length %.3g px and distance %.3g mm must be positive", float64(c.FocalPx), float64(c.Distance))
	case !(c.JunctionSlope > 0 && c.JunctionSlope <= plane.RightAngle):
		return fmt.Errorf("phantom: a junction slope of %.3g degrees; give 0 to 90", c.JunctionSlope.Degrees())
	}
	if err := c.checkNeutral(); err != nil {
		return err
	}
	if c.View == hand.WebView {
		return nil
	}
	for _, w := range measured {
		if err := c.Webs[w].check(c.Size); err != nil {
			return fmt.Errorf("phantom: %v: %w", w, err)
		}
	}
	return nil
}

func (s WebShape) check(size plane.Millimetre) error {
	switch {
	case s.Shape < arch.V || s.Shape > arch.U:
		return fmt.Errorf("there is no shape %d; use arch.V, Round, Gothic or U", int(s.Shape))
	case !(s.Index >= -0.5 && s.Index <= 1):
		return fmt.Errorf("index %.3g lies outside the proximal phalanx; give -0.5 to 1", float64(s.Index))
	case s.Shape != arch.V && !(s.Span > 0 && s.Span <= size):
		return fmt.Errorf("span %.3g mm does not fit a finger of %.3g mm; give more than 0 and at most that", float64(s.Span), float64(size))
	case !(s.Flare >= 0 && s.Flare <= plane.Degrees(30)):
		return fmt.Errorf("flare %.3g degrees; give 0 to 30", s.Flare.Degrees())
	case s.Shape == arch.Gothic && !(s.Turn > s.Flare && s.Turn > plane.Degrees(25) && s.Turn < plane.RightAngle):
		return fmt.Errorf("turn %.3g degrees; give more than 25 and the flare, less than 90", s.Turn.Degrees())
	case s.Shape == arch.U && !(s.Flat > 0 && s.Flat < 1):
		return fmt.Errorf("flat %.3g of the span; give more than 0 and less than 1", float64(s.Flat))
	}
	return nil
}

func orInt[T ~int](field *T, otherwise T) {
	if *field == 0 {
		*field = otherwise
	}
}

func orFloat[T ~float64](field *T, otherwise T) {
	if *field == 0 {
		*field = otherwise
	}
}
