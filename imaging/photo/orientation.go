package photo

import "image"

// orientation is the EXIF tag 0x0112: which way the rows and columns of the
// stored picture run when the photograph is held upright.
type orientation uint8

// The values of the tag, named for where the stored first row and first column
// lie on the upright photograph (Exif 2.32, JEITA CP-3451, tag Orientation).
const (
	upright     orientation = 1 + iota // row 0 at the top, column 0 at the left
	topRight                           // mirrored left to right
	bottomRight                        // turned by 180 degrees
	bottomLeft                         // mirrored top to bottom
	leftTop                            // mirrored across the main diagonal
	rightTop                           // to be turned 90 degrees clockwise
	rightBottom                        // mirrored across the other diagonal
	leftBottom                         // to be turned 90 degrees anticlockwise
)

func (o orientation) valid() bool { return o >= upright && o <= leftBottom }

// swaps reports whether the stored rows are columns of the upright photograph.
func (o orientation) swaps() bool { return o >= leftTop }

// flips reports which stored axes run against the upright ones.
func (o orientation) flips() (x, y bool) {
	switch o {
	case topRight:
		return true, false
	case bottomRight:
		return true, true
	case bottomLeft:
		return false, true
	case rightTop:
		return false, true
	case rightBottom:
		return true, true
	case leftBottom:
		return true, false
	}
	return false, false
}

// upright is the upright size of a picture stored with the given size.
func (o orientation) upright(stored image.Point) image.Point {
	if o.swaps() {
		return image.Pt(stored.Y, stored.X)
	}
	return stored
}

// stored is where the part r of the upright photograph lies in a stored
// picture of the given size.
func (o orientation) stored(r image.Rectangle, size image.Point) image.Rectangle {
	if o.swaps() {
		r = image.Rect(r.Min.Y, r.Min.X, r.Max.Y, r.Max.X)
	}
	flipX, flipY := o.flips()
	if flipX {
		r.Min.X, r.Max.X = size.X-r.Max.X, size.X-r.Min.X
	}
	if flipY {
		r.Min.Y, r.Max.Y = size.Y-r.Max.Y, size.Y-r.Min.Y
	}
	return r
}

// steps tells where a stored w by h grid goes in the upright one, both row by
// row: stored (x, y) goes to first + x*right + y*down.
func (o orientation) steps(w, h int) (first, right, down int) {
	right, down = 1, w
	if o.swaps() {
		right, down = h, 1
	}
	flipX, flipY := o.flips()
	if flipX {
		first, right = first+(w-1)*right, -right
	}
	if flipY {
		first, down = first+(h-1)*down, -down
	}
	return first, right, down
}
