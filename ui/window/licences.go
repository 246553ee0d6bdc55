package window

// licences are the works that the program contains and their licences, each as
// the work's own licence file says.
var licences = []struct{ works, licence string }{
	{"Fyne, Fyne's GLFW and OpenGL bindings, fancyfs, oksvg, rasterx, Go's own libraries (image, net, sys, text), Gonum", "BSD 3-Clause"},
	{"heic, gg, goldmark, go-i18n, go-locale, go-runewidth, uax29, uri", "MIT"},
	{"libheif and libde265, run as WebAssembly by heic", "LGPL 3"},
	{"purego, wazero", "Apache 2.0"},
	{"go-text", "Unlicense or BSD 3-Clause"},
	{"FreeType for Go", "FreeType License"},
	{"Go fonts (Bigelow & Holmes)", "BSD 3-Clause"},
}
