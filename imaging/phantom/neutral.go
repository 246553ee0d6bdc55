package phantom

import (
	"errors"
	"math"

	"ogive/geometry/plane"
	"ogive/geometry/skincolour"
)

// Cast is the part of red, green and blue that the lamp and the camera leave of
// neutral light. The zero Cast leaves all of each.
type Cast struct{ Red, Green, Blue plane.Ratio }

// greySide is the side of the neutral patch by the size of the hand.
const greySide = 0.3

// GreyTruth is where the neutral patch lies: the circle of that radius about
// Centre is well inside it.
type GreyTruth struct {
	Centre      plane.PixelPoint
	Radius      plane.Pixel
	Reflectance plane.Ratio
}

// SkinTruth is the colour of the plain skin, before blood, wrinkles and light.
type SkinTruth struct{ Back, Palm skincolour.Lab }

func skinTruth(back, palm rgb) SkinTruth {
	colour := func(c rgb) skincolour.Lab { return skincolour.Light{R: c[0], G: c[1], B: c[2]}.Lab() }
	return SkinTruth{colour(back), colour(palm)}
}

// checkNeutral refuses a patch or a cast that no photograph has.
func (c Case) checkNeutral() error {
	if !(c.GreyPatch >= 0 && c.GreyPatch <= 0.95) {
		return errors.New("phantom: the grey patch's reflectance must be 0 to 0.95; 0.18 is a grey card")
	}
	for _, part := range [...]plane.Ratio{c.Cast.Red, c.Cast.Green, c.Cast.Blue} {
		if !(part >= 0 && part <= 1.5) || part == 0 && c.Cast != (Cast{}) {
			return errors.New("phantom: a cast leaves more than 0 and at most 1.5 of each colour; give all three")
		}
	}
	return nil
}

// roomGrid is the cells across the frame in which room for the patch is sought.
const roomGrid = 64

// placeGrey finds room for the patch, as far from the hand's shadow as there is,
// and then near the middle.
func placeGrey(c Case, cam camera, shapes ...[]plane.PixelPoint) (strip, error) {
	cell := float64(c.Width) / roomGrid
	w, h := roomGrid, int(float64(c.Height)/cell)
	for _, shape := range shapes {
		for i, p := range shape {
			shape[i] = plane.Pt(p.X/plane.Pixel(cell), p.Y/plane.Pixel(cell))
		}
	}
	taken := cover(w, h, shapes...)
	side := plane.Millimetre(greySide) * c.Size
	half := float64(side) / 2 * float64(c.FocalPx/plane.Pixel(c.Distance)) / cell
	best, bestRoom := [2]int{-1, -1}, half*math.Sqrt2*1.25
	for j := range h {
		for i := range w {
			room := math.Min(clearance(taken, i, j), frameRoom(w, h, i, j)+half*(math.Sqrt2-1))
			room = math.Min(room, 4*half) - 0.01*math.Hypot(float64(i)-float64(w)/2, float64(j)-float64(h)/2)
			if room > bestRoom {
				best, bestRoom = [2]int{i, j}, room
			}
		}
	}
	if best[0] < 0 {
		return strip{}, errors.New("phantom: the hand and the reference leave no room for a grey patch; stand further off")
	}
	x, y := project(&cam.toPlane.H, (float64(best[0])+0.5)*cell, (float64(best[1])+0.5)*cell)
	corner := plane.Pt(plane.Millimetre(x)-side/2, plane.Millimetre(y)-side/2)
	return strip{corner: corner, along: plane.Vec[plane.Millimetre](1, 0), down: plane.Vec[plane.Millimetre](0, 1), length: side, wide: side}, nil
}

// clearance is the distance to the nearest cell that is taken.
func clearance(taken coverage, i, j int) float64 {
	best := math.Inf(1)
	for y := range taken.h {
		for x := range taken.w {
			if taken.part[y*taken.w+x] > 1e-6 {
				best = math.Min(best, math.Hypot(float64(x-i), float64(y-j)))
			}
		}
	}
	return best
}

func frameRoom(w, h, i, j int) float64 { return float64(min(i, j, w-1-i, h-1-j)) }

func greyTruth(s strip, cam camera, c Case) *GreyTruth {
	middle := cam.pixel(s.at(s.length/2, s.wide/2))
	edge := cam.pixel(s.at(s.length*0.85, s.wide/2))
	return &GreyTruth{Centre: middle, Radius: middle.Distance(edge), Reflectance: c.GreyPatch}
}

// layGrey paints the patch, where there is one; light is the light on the cloth.
func layGrey(pic *canvas, c Case, s *strip, cam camera, light func(x, y float64) float64) {
	if s == nil {
		return
	}
	grey := rgb{1, 1, 1}.scaled(float64(c.GreyPatch))
	pic.lay(cover(c.Width, c.Height, s.rectangle(cam, 0, s.length, 0, s.wide)), func(i, j int) rgb {
		return grey.scaled(light(float64(i)+0.5, float64(j)+0.5))
	})
}

// cast colours the light of the whole picture.
func (c *canvas) cast(by Cast) {
	if by == (Cast{}) {
		return
	}
	parts := rgb{float64(by.Red), float64(by.Green), float64(by.Blue)}
	eachRow(0, c.h, func(y int) {
		row := c.rgb[3*y*c.w : 3*(y+1)*c.w]
		for i := range row {
			row[i] *= parts[i%3]
		}
	})
}
