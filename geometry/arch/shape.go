package arch

// Shape is a member of the arch family, from the simplest to the fullest.
type Shape int

// The shapes. See the package comment for what each fixes.
const (
	V Shape = iota + 1
	Round
	Gothic
	U
)

// Shapes lists the whole family.
var Shapes = []Shape{V, Round, Gothic, U}

// String is the shape's name as the user reads it.
func (s Shape) String() string {
	switch s {
	case V:
		return "V"
	case Round:
		return "round"
	case Gothic:
		return "gothic"
	case U:
		return "U"
	}
	return "unknown shape"
}
