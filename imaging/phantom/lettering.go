package phantom

import (
	"fmt"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"ogive/geometry/plane"
)

// lettering sets text as outlines on a strip, so that it is seen in true
// perspective like everything else.
type lettering struct {
	font *sfnt.Font
	buf  sfnt.Buffer
}

// emUnits is the size at which outlines are read from the font.
const emUnits = 1000

func newLettering() (*lettering, error) {
	f, err := sfnt.Parse(goregular.TTF)
	if err != nil {
		return nil, fmt.Errorf("phantom: reading the font: %w", err)
	}
	return &lettering{font: f}, nil
}

// set is the outlines of text of that height of em (mm), centred at along, its
// base line at down, as polygons on the picture; the text reads along the strip.
func (l *lettering) set(text string, s strip, cam camera, along, down, em plane.Millimetre) ([][]plane.PixelPoint, error) {
	type placed struct {
		glyph sfnt.GlyphIndex
		x     float64
	}
	var glyphs []placed
	x := 0.0
	for _, r := range text {
		g, err := l.font.GlyphIndex(&l.buf, r)
		if err != nil {
			return nil, fmt.Errorf("phantom: the font has no %q: %w", r, err)
		}
		advance, err := l.font.GlyphAdvance(&l.buf, g, fixed.I(emUnits), font.HintingNone)
		if err != nil {
			return nil, fmt.Errorf("phantom: the font has no width for %q: %w", r, err)
		}
		glyphs = append(glyphs, placed{g, x})
		x += float64(advance) / 64
	}
	scale := em / emUnits
	var out [][]plane.PixelPoint
	for _, g := range glyphs {
		outline, err := l.font.LoadGlyph(&l.buf, g.glyph, fixed.I(emUnits), nil)
		if err != nil {
			return nil, fmt.Errorf("phantom: reading a glyph: %w", err)
		}
		put := func(p point) plane.PixelPoint {
			return cam.pixel(s.at(along+scale*(p.X+plane.Millimetre(g.x-x/2)), down+scale*p.Y))
		}
		out = append(out, contours(outline, put)...)
	}
	return out, nil
}

// contours turns the curves of a glyph into polygons.
func contours(outline sfnt.Segments, put func(point) plane.PixelPoint) [][]plane.PixelPoint {
	at := func(p fixed.Point26_6) point {
		return plane.Pt(plane.Millimetre(p.X)/64, plane.Millimetre(p.Y)/64)
	}
	var out [][]plane.PixelPoint
	var pen point
	add := func(p point) {
		out[len(out)-1] = append(out[len(out)-1], put(p))
		pen = p
	}
	for _, seg := range outline {
		switch seg.Op {
		case sfnt.SegmentOpMoveTo:
			out = append(out, nil)
			add(at(seg.Args[0]))
		case sfnt.SegmentOpLineTo:
			add(at(seg.Args[0]))
		case sfnt.SegmentOpQuadTo:
			q, r := at(seg.Args[0]), at(seg.Args[1])
			for p, i := pen, 1; i <= 8; i++ {
				t := float64(i) / 8
				add(p.Towards(q, t).Towards(q.Towards(r, t), t))
			}
		case sfnt.SegmentOpCubeTo:
			for _, p := range bezier(pen, at(seg.Args[0]), at(seg.Args[1]), at(seg.Args[2]), emUnits/20) {
				add(p)
			}
		}
	}
	return out
}
