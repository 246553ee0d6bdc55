package assets

import _ "embed"

// PlanSchema is the JSON Schema (draft 2020-12) of a plan file. Package planfile
// reads such files.
//
//go:embed plan.schema.json
var PlanSchema []byte
