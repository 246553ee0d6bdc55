package planfile

import (
	"errors"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"ogive/imaging/marksfile"
)

// Whatever the text: it is refused with a mend, or it holds what the schema
// allows and comes back the same from what is saved.
func FuzzParse(f *testing.F) {
	text := sample(f)
	f.Add([]byte(text))
	for _, c := range [][2]string{
		{`"dorsal"`, `"palmar"`}, {`9.5`, `-9.5`}, {`62.5`, `8.1`}, {`[1160, 1150]`, `[]`}, {`"wider"`, `""`}, {`{"web": 2`, `{"web": "2"`},
		{`"ogive_plan": 1`, `"ogive_plan": 1e400`}, {`"gothic"`, `"U"`}, {`"V", "flare_deg": 20`, `"V", "flare_deg": 3`}, {`0.4`, `0.98`},
		{`"girths": {"radial": {"taped_mm": 52}, "ulnar": {"width_mm": 15.5}}`, `"girths": {}`},
	} {
		f.Add([]byte(strings.Replace(text, c[0], c[1], 1)))
	}
	f.Add([]byte(strings.Repeat("[", 100)))
	s := schema(f)
	f.Fuzz(func(t *testing.T, data []byte) {
		file, err := Parse(data)
		if err != nil {
			var r *marksfile.Refusal
			if !errors.As(err, &r) || r.Problem == "" || r.Mend == "" || strings.ContainsAny(err.Error(), "\n\r") {
				t.Errorf("%q is refused with %q", data, err)
			}
			return
		}
		if err := bySchema(s, data); err != nil {
			t.Errorf("%q is accepted, but the schema says %v", data, err)
		}
		saved, err := file.Encode()
		if err != nil {
			t.Fatalf("%q is read but not written: %v", data, err)
		}
		again, err := Parse(saved)
		if err != nil {
			t.Fatalf("%s is written but not read: %v", saved, err)
		}
		if diff := cmp.Diff(file, again); diff != "" {
			t.Errorf("%q comes back changed: %s", data, diff)
		}
	})
}
