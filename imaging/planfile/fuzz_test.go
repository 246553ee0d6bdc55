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
	const small = `{"ogive_plan":1,"photograph":"a","hand":"left","view":"dorsal","webs":[{"web":3,"chosen":"b",` +
		`"join":[[1,2],[3,4]],"girths":{"radial":{"taped_mm":52}},"alternatives":[{"name":"b","arch":{"crown":[1,2],` +
		`"axis":[3,4],"shape":"gothic","span_mm":9,"flare_deg":8,"turn_deg":62}}]}]}`
	for _, c := range [][2]string{
		{``, ``}, {`dorsal`, `palmar`}, {`9`, `-9`}, {`62`, `8.1`}, {`[1,2]`, `[]`}, {`3,"chosen"`, `"2","chosen"`},
		{`1,"photo`, `1e400,"photo`}, {`"gothic","span_mm":9,"flare_deg":8,"turn_deg":62`, `"U","span_mm":9,"flare_deg":0,"flat_share":0.5`},
		{`"gothic","span_mm":9,"flare_deg":8,"turn_deg":62`, `"V","flare_deg":3`}, {`{"radial":{"taped_mm":52}}`, `{}`},
		{`"arch"`, `"zigzag":{"dorsal":[[1,2],[3,4]]},"flap":{"kind":"palmar","outline":[[1,2],[3,4],[5,6]]},"arch"`},
		{`}]}]}`, `}]}],"donors":[{"name":"g","gave_cm2":2}],"patches":[{"name":"p","at":[1,2],"radius_px":3}],"family":{"findings":["a"],"texts":[{"key":"k","text":"t"}]}}`},
	} {
		f.Add([]byte(strings.Replace(small, c[0], c[1], 1)))
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
