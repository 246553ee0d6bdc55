package plan

import (
	"fyne.io/fyne/v2/lang"

	"ogive/geometry/plane"
	"ogive/geometry/zigzag"
	"ogive/imaging/planfile"
)

// turn works on another face.
func (r *Room) turn(f face) {
	r.drop()
	r.face, r.selected = f, ""
	r.refresh()
	r.keyboard.take()
}

// count draws the zigzags with so many flaps more.
func (r *Room) count(by int) {
	n, ok := r.number()
	if !ok {
		return
	}
	n.flaps = min(max(n.flaps+by, 1), zigzag.MostFlaps)
	r.alter(lang.L("{{.Number}} flaps", map[string]any{"Number": n.flaps}), func(w *planfile.Web, a *planfile.Alternative) {
		r.begunJoin(w, a)
		r.drawZigzag(w, a, n)
	})
	r.keyboard.take()
}

// stretch draws the zigzags with another reach, as part of one drag.
func (r *Room) stretch(reach plane.Millimetre) {
	n, ok := r.number()
	if !ok {
		return
	}
	const id = "reach"
	if r.drag == nil || r.drag.id != id {
		r.drop()
		g := grip{gesture: lang.L("change the reach")}
		r.drag = &drag{before: cloned(r.file), id: id, grip: g}
	}
	n.reach = reach
	g := r.drag.grip
	g.move = func(w *planfile.Web, a *planfile.Alternative, _ plane.PixelPoint) {
		r.begunJoin(w, a)
		r.drawZigzag(w, a, n)
	}
	r.moved(r.drag.before, g, plane.PixelPoint{})
	r.reckonHeld()
	r.column.showLive()
	r.draw()
}

// drawEvenly draws the zigzags as they are begun, or evenly again.
func (r *Room) drawEvenly() {
	n, drawn := r.number()
	h := r.model.Here
	r.alter(lang.L("draw the zigzags evenly"), func(w *planfile.Web, a *planfile.Alternative) {
		r.begunJoin(w, a)
		switch {
		case w.Join == nil:
		case drawn:
			r.drawZigzag(w, a, n)
		default:
			a.Zigzag = h.BeginZigzag(w.Web, h.Beyond(*w.Join, a.Flap))
		}
	})
	r.keyboard.take()
}

// begunJoin marks the join where it is not marked: from the planned arch, else
// along the zigzag there is.
func (r *Room) begunJoin(w *planfile.Web, a *planfile.Alternative) {
	h := r.model.Here
	switch {
	case w.Join != nil:
	case a.Arch != nil:
		w.Join = h.BeginJoin(w.Web, a.Arch.On(h.Ground.Fit.Best))
	case a.Zigzag != nil && len(a.Zigzag.Dorsal) > 1:
		w.Join = &[2]plane.PixelPoint{a.Zigzag.Dorsal[0], a.Zigzag.Dorsal[len(a.Zigzag.Dorsal)-1]}
	case a.Zigzag != nil && len(a.Zigzag.Palmar) > 1:
		w.Join = &[2]plane.PixelPoint{a.Zigzag.Palmar[0], a.Zigzag.Palmar[len(a.Zigzag.Palmar)-1]}
	}
}

func (r *Room) removeZigzag() {
	r.alter(lang.L("take the zigzags away"), func(_ *planfile.Web, a *planfile.Alternative) { a.Zigzag = nil })
	r.keyboard.take()
}
