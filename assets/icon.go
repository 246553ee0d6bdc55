package assets

import _ "embed"

// Icon is the program's icon as a PNG picture, drawn from icon.svg.
//
//go:embed icon.png
var Icon []byte
