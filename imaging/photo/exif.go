package photo

// readEXIF is the orientation and the facts in an EXIF block, which is a small
// TIFF file. A damaged block says nothing.
func readEXIF(block []byte) (orientation, Facts) {
	t, ok := readIFDs(block)
	if !ok {
		return upright, Facts{}
	}
	turn := orientation(t.first.number(tagOrientation))
	if !turn.valid() {
		turn = upright
	}
	return turn, t.facts()
}
