package plan

import (
	"fmt"

	"fyne.io/fyne/v2/lang"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/zigzag"
	"ogive/imaging/planfile"
	"ogive/imaging/planning"
	"ogive/imaging/wording"
	"ogive/ui/board"
)

// face is the face of the hand whose incision is worked on.
type face int

const (
	bothFaces face = iota // the one that is seen, the other follows
	dorsalFace
	palmarFace
)

// near is the face whose points can be dragged.
func (r *Room) near() face {
	if r.face != bothFaces {
		return r.face
	}
	a := r.now()
	seen := dorsalFace
	if r.file.View == hand.Palmar {
		seen = palmarFace
	}
	if a != nil && cutOf(*a, seen) == nil {
		return seen.other()
	}
	return seen
}

func (f face) other() face {
	if f == dorsalFace {
		return palmarFace
	}
	return dorsalFace
}

func cutOf(a planning.Alternative, f face) *planning.Cut {
	if f == palmarFace {
		return a.Palmar
	}
	return a.Dorsal
}

func pointsOf(z *planfile.Zigzag, f face) *[]plane.PixelPoint {
	if f == palmarFace {
		return &z.Palmar
	}
	return &z.Dorsal
}

// zigzagGrips are the two ends of the join and the points of the incision.
func (r *Room) zigzagGrips(a planning.Alternative) []grip {
	var out []grip
	if w := r.kept(); w.Join != nil {
		for i, at := range w.Join {
			out = append(out, r.joinEnd(i, at))
		}
	}
	near := r.near()
	cut := cutOf(a, near)
	if cut == nil {
		return out
	}
	for i, at := range cut.Pixels {
		out = append(out, r.zigzagPoint(*cut, near, i, at))
	}
	return out
}

// joinEnd is one end of the join. The zigzags are drawn anew along it, evenly.
func (r *Room) joinEnd(i int, at plane.PixelPoint) grip {
	name := []string{lang.L("join, proximal end"), lang.L("join, distal end")}[i]
	return grip{
		Handle:  board.Handle{ID: fmt.Sprintf("join %d", i), At: at, Shape: board.DiamondHandle, Label: lang.L("join")},
		name:    name,
		gesture: lang.L("move an end of the join"),
		move: func(w *planfile.Web, a *planfile.Alternative, to plane.PixelPoint) {
			w.Join[i] = to
			if n, ok := r.number(); ok {
				r.drawZigzag(w, a, n)
			}
		},
	}
}

// zigzagPoint is one point of the incision on a face: the tip of a flap, or an
// end. A tip that is too narrow is a triangle and says so.
func (r *Room) zigzagPoint(cut planning.Cut, f face, i int, at plane.PixelPoint) grip {
	g := grip{
		Handle:  board.Handle{ID: zigzagID(i), At: at, Shape: board.RoundHandle},
		name:    lang.L("end of the incision"),
		gesture: lang.L("move a point of the zigzag"),
		move: func(w *planfile.Web, a *planfile.Alternative, to plane.PixelPoint) {
			(*pointsOf(a.Zigzag, f))[i] = to
			if other := pointsOf(a.Zigzag, f.other()); r.face == bothFaces && len(*other) > 0 {
				*other = r.opposite(w, *pointsOf(a.Zigzag, f))
			}
		},
	}
	if tip := i - 1; tip >= 0 && tip < len(cut.Figures.Flaps) {
		flap := cut.Figures.Flaps[tip]
		g.Shape, g.Label = board.SquareHandle, wording.Degrees(flap.TipAngle)
		if flap.Narrow {
			g.Shape, g.Label = board.TriangleHandle, lang.L("narrow: {{.Angle}}", map[string]any{"Angle": wording.Degrees(flap.TipAngle)})
		}
		g.name = g.Label
		if !r.roomy(cut, i) {
			g.Label, g.name = "", lang.L("{{.Tip}}; limbs {{.One}} and {{.Other}}", map[string]any{
				"Tip": g.name, "One": wording.Degrees(cut.Figures.Limbs[tip].Obliquity), "Other": wording.Degrees(cut.Figures.Limbs[tip+1].Obliquity)})
		}
	}
	return g
}

// roomy reports whether the tip at i has room for its label and those of its limbs
// beside those of other tips. The selected one bears its name in any case.
func (r *Room) roomy(cut planning.Cut, i int) bool {
	const far = 60
	if i == 0 || i == len(cut.Pixels)-1 {
		return true // an end has one limb
	}
	return r.plate.apart(cut.Pixels[i-1], cut.Pixels[i+1]) > far
}

func zigzagID(i int) string { return fmt.Sprintf("zigzag %d", i) }

// opposite is the incision on the other face that meets this one.
func (r *Room) opposite(w *planfile.Web, points []plane.PixelPoint) []plane.PixelPoint {
	m := r.model.Here.Ground.Fit.Best
	ends := [2]plane.PixelPoint{points[0], points[len(points)-1]}
	if w.Join != nil {
		ends = *w.Join
	}
	z := zigzag.Zigzag{Join: zigzag.Join{From: m.Position(ends[0]), To: m.Position(ends[1])}, Points: m.Positions(points)}
	back := m.Back()
	var out []plane.PixelPoint
	for _, p := range z.Opposite().Points {
		out = append(out, back.Pixel(p))
	}
	return out
}

// numbers are those that a regular zigzag is drawn by.
type numbers struct {
	flaps int
	reach plane.Millimetre
	right bool
}

// number is those of the zigzag in hand, false where there is none.
func (r *Room) number() (numbers, bool) {
	a := r.now()
	if a == nil || (a.Dorsal == nil && a.Palmar == nil) {
		return numbers{}, false
	}
	if a.Dorsal == nil {
		z := a.Palmar.Zigzag
		return numbers{z.FlapCount(), z.Reach(), !z.BeginsRight()}, true
	}
	z := a.Dorsal.Zigzag
	return numbers{z.FlapCount(), z.Reach(), z.BeginsRight()}, true
}

// drawZigzag draws both faces anew by n, distal to the flap. A face that had no
// incision keeps none.
func (r *Room) drawZigzag(w *planfile.Web, a *planfile.Alternative, n numbers) {
	h := r.model.Here
	z := h.Zigzag(h.Beyond(*w.Join, a.Flap), n.flaps, n.reach, n.right)
	if was := a.Zigzag; was != nil {
		if len(was.Dorsal) == 0 {
			z.Dorsal = nil
		}
		if len(was.Palmar) == 0 {
			z.Palmar = nil
		}
	}
	a.Zigzag = z
}
