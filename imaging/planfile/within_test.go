package planfile

import (
	"image"
	"strings"
	"testing"

	"ogive/geometry/plane"
)

func TestAPlanOutsideItsPhotographIsRefusedWhereItLeavesIt(t *testing.T) {
	size := image.Pt(400, 300)
	crown := func(x, y plane.Pixel) File {
		return File{Webs: []Web{{Alternatives: []Alternative{{}, {Arch: &Arch{Crown: plane.Pt(x, y), Axis: plane.Pt[plane.Pixel](200, -20)}}}}}}
	}
	for name, c := range map[string]struct {
		plan File
		says string
	}{
		"a crown inside":           {crown(200, 100), ""},
		"a crown far outside":      {crown(99999, 99999), "webs[0].alternatives[1].arch.crown: [99999, 99999] lies outside the photograph, which is 400 x 300 pixels; move it"},
		"a crown a little outside": {crown(200, -1), "arch.crown"},
		"a flap over the edge":     {File{Webs: []Web{{Alternatives: []Alternative{{Flap: &Flap{Outline: []plane.PixelPoint{{X: -30, Y: 10}, {X: 5, Y: 10}, {X: 5, Y: 30}}}}}}}}, ""},
		"a join far away":          {File{Webs: []Web{{Join: &[2]plane.PixelPoint{{X: 10, Y: 10}, {X: 10, Y: 900}}}}}, "webs[0].join[1]"},
		"a zigzag far away":        {File{Webs: []Web{{Alternatives: []Alternative{{Zigzag: &Zigzag{Palmar: []plane.PixelPoint{{X: 700, Y: 1}, {X: 2, Y: 2}}}}}}}}, "zigzag.palmar[0]"},
		"a patch outside":          {File{Patches: []Patch{{Centre: plane.Pt[plane.Pixel](401, 5)}}}, "patches[0].at"},
		"a patch of another photo": {File{Patches: []Patch{{Centre: plane.Pt[plane.Pixel](401, 5), Photograph: "other.jpg"}}}, ""},
	} {
		err := c.plan.CheckWithin(size)
		if c.says == "" && err != nil || c.says != "" && (err == nil || !strings.Contains(err.Error(), c.says)) {
			t.Errorf("%s: %v, want %q", name, err, c.says)
		}
	}
}
