package photo

import (
	"sync"
	_ "unsafe" // for go:linkname

	"github.com/gen2brain/heic"
	"github.com/tetratelabs/wazero"
)

// The decoder of HEIC would hand the file to the machine's own libheif where
// there is one. Then a hostile file could bring the program down, and figures
// would depend on the machine: the decoder's own, sandboxed copy is used instead.
// It offers no switch but the build tag nodynamic, which a plain "go build" does
// not set, so its variable is set here, after its own init.
//
//go:linkname useSystemLibheif github.com/gen2brain/heic.dynamic
var useSystemLibheif bool

func init() { useSystemLibheif = false }

// What the decoder is started with. As it comes it writes remarks on damaged
// files between the program's own output.
//
//go:linkname heicStart github.com/gen2brain/heic.mc
var heicStart wazero.ModuleConfig

var prepareHEIC = sync.OnceFunc(func() {
	heic.Init()
	heicStart = wazero.NewModuleConfig()
})
