package phantom

import "math"

// cloth is the drape as it looks at a place on the plane (mm).
type cloth struct {
	kind  Drape
	grain noise
	size  float64 // of the hand: a smaller hand is seen from nearer
	fine  float64 // how well threads can be told apart, 0 to 1
}

var drapeColour = [...]rgb{
	TheatreGreen: lab(43, -24, 5),
	Blue:         lab(46, -6, -30),
	White:        lab(89, -0.5, 1.5),
	Grey:         lab(56, 0, -1.5),
	DarkTeal:     lab(25, -12, -9),
	Weave:        lab(66, 0, 11),
	Checked:      lab(86, 0, 3),
}

func newCloth(c Case, perPixel float64) cloth {
	return cloth{
		kind: c.Drape, grain: noise(c.Seed*31 + 5), size: float64(c.Size),
		fine: math.Max(0, math.Min(1, (0.30-perPixel)/0.2)),
	}
}

// at is the colour of the cloth in even light.
func (k cloth) at(x, y float64) rgb {
	base := drapeColour[k.kind]
	switch k.kind {
	case Blue:
		return base.scaled(k.nonwoven(x, y))
	case Weave:
		over := k.threads(x, y, 1.1, 0.16)
		u, v := math.Sin(math.Pi*x/1.1), math.Sin(math.Pi*y/1.1)
		return base.mixed(lab(38, 3, 4), 0.5+0.5*softSign(3*(u*u-v*v))*k.fine).scaled(over)
	case Checked:
		return k.checked(base, x, y).scaled(k.threads(x, y, 0.55, 0.08))
	case White:
		return base.scaled(k.threads(x, y, 0.6, 0.05))
	case Grey:
		return base.scaled(k.threads(x, y, 0.45, 0.07))
	}
	return base.scaled(k.threads(x, y, 0.5, 0.09))
}

// threads is the light and dark of a plain weave with threads of that pitch.
func (k cloth) threads(x, y, pitch, depth float64) float64 {
	a := math.Sin(2 * math.Pi * (x + 0.15*k.grain.at(x/7, y/7)) / pitch)
	b := math.Sin(2 * math.Pi * (y + 0.15*(k.grain+1).at(x/7, y/7)) / pitch)
	slub := (k.grain+2).at(x/pitch, y/9) + (k.grain+3).at(x/9, y/pitch)
	return 1 + depth*(a*b*0.7*k.fine+0.55*slub+0.35*(k.grain+4).at(x/0.3, y/0.3)*k.fine)
}

// nonwoven is a sheet of fibres bonded in rows of small dents.
func (k cloth) nonwoven(x, y float64) float64 {
	row := math.Floor(y / 1.3)
	shift := 0.0
	if int64(row)&1 == 0 {
		shift = 0.75
	}
	u := x + shift
	u -= 1.5 * math.Floor(u/1.5)
	v := y - 1.3*row
	d2 := (u-0.75)*(u-0.75) + (v-0.65)*(v-0.65)
	dent := -0.12 * math.Exp(-d2/0.06)
	return 1 + dent*k.fine + 0.05*k.grain.at(x/0.5+0.8*y, y/2.2) + 0.05*(k.grain+1).at(x/2.6, y/0.4-0.5*x)
}

func (k cloth) checked(base rgb, x, y float64) rgb {
	stripe := func(t float64) float64 {
		t -= 24 * math.Floor(t/24)
		return softSign(6*(3.2-math.Abs(t-6)))*0.5 + 0.5
	}
	colour := lab(40, 38, 18)
	if uint64(k.grain)%3 != 0 {
		colour = lab(38, 2, -36)
	}
	n := 0.45 * (stripe(x) + stripe(y))
	return base.mixed(colour, n)
}

func softSign(x float64) float64 { return x / math.Sqrt(1+x*x) }

// folds is the shading of the cloth's soft folds and of the creases left from
// its packing, per cell.
func folds(c Case, cam camera, l lamp, cell int) *field {
	n := noise(c.Seed*131 + 9)
	turn := 2 * math.Pi * unit(c.Seed, 11)
	cos, sin := math.Cos(turn), math.Sin(turn)
	packed := 0.1 * unit(c.Seed, 12)
	height := newField(c.Width, c.Height, cell)
	height.fill(func(_ int, px, py float64) float64 {
		x, y := project(&cam.toPlane.H, px, py)
		u, v := cos*x-sin*y, sin*x+cos*y
		z := 2.2*n.at(u/34, v/75) + 1.1*(n+1).at(u/19, v/30) + 0.25*(n+2).at(x/8, y/8)
		for i, t := range [2]float64{u, v} {
			t += 25 * (unit(c.Seed, uint64(13+i)) - 0.5)
			t -= 95 * math.Floor(t/95+0.5)
			z += packed * 9 * math.Exp(-math.Abs(t)/2.5)
		}
		return z
	})
	perCell := float64(cell) * float64(c.Distance) / float64(c.FocalPx)
	out := newField(c.Width, c.Height, cell)
	out.fill(func(k int, _, _ float64) float64 {
		i, j := k%out.w, k/out.w
		dx := (height.sample(i+1, j) - height.sample(i-1, j)) / (2 * perCell)
		dy := (height.sample(i, j+1) - height.sample(i, j-1)) / (2 * perCell)
		return l.diffuse(dx, dy, 1, 0.1)
	})
	out.soften(0.8)
	return out
}
