package sheet

// Paper is a size of paper.
type Paper int

// The papers.
const (
	A4 Paper = iota + 1
	Letter
)

// Papers are the papers by the names that a command takes.
var Papers = map[string]Paper{"a4": A4, "letter": Letter}

// size is the width and the height in millimetres (ISO 216; 8.5 by 11 inches).
func (p Paper) size() (width, height float64) {
	if p == Letter {
		return 215.9, 279.4
	}
	return 210, 297
}

func (p Paper) name() string {
	if p == Letter {
		return "Letter"
	}
	return "A4"
}

// Where things lie on a page, in millimetres.
const (
	margin     = 14.0
	headHeight = 13.0 // below the margin
	footHeight = 15.0 // above the lower edge, margin included
	barSide    = 12.0 // left of the outlines, for the upright bar
	barFoot    = 13.0 // below them, for the level bar
)

// field is where the text of a page may stand.
func (p Paper) field() box {
	w, h := p.size()
	return box{margin, margin + headHeight, w - margin, h - margin - footHeight}
}

// window is where outlines may lie on a page with bars.
func (p Paper) window() box {
	f := p.field()
	return box{f.left + barSide, f.top + 10.5, f.right, f.bottom - barFoot}
}
