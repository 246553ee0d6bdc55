package photo

import _ "unsafe" // for go:linkname

// The decoder of HEIC would hand the file to the machine's own libheif where
// there is one. Then a hostile file could bring the program down, and figures
// would depend on the machine: the decoder's own, sandboxed copy is used instead.
// It offers no switch but the build tag nodynamic, which a plain "go build" does
// not set, so its variable is set here, after its own init.
//
//go:linkname useSystemLibheif github.com/gen2brain/heic.dynamic
var useSystemLibheif bool

func init() { useSystemLibheif = false }
