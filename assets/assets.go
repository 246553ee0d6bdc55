// Package assets carries the files that the program is shipped with. They are
// compiled in, so that one program file is all a machine needs:
//
//	table, err := norms.Parse(assets.NormalValues)
package assets

import _ "embed"

// NormalValues is the table of normal values as JSON, read by package norms. A
// user who wants other limits gives the program an edited copy.
//
//go:embed normal-values.json
var NormalValues []byte
