package sheet

import "image/color"

// Kind is what a line is to be.
type Kind int

// The kinds of lines.
const (
	ArchLine Kind = iota + 1
	FlapOutline
	DorsalZigzag
	PalmarZigzag
	GraftOutline
	BaseLine // of a flap, where it stays on the hand
	JoinLine
)

// kinds lists all kinds in the order in which they are explained.
var kinds = [...]Kind{ArchLine, FlapOutline, DorsalZigzag, PalmarZigzag, GraftOutline, BaseLine, JoinLine}

// style is how a line is printed: what is cut is solid and told apart by its
// weight before its colour, what is not cut is dashed.
type style struct {
	name, id string
	ink      color.RGBA
	width    float64   // mm
	dash     []float64 // mm, none for a solid line
	cut      bool      // a cutter follows it
}

var styles = [...]style{
	ArchLine:     {"planned arch", "arch", color.RGBA{0x8f, 0x4a, 0x00, 0xff}, 0.55, nil, true},
	FlapOutline:  {"flap", "flap", color.RGBA{0x0c, 0x4a, 0x86, 0xff}, 0.4, nil, true},
	DorsalZigzag: {"zigzag, back of the hand", "zigzag-dorsal", color.RGBA{0x15, 0x15, 0x15, 0xff}, 0.3, nil, true},
	PalmarZigzag: {"zigzag, palm", "zigzag-palmar", color.RGBA{0x7a, 0x1f, 0x5c, 0xff}, 0.75, nil, true},
	GraftOutline: {"graft", "graft", color.RGBA{0x0b, 0x5c, 0x3b, 0xff}, 0.25, nil, true},
	BaseLine:     {"base of the flap, not cut", "base", color.RGBA{0x0c, 0x4a, 0x86, 0xff}, 0.3, []float64{1.6, 1.2}, false},
	JoinLine:     {"line of the join, not cut", "join", color.RGBA{0x70, 0x70, 0x70, 0xff}, 0.2, []float64{0.5, 1}, false},
}

// String is the kind in words.
func (k Kind) String() string { return k.style().name }

func (k Kind) style() style {
	if k < ArchLine || k > JoinLine {
		return style{name: "line", id: "line", ink: color.RGBA{A: 0xff}, width: 0.3}
	}
	return styles[k]
}

// kindsOf are the kinds that are drawn in the pieces, each once.
func kindsOf(pieces []Piece) []Kind {
	var there [len(styles)]bool
	for _, p := range pieces {
		for _, o := range p.Outlines {
			if o.Kind >= ArchLine && o.Kind <= JoinLine {
				there[o.Kind] = true
			}
		}
	}
	var out []Kind
	for _, k := range kinds {
		if there[k] {
			out = append(out, k)
		}
	}
	return out
}
