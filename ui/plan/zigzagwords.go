package plan

import (
	"fmt"
	"slices"
	"strings"

	"fyne.io/fyne/v2/lang"

	"ogive/geometry/plane"
	"ogive/geometry/zigzag"
	"ogive/imaging/planning"
	"ogive/imaging/wording"
)

// cutFigures are the narrowest tip, the limb nearest to along the finger, and the
// lengths.
func cutFigures(c planning.Cut, r *Room) []wording.Figure {
	var out []wording.Figure
	if len(c.Figures.Flaps) > 0 {
		least := c.Figures.Flaps[0].TipAngle
		for _, f := range c.Figures.Flaps {
			if f.TipAngle.Value < least.Value {
				least = f.TipAngle
			}
		}
		out = append(out, wording.Figure{Name: lang.L("Narrowest tip"), Value: wording.Degrees(least)})
	}
	if len(c.Figures.Limbs) > 0 {
		steep := c.Figures.Limbs[0].Obliquity
		for _, l := range c.Figures.Limbs {
			if l.Obliquity.Value > steep.Value {
				steep = l.Obliquity
			}
		}
		out = append(out, wording.Figure{Name: lang.L("Steepest limb to the creases"), Value: wording.Degrees(steep)})
	}
	out = append(out, wording.Figure{Name: lang.L("Length of the incision"), Value: wording.Millimetres(c.Figures.Length)})
	if w := r.planned(); w != nil && w.Join != nil {
		out = append(out, wording.Figure{Name: lang.L("Length of the join"), Value: wording.Millimetres(w.Join.Length)})
	}
	return out
}

// tipWords are every tip and every limb on a face, from proximal.
func tipWords(c planning.Cut, f face) string {
	var tips, limbs []string
	for _, flap := range c.Figures.Flaps {
		tips = append(tips, wording.Degrees(flap.TipAngle))
	}
	for _, l := range c.Figures.Limbs {
		limbs = append(limbs, wording.Degrees(l.Obliquity))
	}
	return lang.L("{{.Face}}, from proximal. Tips: {{.Tips}}. Limbs to the creases: {{.Limbs}}.", map[string]any{"Face": f.name(), "Tips": listed(tips), "Limbs": listed(limbs)})
}

// listed is several figures, those that are alike but once.
func listed(figures []string) string {
	if alike := slices.Compact(slices.Clone(figures)); len(alike) == 1 && len(figures) > 1 {
		return lang.L("all {{.Figure}}", map[string]any{"Figure": alike[0]})
	}
	return strings.Join(figures, ", ")
}

// name is the face in a word.
func (f face) name() string {
	switch f {
	case dorsalFace:
		return lang.L("Back")
	case palmarFace:
		return lang.L("Palm")
	}
	return lang.L("Both faces")
}

// cautions are what is said of narrow tips, of both faces at once if they are
// alike.
func cautions(a planning.Alternative) string {
	if a.Dorsal != nil && a.Palmar != nil && cautionOf(a.Dorsal, bothFaces) == cautionOf(a.Palmar, bothFaces) {
		return cautionOf(a.Dorsal, bothFaces)
	}
	return strings.TrimSpace(cautionOf(a.Dorsal, dorsalFace) + "\n" + cautionOf(a.Palmar, palmarFace))
}

// cautionOf is what is said of narrow tips on one face, nothing where there are
// none.
func cautionOf(c *planning.Cut, f face) string {
	if c == nil {
		return ""
	}
	var numbers []string
	var least plane.Estimate[plane.Angle]
	for i, flap := range c.Figures.Flaps {
		if !flap.Narrow {
			continue
		}
		if len(numbers) == 0 || flap.TipAngle.Value < least.Value {
			least = flap.TipAngle
		}
		numbers = append(numbers, fmt.Sprint(i+1))
	}
	if len(numbers) == 0 {
		return ""
	}
	gaps := map[string]any{"Face": f.name(), "Numbers": strings.Join(numbers, ", "), "Limit": fmt.Sprintf("%.0f°", zigzag.NarrowTip.Degrees()), "Least": wording.Degrees(least)}
	switch {
	case len(numbers) == 1:
		return lang.L("{{.Face}}: tip {{.Numbers}}, counted from proximal, is narrower than {{.Limit}}: {{.Least}}. Its blood supply is at risk (common practice, no source).", gaps)
	case len(numbers) == len(c.Figures.Flaps):
		return lang.L("{{.Face}}: all tips are narrower than {{.Limit}}, the narrowest {{.Least}}. Their blood supply is at risk (common practice, no source).", gaps)
	}
	return lang.L("{{.Face}}: tips {{.Numbers}}, counted from proximal, are narrower than {{.Limit}}, the narrowest {{.Least}}. Their blood supply is at risk (common practice, no source).", gaps)
}
