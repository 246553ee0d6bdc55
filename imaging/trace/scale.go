package trace

import "math"

// scale turns what a discriminant says of a colour into the share of drape in
// it, -1 for none and +1 for all. Light mixes in linear light, but differences
// of colour as files hold them do not: half drape and half skin is not half way
// between their colours.
type scale struct {
	share [scaleSteps + 1]float64 // at discriminants from -1 to +1
}

const scaleSteps = 24

func newScale(d discriminant, skin, drape moments) scale {
	var s scale
	for i := range s.share {
		s.share[i] = 2*float64(i)/scaleSteps - 1
	}
	if skin.n == 0 || drape.n == 0 {
		return s
	}
	a, b := unsplit(skin.mean()), unsplit(drape.mean())
	var says [2*scaleSteps + 1]float64
	for i := range says {
		t := float64(i) / float64(len(says)-1)
		says[i] = d.of(split(colour{a[0] + t*(b[0]-a[0]), a[1] + t*(b[1]-a[1]), a[2] + t*(b[2]-a[2])}))
	}
	low, high := says[0], says[len(says)-1]
	if high-low < 0.5 {
		return s
	}
	j := 0
	for i := range s.share {
		want := low + (high-low)*float64(i)/scaleSteps
		for j < len(says)-2 && says[j+1] < want {
			j++
		}
		t := 0.0
		if says[j+1] > says[j] {
			t = max(0, min(1, (want-says[j])/(says[j+1]-says[j])))
		}
		s.share[i] = 2*(float64(j)+t)/float64(len(says)-1) - 1
	}
	return s
}

// at is the share; beyond its ends the scale goes on evenly.
func (s *scale) at(x float64) float64 {
	y := (x + 1) / 2 * scaleSteps
	if y <= 0 || y >= scaleSteps {
		return x
	}
	i := int(y)
	return s.share[i] + (y-float64(i))*(s.share[i+1]-s.share[i])
}

// unsplit undoes split.
func unsplit(c colour) colour {
	y := math.Sqrt(max(0, c[0]))
	r, b := y+c[1], y+c[2]
	g := (y - 0.299*r - 0.114*b) / 0.587
	return colour{r * r, g * g, b * b}
}
