package phantom

// SkinTone is the colour of the skin, from very fair to very dark.
type SkinTone int

// The skin tones, about one for each class of the individual typology angle
// (Chardon A et al. Int J Cosmet Sci 1991;13:191-208: from memory) and two more
// at the dark end.
const (
	VeryFair SkinTone = iota + 1
	Fair
	Beige
	Olive
	Tan
	Brown
	Dark
	VeryDark
)

func (s SkinTone) valid() bool { return s >= VeryFair && s <= VeryDark }

// skinColours holds CIELAB of the back of the hand and of the palm. The palm
// differs little on fair hands and much on dark ones (common practice, no
// source).
var skinColours = [...]struct{ back, palm [3]float64 }{
	VeryFair: {[3]float64{74, 9, 13}, [3]float64{74, 13.5, 12.5}},
	Fair:     {[3]float64{69, 10.5, 16}, [3]float64{71, 14.5, 14}},
	Beige:    {[3]float64{64, 11, 18}, [3]float64{69, 14, 15.5}},
	Olive:    {[3]float64{58, 11, 20}, [3]float64{66, 13.5, 17}},
	Tan:      {[3]float64{51, 12.5, 20.5}, [3]float64{63, 13.5, 18}},
	Brown:    {[3]float64{42, 12, 17.5}, [3]float64{58, 13.5, 18}},
	Dark:     {[3]float64{33.5, 10, 13.5}, [3]float64{52, 13, 17}},
	VeryDark: {[3]float64{26, 7.5, 9}, [3]float64{47, 12.5, 15.5}},
}

func (s SkinTone) back() rgb { c := skinColours[s].back; return lab(c[0], c[1], c[2]) }
func (s SkinTone) palm() rgb { c := skinColours[s].palm; return lab(c[0], c[1], c[2]) }

// Drape is the cloth under the hand.
type Drape int

// The drapes.
const (
	TheatreGreen Drape = iota + 1
	Blue
	White
	Grey
	DarkTeal
	Weave   // a coarse cotton weave of two colours
	Checked // a kitchen towel
)

func (d Drape) valid() bool { return d >= TheatreGreen && d <= Checked }
