package assets

import _ "embed"

// MarksSchema is the JSON Schema (draft 2020-12) of a marks file, for editors
// and for programs that write such files. Package marksfile reads them.
//
//go:embed marks.schema.json
var MarksSchema []byte
