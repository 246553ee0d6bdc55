package planfile

import (
	"encoding/json"
	"fmt"
	"strings"

	"ogive/imaging/boundedfile"
	"ogive/imaging/marksfile"
	"ogive/imaging/wholefile"
)

// Suffix ends the name of a plan file that lies beside its marks file: the plan
// of hand.marks.json is hand.plan.json.
const Suffix = ".plan.json"

// PathFor is where the plan for the marks file at path lies.
func PathFor(marks string) string {
	name := strings.TrimSuffix(marks, ".json")
	return strings.TrimSuffix(name, ".marks") + Suffix
}

// IsPlan reports whether a text is that of a plan file, sound or not.
func IsPlan(data []byte) bool {
	var head struct {
		Plan *json.RawMessage `json:"ogive_plan"`
	}
	return json.Unmarshal(data, &head) == nil && head.Plan != nil
}

// Read reads the plan file at path. The error names the file, the field and the
// mend.
func Read(path string) (File, error) {
	data, err := boundedfile.Read(path, MaxSize, "a plan file")
	if err != nil {
		return File{}, fmt.Errorf("%s: %w", path, err)
	}
	f, err := Parse(data)
	if err != nil {
		return File{}, fmt.Errorf("%s: %w", path, err)
	}
	return f, nil
}

// Save writes the file to path, whole or not at all.
func (f File) Save(path string) error {
	data, err := f.Encode()
	if err != nil {
		return fmt.Errorf("%s: %w", path, err)
	}
	return wholefile.Write(path, data)
}

// MarksPath is where the marks file lies, for the plan file at path; empty where
// the plan names none.
func (f File) MarksPath(path string) string { return fromFolderOf(path, f.Marks) }

// OtherPath is the same for the marks file of the other hand.
func (f File) OtherPath(path string) string { return fromFolderOf(path, f.Other) }

func fromFolderOf(path, name string) string {
	if name == "" {
		return ""
	}
	return marksfile.Named(path, name)
}
